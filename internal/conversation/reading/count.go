package reading

import "example.com/intake-bot/internal/fitcheck"

// counts reads how many units there are: "3 skylights", "two of them", "just one".
func (r *reader) counts() {
	if r.countMended() || r.countScratched() {
		return
	}
	r.numbersBeside()
	r.countsInRooms()
	r.kindByCount()
	if r.known(fitcheck.TopicCount) || r.countsByKind() || r.eachCount() || r.kindShares() || r.sizesCounted() {
		return
	}
	if c, ok := r.countBeside(); ok {
		r.use(c.first, c.last)
		r.wholeCount(c)
		return
	}
	found := r.countsFound()
	if r.countsDiffer(found) {
		return // kinds of unit: each size has its count, see kindcount.go
	}
	r.countFacts(found)
	total, ok := r.allOrOne() // which also marks "3 total" as no size
	switch {
	case len(found) > 0:
	case ok:
		r.wholeCount(total)
	default:
		r.countUnnamed()
	}
}

// sizesCounted: each size has its count, where nothing else can be meant.
func (r *reader) sizesCounted() bool {
	return (r.askedSize() == "none" || r.asked(fitcheck.TopicCount)) && r.countsOfSizes()
}

// countsFound are all numbers that say of themselves what they count.
func (r *reader) countsFound() []countAt {
	var found []countAt
	for i := range r.toks {
		if c, ok := r.countBesideLayers(i); ok {
			found = append(found, c)
		} else if c, ok := r.countFrom(i); ok {
			if !r.partOfCount(c, found) {
				found = append(found, c)
			}
		} else if c, ok := r.countClause(i); ok {
			found = append(found, c)
		} else if c, ok := r.countAlike(i); ok {
			found = append(found, c)
		}
	}
	return found
}

func (r *reader) countFacts(found []countAt) {
	for _, c := range found {
		if instead, ok := r.countInstead(c); ok {
			r.countFact(instead)
			return
		}
		if r.countTakenBack(c) || len(r.unitsAt(c.first, c.last)) == 0 && r.countOfKind(c.first+1) {
			r.unclear(fitcheck.TopicCount, 0, WhyNumber, nil, c.first, c.last)
			continue
		}
		r.countFact(c)
	}
}

// countUnnamed reads a count where no number says what it counts.
func (r *reader) countUnnamed() {
	if r.asked(fitcheck.TopicCount) {
		r.countAnswer()
		return
	}
	if c, ok := r.bothOfThem(); ok {
		r.wholeCount(c)
		return
	}
	if c, ok := r.bothUnits(); ok {
		r.countFact(c)
		return
	}
	r.countAside()
}

// countAside reads a count that only its place in the message tells, where something else was asked.
func (r *reader) countAside() {
	if r.onlyOne() {
		r.wholeCount(countAt{1, 0, len(r.toks) - 1})
		return
	}
	if r.asked(fitcheck.TopicUse) {
		r.countBetween()
		return
	}
	if c, ok := r.countAfterUse(); ok {
		r.use(c.first, c.last)
		r.wholeCount(c)
		return
	}
	if c, ok := r.countByItself(); ok {
		r.countFact(c)
		return
	}
	if !r.allTold() {
		r.countAtEnd()
	}
}

type countAt struct {
	value       int
	first, last int
}

// wholeCount is a count of all skylights that nothing makes doubtful.
func (r *reader) wholeCount(c countAt) {
	r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(c.value), c.first, c.last)
}

func (r *reader) countFact(c countAt) {
	if r.wordAt(c.first-1, "qty", "quantity", "cantidad") {
		r.use(c.first, c.first) // no size
	}
	if t := &r.toks[c.last]; c.last > c.first+1 && t.kind == wordToken && countNouns.has(t.text) {
		r.use(c.first, c.first)
	}
	unit := r.unitOfCount(c)
	if r.doubted(c.first, c.last) || r.nearDoubt(c.first) || r.roughAfter(c.last) || r.onlyIf(c.last) {
		r.unclear(fitcheck.TopicCount, unit, WhyRough, fitcheck.Whole(c.value), c.first, c.last)
		return
	}
	r.fact(fitcheck.TopicCount, unit, fitcheck.Whole(c.value), c.first, c.last)
}

// unitOfCount is the kind of unit that a count is said of; 0 for all of them.
func (r *reader) unitOfCount(c countAt) int {
	if r.spansKinds(c) {
		return 0 // "one on the house, one on the garage"
	}
	units := r.unitsAt(c.first, c.last)
	if ref := r.refOfCount(c.last + 1); ref != nil {
		return ref[0]
	}
	if len(units) == 0 && r.countsFirst(c) {
		return 1
	}
	if len(units) != 1 || r.countsRefs(c) || r.totalFirst(c) {
		return 0
	}
	return units[0]
}
