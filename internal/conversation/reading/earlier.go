package reading

// What sentences before a measure say of it: what it is of, that it can't be had, that what was
// told before is wrong.

var (
	earlierDenied = wordsOf(`cant cannot couldnt havent didnt dont not no gave wrong never puedo pude`)
	askedInstead  = wordsOf(`difference better cost stronger vs versus recommend sell ship diferencia mejor
		recomienda`)
	toldCannot = wordsOf(`cant cannot couldnt havent not no`)
	ownLinks   = wordsOf(`it its should es son debe thats that`)
)

// denied: the sentence says that it can't be had, so its labels name no measure.
func (r *reader) denied(i int) bool {
	if r.gotMeasured(i) {
		return false
	}
	first, last := r.sentence(i)
	for ; first <= last; first++ {
		if first < i && r.wordAt(first, "no") && r.wordAt(first+1, "hang", "wait", "hold", "sorry") {
			continue // "no hang on, that's the plastic"
		}
		if r.wordAt(first, "not") && r.labelled(i, first-1) {
			return false // "that's the plastic, not the curb"
		}
		if r.among(first, earlierDenied) {
			return true
		}
	}
	return false
}

// gotMeasured: the clause of a part says that it was measured, whatever could not be: "I couldn't
// get to the outside, but I was able to measure the inside of the curb".
func (r *reader) gotMeasured(i int) bool {
	start := r.clauseStart(i)
	return start > r.sentenceFirst(i) && r.wordsIn(start, i, "measure", "measured", "measuring", "medi", "medir", "medimos") &&
		!r.anyOf(start, r.clauseEnd(i)+1, negWords)
}

// endsAsked: the sentence is a question about something else than a measure.
func (r *reader) endsAsked(i int) bool {
	first, last := r.sentence(i)
	return r.markAt(last, '?') && r.anyOf(first, last, askedInstead)
}

// toldWrong: "the curb height I gave you was wrong. It's 3 1/2": the sentence before says
// what is put right.
func (r *reader) toldWrong(i, own int) bool {
	first, last := r.sentence(i)
	return last+1 == own && (r.among(own, ownLinks) || r.toks[own].kind == numToken) &&
		r.wordsIn(first, last+1, "wrong", "mistake", "equivoque", "mal", "off") && !r.anyOf(first, last+1, toldCannot)
}

// otherTold: something else that has a number is spoken of between two tokens, and no
// part or doubt.
func (r *reader) otherTold(from, to int) bool {
	other := false
	labels := within(r.labels, from, to)
	for n := range labels {
		h := &labels[n]
		doubt := h.has1("rough") && !(r.wordAt(h.first, "at") && r.wordAt(h.last, "least", "most"))
		if doubt || isName(h) || h.senses[0].kind == "shape" {
			return false
		}
		other = other || h.has1("other")
	}
	return other
}
