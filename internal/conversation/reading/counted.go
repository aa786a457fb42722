package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	countedLooks = wordsOf(`other different of little young old`)
	countedElse  = wordsOf(`guys guy men companies contractors contractor roofers roofer people quotes tenants
		coats buckets friends stories bedroom bedrooms cars car calls handymen places shops personas tipos kinds
		sizes types winters summers boards screws cracks leaks holes spots story percent boys girls owners senores
		hombres muchachos trabajadores techeros vecinos inspectors estimates rooms buildings houses roofs floors
		wings sections areas slopes apartments acres edificios casas cuartos pisos`)
	countEnds    = wordsOf(`one unit skylight dome please total only for thanks of tragaluz domo`)
	countDone    = wordsOf(`replaced done fixed changed new en right`)
	drawnFillers = wordsOf(`just only the we i thats its like say lets make it call ill solo nomas would will
		be`)
	drawnLeads = wordsOf(`so need want replace replacing order total entonces que necesito ocupo quiero osea
		son`)
	dwellingWords = wordsOf(`apartment apartments complex building condo condos plex duplex triplex fourplex
		tenants motel hotel rental rentals storage landlord`)
	countOrderVerbs = wordsOf(`order buy get purchase send ship replace quote comprar pedir ordenar`)
	sharePreps      = wordsOf(`on in per over at each`)
	countedWhere    = wordsOf(`in on over above en sobre de`)
	countedJobs     = wordsOf(`need fix replace replacing redo redoing swap swapping order change changing quote
		for on cambiar reemplazar about do`)
	countedNeeds = wordsOf(`need want take fix replace replacing order got have buy needs necesito ocupo tengo
		quiero`)
	themOrWhich  = themWords.and(`which`)
	forKindPreps = wordsOf(`for on of in para de en`)
)

// countsElse: the number counts or names something else than skylights: "from the 60s",
// "2 guys looked", the last digits of a long ZIP code.
func (r *reader) countsElse(i, next int) bool {
	if r.countedOnce(i, next) || r.oneMoreTime(next) {
		return true
	}
	if r.toks[i].glued && (r.markAt(i-1, '+') || i >= 2 && r.markAt(i-1, '-') && r.toks[i-2].kind == numToken) {
		return true
	}
	if next < len(r.toks) && r.toks[next].glued && r.wordAt(next, "s", "ies") {
		return true
	}
	for r.among(next, countedLooks) {
		next++
	}
	return r.thingAt(next) || r.among(next, countedElse)
}

// oneMoreTime: "text that question to me one more time".
func (r *reader) oneMoreTime(next int) bool {
	return r.wordAt(next, "time", "question", "thing") ||
		r.wordAt(next, "more", "last", "other") && r.wordAt(next+1, "time", "thing", "question")
}

// fractionAt: "and a half", "y cuarto" follow a number, so it is a length's.
func (r *reader) fractionAt(i int) bool {
	if !r.wordAt(i, "and", "y", "n") {
		return false
	}
	return r.numberAt(i+1).kind == partWord ||
		r.numberAt(i+2).kind == partWord && (r.wordAt(i+1, "a", "un", "una") || r.wholeAt(i+1) > 0)
}

// countAlone is where a number stands that is a whole clause, from which on a count is
// looked for: "I had 2 quotes already, it's my motorhome, 1"; 0 where none does.
func (r *reader) countAlone() int {
	for i := range r.toks {
		if r.used(i) {
			continue
		}
		n, next := r.countNumber(i)
		if next > i && n > 0 && r.endsCount(next) && (i == 0 || r.toks[i-1].kind == markToken && !r.toks[i].glued) {
			return i
		}
	}
	return 0
}

// endsCount: the clause ends, or only small words follow that a count may have.
func (r *reader) endsCount(i int) bool {
	return i >= len(r.toks) || r.toks[i].kind == markToken || r.among(i, countEnds)
}

// countDrawn is what an answer comes to after other numbers: "12 on the roof but only 5
// are bad so 5", "we have 12 total but only need 3".
func (r *reader) countDrawn() (countAt, bool) {
	for i := len(r.toks) - 1; i > 0; i-- {
		n, next := r.countNumber(i)
		if next == i || n < 1 || r.used(i) || !r.endsDrawn(next) || r.numberLater(next) || !r.countBefore(i) {
			continue
		}
		j := i - 1
		for r.among(j, drawnFillers) || r.markAt(j, ',') {
			j--
		}
		if r.among(j, drawnLeads) {
			return countAt{n, i, next - 1}, true
		}
	}
	return countAt{}, false
}

// endsDrawn: the clause ends, or tells what is to be done: "so 5 replaced", "so 2 it is".
func (r *reader) endsDrawn(next int) bool {
	return r.endsCount(next) || r.among(next, countDone) || r.wordAt(next, "it") && r.wordAt(next+1, "is", "will")
}

// layersCounted: "two domes, one inside the other", where layers were asked about.
func (r *reader) layersCounted(i int) bool {
	if r.wordAt(i+1, "or", "o") && r.wordAt(i+3, "layers", "capas") {
		return true // "one or two layers"
	}
	hits := within(r.choices, i, i)
	if r.kindWith(i) {
		return true
	}
	if _, ok := r.countBesideLayers(i); ok {
		return false
	}
	if len(hits) == 0 || hits[0].last == i || !hits[0].has1("layers") {
		return false
	}
	return r.asked(fitcheck.TopicLayers) || r.wordsIn(i+1, hits[0].last+1, "layers", "layer", "capas", "capa")
}

// dwellings: "apartment complex, 40 units": units that people live in.
func (r *reader) dwellings(i, next int) bool {
	return r.wordAt(next, "unit", "units") && r.anyOf(0, len(r.toks), dwellingWords) &&
		!r.wordsIn(max(0, i-4), i, "skylight", "skylights", "replace", "order")
}

// ordered: the question is whether so many can be had: "can I order 3 domes".
func (r *reader) ordered(i int) bool {
	return r.anyOf(r.sentenceFirst(i), i, countOrderVerbs)
}

// sharesOf marks the numbers that say where the counted ones are: "twelve. 6 on each side".
func (r *reader) sharesOf(from int) {
	for i := from; i < len(r.toks); i++ {
		if n, next := r.countNumber(i); next > i && n > 0 && r.among(next, sharePreps) {
			r.use(i, next-1)
		}
	}
}

// countBefore: some other count stands before the token.
func (r *reader) countBefore(i int) bool {
	for k := range i {
		if n, next := r.countNumber(k); next > k && n > 0 && !r.used(k) {
			return true
		}
	}
	return false
}

// countedOn: "need to fix 3 on a dairy barn": a number after a word of needing, and where
// they are; also "replacing the 2 in the addition".
func (r *reader) countedOn(i, next int) bool {
	if r.wordAt(i-1, "the", "los", "las", "these", "those") {
		return r.among(next, countedWhere) && r.among(next+1, theOrMine) &&
			r.among(i-2, countedJobs)
	}
	return r.wordAt(next, "on", "for", "over", "sobre", "para") && !r.wordAt(next+1, "each", "one", "every", "now") &&
		r.among(i-1, countedNeeds)
}

// countOfKind: "three of the large and one of the small": each counts a kind of its own.
func (r *reader) countOfKind(next int) bool {
	if !r.wordAt(next, "of", "de") || r.wordAt(next+1, "them", "those", "these") {
		return false
	}
	if r.wordAt(next+1, "the", "las", "los") && r.pairAt(next+2) {
		return false
	}
	for i := next + 1; i < len(r.toks); i++ {
		if _, end := r.countNumber(i); end > i && r.wordAt(end, "of", "de") && !r.among(end+1, themOrWhich) {
			return true
		}
	}
	return false
}

// countsOfSorts: "3 little ones and 1 big one", "2 small ones and a big one".
func (r *reader) countsOfSorts(next int) bool {
	if !r.wordAt(next+1, "ones", "one") {
		return false
	}
	for i := next + 2; i < len(r.toks); i++ {
		if _, end := r.countNumber(i); end > i && r.wordAt(end+1, "ones", "one") {
			return true
		}
		if r.wordAt(i, "a", "an") && r.wordAt(i-1, "and", "plus") && r.wordAt(i+2, "one") {
			return true
		}
	}
	return false
}

// pairBefore: a size of two sides stands before the token.
func (r *reader) pairBefore(i int) bool {
	for k := 0; k < i; k++ {
		if r.by(k) && r.numberAfter(k+1) {
			return true
		}
	}
	return false
}

// saysUse: the word is part of what names a building.
func (r *reader) saysUse(i int) bool {
	for n := range r.choices {
		if h := &r.choices[n]; h.first <= i && i <= h.last {
			return h.has1(string(fitcheck.TopicUse))
		}
	}
	return false
}

// layersNamed: the number is part of a longer choice: "2 layer dome".
func (r *reader) layersNamed(i int) bool {
	hits := within(r.choices, i, i)
	return len(hits) > 0 && hits[0].last > i
}

// kindByCount: "48 1/2 x 48 1/2 for the 6", where kinds are known: the one of so many.
func (r *reader) kindByCount() {
	if r.Units < 2 {
		return
	}
	for i := range r.toks {
		if !r.wordAt(i-1, "the", "los", "las") || !r.among(i-2, forKindPreps) {
			continue
		}
		n, next := r.countNumber(i)
		if next == i || n < 1 || n > 99 || r.used(i) || !r.endsCount(next) {
			continue
		}
		if r.pairBetween(0, len(r.toks)) && !r.known(fitcheck.TopicCount) {
			r.use(i, next-1)
			r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(n), i, next-1)
		}
	}
}

// refOfCount: "3 of the bath ones": the kind that a number is said of.
func (r *reader) refOfCount(i int) []int {
	if r.wordAt(i-1, "of", "de") {
		i--
	}
	if !r.wordAt(i, "of", "de") {
		return nil
	}
	for k := range r.refs {
		if f := r.refs[k].first; f > i && f <= i+2 && len(r.refs[k].units) == 1 {
			return r.refs[k].units
		}
	}
	return nil
}

// spansKinds: the number is the sum of what is said of several kinds.
func (r *reader) spansKinds(c countAt) bool {
	first := 0
	for k := range r.refs {
		if ref := &r.refs[k]; ref.last >= c.first && ref.first <= c.last && len(ref.units) == 1 {
			if first > 0 && ref.units[0] != first {
				return true
			}
			first = ref.units[0]
		}
	}
	return false
}

// refAt: a kind of unit is named right there: "two of the first kind".
func (r *reader) refAt(from, to int) bool {
	for k := range r.refs {
		if r.refs[k].first >= from && r.refs[k].first < to {
			return true
		}
	}
	return false
}
