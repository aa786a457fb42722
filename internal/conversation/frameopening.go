package conversation

import (
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// What an inside is the inside of, where the talk knows what is up there.

// openingRight makes "23 1/2 x 23 1/2 inside the frame" at the list the opening that stands in it, near
// enough to be that put right: the list of a dome has no other inside of a frame.
func (t *turn) openingRight(r reading.Reading) reading.Reading {
	if !t.summed() {
		return r
	}
	r.Facts = slices.Clone(r.Facts)
	for k, f := range r.Facts {
		now, ok := f.Value.(fitcheck.Size)
		if f.Topic != fitcheck.TopicFrameInside || !ok {
			continue
		}
		unit := f.Unit
		if unit == 0 {
			unit = t.focus()
		}
		stands, ok := t.talk.Value(fitcheck.TopicRetainerOpening, unit).(fitcheck.Size)
		if !ok || t.talk.Value(fitcheck.TopicFrameInside, unit) != nil {
			continue
		}
		if _, ok := rightened(stands, now, 0, false); ok {
			r.Facts[k].Topic, r.Facts[k].Unit = fitcheck.TopicRetainerOpening, unit
		}
	}
	return r
}

// insideOfBox: plastic that is screwed down without a frame has no inside but the box's.
func (t *turn) insideOfBox(u reading.Unclear) (reading.Fact, bool) {
	unit := u.Unit
	if unit == 0 {
		unit = t.focus()
	}
	if u.Why != reading.WhyWhich || u.Guess == nil || !slices.Contains(u.Candidates, fitcheck.TopicCurbInside) || t.talk.text(fitcheck.TopicStyle, unit) != fitcheck.StyleBareDome ||
		slices.ContainsFunc(u.Candidates, func(c fitcheck.Topic) bool { return !slices.Contains(insides, c) }) {
		return reading.Fact{}, false
	}
	return reading.Fact{Topic: fitcheck.TopicCurbInside, Unit: unit, Value: u.Guess, Said: u.Said}, true
}
