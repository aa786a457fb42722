package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	toldVerbsBefore = wordsOf(`typed said wrote put gave told sent had texted dije puse escribi mande`)
	monthsEs        = wordsOf(`enero febrero marzo abril mayo junio julio agosto septiembre setiembre octubre noviembre
		diciembre`)
	othersMeasureVerbs = wordsOf(`measured measure says said got gets helped thinks thought guesses guessed figures
		figured reckons estimates told came climbed went read called wrote midio mide cree calcula piensa dice dijo
		subio ayudo number numero recommended referred`)
	beforeLumber = wordsOf(`of from with using use used de a is its`)
	lumberNouns  = wordsOf(`lumber wood walls wall board boards stud studs box curb framing frame s pine cedar
		treated`)
	boardWidths   = wordsOf(`four six eight ten twelve cuatro seis ocho diez doce`)
	othersBodies  = wordsOf(`son esposo esposa hijo hija marido mujer guy he she nieto hermano papa mama dad mom`)
	relativeSizes = wordsOf(`bigger larger smaller longer shorter wider narrower taller more less extra different
		difference off out`)
	hypotheticalParts = wordsOf(`for that fit fits thats which replace replacement mine my`)
	hypotheticalStock = wordsOf(`have stock carry sell make offer hacen fabrican normal standard common should
		supposed tienen venden manejan big enough ok right correct typical`)
)

// notTheirs says whether a length is somebody's own height, or says how much more or
// less something is: "I'm 6 foot 2", "1/2 inch bigger", "minus 1/4".
func (r *reader) notTheirs(m *measure) bool {
	if m.shape == lone && r.wordsIn(max(0, m.first-3), m.first, "code") &&
		r.wordAt(m.first-1, "is", "says", "requires", "wants", "for", "be") {
		return true // "code is 4"
	}
	if m.shape == lone && m.parts[0].length() < 4*fitcheck.Inch &&
		r.wordsIn(max(0, m.first-3), m.first, "wood", "woods", "boards", "lumber", "studs", "madera") && r.sizeBefore(m.first) &&
		!r.asked(fitcheck.TopicCurbHeight) &&
		!r.wordsIn(m.first-3, min(m.last+4, len(r.toks)), "tall", "high", "height", "above", "up", "sticks", "alto", "alta", "altura") {
		return true // "curb outside 23 1/2 x 47 1/2. the wood's 1 1/2"
	}
	return r.saidBefore(m) || r.printed(m) || r.farBetween(m) || r.ofParapet(m) ||
		r.flangeWidth(m) || r.ofSomebody(m) || r.relative(m) || r.ofNeighbor(m) ||
		r.upInTheAir(m) || r.dayOfMonth(m)
}

// saidBefore: "sorry I typed 46 1/4 before", "31 1/2 not 30 1/2, and 46 1/2 was right": what an
// earlier message said.
func (r *reader) saidBefore(m *measure) bool {
	if m.shape == lone && r.wordAt(m.last+1, "is", "was", "esta", "estaba", "stays") &&
		r.wordAt(m.last+2, "right", "correct", "fine", "good", "ok", "bien", "correcto") && r.endsClauseAt(m.last+3) &&
		r.numberIn(0, m.first) {
		return true
	}
	if r.earlierWrote(m) || r.wroteWrong(m) {
		return true
	}
	return r.wordAt(m.last+1, "before", "earlier", "originally", "previously", "antes", "yesterday", "initially") &&
		r.endsClauseAt(m.last+2) &&
		r.anyOf(r.clauseStart(m.first), m.first, toldVerbsBefore) && r.numberIn(0, r.clauseStart(m.first))
}

// endsClauseAt: the message or a clause ends before the token.
func (r *reader) endsClauseAt(i int) bool {
	return i >= len(r.toks) || r.toks[i].kind == markToken || r.softBreak(i)
}

// numberIn: a number in digits stands between two tokens.
func (r *reader) numberIn(from, to int) bool {
	for i := from; i < to; i++ {
		if r.toks[i].kind == numToken {
			return true
		}
	}
	return false
}

// sizeBefore: a size of two sides was told before.
func (r *reader) sizeBefore(i int) bool {
	for k := range i {
		if r.by(k) {
			return true
		}
	}
	return false
}

// dayOfMonth: "el 15 de marzo".
func (r *reader) dayOfMonth(m *measure) bool {
	return m.shape == lone && m.parts[0].bare && r.wordAt(m.last+1, "de") &&
		r.among(m.last+2, monthsEs)
}

// ofNeighbor: "the neighbor's is 30 x 30, mine is …".
func (r *reader) ofNeighbor(m *measure) bool {
	if r.wordAt(m.first-1, "was", "is", "measured") && r.wordAt(m.first-2, "his", "hers", "theirs") &&
		r.wordsIn(r.sentenceFirst(m.first), m.first, "neighbor", "neighbors", "brother", "friend", "cousin", "buddy") {
		return true // "my neighbor has one too and his was 22 x 46"
	}
	return r.wordsIn(r.clauseStart(m.first), m.first, "neighbor", "neighbors", "neighbour", "neighbours", "vecino", "vecina") &&
		!r.anyOf(r.clauseStart(m.first), m.first, othersMeasureVerbs)
}

// upInTheAir: "20 feet up", "3 inches of rain".
func (r *reader) upInTheAir(m *measure) bool {
	if m.shape != lone {
		return false
	}
	if r.by(m.last + 3) {
		return false // a side whose name is misspelt
	}
	if r.wordAt(m.last+1, "of", "de") && r.wordAt(m.last+2, "each", "cada", "lado", "ambos", "los", "orilla", "borde", "punta") {
		return false // "36 pulgadas de cada lado"
	}
	if r.wordAt(m.last+1, "of", "de") && m.parts[0].unit != noUnit && m.parts[0].side == noSide {
		h, next := r.labelFrom(m.last+2), r.labelFrom(m.last+1)
		return next == nil && (h == nil || !isName(h) && !h.has1("axis"))
	}
	if r.wordAt(m.last+1, "tape", "ladder", "measure") {
		return true
	}
	return m.parts[0].unit == foot && r.wordAt(m.last+1, "up") && !r.wordAt(m.last+2, "and", "n", "to", "the")
}

// flangeWidth: "1 1/2 inch flange": how wide the flange itself is.
func (r *reader) flangeWidth(m *measure) bool {
	if m.shape == lone && m.part == "retainer" && m.parts[0].length() < 3*fitcheck.Inch &&
		(m.parts[0].frac || m.parts[0].unit == inch) {
		return true // "the metal strip is 1 1/4 wide all around"
	}
	return m.shape == lone && m.part == "flange" && m.parts[0].length() < 6*fitcheck.Inch && m.parts[0].unit == inch
}

// lumber: "the 2x6 box": what the box is made of, where a size of its own is told or
// none was asked for.
func (r *reader) lumber(m *measure) bool {
	if m.shape == lone && r.wordAt(m.last+1, "lumber", "plywood", "boards", "stock") && r.largeNumber() {
		return true // "built of 1 1/2 inch lumber"
	}
	if m.shape != pair || !m.parts[0].bare || !m.parts[1].bare || m.parts[0].num > 4 || m.parts[1].num > 12 {
		return false
	}
	if r.wordAt(m.last+1, "on") && r.wordAt(m.last+2, "edge") && r.numberBefore(m.first) ||
		r.wordsIn(max(0, m.first-3), m.first, "built", "framed", "lumber") && r.largeNumber() {
		return true // "a 2x6 on edge", "built w 2x6"
	}
	if m.parts[0].num == 2*m.parts[0].den &&
		(r.wordAt(m.last+1, "on", "laid") && r.wordsIn(m.last+2, m.last+5, "flat", "edge", "end", "side") ||
			r.wordAt(m.last+1, "flat", "flatways", "sideways", "parado", "acostado")) &&
		(r.askedSize() == "none" || r.largeNumber()) {
		return true // "curbs are 2x4 on the flat"
	}
	if r.asked(fitcheck.TopicCurbHeight) && m.parts[0].num == 2*m.parts[0].den &&
		(r.numberBefore(m.first) || r.wordAt(m.first-1, "of", "from", "with") && r.numberLater(m.last+1)) {
		return true // "five and a half, it's a two by six"
	}
	if r.wordAt(m.first-1, "curb", "box") && m.parts[0].num == 2*m.parts[0].den && r.numberBefore(m.first) {
		return true
	}
	if m.parts[0].num == 2*m.parts[0].den && r.among(m.first-1, beforeLumber) && r.largeNumber() {
		return true // "25 x 49, built out of 2x6"
	}
	return r.among(m.last+1, lumberNouns) &&
		(r.askedSize() == "none" || r.numberLater(m.last+1))
}

// boards: "es de dos por seis, son 5 1/2": told in words, what the box is made of beside a
// measure of its own.
func (r *reader) boards(i int) bool {
	if r.wholeAt(i) != 2 && r.wholeAt(i) != 1 || !r.by(i+1) || !r.wordAt(i-1, "of", "from", "with", "de", "using", "used") ||
		!r.among(i+2, boardWidths) {
		return false
	}
	for k := i + 3; k <= len(r.toks); k++ {
		if r.asked(fitcheck.TopicStyle) || k < len(r.toks) && r.numberAfter(k) {
			r.use(i, i+2)
			return true
		}
	}
	return false
}

// largeNumber: the message has a number that is a side's and no board's.
func (r *reader) largeNumber() bool {
	for i := range r.toks {
		if r.toks[i].kind == numToken && !r.toks[i].used && r.toks[i].whole > 12 {
			return true
		}
	}
	return false
}

func (r *reader) numberLater(i int) bool {
	for ; i < len(r.toks); i++ {
		if r.toks[i].kind == numToken && !r.toks[i].used {
			return true
		}
	}
	return false
}

func (r *reader) ofSomebody(m *measure) bool {
	if m.shape != lone {
		return false
	}
	i := m.first - 1
	for r.wordAt(i, "is", "am", "only", "about", "like", "just", "was", "mide", "stands") || r.roughToken(i) {
		i--
	}
	if r.wordAt(i, "im") && i+1 == m.first && m.parts[0].bare && m.parts[0].num > 12 {
		return true // "I'm 68"
	}
	if r.wordAt(i, "i", "he", "she") && r.wordAt(i+1, "am", "is") && i+2 == m.first && m.parts[0].bare && m.parts[0].num > 12 &&
		m.parts[0].side == noSide {
		return true // "I am 78 and not going up there"
	}
	if r.wordAt(i, "im", "hes", "shes") || r.wordAt(i, "i", "he", "she") && r.wordAt(i+1, "am", "is", "was") {
		return m.parts[0].unit == foot || m.parts[0].feetInches
	}
	person := r.thingAt(i) || r.among(i, othersBodies)
	return person && r.wordAt(i+1, "is", "was", "mide", "stands", "only") && !r.wordAt(i-1, "the") &&
		(m.parts[0].unit == foot || m.parts[0].unit == metre || m.parts[0].feetInches || m.parts[0].dec)
}

func (r *reader) roughToken(i int) bool { return i >= 0 && i < len(r.toks) && r.roughAt(i) }

// relative: the number is a difference.
func (r *reader) relative(m *measure) bool {
	return m.shape == lone && (r.among(m.last+1, relativeSizes) &&
		!r.wordAt(m.last+1, "or") && !r.wordAt(m.last+2, "or") &&
		!(r.wordAt(m.last+1, "off", "out") && r.wordAt(m.last+2, "the", "of")) ||
		r.wordAt(m.last+1, "less", "more", "shorter", "longer") && r.wordAt(m.last+2, "than") ||
		r.wordAt(m.first-1, "than") && r.wordsIn(max(0, m.first-7), m.first, "closer", "nearer", "rather", "mas", "cerca") ||
		r.wordAt(m.first-1, "minus", "plus", "add", "subtract", "another", "extra", "within") ||
		r.wordAt(m.first-1, "than") && r.wordAt(m.first-2, "bigger", "larger", "smaller", "longer", "wider", "shorter", "taller"))
}

// ifRecalled: "if I recall it was 24 x 48": told, if not for sure.
func (r *reader) ifRecalled(from, to int) bool {
	for i := from; i < to; i++ {
		if r.wordAt(i, "if", "si") {
			return r.wordsIn(i+1, min(i+5, to), "recall", "remember", "memory", "mistaken", "recuerdo", "equivoco", "memoria")
		}
	}
	return false
}

// hypothetical: the size is asked about or supposed, not measured: "do you have 24 x
// 48?", "is 26 x 50 a normal size?", "if it were 48 x 48".
func (r *reader) hypothetical(m *measure) bool {
	if r.lessFlashing(m) {
		m.rough = true
		return false
	}
	first, last := r.sentence(m.first)
	if !r.ifRecalled(r.clauseStart(m.first), m.first) && r.wordsIn(r.clauseStart(m.first), m.first, "if", "si") &&
		r.wordsIn(r.clauseStart(m.first), m.first, "were", "was", "its", "it", "fuera") &&
		!r.wordsIn(first, m.first, "know", "see", "check") {
		return true
	}
	if !r.questioned(m.first) &&
		!(r.markAt(last, '?') && r.wordAt(first, "is", "are", "should", "do", "does", "would", "could", "can", "will")) {
		return false
	}
	if r.anyOf(first, m.first, hypotheticalParts) && !r.wordsIn(first, m.first, "if", "is", "are") ||
		r.wordsIn(first, m.first, "replacement", "where", "measures", "measuring", "mide") {
		return false // "do you have one that fits a 22 x 22 opening"
	}
	if r.wordAt(last+1, "thats", "its", "measured", "those") || r.wordAt(last+1, "that", "it") && r.wordAt(last+2, "is", "s") {
		return false // "do you have 26 x 26? that's edge to edge"
	}
	return r.anyOf(first, last, hypotheticalStock)
}
