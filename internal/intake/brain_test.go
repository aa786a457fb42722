package intake

import (
	"errors"
	"fmt"
	"strings"
	"sync/atomic"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// parrot is a talk that is easy to foretell: it says back what it heard, and does what
// some words tell it. What the real one says is tested where it lives.
type parrot struct {
	turns atomic.Int64
	slow  time.Duration
}

func (p *parrot) brain() Brain {
	return Brain{Respond: p.respond, Nudge: p.nudge, Record: recordOf, Keyword: keyword}
}

func keyword(text string) reading.Request {
	switch strings.ToUpper(strings.TrimSpace(text)) {
	case "STOP":
		return reading.RequestStop
	case "START":
		return reading.RequestStart
	case "HELP":
		return reading.RequestHelp
	}
	return ""
}

func (p *parrot) respond(talk conversation.Talk, in []conversation.Message, now time.Time, _ *conversation.Shop) (conversation.Outcome, error) {
	p.turns.Add(1)
	time.Sleep(p.slow)
	o := conversation.Outcome{Talk: talk, PhotosOf: map[int]fitcheck.Topic{}}
	if talk.State == conversation.Silenced && in[0].Text != "START" {
		return o, nil
	}
	o.Talk.Language, o.Talk.State = "en", conversation.Measuring
	o.Talk.Lead.Units = []conversation.LeadUnit{}
	var heard []string
	for _, m := range in {
		heard = append(heard, fmt.Sprintf("%d:%s", m.N, m.Text))
		o.Talk.Ledger = append(o.Talk.Ledger, conversation.Entry{Topic: fitcheck.TopicCount, Unit: 1,
			Value: fitcheck.Whole(len(m.Text)), Said: m.Text, Message: m.N, By: conversation.FromCustomer})
		if m.Photos > 0 {
			o.PhotosOf[m.N] = fitcheck.TopicStyle
		}
		if err := p.obey(&o, m.Text, now); err != nil {
			return conversation.Outcome{}, err
		}
	}
	o.Facts = o.Talk.Ledger[len(talk.Ledger):]
	if o.Say == nil {
		o.Say = []conversation.Utterance{{Text: "heard " + strings.Join(heard, " + "), Kind: conversation.Reply}}
	}
	return o, nil
}

// obey does what a message tells the parrot.
func (p *parrot) obey(o *conversation.Outcome, text string, now time.Time) error {
	switch text {
	case "boom":
		return errors.New("the parrot fell off its perch")
	case "panic":
		var none []string
		_ = none[len(text)]
	case "STOP", "leave me alone":
		o.Talk.State = conversation.Silenced
		o.Say = []conversation.Utterance{{Text: "bye", Kind: conversation.Farewell}}
	case "twice":
		o.Say = []conversation.Utterance{{Text: "one", Kind: conversation.Reply}, {Text: "two", Kind: conversation.Reply}}
	case "nothing":
		o.Say = []conversation.Utterance{}
	case "ready":
		o.Talk.Lead.Status, o.Talk.Lead.ReadyAt, o.Talk.Lead.Qualified = conversation.StatusReady, &now, true
		o.Talk.State, o.Alert = conversation.HandedOver, true
	case "wait":
		o.Wake = now.Add(time.Hour)
	}
	return nil
}

func (p *parrot) nudge(talk conversation.Talk, _ time.Time, _ *conversation.Shop) (conversation.Outcome, error) {
	return conversation.Outcome{Talk: talk, Say: []conversation.Utterance{{Text: "still there?", Kind: conversation.Reminder}}}, nil
}

func recordOf(t conversation.Talk) conversation.Record {
	r := conversation.Record{Version: 1, Ref: t.Ref, Status: t.Lead.Status, Qualified: t.Lead.Qualified,
		WhyStaff: t.Lead.WhyStaff, Channel: t.Channel, Language: t.Language, OpenedAt: t.OpenedAt,
		ReadyAt: t.Lead.ReadyAt, Units: t.Lead.Units}
	if t.Phone != "" {
		r.Customer.Phone = &t.Phone
	}
	if t.Email != "" {
		r.Customer.Email = &t.Email
	}
	return r
}
