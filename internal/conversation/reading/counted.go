package reading

import "example.com/intake-bot/internal/fitcheck"

// countsElse: the number counts or names something else than skylights: "from the 60s",
// "2 guys looked", the last digits of a long ZIP code.
func (r *reader) countsElse(i, next int) bool {
	if r.countedOnce(i, next) || r.wordAt(next, "more", "last", "other") && r.wordAt(next+1, "time", "thing", "question") || r.wordAt(next, "time", "question", "thing") {
		return true // "text that question to me one more time"
	}
	if r.markAt(i-1, '+') && r.toks[i].glued || i >= 2 && r.markAt(i-1, '-') && r.toks[i].glued && r.toks[i-2].kind == numToken {
		return true
	}
	if next < len(r.toks) && r.toks[next].glued && r.wordAt(next, "s", "ies") {
		return true
	}
	for r.wordAt(next, "other", "different", "of", "little", "young", "old") {
		next++
	}
	return r.thingAt(next) || r.wordAt(next, "guys", "guy", "men", "companies", "contractors", "contractor", "roofers", "roofer", "people", "quotes", "tenants", "coats",
		"buckets", "friends", "stories", "bedroom", "bedrooms", "cars", "car", "calls", "handymen", "places", "shops", "personas", "tipos", "kinds", "sizes", "types", "winters",
		"summers", "boards", "screws", "cracks", "leaks", "holes", "spots", "story", "percent", "boys", "girls", "owners", "senores", "hombres", "muchachos", "trabajadores", "techeros", "vecinos", "inspectors", "estimates",
		"rooms", "buildings", "houses", "roofs", "floors", "wings", "sections", "areas", "slopes", "apartments", "acres", "edificios", "casas", "cuartos", "pisos")
}

// fractionAt: "and a half", "y cuarto" follow a number, so it is a length's.
func (r *reader) fractionAt(i int) bool {
	if !r.wordAt(i, "and", "y", "n") {
		return false
	}
	return r.numberAt(i+1).kind == partWord || r.numberAt(i+2).kind == partWord && (r.wordAt(i+1, "a", "un", "una") || r.wholeAt(i+1) > 0)
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
	return i >= len(r.toks) || r.toks[i].kind == markToken || r.wordAt(i, "one", "unit", "skylight", "dome", "please", "total", "only", "for", "thanks", "of", "tragaluz", "domo")
}

// countDrawn is what an answer comes to after other numbers: "12 on the roof but only 5
// are bad so 5", "we have 12 total but only need 3".
func (r *reader) countDrawn() (countAt, bool) {
	for i := len(r.toks) - 1; i > 0; i-- {
		n, next := r.countNumber(i)
		if next == i || n < 1 || r.used(i) || !r.endsCount(next) && !r.wordAt(next, "replaced", "done", "fixed", "changed", "new", "en", "right") && !(r.wordAt(next, "it") && r.wordAt(next+1, "is", "will")) || r.numberLater(next) || !r.countBefore(i) {
			continue
		}
		j := i - 1
		for r.wordAt(j, "just", "only", "the", "we", "i", "thats", "its", "like", "say", "lets", "make", "it", "call", "ill", "solo", "nomas", "would", "will", "be") || r.markAt(j, ',') {
			j--
		}
		if r.wordAt(j, "so", "need", "want", "replace", "replacing", "order", "total", "entonces", "que", "necesito", "ocupo", "quiero", "osea", "son") {
			return countAt{n, i, next - 1}, true
		}
	}
	return countAt{}, false
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
	return len(hits) > 0 && hits[0].last > i && hits[0].has1("layers") && (r.asked(fitcheck.TopicLayers) || r.wordsIn(i+1, hits[0].last+1, "layers", "layer", "capas", "capa"))
}

// dwellings: "apartment complex, 40 units": units that people live in.
func (r *reader) dwellings(i, next int) bool {
	return r.wordAt(next, "unit", "units") && r.wordsIn(0, len(r.toks), "apartment", "apartments", "complex", "building", "condo", "condos", "plex", "duplex", "triplex", "fourplex", "tenants", "motel", "hotel", "rental", "rentals", "storage", "landlord") &&
		!r.wordsIn(max(0, i-4), i, "skylight", "skylights", "replace", "order")
}

// ordered: the question is whether so many can be had: "can I order 3 domes".
func (r *reader) ordered(i int) bool {
	return r.wordsIn(r.sentenceFirst(i), i, "order", "buy", "get", "purchase", "send", "ship", "replace", "quote", "comprar", "pedir", "ordenar")
}

// sharesOf marks the numbers that say where the counted ones are: "twelve. 6 on each side".
func (r *reader) sharesOf(from int) {
	for i := from; i < len(r.toks); i++ {
		if n, next := r.countNumber(i); next > i && n > 0 && r.wordAt(next, "on", "in", "per", "over", "at", "each") {
			r.use(i, next-1)
		}
	}
}

// countCorrected: "theres 2 not 1", "todo bien pero son 3", "make it 7 not 6", "we found
// one more so 7 total", "change the count from 2 to 4".
func (r *reader) countCorrected(i, next int) bool {
	if from, to := r.sentence(i); r.wordsIn(from, to+1, "height", "length", "width", "tall", "long", "wide", "high", "inch", "inches", "alto", "altura", "largo", "ancho", "layers", "layer", "capas", "cold", "number") && !r.wordsIn(from, to+1, "skylights", "domes", "units", "domos", "tragaluces") {
		return false // "put 9 not 8 for the height"
	}
	ends := r.endsCount(next) || r.onlyBehind(next) || r.wordAt(next, "please", "pls", "and") || r.wordAt(next, "we", "i", "they", "there", "theres", "since", "because", "cause", "cuz", "bc", "maintenance") || r.wordAt(next, "not", "no", "instead", "now", "en", "skylights", "domes", "domos", "tragaluces")
	if ends && r.noMoreThan(i, next) {
		return true
	}
	if j := i - 1; ends && (r.wordAt(j, "it", "that") && r.wordAt(j-1, "make") || r.wordAt(j, "put", "ponga", "pongan", "pongale") && r.wordAt(next, "not", "no", "instead", "en") || r.wordAt(j, "to") && r.wordAt(j-1, "it", "that") && r.wordAt(j-2, "change", "bump", "up", "switch", "make") || r.wordAt(j, "sean", "serian", "fueran") || r.wordAt(j, "so", "total", "entonces") && r.oneMore(i) ||
		r.wordAt(j, "to", "a") && r.wordsIn(r.sentenceFirst(i), j, "change", "cambie", "cambia", "cambien", "correct", "bump", "up") && r.wordsIn(r.sentenceFirst(i), j, "count", "quantity", "qty", "number", "cantidad", "order", "skylights", "domes", "numero")) {
		return true
	}
	return r.wordAt(i-1, "theres", "there", "have", "need", "are", "want", "got", "son", "tengo", "hay", "solo") && ends
}

// oneMore: the message tells that there are more than was thought.
func (r *reader) oneMore(i int) bool {
	return r.wordsIn(0, i, "more", "another", "extra", "otro", "otra", "mas") && r.wordsIn(0, i, "found", "add", "one", "1", "found", "forgot", "missed", "otro", "uno", "two", "encontramos", "falta")
}

// countOfSummary: "you wrote four skylights. It's three": the first is what was said back.
func (r *reader) countOfSummary(i int) bool {
	if !r.asked(fitcheck.TopicConfirm) {
		return false
	}
	return r.wordAt(i-1, "wrote", "put", "said", "have", "say", "says", "listed", "typed", "show", "shows", "got", "dice", "pusieron", "puso", "escribio", "escribieron", "anotaron") &&
		(r.wordAt(i-2, "you", "u", "it", "that", "summary", "guys", "ya", "yall") || r.wordAt(i-1, "dice", "pusieron", "puso", "escribio", "escribieron", "anotaron")) && r.countLater(i+1)
}

// saidBackWrong: "you wrote four skylights. It's three": the count that holds.
func (r *reader) saidBackWrong(i, next int) bool {
	if !r.asked(fitcheck.TopicConfirm) || !r.endsCount(next) && !r.wordAt(next, "not", "no") || !r.wordAt(i-1, "its", "is", "be", "just", "only", "actually", "have", "son", "es", "solo", "nomas", "are", "theres") {
		return false
	}
	for k := range i {
		if n, end := r.countNumber(k); end > k && n > 0 && r.countOfSummary(k) && r.toks[end].kind == wordToken && (countNouns.has(r.toks[end].text) || end+1 == i-1) {
			return true
		}
	}
	return false
}

// countLater: another number follows that counts.
func (r *reader) countLater(i int) bool {
	for ; i < len(r.toks); i++ {
		if n, next := r.countNumber(i); next > i && n > 0 {
			return true
		}
	}
	return false
}

// countBetween: "barn, 3, yellow and brittle": a number alone between two signs, where the
// building was asked about.
func (r *reader) countBetween() {
	defer r.countAtEnd()
	for i := 1; i < len(r.toks); i++ {
		n, next := r.countNumber(i)
		if next == i || n < 1 || n > 50 || r.used(i) || r.toks[i].glued || r.toks[i-1].kind != markToken || next < len(r.toks) && (r.toks[next].kind != markToken || r.markAt(next, '-')) {
			continue
		}
		r.use(i, next-1)
		r.countFact(countAt{n, i, next - 1})
		return
	}
}

// countAfterUse: "Iris Cole, 28801, house, one. fiberglass frame": a number between two
// signs, right behind the building.
func (r *reader) countAfterUse() (countAt, bool) {
	if len(r.Asked) > 0 && !r.asked(fitcheck.TopicName) && !r.asked(fitcheck.TopicPlace) {
		return countAt{}, false
	}
	for i := 2; i < len(r.toks); i++ {
		if !r.markAt(i-1, ',') || !r.saysUse(i-2) {
			continue
		}
		if n, next := r.countNumber(i); next == i+1 && n > 0 && n < 10 && !r.toks[i].used && (next == len(r.toks) || r.markAt(next, ',') || r.sentenceEnd(next)) {
			return countAt{n, i, i}, true
		}
	}
	return countAt{}, false
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
		return r.wordAt(next, "in", "on", "over", "above", "en", "sobre", "de") && r.wordAt(next+1, "the", "my", "our", "el", "la", "mi") &&
			r.wordAt(i-2, "need", "fix", "replace", "replacing", "redo", "redoing", "swap", "swapping", "order", "change", "changing", "quote", "for", "on", "cambiar", "reemplazar", "about", "do")
	}
	return r.wordAt(next, "on", "for", "over", "sobre", "para") && !r.wordAt(next+1, "each", "one", "every", "now") &&
		r.wordAt(i-1, "need", "want", "take", "fix", "replace", "replacing", "order", "got", "have", "buy", "needs", "necesito", "ocupo", "tengo", "quiero")
}

// countOfKind: "three of the large and one of the small": each counts a kind of its own.
func (r *reader) countOfKind(next int) bool {
	if !r.wordAt(next, "of", "de") || r.wordAt(next+1, "them", "those", "these") || r.wordAt(next+1, "the", "las", "los") && r.pairAt(next+2) {
		return false
	}
	for i := next + 1; i < len(r.toks); i++ {
		if _, end := r.countNumber(i); end > i && r.wordAt(end, "of", "de") && !r.wordAt(end+1, "them", "those", "these", "em", "which", "ellos", "ellas") {
			return true
		}
	}
	return false
}

// countsOfSorts: "3 little ones and 1 big one".
func (r *reader) countsOfSorts(next int) bool {
	if !r.wordAt(next+1, "ones", "one") {
		return false
	}
	for i := next + 2; i < len(r.toks); i++ {
		if _, end := r.countNumber(i); end > i && r.wordAt(end+1, "ones", "one") || r.wordAt(i, "a", "an") && r.wordAt(i-1, "and", "plus") && r.wordAt(i+2, "one") {
			return true // also "2 small ones and a big one"
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

// countAtEnd: "frame good, just the plastic, one", "metal frame on a curb, just the one": the
// last words of an answer to something that no number answers.
func (r *reader) countAtEnd() {
	if r.known(fitcheck.TopicCount) || r.countInLine() || len(r.Asked) == 0 && !r.skylightNamed(0, len(r.toks)) || r.askedSize() != "none" || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicColor) || r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicCount) || len(r.refs) > 0 {
		return
	}
	for n := range r.intros {
		h := &r.intros[n]
		if k := int(numberWords[r.toks[h.last].text].value); r.asked(fitcheck.TopicConfirm) && h.is("nth", "all") && r.Units < 2 && k > 1 && r.wordAt(h.first-1, "put", "do", "make", "need", "want", "get", "order", "for", "on") && !r.wordAt(h.last+1, "layers", "layer", "sides") {
			r.countFact(countAt{k, h.first, h.last}) // "actually put all three on it"
			return
		}
	}
	last := len(r.toks) - 1
	for last > 0 && r.toks[last].kind == markToken {
		last--
	}
	first := last
	if r.wordAt(last, "them", "those") && r.wordAt(last-1, "of") {
		first = last - 2
	}
	n := int(r.wholeAt(first))
	if r.wordAt(first, "one", "uno", "una", "un") {
		n = 1
	}
	if n < 1 || n > 12 || first < 2 || r.used(first) || r.toks[first].glued || r.toks[first].kind != wordToken {
		return
	}
	start := first
	switch {
	case r.wordAt(first-1, "the") && r.wordAt(first-2, "just", "only"):
		start = first - 2
	case r.wordAt(first-1, "just", "only", "solo", "nomas", "solamente"):
		start = first - 1
	}
	if start < 1 || !r.markAt(start-1, ',') && !r.sentenceEnd(start-1) && !(start < first && r.wordAt(start-1, "its", "is", "and")) {
		return
	}
	r.countFact(countAt{n, first, last})
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
	for i := range r.toks {
		n, next := r.countNumber(i)
		if r.Units > 1 && next > i && n > 0 && n < 100 && !r.used(i) && r.wordAt(i-1, "the", "los", "las") && r.wordAt(i-2, "for", "on", "of", "in", "para", "de", "en") && r.endsCount(next) && r.pairBetween(0, len(r.toks)) && !r.known(fitcheck.TopicCount) {
			r.use(i, next-1)
			r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(n), i, next-1)
		}
	}
}

// miscounted: "actually 3, I miscounted", "it's 12, not 14. I counted wrong".
func (r *reader) miscounted(i, next int) bool {
	return (r.wordsIn(0, len(r.toks), "miscounted") || r.wordsIn(0, len(r.toks), "counted", "conte") && r.wordsIn(0, len(r.toks), "wrong", "mal")) && r.endsCount(next) && !r.wordAt(i-1, "not", "no") && !r.negated(i)
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

// allTold: "same for all three of them", "all three the same": how many there are, where that was
// not known.
func (r *reader) allTold() bool {
	if r.Units > 1 || r.Count > 0 || r.known(fitcheck.TopicCount) || r.asked(fitcheck.TopicCurbDiagonals) {
		return false
	}
	for n := range r.intros {
		h := &r.intros[n]
		k := 0
		for i := h.first; i <= h.last; i++ {
			k = max(k, r.wholeSaid(i))
		}
		next := h.last + 1
		for r.wordAt(next, "are", "is", "of", "them", "the", "son", "exactly") {
			next++
		}
		alike := r.wordAt(h.first-1, "for") && r.wordAt(h.first-2, "same") || r.wordAt(next, "same", "alike", "identical", "iguales") && !r.wordAt(next+1, "way", "side")
		if k == 4 && r.askedSize() != "none" && !r.wordsIn(0, len(r.toks), "them", "skylights", "domes", "tragaluces", "domos") {
			continue // all four sides
		}
		if h.is("nth", "all") && k > 1 && alike && !r.wordAt(h.last+1, "sides", "layers", "corners", "ways") {
			r.countFact(countAt{k, h.first, h.last})
			return true
		}
	}
	return false
}
