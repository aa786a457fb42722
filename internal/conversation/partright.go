package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// A size that was told of one part is told of another after a "no": it is the other's, and the first has none.

var (
	putsRight = regexp.MustCompile(`(?i)^\W*(?:(?:oh|um|uh|hey|ok|ah|ay)\W+)*(?:no|nope|nah|sorry|wait|actually|oops|whoops|` +
		`my bad|my mistake|correction|scratch that|i (?:mean|meant)|perd[oó]n|disculpe|digo|espere|me equivoqu[eé])\b`)
	alsoSo = regexp.MustCompile(`(?i)\b(?:too|also|both|same|as well|equal|tambi[eé]n|igual(?:es)?|mism[oa]s?|amb[oa]s)\b`)
)

// partRight: "no, the plastic is 25 1/2 x 25 1/2, the frame opening is 23 1/2 x 23 1/2", where 25 1/2 x 25 1/2 stands as
// the outside of the frame.
func (t *turn) partRight(r reading.Reading, text string) (reading.Reading, bool) {
	if !putsRight.MatchString(text) || alsoSo.MatchString(text) {
		return r, false
	}
	for _, f := range r.Facts {
		now, ok := f.Value.(fitcheck.Size)
		if !ok || !f.Topic.OfSize() || !now.Complete() || t.talk.Value(f.Topic, 1) != nil {
			continue
		}
		if e := t.toldOf(now, r); e != nil {
			t.dropSize(*e)
			return r, true
		}
	}
	return r, false
}

// toldOf is the customer's size with these numbers, of a part that the message says nothing of; nil for none.
func (t *turn) toldOf(size fitcheck.Size, r reading.Reading) *Entry {
	for _, topic := range fitcheck.SizeTopics {
		e := t.talk.entry(topic, 1)
		if e == nil || e.By != FromCustomer || slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == topic }) {
			continue
		}
		stands, ok := e.Value.(fitcheck.Size)
		if ok && stands.Width == size.Width && stands.Length == size.Length && stands.Diameter == size.Diameter {
			return e
		}
	}
	return nil
}
