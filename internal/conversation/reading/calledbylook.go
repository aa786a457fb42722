package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	shortOrWideWords  = wordsOf(`short wide width ancho way side`)
	pluralLooks       = wordsOf(`squares rounds pyramids barrels rectangles flats`)
	knownLookArticles = wordsOf(`the el la los las del`)
	beforeKnownLook   = wordsOf(`and y but pero no also`)
	lookTellers       = wordsOf(`is are son es qty quantity count`)
	nounLooks         = wordsOf(`pyramid pyramids barrel barrels piramide piramides barril barriles`)
	afterLook         = wordsOf(`and y in en with con too also tambien`)
	lookVerbs         = wordsOf(`is are was were should gets get needs need wants measures measure has have will
		stays es son mide miden va van esta estan tiene tienen lleva llevan debe deben cambielo cambiela`)
)

// calledByLook: the look at a token stands for a kind that the talk knows by it: "the round one",
// "the big is bronze", "bronze for the 2 long", "squares white", "small: 1 layer".
func (r *reader) calledByLook(i int) bool {
	if colorNames.has(r.toks[i].text) {
		return r.calledByColor(i)
	}
	if r.wordAt(i+1, "one", "ones") || r.noun(i+1) || r.noun(i-1) && r.wordAt(i-2, "el", "la", "los", "las") {
		return true
	}
	if r.namesSide(i) {
		return false
	}
	if r.among(i, pluralLooks) || r.countedLook(i) || r.nounLook(i) && r.Names[r.toks[i].text] > 0 && r.endsLook(i) {
		return true // the first are no adjectives
	}
	if r.numberOfLook(i) {
		r.use(i-1, i-1)
		return true
	}
	if r.unitAt(i-1) != noUnit || i > 0 && r.toks[i-1].kind == numToken && !r.wordAt(i-2, "the", "los", "las", "el", "la") {
		return false // "42 3/8" long"
	}
	return r.lookAlone(i)
}

// lookAlone: "the big is bronze", "squares white", "bronze for long": what stands before and after a look
// without a noun tells that it is one of the kinds.
func (r *reader) lookAlone(i int) bool {
	k := i - 1
	if r.wholeAt(k) > 0 {
		k--
	}
	switch {
	case r.among(k, knownLookArticles):
		return r.endsLook(i) || r.saidOfLook(i+1) || r.wordAt(i+1, "frame", "frames")
	case i == 0 || r.toks[i-1].kind == markToken || r.among(i-1, beforeKnownLook):
		return r.lookThenTold(i)
	}
	return r.wordAt(i-1, "for", "on", "para") && (r.stopAt(i+1) || r.wordAt(i+1, "and", "y"))
}

// namesSide: "el ancho es 23 1/2 y el largo 23 1/2".
func (r *reader) namesSide(i int) bool {
	return r.labelKind(i, "axis") &&
		(r.wordAt(i-1, "el", "la") || r.wordAt(i+1, "way", "side") || r.anyOf(0, len(r.toks), shortOrWideWords))
}

// numberOfLook: "1 round 38 1/4, 2 square 30 1/4": how many of a kind there are stands before its look.
func (r *reader) numberOfLook(i int) bool {
	if n := r.wholeSaid(i - 1); n < 1 || n > 9 || i+1 >= len(r.toks) || r.toks[i+1].kind != numToken || r.unitAt(i-1) != noUnit {
		return false
	}
	return i == 1 || r.toks[i-2].kind == markToken && !r.markAt(i-2, '/') || r.wordAt(i-2, "and", "y")
}

// lookThenTold: after a look that opens its clause a size, a sign or a verb begins to tell of the kind.
func (r *reader) lookThenTold(i int) bool {
	if i+1 >= len(r.toks) {
		return false
	}
	return r.toks[i+1].kind == numToken || r.wordAt(i+1, "de") && r.endsLook(i) ||
		r.markAt(i+1, ':') || r.markAt(i+1, '=') || r.markAt(i+1, '-') ||
		r.choiceBegins(i+1) || r.among(i+1, lookTellers)
}

// nounLook: a shape that is a noun by itself: "35 1/2 x 35 1/2 pyramid".
func (r *reader) nounLook(i int) bool {
	return r.among(i, nounLooks)
}

// calledWithNumber: "the 3 round in white": how many there are is part of what the kind is called by.
func (r *reader) calledWithNumber(i int) bool {
	return lookOf[r.toks[i].text] != "" && r.wholeAt(i-1) > 0 && r.wordAt(i-2, "the", "los", "las") &&
		(r.Names[r.toks[i].text] > 0 || r.lookKnown(i) > 0)
}

// kindOfLook is the kind that has the look which a phrase names as something known, 0 for none:
// "the round", "2 squares", and not "it's round".
func (r *reader) kindOfLook(h *hit) int {
	if r.Units < 2 {
		return 0
	}
	if unit := r.Names[r.toks[h.last].text]; unit > 0 && r.nounLook(h.last) {
		return unit
	}
	n := r.wholeAt(h.first - 1)
	known := r.wordAt(h.first-1, "the", "el", "la", "los", "las") || r.pluralLook(h.first) || n > 0 && n < 13
	if !known || r.asked(fitcheck.TopicOutline) {
		return 0
	}
	for i := h.first; i <= h.last; i++ {
		if unit := max(r.Names[r.toks[i].text], r.lookKnown(i)); unit > 0 {
			return unit
		}
	}
	return 0
}

// noun: the word is one for a skylight.
func (r *reader) noun(i int) bool { return r.among(i, countNouns) }

// endsLook: what a kind is called by ends with the token.
func (r *reader) endsLook(i int) bool {
	n := i + 1 + number(r.wordAt(i+1, "de"))
	return r.stopAt(n) || r.toks[n].kind == numToken || r.among(n, afterLook)
}

// saidOfLook: what is said of a kind that was just called by its look begins at the token.
func (r *reader) saidOfLook(i int) bool {
	return r.choiceBegins(i) || r.among(i, lookVerbs) || r.wordAt(i, "to") && r.wholeSaid(i+1) > 0
}

// choiceBegins: a value of what the shop lets choose, or the layer that it is of, begins at the
// token.
func (r *reader) choiceBegins(i int) bool {
	hits := within(r.choices, i, i)
	return len(hits) > 0 && (chosen(hits[0].senses[0].topic) || hits[0].has1("color") || hits[0].has1("layer"))
}
