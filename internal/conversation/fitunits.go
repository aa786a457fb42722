package conversation

import (
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// Of which kind a size is, the sizes themselves tell where the words don't: an opening of
// 48 1/2 x 96 1/2 is no dome's of 50 1/4 x 50 1/4.

// nests says how much larger a size is than one that lies within it: at the least and at the
// most, side by side (common practice, no source).
type nests struct {
	outer, inner fitcheck.Topic
	least, most  fitcheck.Length
}

var nested = []nests{
	{fitcheck.TopicPlasticSize, fitcheck.TopicRetainerOpening, fitcheck.Inch / 2, 5 * fitcheck.Inch},
	{fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside, fitcheck.Inch, 8 * fitcheck.Inch},
	{fitcheck.TopicFrameInside, fitcheck.TopicCurbOutside, -fitcheck.Inch / 2, 2 * fitcheck.Inch},
}

// fitUnits gives the sizes of a message the kinds whose other sizes they go with, where what the
// words leave open, or the order in which they were said, goes with none.
func (t *turn) fitUnits(r reading.Reading) reading.Reading {
	kinds := t.talk.UnitCount()
	if kinds < 2 || kinds > 4 || len(r.Rooms) > 0 {
		return r
	}
	at := map[int]int{} // the fact with the size of a unit as it was read
	for k, f := range r.Facts {
		size, ok := f.Value.(fitcheck.Size)
		if !ok || !size.Complete() {
			continue
		}
		unit := f.Unit
		if unit == 0 {
			unit = t.focus()
		}
		if _, again := at[unit]; again || unit > kinds {
			return r
		}
		at[unit] = k
	}
	if len(at) == 0 {
		return r
	}
	misfit := false
	for unit, k := range at {
		misfit = misfit || t.goesWith(r.Facts[k], unit) == misfits
	}
	if !misfit {
		return r
	}
	to, ok := t.arrangement(r, at, kinds)
	if !ok {
		return r
	}
	r.Facts = slices.Clone(r.Facts)
	for k := range r.Facts {
		f := &r.Facts[k]
		if now, moved := to[f.Unit]; moved && f.Topic.OfUnit() && (f.Unit > 0 || !shared(f.Topic)) {
			f.Unit = now
		}
	}
	return r
}

// arrangement finds for each unit as read the one that its size goes with; there must be just
// one way.
func (t *turn) arrangement(r reading.Reading, at map[int]int, kinds int) (map[int]int, bool) {
	to, taken := map[int]int{}, map[int]bool{}
	for _, k := range at {
		f, found := r.Facts[k], 0
		for u := 1; u <= kinds; u++ {
			if t.goesWith(f, u) != fits || t.talk.Value(f.Topic, u) != nil {
				continue
			}
			if found > 0 {
				return nil, false
			}
			found = u
		}
		if found == 0 || taken[found] {
			return nil, false
		}
		taken[found] = true
		to[f.Unit] = found
	}
	return to, true
}

type agreement int

const (
	unsaid agreement = iota
	fits
	misfits
)

// goesWith says whether a size goes with what is known of a unit.
func (t *turn) goesWith(f reading.Fact, unit int) agreement {
	now, _ := f.Value.(fitcheck.Size)
	for _, n := range nested {
		outer, inner := now, now
		switch f.Topic {
		case n.outer:
			other, ok := t.talk.Value(n.inner, unit).(fitcheck.Size)
			if !ok || !other.Complete() {
				continue
			}
			inner = other
		case n.inner:
			other, ok := t.talk.Value(n.outer, unit).(fitcheck.Size)
			if !ok || !other.Complete() {
				continue
			}
			outer = other
		default:
			continue
		}
		if (outer.Diameter > 0) != (inner.Diameter > 0) {
			return misfits
		}
		short, long := sideGaps(outer, inner)
		if short >= n.least && short <= n.most && long >= n.least && long <= n.most {
			return fits
		}
		return misfits
	}
	return unsaid
}

// sideGaps is how much larger one size is than another, the short side and the long one.
func sideGaps(a, b fitcheck.Size) (short, long fitcheck.Length) {
	if a.Diameter > 0 {
		return a.Diameter - b.Diameter, a.Diameter - b.Diameter
	}
	return min(a.Width, a.Length) - min(b.Width, b.Length), max(a.Width, a.Length) - max(b.Width, b.Length)
}

// sameMeasure takes the size of a further skylight for what was measured first of the one before
// it: "oh and I need another one, 25 1/4 x 49 1/4", while something else was asked.
func (t *turn) sameMeasure(r reading.Reading) reading.Reading {
	unit := 2
	for _, e := range t.talk.Ledger {
		if !e.Undone {
			unit = max(unit, e.Unit+1)
		}
	}
	for k := range r.Facts {
		f := &r.Facts[k]
		if f.Unit != unit || !f.Topic.OfSize() || !t.isAsked(f.Topic) || t.talk.Value(f.Topic, 1) != nil {
			continue
		}
		for _, topic := range fitcheck.SizeTopics {
			size, ok := t.talk.Value(topic, 1).(fitcheck.Size)
			if ok && size.Complete() && !slices.ContainsFunc(r.Facts, func(o reading.Fact) bool { return o.Unit == unit && o.Topic == topic }) {
				r.Facts = slices.Clone(r.Facts)
				r.Facts[k].Topic = topic
				return r
			}
		}
	}
	return r
}
