package conversation

import (
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// unitNamed reads a size anew whose unit was asked for, where the words name just that,
// whatever else they say: "the place was built in 1987. cm. thanks". The fact quotes the
// message that it gives the number of: that of the size, or, where a size that stood is put
// right, the new one, so that an undo takes back no more than that.
func (t *turn) unitNamed(p *Pending, r reading.Reading, text string) (f reading.Fact, message int, ok bool) {
	said := text
	if p == nil {
		p, message = t.rechecked(), t.lastMessage
		if p == nil && bare(r, text) && len(strings.Fields(text)) <= shortUnit && !strings.Contains(text, "?") {
			p = t.lastSized()
		}
	} else if p.Why == reading.WhyUnits {
		said, message = p.Said, p.Message
	} else {
		p = nil
	}
	unit := reading.UnitNamed(text)
	if p == nil || unit == "" || t.settledAlone(p, r) {
		return f, 0, false
	}
	again := reading.Read(reading.Input{Text: p.Said, Asked: p.asked(), Unit: unit, Units: t.talk.UnitCount(), Language: t.talk.Language})
	if f, ok = p.find(again.Facts); !ok {
		return f, 0, false
	}
	if e := t.talk.entry(f.Topic, p.Unit); e != nil && e.Message == p.Message {
		f.Value = squaredAs(e.Value, f.Value)
	}
	f.Said = said
	if f.Unit == 0 {
		f.Unit = p.Unit
	}
	return f, message, true
}

// shortUnit is how many words may add a unit to the size that was just told: "sorry, that's cm".
const shortUnit = 5

// lastSized is the one size of the last message that told anything: its unit may come after it.
func (t *turn) lastSized() *Pending {
	entries := t.talk.Ledger
	if len(entries) == 0 {
		return nil
	}
	var size *Entry
	last := entries[len(entries)-1].Message
	for n := range entries {
		if e := &entries[n]; e.Message == last && e.By == FromCustomer {
			if _, ok := e.Value.(fitcheck.Size); !ok || size != nil {
				return nil
			}
			size = e
		}
	}
	if size == nil {
		return nil
	}
	return &Pending{Topic: size.Topic, Unit: size.Unit, Said: size.Said, Why: reading.WhyUnits, Message: size.Message}
}

// squaredAs makes a lone number both sides where the size that the words were noted as had
// two like ones: "65.2 both ways", of which the quoted words are the number alone.
func squaredAs(before, now fitcheck.Value) fitcheck.Value {
	b, ok := before.(fitcheck.Size)
	n, also := now.(fitcheck.Size)
	if !ok || !also || n.One == 0 || b.Width == 0 || b.Width != b.Length {
		return now
	}
	return fitcheck.Size{Width: n.One, Length: n.One, Resolution: n.Resolution}
}

// rechecked is the size about which a finding raised a question, as it was said.
func (t *turn) rechecked() *Pending {
	if t.talk.State != Rechecking || len(t.talk.Memory.Asking) != 1 {
		return nil
	}
	a := t.talk.Memory.Asking[0]
	e := t.talk.entry(a.Topic, a.Unit)
	if e == nil || e.By != FromCustomer {
		return nil
	}
	if _, ok := e.Value.(fitcheck.Size); !ok {
		return nil
	}
	return &Pending{Topic: a.Topic, Unit: a.Unit, Said: e.Said, Why: reading.WhyUnits, Message: e.Message}
}
