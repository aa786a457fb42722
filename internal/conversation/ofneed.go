package conversation

import (
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// ofNeed leaves open what a size of one kind is that came, without a name, as an answer about
// another kind, where the two need different measures: "gym 25 1/2 x 49 1/2, locker room
// 25 1/4 x 25 1/4", to the box of the gym's, while of the locker room's only the plastic is wanted.
func (t *turn) ofNeed(r reading.Reading, text string) reading.Reading {
	var named []reading.Fact
	for k := 0; k < len(r.Facts); k++ {
		f := r.Facts[k]
		if !f.Topic.OfSize() || f.Unit == 0 || f.Unit > t.talk.UnitCount() || !t.isAsked(f.Topic) || slices.Contains(t.talk.Memory.Asking, Ask{f.Topic, f.Unit}) {
			continue
		}
		need := t.firstNeed(f.Unit)
		if need == "" || need == f.Topic {
			continue
		}
		if named == nil {
			named = t.read(text, nil).Facts
		}
		if slices.ContainsFunc(named, func(n reading.Fact) bool { return n.Topic == f.Topic && n.Unit == f.Unit }) {
			continue
		}
		r.Facts = slices.Delete(slices.Clone(r.Facts), k, k+1)
		r.Unclear = append(slices.Clone(r.Unclear), reading.Unclear{Unit: f.Unit, Said: f.Said, Why: reading.WhyWhich, Candidates: []fitcheck.Topic{need, f.Topic}})
		k--
	}
	return r
}

// firstNeed is the size that a unit needs next to be ordered, where it is known which part is,
// "" where none is.
func (t *turn) firstNeed(unit int) fitcheck.Topic {
	t.runCheck()
	if unit > len(t.check.Units) {
		return "" // of a kind that was dropped
	}
	u := t.check.Units[unit-1]
	if u.Replace == fitcheck.ReplaceStaff {
		return ""
	}
	for _, topic := range u.Missing {
		if topic.OfSize() {
			return topic
		}
	}
	return ""
}
