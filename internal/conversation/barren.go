package conversation

import (
	"example.com/intake-bot/internal/conversation/reading"
)

// Two programs that answer each other would go on for ever: a talk that brings nothing
// new for so many turns is left to staff, and not answered until something new comes.
const (
	mostBarrenMails = 6
	mostBarren      = 12
)

// countBarren notes whether this turn brought anything new.
func (t *turn) countBarren() {
	m, h := &t.talk.Memory, &t.heard
	m.Barren++
	if len(h.entries) > 0 || h.photos > 0 || h.confirm != "" || len(h.dontKnow)+len(h.usual) > 0 ||
		h.asks(reading.RequestUndo) {
		m.Barren = 0
	}
}

// barren says whether the talk has gone in circles for too long.
func (t *turn) barren() bool {
	most := mostBarren
	if t.talk.Channel == Email {
		most = mostBarrenMails
	}
	return t.talk.Memory.Barren > most
}

// leave stops answering a talk that goes in circles: staff have it from here.
func (t *turn) leave() error {
	t.talk.Memory.Asking = nil
	if t.talk.State == WithStaff || t.talk.State == HandedOver {
		return nil
	}
	return t.move(WithStaff)
}
