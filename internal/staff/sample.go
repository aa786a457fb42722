package staff

import (
	"fmt"
	"time"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// sampleLine is one message of a sample talk.
type sampleLine struct {
	From, Text string
	Segments   int // of a text out
}

// invented is a customer who has an answer to every question, in one language.
type invented struct {
	first   string
	other   string // to what they don't know
	answers map[fitcheck.Topic]string
}

var inventedCustomers = map[string]invented{
	"en": {"Hi, the dome of our skylight cracked. Can you help?", "not sure", map[fitcheck.Topic]string{
		"name": "Ana, 55802", "place": "55802", "use": "a house, just one", "count": "one", "style": "metal frame on a raised wood box",
		"problem": "cracked, the frame is bent, we want the complete unit", "frame_condition": "bent", "want": "the complete unit",
		"curb_outside": "25 1/2 x 49 1/2", "curb_inside": "21 1/2 x 45 1/2", "layers": "2 layers, clear", "color": "clear",
		"material": "acrylic", "finish": "mill", "photos": "can't get up there", "confirm": "yes"}},
	"es": {"Hola, se rompió el domo de mi tragaluz. ¿Me pueden ayudar?", "no sé", map[fitcheck.Topic]string{
		"name": "Ana, 55802", "place": "55802", "use": "una casa, solo uno", "count": "uno", "style": "marco de metal sobre una caja de madera",
		"problem": "roto, el marco está doblado, quiero la unidad completa", "frame_condition": "doblado", "want": "la unidad completa",
		"curb_outside": "25 1/2 x 49 1/2", "curb_inside": "22 1/2 x 46 1/2", "layers": "2 capas, claro", "color": "claro",
		"material": "acrílico", "finish": "natural", "photos": "no puedo", "confirm": "sí"}},
}

// sampleTalk is held by the assistant itself with the shop file in force, so its texts are
// what a customer would get now. Nothing of it is kept.
func sampleTalk(shop *conversation.Shop, channel conversation.Channel, language string, now time.Time) ([]sampleLine, error) {
	customer := inventedCustomers[language]
	talk := conversation.Talk{Ref: "SMPLE", Channel: channel, State: conversation.Opening, OpenedAt: now,
		Phone: "+12185550123", Lead: conversation.Lead{Status: conversation.StatusOpen}}
	if channel == conversation.Email {
		talk.Phone, talk.Email = "", "ana@example.com"
	}
	var lines []sampleLine
	text, n := customer.first, 0
	const most = 20 // turns; a talk that does not end by then is shown as far as it went
	for range most {
		n++
		lines = append(lines, sampleLine{From: conversation.FromCustomer, Text: text})
		out, err := conversation.Respond(talk, []conversation.Message{{N: n, At: now, From: conversation.FromCustomer, Channel: channel, Text: text}}, now, shop)
		if err != nil {
			return nil, fmt.Errorf("sample talk: %w", err)
		}
		talk, now = out.Talk, now.Add(2*time.Minute)
		for _, u := range out.Say {
			n++
			lines = append(lines, sampleLine{From: conversation.FromBot, Text: u.Text, Segments: sms.Count(u.Text).Parts})
		}
		if len(talk.Memory.Asking) == 0 {
			break
		}
		if text = customer.answers[talk.Memory.Asking[0].Topic]; text == "" {
			text = customer.other
		}
	}
	return lines, nil
}
