package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// A size may lack two things, what it measures and its unit: 50 x 98 can be inches or centimeters.
// Words that tell one of them leave but the other to ask.

// lessOpen is what stays open of a size when the words told one of the two.
func (t *turn) lessOpen(p *Pending, words string) (reading.Unclear, bool) {
	if p.Topic != "" || !p.worthKeeping() {
		return reading.Unclear{}, false
	}
	both := reading.Read(reading.Input{Text: p.Said + " " + words, Units: t.talk.UnitCount(), Language: t.talk.Language})
	for _, u := range both.Unclear {
		named := u.Why == reading.WhyUnits && u.Topic != nil && u.Topic.OfSize()
		measured := u.Why == reading.WhyWhich && p.Why == reading.WhyUnits
		if named || measured {
			u.Unit = p.Unit
			return u, true
		}
	}
	return reading.Unclear{}, false
}

// completeEarly completes the sizes of the other kinds that wait: "plastic on all of them", or
// those that were told in one list, where that is what each needs. One that the message tells anew
// is overtaken: "plastic. the hall one is really 14 1/4 x 22 1/4".
func (t *turn) completeEarly(p *Pending, topic fitcheck.Topic, words string, told []reading.Fact) {
	t.talk.Memory.Early = slices.DeleteFunc(t.talk.Memory.Early, func(held *Pending) bool {
		listed := held.Message == p.Message && (held.Why == p.Why || held.Why == reading.WhyUnits) && t.firstNeed(held.Unit) == topic
		if !listed && !plural.MatchString(words) {
			return false
		}
		if slices.ContainsFunc(told, func(f reading.Fact) bool { return f.Topic == topic && f.Unit == held.Unit }) {
			return true
		}
		fact, ok := t.completed(held, words)
		if ok {
			t.settled(fact, held.Message, words)
		} else if u, less := t.lessOpen(held, words); less && u.Topic != nil && *u.Topic == topic {
			held.Topic, held.Why, held.Candidates = topic, u.Why, nil
		}
		return ok
	})
}

// twoSides is a size with both its sides; a lone number without a unit may be anything: "zip+4 is …".
var twoSides = regexp.MustCompile(`(?i)\d\D*?(?:x|×|\*|by|por)\s*\D?\d`)

// worthKeeping says whether only what a size measures, or its unit, is not known: a guess or a
// nominal size is measured anyway.
func (p *Pending) worthKeeping() bool {
	return p.Why == reading.WhyWhich || p.Why == reading.WhyUnits && twoSides.MatchString(p.Said)
}

// ofAnother says whether the sizes among the facts are all of other kinds, each by its name.
func (p *Pending) ofAnother(facts []reading.Fact) bool {
	return p.Unit > 0 && !slices.ContainsFunc(facts, func(f reading.Fact) bool {
		return f.Topic.OfSize() && (f.Unit == 0 || f.Unit == p.Unit)
	})
}
