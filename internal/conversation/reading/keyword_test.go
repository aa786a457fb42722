package reading

import (
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

// The words are those of 47 CFR 64.1200(a)(10) and of messaging providers' help pages;
// what is no such word is common practice.
func TestKeyword(t *testing.T) {
	for request, texts := range map[Request][]string{
		RequestStop: {"STOP", "stop", "Stop.", " STOP ", "STOP!!", `"STOP"`, "'stop'", "“Stop”", "stop\n", "STOPALL", "Stop all", "END", "end.",
			"CANCEL", "UNSUBSCRIBE", "QUIT", "Revoke", "opt out", "OPT-OUT", "optout", "remove", "please stop", "Stop please", "STOP STOP",
			"ALTO", "Parar", "BAJA", "cancelar", "dejen de escribirme", "stop texting me", "ＳＴＯＰ", "stop 👍", "Wrong number"},
		RequestStart: {"START", "Unstop", "start.", "opt in", "OPT-IN", "subscribe", "INICIAR", "Empezar"},
		RequestHelp:  {"HELP", "help!", "Info", "INFO.", "AYUDA", "help me"},
		"": {"", " ", "YES", "no", "END to end 48", "stop by Tuesday", "quit leaking", "cancel the second one", "25 x 49", "stopper", "helpful",
			"the leak won't stop", "start with the curb", "info about acrylic", "help me measure", "stop it from leaking", "?", "👍"},
	} {
		for _, text := range texts {
			if got := Keyword(text); got != request {
				t.Errorf("Keyword(%q) = %q, want %q", text, got, request)
			}
		}
	}
}

// The carriers' words win over whatever was asked.
func TestKeywordWins(t *testing.T) {
	for _, asked := range append(append([]fitcheck.Topic{}, fitcheck.LeadTopics...), fitcheck.UnitTopics...) {
		for _, text := range []string{"STOP", "End", "cancel", "Quit."} {
			got := Read(Input{Text: text, Asked: askedOf(asked)})
			if len(got.Facts)+len(got.Unclear) > 0 || len(got.Requests) != 1 || got.Requests[0] != RequestStop {
				t.Errorf("%q as the answer to %s: %s", text, asked, formOfReading(got))
			}
		}
	}
}
