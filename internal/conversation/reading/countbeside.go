package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	countLeads = wordsOf(`just only need i we want solo son es nomas nada mas necesito quiero qty quantity its
		theres is are there me us theyre hay cantidad`)
	themOrThat = themWords.and(`that this`)
	onlyLeads  = wordsOf(`there theres its it is thats i we have got need want ive weve es this que y and but
		also`)
	countTotals     = wordsOf(`total altogether here thanks please up though tho`)
	countAheadLeads = countLeads.and(`the`)
	inTotalWords    = wordsOf(`total altogether needed pcs pieces iguales alike`)
	closingThanks   = wordsOf(`please pls thanks thx ty gracias favor sorry`)
	sizedParts      = wordsOf(`opening hole plastic box curb abertura hueco plastico caja domo mide measures`)
	spanWords       = wordsOf(`across diameter wide long square de`)
	pieceOrders     = wordsOf(`quote price pricing order bid estimate cotizacion cotizar precio pedido`)
	pieceBreaks     = wordsOf(`broke broken shattered busted split smashed quebro rompio in into en fell`)
)

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
	n := r.besideNumberAt(last)
	if last < 2 || n < 1 || n > mostBeside {
		return countAt{}, false
	}
	if !r.sizeLeadsTo(last, sure, closed) {
		return countAt{}, false
	}
	if r.timesAt(last - 1) {
		return countAt{n, last - 1, last}, true
	}
	return countAt{n, last, last}, true
}

// besideNumberAt is a number of one word; 0 for none, also in "25 x 49 is just one of them".
func (r *reader) besideNumberAt(i int) int {
	if i < 0 || i >= len(r.toks) || r.toks[i].used {
		return 0
	}
	n, next := r.countNumber(i)
	if r.wordAt(i, "una", "uno", "un") {
		n, next = 1, i+1
	}
	if next != i+1 || n == 1 && r.wordAt(i+1, "of", "de") {
		return 0
	}
	return n
}

// sizeLeadsTo: before a number that ends the message, and words of needing that lead to it, a size ends.
func (r *reader) sizeLeadsTo(i int, sure, closed bool) bool {
	from := i
	if r.timesAt(i - 1) {
		from, sure = i-1, true
	}
	for from > 0 && r.among(from-1, countLeads) {
		from--
		sure = sure || !r.wordAt(from, "es", "is", "mas", "i", "we")
	}
	at := from - 1
	broken := r.markAt(at, ',') || r.sentenceEnd(at)
	if closed && r.markAt(at, '(') {
		sure, broken = true, true
	}
	at = r.beforeBreaks(at)
	if at < 0 {
		return false
	}
	if !sure && (r.toks[i].kind == numToken || !broken || !r.pairBetween(0, i) && r.labelAt[at] < 0) {
		return false
	}
	return r.sizeEnds(at, broken || r.wordAt(from-1, "and", "y", "but", "pero"))
}

// beforeBreaks is the token before signs, but for those of units, and before words that join.
func (r *reader) beforeBreaks(at int) int {
	for at >= 0 && (r.breakMark(at) || r.wordAt(at, "and", "y", "but", "pero")) {
		at--
	}
	return at
}

// breakMark: a sign that is none of feet or inches.
func (r *reader) breakMark(i int) bool {
	return r.toks[i].kind == markToken && !r.markAt(i, '"') && !r.markAt(i, '\'')
}

// onlyOne: "just one" is all that is said where a size was asked: how many, not how large.
func (r *reader) onlyOne() bool {
	if r.askedSize() == "none" {
		return false
	}
	switch bareWords(r.Text) {
	case "just one", "only one", "just the one", "only the one",
		"its just one", "its only one", "theres just one", "theres only one",
		"solo uno", "solo es uno", "es solo uno", "nomas uno", "uno nomas", "nada mas uno", "uno nada mas":
		return true
	}
	return false
}

// oneSaid: "es una nada más", "uno nomás", "I need just one, clear": one, and no more.
func (r *reader) oneSaid() (countAt, bool) {
	for i := range r.toks {
		if r.unaNomas(i) {
			return countAt{1, i, min(i+1, len(r.toks)-1)}, r.oneOfNoLayers(i)
		}
		if r.oneAlone(i) {
			return countAt{1, i, i}, true
		}
		if r.justOneNeeded(i) {
			return countAt{1, i - 1, i}, r.oneOfNoLayers(i)
		}
		if first, last, ok := r.noMoreThanOne(i); ok {
			return countAt{1, first, last}, r.oneOfNoLayers(i)
		}
		if r.justTheOne(i) {
			return countAt{1, i - 2, i + 1}, true
		}
	}
	return countAt{}, false
}

func (r *reader) oneOfNoLayers(i int) bool {
	return !r.layersCounted(i) && !r.asked(fitcheck.TopicLayers)
}

// unaNomas: "una nomás", "uno nada más", "nomás una".
func (r *reader) unaNomas(i int) bool {
	if !r.wordAt(i, "una", "uno", "un") {
		return false
	}
	return r.wordAt(i+1, "nomas") || r.wordAt(i+1, "nada") && r.wordAt(i+2, "mas") ||
		!r.wordAt(i, "un") && r.wordAt(i-1, "nomas") && !r.wordAt(i+1, "de")
}

// justOneNeeded: "I need just one, clear".
func (r *reader) justOneNeeded(i int) bool {
	return r.wordAt(i, "one") && r.wordAt(i-1, "just", "only") && r.wordAt(i-2, "need", "want", "needing", "have") && r.stopAt(i+1)
}

// justTheOne: "it's just the one skylight on my house".
func (r *reader) justTheOne(i int) bool {
	if !r.wordAt(i, "one") || !r.wordAt(i-1, "the") || !r.wordAt(i-2, "just", "only") || r.Units > 1 || len(r.refs) > 0 {
		return false
	}
	begins := i == 2 || r.toks[i-3].kind == markToken || r.wordAt(i-3, "its", "is", "theres", "have", "need")
	return begins && r.among(i+1, countNouns) && (r.stopAt(i+2) || r.wordAt(i+2, "on", "at", "and")) && !r.questioned(i)
}

// noMoreThanOne: "there's only one of them", "it's just the one", "the only one", "es el único": a
// clause that says no more than that, after a size or alone.
func (r *reader) noMoreThanOne(i int) (first, last int, ok bool) {
	first = r.onlyOneFrom(i)
	if first < 0 || r.Units > 1 || len(r.refs) > 0 || r.Count > 1 {
		return 0, 0, false
	}
	last = r.onlyOneTo(i)
	lead := first - 1
	for lead >= 0 && r.among(lead, onlyLeads) {
		lead--
	}
	ends := r.stopAt(last+1) && !r.markAt(last+1, '?') || r.among(last+1, countTotals) || r.frameFollows(last+1)
	begins := lead < 0 || r.toks[lead].kind == markToken || r.wantEnds(lead)
	return first, last, ends && begins && !r.questioned(i)
}

// onlyOneFrom is where "just the one", "the only one", "only one" or "el único" begins that ends at the
// token; -1 where none does.
func (r *reader) onlyOneFrom(i int) int {
	if from := r.onlyOneEs(i); from >= 0 {
		return from
	}
	switch {
	case !r.wordAt(i, "one", "unico", "unica"):
		return -1
	case r.wordAt(i, "unico", "unica"):
		if r.wordAt(i-1, "el", "la") {
			return i - 1
		}
		return -1
	case r.wordAt(i-1, "the") && r.wordAt(i-2, "just", "only"), r.wordAt(i-1, "only") && r.wordAt(i-2, "the"):
		return i - 2
	case r.wordAt(i-1, "just", "only"):
		return i - 1
	}
	return -1
}

// onlyOneTo is where it ends, with "of them" and "I have" behind it.
func (r *reader) onlyOneTo(last int) int {
	if r.wordAt(last+1, "of") && r.among(last+2, themOrThat) {
		last += 2
	}
	if r.wordAt(last+1, "i", "we") && r.wordAt(last+2, "have", "got", "need", "want") ||
		r.wordAt(last+1, "que") && r.wordAt(last+2, "tengo", "tenemos", "hay", "necesito") {
		last += 2 // "the only one I have"
	}
	return last
}

// mostBeside is the most that is taken for a number of pieces right beside a size: who says
// more of them says so in more words.
const mostBeside = 12

// timesAt: "x2" after a comma or a bracket, or apart from the size before it, is how many,
// and no further side: "25 x 49, x2", "25x49 x2".
func (r *reader) timesAt(i int) bool {
	if i < 1 || i+1 >= len(r.toks) || !r.toks[i].is("x") || !r.gluedFew(i+1) || r.measureGoesOn(i+2) {
		return false
	}
	if r.markAt(i-1, '(') {
		return true
	}
	return !r.toks[i].glued && (r.markAt(i-1, ',') || i > 2 && r.by(i-2) || i > 3 && r.markAt(i-1, '"') && r.by(i-3))
}

// gluedFew: a small whole number right behind its sign: the 2 of "x2".
func (r *reader) gluedFew(i int) bool {
	t := &r.toks[i]
	return t.kind == numToken && t.dec == 0 && t.whole <= mostBeside && t.glued
}

// measureGoesOn: the number before is one of a size: "22 x 46, x4 high".
func (r *reader) measureGoesOn(i int) bool {
	return r.unitAt(i) != noUnit || r.markAt(i, '/') || r.wordAt(i, "high", "tall", "deep", "thick", "alto") ||
		i < len(r.toks) && r.toks[i].kind == numToken
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
	for r.among(i, countAheadLeads) {
		i++
	}
	n := r.besideNumberAt(i)
	if n < 1 || n > mostBeside || r.toks[i].kind == numToken && i == 0 {
		return countAt{}, false
	}
	if !r.markAt(i+1, ',') && !r.sentenceEnd(i+1) || !r.pairBetween(i+1, len(r.toks)) {
		return countAt{}, false
	}
	return countAt{n, i, i}, true
}

// withoutTotal is where a count ends that says of itself that it is one: "3 total", "two of
// them".
func (r *reader) withoutTotal(end int) (last int, sure bool) {
	switch {
	case r.among(end, inTotalWords):
		last = end - 1
	case r.wordAt(end, "total", "all") && r.wordAt(end-1, "in", "en"),
		r.among(end, themWords) && r.wordAt(end-1, "of", "de"),
		r.wordAt(end, "size", "that", "same") && r.wordAt(end-1, "that", "like", "the"):
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
	for i > 0 && (r.breakMark(i) && !r.markAt(i, ')') || r.polite(i)) {
		i--
	}
	return i
}

// polite: the word is one of a thanks or a please.
func (r *reader) polite(i int) bool {
	return r.among(i, closingThanks) || r.wordAt(i, "thank") ||
		r.wordAt(i, "por") && r.wordAt(i+1, "favor") || r.wordAt(i, "you") && r.wordAt(i-1, "thank")
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
		if r.among(k, sizedParts) {
			return true
		}
	}
	return r.among(i+1, spanWords) && (!r.wordAt(i+1, "de") || r.wordAt(i+2, "diametro", "ancho", "largo", "lado"))
}

// piecesListed: the count of pieces is a part by itself of what is ordered or priced: "hi need
// a quote, polycarbonate, clear, 3 pieces"; not "it broke, 3 pieces".
func (r *reader) piecesListed(i, next int) bool {
	return (r.softBreak(i-1) || r.sentenceEnd(i-1)) && r.stopAt(next+1) && r.anyOf(0, len(r.toks), pieceOrders) &&
		!r.known(fitcheck.TopicProblem) && !r.anyOf(max(0, i-8), len(r.toks), pieceBreaks)
}
