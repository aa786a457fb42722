package reading

import "slices"

// "Dome" is a word for any skylight; beside pyramids or barrels it tells a kind by its shape.

var domeShapeFillers = wordsOf(`is should be a the of es debe ser del de la el`)

// lookAt is the look that the word at a token tells of, "" for none.
func (r *reader) lookAt(i int) string {
	if !r.domeWord(i) {
		return lookOf[r.toks[i].text]
	}
	first := i
	for first > r.clauseStart(i) && !r.wordAt(first-1, "and", "y", "plus") {
		first--
	}
	if !r.otherShapes(len(r.toks)) || r.otherShapes(i) && first == r.clauseStart(i) && !r.determined(first) {
		return "" // also "my pyramid skylight cracked, I need one dome"
	}
	return "dome"
}

// domeWord: "dome" by itself, and not "pyramid dome".
func (r *reader) domeWord(i int) bool {
	return r.wordAt(i, "dome", "domes", "domo", "domos") && (i == 0 || lookOf[r.toks[i-1].text] == "") &&
		(i+1 >= len(r.toks) || lookOf[r.toks[i+1].text] == "")
}

// otherShapes: the message speaks, before a token, of skylights that are no domes; a "pyramid dome" is
// called one.
func (r *reader) otherShapes(to int) bool {
	found := false
	for i := range to {
		if r.nounLook(i) {
			found = true
			if r.wordAt(i+1, "dome", "domes") || r.wordAt(i-1, "domo", "domos") {
				return false
			}
		}
	}
	return found
}

// noPart: the word calls a kind, and no part of it that is measured.
func (r *reader) noPart(i int) {
	r.labels = slices.DeleteFunc(r.labels, func(h hit) bool { return h.first == i && h.last <= i+1 })
	r.placeLabels()
}

// shapeSaid: "skylight 2 shape is dome", "it's a dome, not a pyramid": what stands at the token is said
// to be the shape.
func (r *reader) shapeSaid(i int) bool {
	if _, to := r.sentence(i); r.domeWord(i) || r.domeWord(i+1) {
		for k := i + 1; k <= to; k++ {
			if r.nounLook(k) && r.wordsIn(i+1, k, "not", "no") && r.wordsIn(r.sentenceFirst(i), i, "is", "its", "thats", "should", "es") {
				return true
			}
		}
	}
	i--
	for r.among(i, domeShapeFillers) || r.markAt(i, ':') || r.inRef(i) {
		i--
	}
	return r.wordAt(i, "shape", "profile", "forma")
}

// domeKind is the kind that the word at a token calls by its being a dome, where the talk knows that
// the others are none: "the dome one is clear", "pyramids white, dome clear". 0 for none.
func (r *reader) domeKind(i int) int {
	unit := r.Names["dome"]
	if unit == 0 || !r.domeWord(i) {
		return 0
	}
	if !r.wordAt(i+1, "one", "ones") && !(r.otherShapes(len(r.toks)) && (r.calledByLook(i) || r.endsLook(i))) {
		return 0
	}
	return unit
}
