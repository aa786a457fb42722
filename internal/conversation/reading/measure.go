package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	yardsToAway    = wordsOf(`from away off of sale dumpster trailer down behind de`)
	unitLookalikes = wordsOf(`in en de the son es is are las los any about my by well con`)
	unitUnknown    = wordsOf(`know do have understand use speak think se entiendo uso tengo manejo conozco good`)
	beforeFeet     = wordsOf(`in thats is its are theyre all en son es was those`)
	doubtsOfFit    = wordsOf(`dont do doesnt arent cant match fit go seem should numbers measurements no`)
	byWords        = wordsOf(`x by bt buy bye bu xs times por bij ex bby byu bi`)
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
