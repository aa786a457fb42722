package reading

import "example.com/intake-bot/internal/fitcheck"

// countBeside is the count that ends a message about one size, or begins it: "25 x 49, two",
// "36 across, only one", "2 ft x 4 ft. 3 total", "four, all 30 x 30". A bare figure there may
// as well be a third side, and is none.
func (r *reader) countBeside() (countAt, bool) {
	if c, ok := r.neededOf(); ok && len(r.refs) == 0 {
		return c, true
	}
	if r.askedSize() == "none" || r.Units > 1 || len(r.refs) > 0 || r.pairs() > 1 {
		return countAt{}, false
	}
	if c, ok := r.countAhead(); ok {
		return c, true
	}
	end := r.beforePoliteness(len(r.toks) - 1)
	closed := r.markAt(end, ')')
	if closed {
		end--
	}
	last, sure := r.withoutTotal(end)
	i := last
	if i < 2 {
		return countAt{}, false
	}
	n, next := r.countNumber(i)
	if r.wordAt(i, "una", "uno", "un") {
		n, next = 1, i+1
	}
	if n == 1 && r.wordAt(i+1, "of", "de") {
		return countAt{}, false // "25 x 49 is just one of them"
	}
	if next != last+1 || n < 1 || n > mostBeside || r.toks[i].used {
		return countAt{}, false
	}
	from := i
	if r.timesAt(i - 1) {
		from, sure = i-1, true
	}
	for from > 0 && r.wordAt(from-1, "just", "only", "need", "i", "we", "want", "solo", "son", "es", "nomas", "nada", "mas", "necesito", "quiero", "qty", "quantity", "its", "theres", "is", "are", "there", "me", "us", "theyre", "hay", "cantidad") {
		from--
		sure = sure || !r.wordAt(from, "es", "is", "mas", "i", "we")
	}
	at := from - 1
	broken := r.markAt(at, ',') || r.sentenceEnd(at)
	if closed && r.markAt(at, '(') {
		sure, broken = true, true
	}
	for at >= 0 && (r.toks[at].kind == markToken && !r.markAt(at, '"') && !r.markAt(at, '\'') || r.wordAt(at, "and", "y", "but", "pero")) {
		at--
	}
	if at < 0 || !sure && (r.toks[i].kind == numToken || !broken || !r.pairBetween(0, i) && r.labelAt[at] < 0) || !r.sizeEnds(at, broken || r.wordAt(from-1, "and", "y", "but", "pero")) {
		return countAt{}, false
	}
	if r.timesAt(from) {
		i = from
	}
	return countAt{n, i, last}, true
}

// onlyOne: "just one" is all that is said where a size was asked: how many, not how large.
func (r *reader) onlyOne() bool {
	if r.askedSize() == "none" {
		return false
	}
	switch bareWords(r.Text) {
	case "just one", "only one", "just the one", "only the one", "its just one", "its only one", "theres just one", "theres only one",
		"solo uno", "solo es uno", "es solo uno", "nomas uno", "uno nomas", "nada mas uno", "uno nada mas":
		return true
	}
	return false
}

// oneSaid: "es una nada más", "uno nomás", "I need just one, clear": one, and no more.
func (r *reader) oneSaid() (countAt, bool) {
	for i := range r.toks {
		if r.wordAt(i, "una", "uno", "un") && (r.wordAt(i+1, "nomas") || r.wordAt(i+1, "nada") && r.wordAt(i+2, "mas")) || r.wordAt(i, "una", "uno") && r.wordAt(i-1, "nomas") && !r.wordAt(i+1, "de") {
			return countAt{1, i, min(i+1, len(r.toks)-1)}, !r.layersCounted(i) && !r.asked(fitcheck.TopicLayers)
		}
		if r.oneAlone(i) {
			return countAt{1, i, i}, true
		}
		if r.wordAt(i, "one") && r.wordAt(i-1, "just", "only") && r.wordAt(i-2, "need", "want", "needing", "have") && (i+1 == len(r.toks) || r.toks[i+1].kind == markToken) {
			return countAt{1, i - 1, i}, !r.layersCounted(i) && !r.asked(fitcheck.TopicLayers)
		}
		if first, last, ok := r.noMoreThanOne(i); ok {
			return countAt{1, first, last}, !r.layersCounted(i) && !r.asked(fitcheck.TopicLayers)
		}
		if r.wordAt(i, "one") && r.wordAt(i-1, "the") && r.wordAt(i-2, "just", "only") && (i == 2 || r.toks[i-3].kind == markToken || r.wordAt(i-3, "its", "is", "theres", "have", "need")) && i+1 < len(r.toks) && countNouns.has(r.toks[i+1].text) &&
			(i+2 == len(r.toks) || r.toks[i+2].kind == markToken || r.wordAt(i+2, "on", "at", "and")) && r.Units < 2 && len(r.refs) == 0 && !r.questioned(i) {
			return countAt{1, i - 2, i + 1}, true // "it's just the one skylight on my house"
		}
	}
	return countAt{}, false
}

// noMoreThanOne: "there's only one of them", "it's just the one", "the only one", "es el único": a
// clause that says no more than that, after a size or alone.
func (r *reader) noMoreThanOne(i int) (first, last int, ok bool) {
	first, last = i-1, i
	switch {
	case r.wordAt(i, "one") && (r.wordAt(i-1, "the") && r.wordAt(i-2, "just", "only") || r.wordAt(i-1, "only") && r.wordAt(i-2, "the")):
		first = i - 2
	case r.wordAt(i, "one") && r.wordAt(i-1, "just", "only"):
	case r.wordAt(i, "unico", "unica") && r.wordAt(i-1, "el", "la"):
	case r.onlyOneEs(i) >= 0:
		first = r.onlyOneEs(i)
	default:
		return 0, 0, false
	}
	if r.wordAt(last+1, "of") && r.wordAt(last+2, "them", "these", "those", "em", "that", "this") {
		last += 2
	}
	if r.wordAt(last+1, "i", "we") && r.wordAt(last+2, "have", "got", "need", "want") || r.wordAt(last+1, "que") && r.wordAt(last+2, "tengo", "tenemos", "hay", "necesito") {
		last += 2 // "the only one I have"
	}
	lead := first - 1
	for lead >= 0 && r.wordAt(lead, "there", "theres", "its", "it", "is", "thats", "i", "we", "have", "got", "need", "want", "ive", "weve", "es", "this", "que", "y", "and", "but", "also") {
		lead--
	}
	ends := last+1 == len(r.toks) || r.toks[last+1].kind == markToken && !r.markAt(last+1, '?') ||
		r.wordAt(last+1, "total", "altogether", "here", "thanks", "please", "up", "though", "tho") ||
		r.frameFollows(last+1)
	begins := lead < 0 || r.toks[lead].kind == markToken || r.wantEnds(lead)
	return first, last, ends && begins && r.Units < 2 && len(r.refs) == 0 && r.Count < 2 && !r.questioned(i)
}

// mostBeside is the most that is taken for a number of pieces right beside a size: who says
// more of them says so in more words.
const mostBeside = 12

// timesAt: "x2" after a comma or a bracket, or apart from the size before it, is how many,
// and no further side: "25 x 49, x2", "25x49 x2".
func (r *reader) timesAt(i int) bool {
	if i < 1 || i+1 >= len(r.toks) || !r.toks[i].is("x") || r.toks[i+1].kind != numToken || r.toks[i+1].dec > 0 || r.toks[i+1].whole > mostBeside || !r.toks[i+1].glued {
		return false
	}
	if n := i + 2; r.unitAt(n) != noUnit || r.markAt(n, '/') || r.wordAt(n, "high", "tall", "deep", "thick", "alto") || n < len(r.toks) && r.toks[n].kind == numToken {
		return false // "22 x 46, x4 high"
	}
	if r.markAt(i-1, '(') {
		return true
	}
	return !r.toks[i].glued && (r.markAt(i-1, ',') || i > 2 && r.by(i-2) || i > 3 && r.markAt(i-1, '"') && r.by(i-3))
}

// pairs is how many sizes of two sides the message tells.
func (r *reader) pairs() int {
	n := 0
	for i := range r.toks {
		n += number(r.by(i) && r.numberAfter(i+1))
	}
	return n
}

// countAhead: "just one, 25 x 49", "four, all 30 x 30".
func (r *reader) countAhead() (countAt, bool) {
	i := 0
	for r.wordAt(i, "just", "only", "solo", "its", "theres", "there", "are", "is", "i", "need", "son", "hay", "nomas", "the") {
		i++
	}
	n, next := r.countNumber(i)
	if r.wordAt(i, "una", "uno") {
		n, next = 1, i+1
	}
	if next != i+1 || n < 1 || n > mostBeside || r.toks[i].kind == numToken && i == 0 || r.toks[i].used || !r.markAt(next, ',') && !r.sentenceEnd(next) || !r.pairBetween(next, len(r.toks)) {
		return countAt{}, false
	}
	return countAt{n, i, i}, true
}

// withoutTotal is where a count ends that says of itself that it is one: "3 total", "two of
// them".
func (r *reader) withoutTotal(end int) (last int, sure bool) {
	switch {
	case r.wordAt(end, "total", "altogether", "needed", "pcs", "pieces", "iguales", "alike"):
		last = end - 1
	case r.wordAt(end, "total", "all") && r.wordAt(end-1, "in", "en"), r.wordAt(end, "them", "those", "em", "these", "esos", "esas", "ellos") && r.wordAt(end-1, "of", "de"), r.wordAt(end, "size", "that", "same") && r.wordAt(end-1, "that", "like", "the"):
		last = end - 2
	default:
		return end, false
	}
	if r.wordAt(last, "in", "en") {
		last--
	}
	return last, true
}

// beforePoliteness is the last token that is no sign, no thanks and no please.
func (r *reader) beforePoliteness(i int) int {
	for i > 0 && (r.toks[i].kind == markToken && !r.markAt(i, ')') && !r.markAt(i, '"') && !r.markAt(i, '\'') || r.wordAt(i, "please", "pls", "thanks", "thx", "ty", "gracias", "favor", "sorry") || r.wordAt(i, "por") && r.wordAt(i+1, "favor") || r.wordAt(i, "thank") || r.wordAt(i, "you") && r.wordAt(i-1, "thank")) {
		i--
	}
	return i
}

// sizeEnds: a number, its unit or, before a break, the name of its side stands there.
func (r *reader) sizeEnds(i int, broken bool) bool {
	if r.labelAt[i] >= 0 && r.unitAt(i) == noUnit {
		i = r.labels[r.labelAt[i]].first - 1
		return broken && i >= 0 && r.sizeEnds(i, false)
	}
	return r.toks[i].kind == numToken && !r.toks[i].used || r.unitAt(i) != noUnit || r.numberAt(i).kind != notNumber
}

// measureAt: the number is a size's: "the opening 36", "38 across".
func (r *reader) measureAt(i int) bool {
	for k := i - 1; k >= max(0, i-3); k-- {
		if r.toks[k].kind == numToken || r.toks[k].kind == markToken {
			break
		}
		if r.wordAt(k, "opening", "hole", "plastic", "box", "curb", "abertura", "hueco", "plastico", "caja", "domo", "mide", "measures") {
			return true
		}
	}
	return r.wordAt(i+1, "across", "diameter", "wide", "long", "square", "de") && (!r.wordAt(i+1, "de") || r.wordAt(i+2, "diametro", "ancho", "largo", "lado"))
}

// piecesListed: the count of pieces is a part by itself of what is ordered or priced: "hi need
// a quote, polycarbonate, clear, 3 pieces"; not "it broke, 3 pieces".
func (r *reader) piecesListed(i, next int) bool {
	return (r.softBreak(i-1) || r.sentenceEnd(i-1)) && (next+1 >= len(r.toks) || r.toks[next+1].kind == markToken) &&
		r.wordsIn(0, len(r.toks), "quote", "price", "pricing", "order", "bid", "estimate", "cotizacion", "cotizar", "precio", "pedido") &&
		!r.known(fitcheck.TopicProblem) && !r.wordsIn(max(0, i-8), len(r.toks), "broke", "broken", "shattered", "busted", "split", "smashed", "quebro", "rompio", "in", "into", "en", "fell")
}
