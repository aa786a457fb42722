package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	countHas      = wordsOf(`theres are have got hay tengo tenemos`)
	eachOrAll     = wordsOf(`each they theyre all cada todos todas every`)
	measuredVerbs = wordsOf(`checked measured tried taped medi revise`)
	measuredOn    = wordsOf(`checked measured tried looked same medi did took`)
	boughtOnce    = wordsOf(`through bought installed sold ordered replaced had did put`)
	countPieces   = wordsOf(`pieces pcs pc piezas pieza piece`)
	otherOffers   = wordsOf(`gave got had has other another paid they`)
	oneItsPart    = wordsOf(`frame frames is size layer layers`)
	countReplaces = wordsOf(`replace replacing redo order change swap need`)
	singledOut    = wordsOf(`the that this of each every other no number unit any el la`)
	pluralOwners  = wordsOf(`my our the his her their los las mis nuestros nuestras`)
	fastenerParts = wordsOf(`screws nails bolts washers tubes clips`)
	needOrPrice   = wordsOf(`need needing order want require quote price bid`)
	tapeLines     = wordsOf(`line lines mark marks tick ticks notches rayitas lineas`)
	themOrThe     = themWords.and(`estos estas the`)
	partsOfThem   = wordsOf(`panels panes screws corners sides edges clips seams rooms buildings walls boards
		bolts layers guys kids`)
)

// countFrom reads a count with what it counts at token i.
func (r *reader) countFrom(i int) (countAt, bool) {
	if r.used(i) {
		return countAt{}, false
	}
	n, next := r.countNumber(i)
	if next == i || n < 1 || n > 500 || r.countedPart(i, next) {
		return countAt{}, false
	}
	if r.markAt(i-1, '(') && r.markAt(next, ')') {
		next++
	}
	if n > 1 && n <= 20 && r.manyAndEach(i, next) {
		r.use(i, next-1)
		return countAt{n, i, next - 1}, true
	}
	if n == 1 && r.oneOfAll(i, next) || r.measuredSome(i, next) || r.inOrder(i, next) {
		return countAt{}, false
	}
	planned := r.wordAt(i-1, "put") && r.wordAt(i-2, "to", "gonna", "wanna") // "I'd like to put four skylights on my barn"
	if r.among(i-1, boughtOnce) && !planned || r.noCountSaid(i, next) {
		return countAt{}, false
	}
	if r.timesAt(i - 1) {
		r.use(i-1, i)
		return countAt{n, i - 1, next - 1}, true
	}
	if n == 1 && r.oneOfThose(i, next) || r.countsElse(i, next) || r.oneMoreAdded(i, next) {
		return countAt{}, false
	}
	return r.countWithNoun(n, i, next)
}

// countWithNoun is the count of a number by the words that follow it or stand right before.
func (r *reader) countWithNoun(n, i, next int) (countAt, bool) {
	if r.countedPieces(i, next) {
		return countAt{n, i, next}, true
	}
	if n <= 24 && r.pricedNumber(i, next) || r.quantityBefore(i) {
		return countAt{n, i, next - 1}, true
	}
	if j := r.countedNoun(n, i, next); j >= 0 {
		return countAt{n, i, j}, r.countsNoun(n, i, next, j)
	}
	if j := r.someOfOurs(next); n > 1 && j >= 0 {
		return countAt{n, i, j}, true
	}
	if r.eachNeeded(i, next) || r.wordAt(next, "of", "de") && r.refAt(next+1, next+3) {
		return countAt{n, i, next}, true
	}
	if r.countOfThem(n, i, next) {
		return countAt{n, i, next + 1}, true
	}
	return countAt{}, false
}

// countedPart: "57 inches and 5 of the eighths", "bent on 3 of them" beside the frame's state.
func (r *reader) countedPart(i, next int) bool {
	return r.wordsIn(next, min(next+4, len(r.toks)), "eighths", "sixteenths", "8ths", "16ths", "octavos") ||
		r.asked(fitcheck.TopicFrameCondition) && r.wordAt(i-1, "on") && r.wordAt(next, "of")
}

// manyAndEach: "there's 7 and each is 11\" tall".
func (r *reader) manyAndEach(i, next int) bool {
	if !r.among(i-1, countHas) || !r.wordAt(next, "and", "y") || !r.among(next+1, eachOrAll) {
		return false
	}
	return (r.wordAt(i-1, "theres", "are", "hay") || r.askedSize() == "none" && !r.asked(fitcheck.TopicLayers)) &&
		!r.wordsIn(next, min(next+5, len(r.toks)), "side", "sides", "my", "say", "lados")
}

// oneOfAll: "and every one is cracked", "metal, all one unit with the top".
func (r *reader) oneOfAll(i, next int) bool {
	return r.wordAt(i-1, "every", "each", "any", "cada") || r.wordAt(i-1, "all") && r.wordAt(next+1, "with", "together", "piece")
}

// measuredSome: "25 x 49, checked on three of them": how many were measured.
func (r *reader) measuredSome(i, next int) bool {
	if !r.wordAt(next, "of", "them") {
		return false
	}
	if r.among(i-1, measuredVerbs) {
		return true
	}
	return r.wordAt(i-1, "on", "at", "en") && (r.among(i-2, measuredOn) ||
		r.wordAt(i-2, "it", "that", "them") && r.wordAt(i-3, "did", "took", "checked", "tried", "measured"))
}

// inOrder: "one of the first two", "a width 16, length 32 skylight": the number is an order or a side.
func (r *reader) inOrder(i, next int) bool {
	if r.wordAt(i-1, "first", "last") {
		return true
	}
	if i == 0 || !r.labelKind(i-1, "axis") {
		return false
	}
	with := r.wordAt(i-1, "w") && next < len(r.toks) && countNouns.has(r.toks[next].text) // "w 3 skylights"
	sized := i > 1 && (r.toks[i-2].kind == numToken || r.unitAt(i-2) != noUnit)
	return !with && !sized
}

// noCountSaid: the number is denied, asked about, said back, or of layers or dwellings.
func (r *reader) noCountSaid(i, next int) bool {
	return r.countOfSummary(i) || r.negated(i) || r.overtaken(i) || r.countAsked(i) || r.layersCounted(i) || r.dwellings(i, next)
}

// countAsked: the number stands in a question that is no order and asks no price.
func (r *reader) countAsked(i int) bool {
	return r.questioned(i) && !r.priced(i) && !r.ordered(i)
}

// oneOfThose: "it's one of those tube skylights".
func (r *reader) oneOfThose(i, next int) bool {
	return r.wordAt(next, "of") && r.wordAt(next+1, "those", "these", "the", "your", "my") && !r.markAt(i-1, ':')
}

// oneMoreAdded: "add one more dome".
func (r *reader) oneMoreAdded(i, next int) bool {
	return r.wordAt(next, "more") && r.wordAt(i-1, "add", "and", "also", "want", "need")
}

// countedPieces: "skylights: 3 pieces", "4 unidades completas".
func (r *reader) countedPieces(i, next int) bool {
	if r.wordAt(next, "unidades") && r.wordAt(next+1, "completas", "nuevas", "enteras") {
		return true
	}
	return r.among(next, countPieces) && !r.wordAt(next+1, "of", "de") &&
		(r.markAt(i-1, ':') || r.refAt(0, i) || r.piecesListed(i, next))
}

// pricedNumber: "quote for 5 please"; not "they gave me a price for 2".
func (r *reader) pricedNumber(i, next int) bool {
	if !r.wordAt(i-1, "for", "on") || !r.wordAt(i-2, "quote", "price", "pricing", "quotes") || r.anyOf(max(0, i-7), i, otherOffers) {
		return false
	}
	if r.markAt(next, ',') && next+1 < len(r.toks) && r.toks[next+1].kind == numToken {
		return false
	}
	return r.stopAt(next) || r.wordAt(next, "please", "pls", "thanks", "delivered", "shipped")
}

// quantityBefore: "qty 4", "quantity: 4".
func (r *reader) quantityBefore(i int) bool {
	return r.wordAt(i-1, "qty", "quantity", "cantidad", "quant") ||
		i >= 2 && r.wordAt(i-2, "qty", "quantity", "cantidad") && r.toks[i-1].kind == markToken
}

// countedNoun is the word for skylights that a number counts, behind words that may stand between; -1
// where there is none.
func (r *reader) countedNoun(n, i, next int) int {
	for j := next; j < len(r.toks) && j < next+6; j++ {
		t := &r.toks[j]
		if t.mark('.') && r.wordAt(j-1, "ea", "pc", "pcs") || t.mark('-') && t.glued {
			continue
		}
		if j == next && n < 50 && r.sizeBetween(j) {
			j++
			continue
		}
		if t.kind != wordToken {
			return -1
		}
		if countNouns.has(t.text) {
			return j
		}
		if !r.countAdjective(j) && (r.layersNamed(i) || !r.saysKind(j)) {
			return -1
		}
	}
	return -1
}

// sizeBetween: "two 24 inch round domes".
func (r *reader) sizeBetween(j int) bool {
	return r.toks[j].kind == numToken && r.unitAt(j+1) == inch && r.wordAt(j+2, "round", "square", "diameter", "dia")
}

// countsNoun says whether a number counts the word for skylights at j behind it.
func (r *reader) countsNoun(n, i, next, j int) bool {
	single := r.wordAt(j, "skylight", "dome", "unit")
	if n > 1 && single && r.wordAt(j+1, "apartment", "building", "complex", "condo", "house") {
		return false // "a 6 unit building"
	}
	if n > 12 && single && (r.wordAt(j-1, "square", "round", "inch") || j == next && r.wordAt(i-1, "and", "by")) {
		return false // "a 49 square skylight"
	}
	if n == 1 && r.among(j+1, oneItsPart) || r.eachBuilding(n, j+1) {
		return false // "one skylight frame"
	}
	if n > 1 && r.wordAt(i-1, "the") && r.among(i-2, countReplaces) || r.wordAt(i-1, "that") && r.wordAt(i-2, "make") {
		return true // "replace the 3 domes", "make that 3 domes"
	}
	return !r.among(i-1, singledOut)
}

// someOfOurs: "10 of our stairwell skylights": the word that is counted; -1 where there is none.
func (r *reader) someOfOurs(next int) int {
	if !r.wordAt(next, "of", "de") || !r.among(next+1, pluralOwners) {
		return -1
	}
	for j := next + 2; j < next+5 && j < len(r.toks) && r.toks[j].kind == wordToken && !r.among(j, placePreps); j++ {
		if countNouns.has(r.toks[j].text) {
			return j
		}
	}
	return -1
}

// eachNeeded: "need 12 ea complete"; not of screws.
func (r *reader) eachNeeded(i, next int) bool {
	return r.wordAt(next, "ea", "each", "pcs") && r.among(i-1, needOrPrice) &&
		!r.anyOf(next+1, min(next+4, len(r.toks)), fastenerParts)
}

// countOfThem: "three of them"; not "25 and 3 of the little lines past the half", nor "clear on the two of them".
func (r *reader) countOfThem(n, i, next int) bool {
	if !r.wordAt(next, "of", "de") || !r.among(next+1, themOrThe) || r.among(next+2, partsOfThem) {
		return false
	}
	if r.anyOf(next, min(next+5, len(r.toks)), tapeLines) {
		return false
	}
	if r.wordAt(i-1, "the", "los", "las") && (r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicColor)) {
		return false
	}
	return n > 1 || r.markAt(i-1, ':') && r.refAt(0, i)
}

// stopAt: a sign stands at the token, or the message has ended.
func (r *reader) stopAt(i int) bool { return i >= len(r.toks) || r.toks[i].kind == markToken }
