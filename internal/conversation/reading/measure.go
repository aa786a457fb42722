package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	yardsToAway    = wordsOf(`from away off of sale dumpster trailer down behind de`)
	otherOne       = wordsOf(`otro otra other another second segundo segunda one uno una`)
	unitLookalikes = wordsOf(`in en de the son es is are las los any about my by well con`)
	unitUnknown    = wordsOf(`know do have understand use speak think se entiendo uso tengo manejo conozco good`)
	beforeFeet     = wordsOf(`in thats is its are theyre all en son es was those`)
	doubtsOfFit    = wordsOf(`dont do doesnt arent cant match fit go seem should numbers measurements no`)
	byWords        = wordsOf(`x by bt buy bye bu xs times por bij ex bby byu bi`)
	joinsSameUnit  = wordsOf(`and to or y a o de the on wide long w l ancho largo`)
)

// side is which side of an outline a number was called.
type side uint8

const (
	noSide   side = iota
	width         // "wide"
	length        // "long"
	height        // "high"
	down          // "down", "deep": the length beside a width, else not known
	across        // a width or a diameter
	someSide      // "one way", "the first side", "top"
)

var sideNames = map[string]side{"width": width, "length": length, "height": height, "down": down,
	"across": across, "some": someSide}

// shape is what a group of lengths is.
type shape uint8

const (
	lone      shape = iota // one number
	pair                   // two sides
	square                 // one number for all sides
	round                  // a diameter
	fourSides              // four sides in order
	ranged                 // from one number to another
	broken                 // numbers that make no sense together
	diagonals
)

// measure is one group of lengths that belong together, with what was said about it.
type measure struct {
	shape       shape
	parts       []quantity
	first, last int  // tokens, sides' names included
	orphan      bool // a "by" stands before it, and nothing that can be read before that
	context
}

// sizes finds the lengths in the message, groups them, finds out what each is of, and
// records facts and doubts.
func (r *reader) sizes() {
	first, last := r.spokenLumber()
	defer r.lumberOnly(first, last)
	if r.inYards() {
		return
	}
	after := r.countsAfter()
	qs := r.quantities()
	if len(qs) == 0 {
		r.fewInches()
		return
	}
	for k := range qs {
		r.inInches = r.inInches || qs[k].frac || qs[k].unit == inch
	}
	r.nameSides(qs)
	ms := r.group(qs)
	if len(ms) == 0 {
		return
	}
	r.describe(ms)
	if !r.countedAfter(ms, after) {
		ms = r.countedKinds(ms)
	}
	r.resolve(ms)
	r.roomsOfSizes(ms)
	if t := r.askedSize(); t != "none" && !r.known(t) && !r.doubtful(t) && len(r.out.Unclear) == 0 {
		r.fewInches()
	}
}

// fewInches: "a couple inches" is an answer, and no number.
func (r *reader) fewInches() {
	if r.askedSize() == "none" {
		return
	}
	for n := range r.labels {
		h := &r.labels[n]
		if h.is("rough", "few") {
			r.unclear(r.askedSize(), 0, WhyRough, nil, h.first, h.last)
			return
		}
		if h.is("rough", "size") {
			r.unclear(r.askedSize(), 0, WhyNominal, nil, h.first, h.last)
			return
		}
	}
}

// inYards: "a yard and a half long and a yard wide" answers, as roughly as paces do.
func (r *reader) inYards() bool {
	if r.askedSize() == "none" {
		return false
	}
	for i := range r.toks {
		if r.wordAt(i, "yard", "yards", "yarda", "yardas") && i > 0 &&
			(r.toks[i-1].kind == numToken || r.numberAt(i-1).kind != notNumber || r.wordAt(i-1, "a", "una")) &&
			!r.among(i+1, yardsToAway) {
			r.unclear(r.askedSize(), 0, WhyRough, nil, i-1, i)
			return true
		}
	}
	return false
}

// quantities reads every length in the message from left to right.
func (r *reader) quantities() []quantity {
	var qs []quantity
	for i := 0; i < len(r.toks); i++ {
		t := &r.toks[i]
		if t.used || t.kind == wordToken && t.word == nil {
			continue
		}
		q, ok := r.quantityAt(i)
		if !ok {
			continue
		}
		if r.tolerance(q.first) || (q.unit != noUnit || q.frac) && r.wordAt(q.last+1, "thick", "thickness", "grueso", "espesor") {
			i = q.last
			continue
		}
		if r.restated(qs, &q) {
			i = q.last
			continue
		}
		if r.plausible(&q) && len(qs) < maxQuantities {
			qs = append(qs, q)
			i = q.last
		}
	}
	qs = r.spreadUnits(qs)
	if u := unitWords[r.Unit]; u != noUnit {
		for i := range qs {
			if qs[i].unit == noUnit {
				qs[i].unit, qs[i].bare = u, false
			}
		}
	}
	return r.metricThroughout(r.unitForAll(qs))
}

// metricThroughout: "uno de 60 x 60 cm y otro de 90 x 60": a pair without a unit after one in
// centimetres or millimetres is in the same.
func (r *reader) metricThroughout(qs []quantity) []quantity {
	u := noUnit
	for i := range qs {
		switch {
		case qs[i].unit == noUnit:
		case qs[i].unit == inch || qs[i].unit == foot || u != noUnit && qs[i].unit != u:
			return qs
		default:
			u = qs[i].unit
		}
	}
	if u == noUnit {
		return qs
	}
	from := slices.IndexFunc(qs, func(q quantity) bool { return q.unit == u })
	for i := from; i < len(qs); i++ {
		if q := &qs[i]; q.unit == noUnit && !q.frac &&
			(r.by(q.last+1) && r.anyOf(qs[i-1].last+1, q.first, otherOne) ||
				r.by(q.first-1) && i > 0 && qs[i-1].unit == u && qs[i-1].last+2 == q.first) {
			q.unit, q.bare = u, false
		}
	}
	return qs
}

// unitForAll gives all lengths the unit that the message names once, beside none of
// them: "in cm: 64.8 x 125.8", "64.8 x 125.8 (centimeters sorry)".
func (r *reader) unitForAll(qs []quantity) []quantity {
	u, word := noUnit, ""
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind != wordToken || t.word == nil || t.word.unit == noUnit || len(t.text) < 2 ||
			t.text == "in" || inQuantity(qs, i) || r.numberAt(i-1).kind != notNumber {
			continue
		}
		if r.unknownUnit(i) {
			continue // "I don't know inches, in meters it's 1.2 by 1.2"
		}
		if u != noUnit && t.word.unit != u || r.wordAt(i-1, "not", "no", "isnt", "arent") {
			return qs
		}
		u, word = t.word.unit, t.text
	}
	if u == noUnit || u == foot && (len(qs) == 0 || !r.allInFeet(qs, word)) || r.wordAt(0, "not") {
		return qs
	}
	for i := range qs {
		if qs[i].unit != noUnit || qs[i].frac && u != inch {
			return qs
		}
	}
	for i := range qs {
		qs[i].unit, qs[i].bare = u, qs[i].bare && word == ""
	}
	return qs
}

// unknownUnit: the person doesn't know or have the unit.
func (r *reader) unknownUnit(i int) bool {
	i--
	for r.among(i, unitLookalikes) {
		i--
	}
	return r.wordAt(i, "no", "not", "isnt", "arent") ||
		r.among(i, unitUnknown) && r.wordsIn(max(0, i-3), i, "dont", "not", "no", "never", "cant")
}

// allInFeet: "2.4 x 4.2, that's feet": the word is said of all the numbers, and none is too
// large for it; "8 feet up" is of something else.
func (r *reader) allInFeet(qs []quantity, word string) bool {
	for i := range qs {
		if qs[i].frac || qs[i].num > maxNominal*qs[i].den {
			return false
		}
	}
	for i := range r.toks {
		if r.wordAt(i, word) {
			return r.among(i-1, beforeFeet) || r.markAt(i-1, '(') || i+1 == len(r.toks) && i-1 == qs[len(qs)-1].last
		}
	}
	return false
}

func inQuantity(qs []quantity, i int) bool {
	for k := range qs {
		if i >= qs[k].first && i <= qs[k].last {
			return true
		}
	}
	return false
}

// maxQuantities bounds how many lengths of one message are looked at.
const maxQuantities = 100

// tolerance: "give or take an inch", "within 1/4": how far off, no length of its own.
func (r *reader) tolerance(i int) bool {
	if r.wordAt(i-1, "by") && r.wordAt(i-2, "off") && r.wordsIn(max(0, i-5), i-2, "was", "were", "im", "am") {
		return true // "I was off by an inch, 31 1/2 wide"
	}
	if i > 1 && r.wordAt(i-1, "by", "a", "an") && r.wordAt(i-2, "off") {
		i-- // "could be off by 1/4"
	}
	if r.labelAt[max(0, i-1)] < 0 || i == 0 {
		return false
	}
	h := &r.labels[r.labelAt[i-1]]
	if h.has1("rough") && r.wordAt(h.last, "off") {
		return true
	}
	return h.has1("rough") && r.wordAt(h.first, "give", "within", "plus") && h.last > h.first
}

// plausible drops words that are numbers only by their letters: "the other one".
func (r *reader) plausible(q *quantity) bool {
	if q.words && q.unit == inch && r.wordAt(q.last, "in") && r.wordAt(q.last+1, "over", "the", "my", "our", "above", "there") &&
		r.wordAt(q.first-1, "put", "putting", "install", "installing", "have", "got") {
		return false // "want to put two in over the shop"
	}
	if q.words && q.num == q.den && q.unit == inch && r.wordAt(q.last, "in") && !r.by(q.last+1) {
		return false // "cut one in"
	}
	if !q.bare || !q.words {
		return true
	}
	if r.wordAt(q.first-1, "those", "these", "the", "them", "esas", "esos", "las", "los") && r.among(q.last+1, doubtsOfFit) {
		return false // "tell me if those two don't go together"
	}
	if q.last > q.first { // "twenty five", "forty eight"
		return true
	}
	if q.num == 1 {
		return r.by(q.last+1) && r.numberAfter(q.last+2) || r.by(q.first-1)
	}
	return true
}

func (r *reader) numberAfter(i int) bool {
	_, next := r.numeralAt(i)
	return next > i
}

// restated finds a length that says the one before again in another unit: "25 1/2 in
// (648 mm)".
func (r *reader) restated(qs []quantity, q *quantity) bool {
	if len(qs) == 0 || q.unit == noUnit {
		return false
	}
	before := &qs[len(qs)-1]
	gap := q.first - before.last - 1
	if gap < 1 || gap > 2 || before.unit == q.unit ||
		!r.markAt(before.last+1, '(') && !r.markAt(before.last+1, '=') && !r.wordAt(before.last+1, "or", "o") {
		return false
	}
	a, b := before.length(), q.length()
	if d := max(a-b, b-a); d > a/50 {
		return false
	}
	before.last = q.last
	if r.markAt(q.last+1, ')') {
		before.last++
	}
	return true
}

// by says whether the token at i stands between two sides: "x", "by", "*", "por".
func (r *reader) by(i int) bool {
	if i < 0 || i >= len(r.toks) {
		return false
	}
	t := &r.toks[i]
	if t.is("por") && r.wordAt(i+1, "favor", "en", "dentro", "fuera", "adentro", "afuera", "ahi", "aqui", "alla") {
		return false // "85364 por favor"
	}
	return !r.timesAt(i) && (t.mark('*') || t.among(byWords))
}

// spreadUnits gives a length the unit of its pair: "2 by 4 feet", "65 cm x 126".
func (r *reader) spreadUnits(qs []quantity) []quantity {
	for i := len(qs) - 2; i >= 0; i-- { // backwards: "25 by 49 by 6 inches"
		a, b := &qs[i], &qs[i+1]
		if a.unit == noUnit && b.unit != noUnit && r.sameUnit(a, b) && spreads(a, b) {
			a.unit, a.bare = b.unit, false
		}
	}
	for i := 1; i < len(qs); i++ {
		a, b := &qs[i-1], &qs[i]
		r.inchesBesideFeet(a, b)
		r.inchesBesideFeet(b, a)
		if b.unit == noUnit && a.unit != noUnit && r.sameUnit(a, b) && spreads(b, a) {
			b.unit, b.bare = a.unit, false
		}
	}
	return qs
}

// inchesBesideFeet: "16 x 2' 3 1/2\"": beside feet and inches a number of twelve or more is
// in inches: nobody writes the longer side in feet and leaves its mark out.
func (r *reader) inchesBesideFeet(bare, other *quantity) {
	if bare.unit != noUnit || !other.feetInches || bare.num < 12*bare.den || bare.num > maxPlainInches*bare.den {
		return
	}
	if bare.in(inch)*3 < other.length() {
		return // 12 ft are as likely beside 10 ft 6
	}
	first, second := bare, other
	if other.first < bare.first {
		first, second = other, bare
	}
	if second.first != first.last+2 || !r.by(first.last+1) {
		return
	}
	bare.unit, bare.bare = inch, false
}

// sameUnit: one of two neighbours is written so that its unit holds for the other.
func (r *reader) sameUnit(a, b *quantity) bool {
	for i := a.last + 1; i < b.first; i++ {
		t := &r.toks[i]
		if r.by(i) || r.labelKind(i, "axis") || t.among(joinsSameUnit) || t.kind == markToken && !r.sentenceEnd(i) {
			continue
		}
		return false
	}
	return true
}

// spreads: feet hold for a small whole number only; "24 x 4 ft" stays in doubt.
func spreads(to, from *quantity) bool {
	switch from.unit {
	case foot:
		return !to.frac && to.num <= 10*to.den
	case inch:
		return true
	}
	return !to.frac && !lopsided(to, from)
}

// lopsided: in the other's unit it would be far too short or long beside it: "25 x 650 mm".
func lopsided(to, from *quantity) bool {
	l, m := to.in(from.unit), from.length()
	return l > 6*m || m > 6*l
}

// length of a quantity with a unit that the message names once for all: "in cm: 64.8 x 125.8".
func (q *quantity) valid() bool {
	l := q.length()
	return !q.bad && l > 0 && l < fitcheck.MaxLength
}
