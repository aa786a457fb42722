package reading

// Which kind of unit a thing that is said belongs to.

const maxRefs = 30 // places where one message may name a kind of unit

func (r *reader) sortRefs() {
	for i := 1; i < len(r.refs); i++ {
		for k := i; k > 0 && r.refs[k].first < r.refs[k-1].first; k-- {
			r.refs[k], r.refs[k-1] = r.refs[k-1], r.refs[k]
		}
	}
	r.refs = r.refs[:min(len(r.refs), maxRefs)]
}

// refRightAfter: "25 x 49 for the first one, the second is 30 x 30": the kind that is named
// right after a size with "for" or "on"; nil where none is.
func (r *reader) refRightAfter(last int) []int {
	i := last + 1
	if !r.wordAt(i, "for", "on", "para") {
		return nil
	}
	for k := range r.refs {
		if f := r.refs[k].first; f >= i && f <= i+2 && r.refs[k].last > i {
			return r.refs[k].units
		}
	}
	return nil
}

// unitsAt tells which kinds of unit the words at a token speak of: those named last
// before it, or, where the names follow, the next after it. nil where none is named.
func (r *reader) unitsAt(first, last int) []int {
	if len(r.refs) == 0 || r.itemsEnd > 0 && first > r.itemsEnd {
		return nil
	}
	if units := r.refRightAfter(last); len(units) > 1 {
		return units // "new units for both"
	}
	if units := r.refOfClause(first, last); units != nil {
		return units
	}
	refs, trailing := r.refsOfLine(first)
	before, after := -1, -1
	for k := range refs {
		if refs[k].first <= last && first <= refs[k].last { // "the round one"
			return refs[k].units
		}
		if refs[k].last < first {
			before = k
		} else if refs[k].first > last && after < 0 {
			after = k
		}
	}
	if before < 0 && !trailing {
		return r.ofAllKinds(last)
	}
	if before < 0 || trailing && after >= 0 && !r.softBetween(last+1, refs[after].first) {
		if after >= 0 && !r.breakBetween(last, refs[after].first) {
			return refs[after].units
		}
		if before < 0 {
			return nil
		}
	}
	return refs[before].units
}
