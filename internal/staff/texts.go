package staff

import (
	"net/http"
	"strings"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/wording"
)

// textsPage shows the owner what customers get to read: a whole sample talk, and every
// sentence by itself.
type textsPage struct {
	frame
	By, In string
	Views  []view
	Sample []sampleLine
	Lines  []textLine
	Mail   bool
}

type textLine struct {
	Key      string
	Text     string
	Again    []string // said the second time, and so on
	Own      bool     // the shop file's
	Segments int
}

var languageNames = map[string]string{"en": "English", "es": "Spanish"}

func (s *Server) texts(v *visit) error {
	q := v.r.URL.Query()
	p := textsPage{frame: v.frame("What customers read"), By: "sms", In: wording.Languages[0]}
	p.Mail = q.Get("by") == "email"
	if p.Mail {
		p.By = "email"
	}
	for _, language := range wording.Languages {
		if language == q.Get("in") {
			p.In = language
		}
	}
	for _, language := range wording.Languages {
		for _, c := range []conversation.Channel{conversation.SMS, conversation.Email} {
			p.Views = append(p.Views, view{Name: languageNames[language] + ", by " + channelWords[c],
				Address: Base + "/texts?by=" + string(c) + "&in=" + language, Here: p.In == language && p.By == string(c)})
		}
	}
	var err error
	if p.Sample, err = sampleTalk(v.shop(), conversation.Channel(p.By), p.In, v.now); err != nil {
		return err
	}
	book, err := wording.For(p.In, v.shop().Wording)
	if err != nil {
		return err
	}
	shop := v.shop()
	known := wording.Args{"shop": shop.Name, "assistant": shop.Assistant, "phone": shop.Phone}
	if shop.Email != "" {
		known["email"] = shop.Email
	}
	for _, key := range book.Keys() {
		line := textLine{Key: key, Text: book.Say(key, 0, known), Own: shop.Wording[key][p.In] != ""}
		for n := 1; n < book.Variants(key); n++ {
			line.Again = append(line.Again, book.Say(key, n, known))
		}
		// What is filled in from the talk is not known here, and neither is its length.
		if !strings.Contains(line.Text, "{") {
			line.Segments = sms.Count(line.Text).Parts
		}
		p.Lines = append(p.Lines, line)
	}
	return v.show(http.StatusOK, "texts.html", p)
}
