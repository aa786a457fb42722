package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	goesOnWords = wordsOf(`and or to on at in for y por is outside inside lip between including from over edge de`)
)

// quantity is one length as written, with or without its unit.
type quantity struct {
	first, last int // tokens
	num, den    int64
	extra       fitcheck.Length // what was said beside it in a smaller unit: the inches after the feet
	unit        unit
	fine        fitcheck.Length // how finely it was written
	fineDen     int64
	frac        bool // written as a fraction of a tape, so in inches
	dec         bool // written with decimals
	feetInches  bool
	bad         bool // can't be read
	loose       bool // "26ish", "25+", "~25"
	bare        bool // a lone whole number without a unit
	side        side // which side it was called
	words       bool
}

// length is the quantity in its unit, in inches where it has none.
func (q *quantity) length() fitcheck.Length { return q.in(q.unit) }

// in is the quantity as if it had been written in a unit, to the nearest nanometre.
func (q *quantity) in(u unit) fitcheck.Length {
	if q.den == 0 {
		return 0
	}
	l := unitLengths[u]
	return fitcheck.Length((q.num*int64(l)+q.den/2)/q.den) + q.extra
}

// resolution is the finest mark that the writing shows.
func (q *quantity) resolution(u unit) fitcheck.Length {
	if q.fine > 0 {
		return q.fine
	}
	if q.fineDen == 0 {
		return 0
	}
	return unitLengths[u] / fitcheck.Length(q.fineDen)
}

// quantityAt reads the length that starts at token i.
func (r *reader) quantityAt(i int) (quantity, bool) {
	start := i
	loose := false
	for r.markAt(i, '~') || r.markAt(i, '>') || r.markAt(i, '<') {
		loose = true
		i++
	}
	n, next := r.numeralAt(i)
	if next == i {
		n, next = r.numeralBySound(i)
	}
	if next == i && !r.unitAlone(i) {
		return quantity{}, false
	} else if next == i {
		n = numeral{num: 1, den: 1, fine: 1, words: true}
	}
	if n.frac && n.num < n.den && r.partOfOther(next) {
		return quantity{}, false
	}
	if w := r.wholeAt(next + 1 + r.inchAt(next)); n.frac && n.num < n.den && r.wordAt(next+r.inchAt(next), "over") && w > 1 &&
		!r.used(next+1) {
		n.num += w * n.den // "half inch over 25"
		next += 2 + r.inchAt(next)
	}
	q := quantity{first: start, last: next - 1, num: n.num, den: n.den, fineDen: n.fine, frac: n.frac,
		dec: n.den%10 == 0, bad: n.bad, loose: loose, words: n.words}
	if !r.afterNumeral(&q) {
		return quantity{}, false
	}
	r.looseEnd(&q)
	q.bare = q.unit == noUnit && !q.frac && !q.dec && !q.bad
	return q, true
}

// unitAlone: "an inch and a quarter" without its "an": the unit stands for one of it.
func (r *reader) unitAlone(i int) bool {
	if !r.wordAt(i, "inch", "foot", "pulgada", "pie") || !r.wordAt(i+1, "and", "y", "n") ||
		i > 0 && (r.toks[i-1].kind == numToken || r.numberAt(i-1).kind != notNumber) {
		return false
	}
	_, _, _, ok := r.spokenPart(i + 2)
	if !ok {
		_, _, _, ok = r.slashed(i + 2)
	}
	return ok
}

// inchAt is 1 where token i is an inch's name, else 0.
func (r *reader) inchAt(i int) int {
	if r.unitAt(i) == inch {
		return 1
	}
	return 0
}

// partOfOther: "half an hour", "3/4 of the way".
func (r *reader) partOfOther(i int) bool {
	j := i
	for r.wordAt(j, "an", "a", "of", "the", "my", "de", "la", "el") {
		j++
	}
	return j > i && r.unitAt(j) == noUnit && j < len(r.toks) && r.toks[j].kind == wordToken ||
		r.wordAt(j, "hour", "hora", "mile", "way", "dozen", "docena") ||
		r.wordAt(i, "round", "moon", "circle", "barrel", "pipe", "cylinder", "circular", "circulo")
}

// numeralBySound reads words that a voice keyboard writes for numbers ("too foot",
// "ate inches", "a foot"), only where a unit follows.
func (r *reader) numeralBySound(i int) (numeral, int) {
	n := r.numberAt(i)
	if n.kind != soundsLike && !r.wordAt(i, "a", "an") {
		return numeral{}, i
	}
	if r.wordAt(i, "too", "to", "tu", "for", "ate") && r.wordAt(i+1, "and") {
		if num, den, next, ok := r.spokenPart(i + 2); ok && r.unitAt(next) == inch {
			return numeral{num: n.value*den + num, den: den, fine: den, frac: true, words: true}, next // "too and a half inches"
		}
	}
	u := r.unitAt(i + 1)
	if u == noUnit || r.wordAt(i+1, "in", "m") || r.toks[i+1].kind != wordToken {
		return numeral{}, i
	}
	if n.kind == soundsLike {
		return numeral{num: n.value, den: 1, fine: 1, words: true}, i + 1
	}
	return numeral{num: 1, den: 1, fine: 1, words: true}, i + 1
}

// afterNumeral takes the unit after the number and what belongs to it. It reports
// false where the number turns out to count something else.
func (r *reader) afterNumeral(q *quantity) bool {
	i := q.last + 1
	q.unit = r.unitAt(i)
	if q.unit == noUnit && q.frac && q.num > q.den { // few things but lengths come in such parts
		return r.wordAt(i, "second", "times") || !r.among(i, afterCount)
	}
	if q.unit == noUnit {
		return !r.countsOther(i) || q.last > q.first && r.by(q.first-1) || r.by(q.first-1) && r.refAt(i, i+1)
	}
	if q.unit == mil {
		if q.num < 100*q.den {
			return false
		}
		q.unit = millimetre
	}
	q.last = i
	if r.markAt(i+1, '.') && r.toks[i+1].glued && !r.sentenceAfter(i+1) {
		q.last++
	}
	switch q.unit {
	case foot:
		r.inchesAfter(q)
	case metre:
		r.centimetresAfter(q)
	case inch:
		r.partAfterUnit(q)
	}
	return !r.areaAfter(q)
}

// unitAt is the unit that token i names.
func (r *reader) unitAt(i int) unit {
	if i >= len(r.toks) || i < 0 {
		return noUnit
	}
	t := &r.toks[i]
	switch {
	case t.mark('"'):
		return inch
	case t.mark('\''):
		return foot
	case t.kind != wordToken || t.word == nil || t.word.unit == noUnit:
		return noUnit
	case t.text == "in" && !t.glued && !r.inIsInch(i):
		return noUnit
	}
	return t.word.unit
}

// inIsInch: "25 in x 49 in" against "4 in the back", "4 in 12".
func (r *reader) inIsInch(i int) bool {
	if r.wordAt(i+1, "to") && r.wordAt(i+2, "in") {
		return false // "28 1/2 x 52 1/2 in to in"
	}
	if r.wordAt(i+1, "total", "all") && (r.wholeSaid(i-1) > 0 && r.wholeSaid(i-1) < 21) && (i < 2 || !r.by(i-2)) {
		return false // "two in total"
	}
	if r.wordAt(i-2, "put", "putting", "cut", "cutting", "add", "adding") && r.wholeSaid(i-1) > 0 && r.wholeSaid(i-1) < 13 {
		return false // "want to put two in"
	}
	if i+1 >= len(r.toks) {
		return true
	}
	if r.kindAfterIn(i) {
		return false
	}
	next := &r.toks[i+1]
	switch next.kind {
	case numToken:
		return next.whole != 12
	case markToken:
		return true
	}
	if r.by(i + 1) {
		return true
	}
	switch next.text {
	case "wide", "long", "high", "tall", "across", "on", "square", "round", "diameter", "dia",
		"and", "or", "to", "w", "l", "h", "above", "thick", "deep", "from", "inside", "outside", "each", "each way",
		"both", "off",
		"give", "exactly", "length", "width", "height", "edge", "largo", "ancho",
		"including", "between", "over", "up", "for", "curb", "dome", "total", "at", "i", "is", "but":
		return true
	}
	return next.word != nil && next.word.number.kind != notNumber && next.word.number.value != 12 && !next.word.filler
}

// sentenceAfter: the full stop at i ends a sentence, as far as can be seen.
func (r *reader) sentenceAfter(i int) bool {
	if i+1 >= len(r.toks) {
		return true
	}
	return r.toks[i+1].kind == wordToken && !r.goesOn(i+1)
}

// goesOn: the word continues a size: "25 in. wide", "25 in. by 49 in.".
func (r *reader) goesOn(i int) bool {
	return r.by(i) || r.labelKind(i, "axis") || r.labelKind(i, "shape") ||
		r.wordAt(i, "ish") || r.wordAt(i, "the") && r.wordAt(i+1, "other", "short", "long") ||
		r.among(i, goesOnWords)
}

// looseEnd takes signs and words right after a length that make it a rough one.
func (r *reader) looseEnd(q *quantity) {
	i := q.last + 1
	if r.markAt(i, '-') && r.wordAt(i+1, "ish") {
		i++
	}
	if r.wordAt(i, "strong", "heavy", "light", "shy", "scant", "something", "odd", "full", "plus") &&
		(i+1 >= len(r.toks) || r.toks[i+1].kind == markToken || r.by(i+1) || r.wordAt(i+1, "wide", "long")) {
		q.loose = true
		q.last = i
	} else if r.wordAt(i, "and", "y") && r.wordAt(i+1, "change", "some", "something", "pico", "algo", "like", "about", "maybe") &&
		r.wholeAt(i+2) < 0 {
		q.loose = true
		q.last = i + 1
	}
	if r.wordAt(q.last+1, "even", "exactly", "flat") && r.by(q.last+2) {
		q.last++ // "30 even by 46"
	}
	if r.wordAt(q.last+1, "and") && r.wordAt(q.last+2, "like", "about", "maybe", "almost") && r.wholeAt(q.last+3) >= 0 {
		q.loose = true // "33 and like 7 of the little lines"
	}
	if r.wordAt(q.last+1, "and", "plus", "y") && r.wholeAt(q.last+2) > 0 {
		if marks := r.tapeMarks(q.last + 3); marks > 0 {
			q.loose, q.last = true, marks // "25 inches and 3 little marks past"
		}
	}
	i = q.last + 1
	if r.wordAt(i, "ish", "sh") || r.markAt(i, '~') || r.markAt(i, '+') && !r.partNext(i+1) {
		q.loose = true
		q.last = i
		if r.markAt(i, '+') && r.markAt(i+1, '/') && r.markAt(i+2, '-') { // "+/- 1/8"
			q.last = i + 2
			if _, next := r.numeralAt(i + 3); next > i+3 {
				q.last = next - 1
			}
		}
	}
	if q.unit == noUnit && q.loose {
		if u := r.unitAt(q.last + 1); u != noUnit {
			q.unit = u
			q.last++
		}
	}
}
