package reading

import "slices"

// What is said of the kinds that a message does not name, where the talk knows them all.

// restOfKnown: "the barrel is bent, the rest are sound", "all sound except the barrel": the rest are
// the kinds that the talk knows and the message does not name.
func (r *reader) restOfKnown() {
	if r.Units < 2 {
		return
	}
	others := r.notNamed()
	if len(others) == 0 {
		return
	}
	if len(others) == r.Units {
		r.otherTheSecond()
		return
	}
	for n := range r.intros {
		h := &r.intros[n]
		if h.is("nth", "rest") || h.is("nth", "other") && (r.otherOfKnown(h) || len(others) == 1 && r.refAt(h.first, h.last)) {
			r.refTo(h.first, h.last, others)
		}
	}
	for k := range r.refs {
		if at := r.exceptAt(&r.refs[k]); at > 0 {
			r.saidBut(at, others)
			return
		}
	}
}

// otherOfKnown: "the other four" of kinds that are known: which they are, the names beside them tell.
func (r *reader) otherOfKnown(h *hit) bool {
	return r.Units > 1 && h.is("nth", "other") && r.wholeSaid(h.last) > 1
}

// otherTheSecond: without a name beside it "the other four" is the second kind.
func (r *reader) otherTheSecond() {
	for n := range r.intros {
		if h := &r.intros[n]; r.otherOfKnown(h) && !r.noKind(h) && !r.otherSide(h) {
			r.refTo(h.first, h.last, []int{2})
		}
	}
}

// notNamed are the kinds that no name of the message stands for.
func (r *reader) notNamed() []int {
	var others []int
	for unit := 1; unit <= r.Units; unit++ {
		if !slices.ContainsFunc(r.refs, func(u unitRef) bool { return slices.Contains(u.units, unit) && !r.restWord(u) }) {
			others = append(others, unit)
		}
	}
	return others
}

// restWord: the words are no name, but "the other", "the rest" or "both".
func (r *reader) restWord(u unitRef) bool {
	return slices.ContainsFunc(r.intros, func(h hit) bool {
		return h.first == u.first && (h.is("nth", "rest") || h.is("nth", "other") || h.is("nth", "all"))
	})
}

// refTo has the words stand for the kinds, whatever they stood for.
func (r *reader) refTo(first, last int, units []int) {
	r.refs = slices.DeleteFunc(r.refs, func(u unitRef) bool { return u.first <= last && first <= u.last })
	r.refs = append(r.refs, unitRef{first, last, units})
	for i := first; i <= last; i++ {
		if r.wholeAt(i) > 0 {
			r.toks[i].used = true
		}
	}
	r.sortRefs()
}

// exceptAt is the token of the "except" that leads to a kind, 0 where there is none with words before it.
func (r *reader) exceptAt(ref *unitRef) int {
	i := r.beforeKind(ref)
	for r.wordAt(i, "for", "on", "in", "from", "than", "en", "por", "para") {
		i--
	}
	if r.wordAt(i, "except", "excepto", "salvo", "menos", "besides") ||
		r.wordAt(i, "but") && r.wordsIn(r.sentenceFirst(i), i, "all", "everything", "every") && !r.markAt(i-1, ',') ||
		r.wordAt(i, "other", "aside", "apart") && r.wordAt(i+1, "than", "from") {
		return max(i, 0)
	}
	return 0
}

// saidBut has what stands before an "except" in its sentence be of the other kinds.
func (r *reader) saidBut(at int, others []int) {
	from := r.sentenceFirst(at)
	r.refs = slices.DeleteFunc(r.refs, func(u unitRef) bool { return u.first >= from && u.first < at && len(u.units) > 1 })
	if !slices.ContainsFunc(r.refs, func(u unitRef) bool { return u.first >= from && u.first < at }) {
		r.refs = append(r.refs, unitRef{from, from, others})
		r.sortRefs()
	}
}
