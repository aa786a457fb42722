package conversation

import "testing"

func TestStandingAnswers(t *testing.T) {
	for text, want := range map[string]string{
		"are you a bot":                               "answer.assistant",
		"is this a real person??":                     "answer.assistant",
		"Am I texting with a robot":                   "answer.assistant",
		"¿eres una persona?":                          "answer.assistant",
		"I want a real person":                        "",
		"are you open saturday":                       "",
		"can I stand on the dome to measure it":       "safe.roof",
		"I'm up on the roof now, it's 25 1/2 x 49":    "safe.roof",
		"my husband is on the roof right now":         "safe.roof",
		"should i get up on the roof":                 "safe.roof",
		"can I stand on it?":                          "safe.roof",
		"will it hold my weight":                      "safe.roof",
		"is it safe to go on the roof":                "safe.roof",
		"should i go up and put a tarp on it?":        "safe.roof",
		"the plastic and the frame sit on it":         "",
		"estoy en el techo ahora":                     "safe.roof",
		"¿puedo pisar el domo?":                       "safe.roof",
		"there is a skylight on the roof":             "",
		"I can't get up on the roof":                  "",
		"my roofer is going up on the roof tomorrow":  "",
		"no puedo subir al techo":                     "",
		"the dome sits on the roof of the garage":     "",
		"we have four on the roof over the gymnasium": "",
		"can i send you a picture?":                   "answer.photos",
		"how do I get you the pics":                   "answer.photos",
		"do you guys need a photo of it":              "answer.photos",
		"would a picture help":                        "answer.photos",
		"¿Puedo mandarle unas fotos?":                 "answer.photos",
		"le mando foto?":                              "answer.photos",
		"I can send a photo tomorrow":                 "",
		"can you send me a picture of the dome":       "",
		"le mando foto mañana":                        "",
		"no puedo mandar foto ahorita":                "",
		"puedo mandarle una foto mañana":              "",
	} {
		if got := standingAnswer(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestCallsOff(t *testing.T) {
	for text, want := range map[string]bool{
		"never mind i don't need it anymore":         true,
		"nevermind, we found one elsewhere":          true,
		"We went with somebody else, thanks":         true,
		"please cancel my order":                     true,
		"not interested anymore":                     true,
		"ya no lo quiero, gracias":                   true,
		"never mind the inside, here is the outside": false,
		"I don't need the frame, only the dome":      false,
		"we bought one from you in 2009":             false,
		"cancel that last number":                    false,
		"I'm not interested in glass, only plastic":  false,
	} {
		if got := callsOff.MatchString(text); got != want {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
}
