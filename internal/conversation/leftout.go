package conversation

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// A kind of skylight that is no more wanted, while others are.

// leaveOut leaves out a kind, and gives what else the message says. The last kind is dropped. The
// numbers of the others never change: of such a one nothing more is asked, and a person takes care.
func (t *turn) leaveOut(r reading.Reading, text string) reading.Reading {
	unit, m := r.Dropped, &t.talk.Memory
	if unit == 0 || unit > t.talk.UnitCount() || t.talk.UnitCount() < 2 {
		return r
	}
	t.heard.leftOut = strings.TrimSuffix(t.plainLabel(unit), ": ")
	m.Pending, m.Total = nil, 0
	m.Early = slices.DeleteFunc(m.Early, func(p *Pending) bool { return p.Unit == unit })
	if unit == t.talk.UnitCount() {
		t.dropLast(unit)
	} else {
		m.Out[unit], m.LeftOut = true, strings.TrimSpace(text)
	}
	requests := slices.DeleteFunc(slices.Clone(r.Requests), func(q reading.Request) bool { return q == reading.RequestUndo }) // "cancel it" is this kind
	return reading.Reading{Language: r.Language, Requests: requests, Facts: slices.DeleteFunc(slices.Clone(r.Facts), func(f reading.Fact) bool {
		// "skip the hall ones, they are fine" says nothing of the others
		return f.Topic == fitcheck.TopicConfirm || f.Topic == fitcheck.TopicCount || f.Topic.OfUnit() && (f.Unit == 0 || f.Unit == unit)
	})}
}

// dropLast takes back all that was said of the last kind.
func (t *turn) dropLast(unit int) {
	for i := range t.talk.Ledger {
		if e := &t.talk.Ledger[i]; e.Unit == unit && !e.Undone {
			e.Undone = true
			t.heard.changed = append(t.heard.changed, *e)
		}
	}
	m := &t.talk.Memory
	t.heard.dropped = true
	t.talk.forgetUnits(nil)
	delete(m.Rooms, unit)
	delete(m.Looks, unit)
	delete(m.Bronze, unit)
	delete(m.Called, unit)
	for _, asked := range []map[Ask]bool{m.LetGo, m.Usual} {
		for a := range asked {
			if a.Unit == unit {
				delete(asked, a) // another may come to its number
			}
		}
	}
	for a := range m.Tries {
		if a.Unit == unit {
			delete(m.Tries, a)
		}
	}
}

// ackLeftOut says which kind was left out.
func (t *turn) ackLeftOut() {
	if what := t.heard.leftOut; what != "" {
		t.say.add(t.line("ack.left_out", 0, wording.Args{"what": what}))
	}
}
