package reading

// What looks like the name of a kind of unit and is none: "the other" side, "the third
// kind you said".

var (
	otherSideParts = wordsOf(`medida dimension sides pair corner corners diagonal diagonals esquina set`)
	sideOrMeasure  = wordsOf(`sides side dimension direction number measurement edge edges ends way medida lado lados
		orilla`)
	otherSideLinks = wordsOf(`is are was measures es son mide de about exactly at to came comes out like just`)
	laterOn        = wordsOf(`tomorrow later tonight tonite soon weekend monday tuesday wednesday thursday friday saturday
		sunday manana luego despues when once cuando rato`)
	acrossLinks = wordsOf(`the its la el su of de outer inner face edge outside inside`)
)

// otherSide: "the wide way is 49 1/2 and the other is 25 1/2": a side, no unit.
func (r *reader) otherSide(h *hit) bool {
	if r.among(h.last+1, otherSideParts) {
		return true
	}
	if r.wordAt(h.last, "skylight", "dome", "unit", "window") && r.wordAt(h.last-1, "other") && r.sidesBefore(h.first) &&
		!r.wordAt(h.last+1, "is", "measures", "at") {
		return true // "26 13/16 one way and 58 9/16 the other skylight": the other way
	}
	if !r.wordAt(h.last, "is", "are", "two", "other", "otro", "otra") &&
		!(r.Units <= 1 && r.wordAt(h.last, "one") && r.askedSize() != "none") {
		return false
	}
	i := h.last + 1
	if r.among(i, sideOrMeasure) {
		return true
	}
	for r.among(i, otherSideLinks) || r.markAt(i, ':') || r.markAt(i, ',') {
		i++
	}
	if _, next := r.numeralAt(i); next > i {
		return !r.pairAt(i) && !r.wholeUnit(next)
	}
	i = h.first - 1
	for r.wordAt(i, "the", "el", "la") {
		i--
	}
	if i > 0 && (r.toks[i].kind == numToken || r.unitAt(i) != noUnit || r.wordAt(i, "in", "ths", "th") || r.partAt(i) > 0) &&
		r.sidesBefore(h.first) {
		return true // "17 3/4 one way and 21 3/4 the other is the plastic"
	}
	return r.wordAt(h.last, "otro", "otra", "other") && r.sidesBefore(h.first)
}

// wholeUnit: the number before the token is all of a unit's size: "16 round", "30 square".
func (r *reader) wholeUnit(i int) bool {
	for r.unitAt(i) != noUnit {
		i++
	}
	return r.wordAt(i, "round", "square", "diameter", "dia", "across", "redondo", "cuadrado", "both", "de") &&
		!(r.wordAt(i, "de") && r.wordAt(i+1, "largo", "ancho"))
}

// sidesBefore: "22 1/2 on one side and 26 on the other".
func (r *reader) sidesBefore(i int) bool {
	from, _ := r.sentence(i)
	return r.wordsIn(from, i, "side", "way", "lado") && r.wordsIn(from, i, "one", "un", "short", "long", "wide")
}

// kindOfList: "the third kind you said", "the second one on the list": of the styles asked about.
func (r *reader) kindOfList(i int) bool {
	return r.wordAt(i, "you", "u", "listed", "que") ||
		r.wordsIn(i, min(i+4, len(r.toks)), "list", "lista", "message", "said", "described", "mentioned", "dijo")
}

// otherToCome: "the curb is 26 1/4 x 50 1/4, I can do the other one tomorrow": of the other nothing is
// told yet, and what was told is not its.
func (r *reader) otherToCome(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := from; i <= to; i++ {
		if r.toks[i].kind == numToken {
			return false
		}
	}
	return from > r.sentenceFirst(h.first) && r.anyOf(from, to+1, laterOn)
}

// ofMeasuring: "first diagonal of the curb 60 1/8. Second one is 60 1/8", "from one outer edge to the
// other", "a first-time owner": no kinds of unit.
func (r *reader) ofMeasuring(h *hit) bool {
	if r.markAt(h.last+1, '-') && r.wordAt(h.last+2, "time", "timer", "rate", "class", "hand", "floor", "story", "generation") {
		return true
	}
	first := r.sentenceFirst(h.first)
	if h.is("nth", "2") && h.first == first && first > 0 && r.wordAt(h.last, "one", "second", "2nd", "segunda", "otra") {
		before := r.sentenceFirst(first - 1)
		return r.wordsIn(before, first, "first", "1st", "one", "primera", "una") &&
			r.wordsIn(before, first, "diagonal", "diag", "corner", "esquina") && !r.pairBetween(before-1, first)
	}
	for i := first; i < h.first; i++ {
		if r.acrossTo(i, h.first) || r.acrossTo(i, h.first+1) {
			return h.is("nth", "other")
		}
	}
	return false
}

// acrossTo: "one outer edge to the other", "from one board across to its other": how the tape lay.
func (r *reader) acrossTo(one, other int) bool {
	if !r.wordAt(one, "one", "un", "una", "uno") ||
		!r.wordAt(other, "other", "otra", "otro") || other-one > 9 || r.softBetween(one, other) {
		return false
	}
	i := other - 1
	for r.among(i, acrossLinks) {
		i--
	}
	return r.wordAt(i, "to", "a", "al") && !r.numberIn(one, other)
}

// endsClauseAfter: a sentence, or a clause by its comma, ends right after the token.
func (r *reader) endsClauseAfter(i int) bool {
	return i+1 >= len(r.toks) || r.markAt(i+1, ',') || r.sentenceEnd(i+1)
}
