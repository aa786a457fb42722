package reading

import "example.com/intake-bot/internal/fitcheck"

// A slope told by its parts, in whatever words between: what the roof goes up or down, and over what
// length it does so: "1 inch of rise in 12 inches", "climbs 3 inches over a foot", "for every 12 inches
// across it rises 7", "a foot for every three feet".

var (
	runWords = wordsOf(`across out over of run horizontal horizontally sideways the it roof that you go i goes is
		its get el techo de distance level`)
	perRunLinks = wordsOf(`in over for per to every each across por cada en on`)
	riseLinks   = wordsOf(`in over for per to every each across por cada en on the of`)
	riseWords   = wordsOf(`rise rises rising rose drop drops dropping fall falls climb climbs gain gains slope slopes
		pitch goes up down higher lower sube baja caida vertical`)
	notTheRoofs = wordsOf(`curb curbs dome box frame bubble above sticks stands wide long tall flashing`)
	riseVerbs   = wordsOf(`rise rises drop drops fall falls climb climbs gain gains goes slants sube baja up`)
)

// slopeLength is a length in a slope; a number without a unit counts as inches.
type slopeLength struct {
	first, last int
	length      fitcheck.Length
	unit        unit
}

// riseOverRun reads such a slope that begins at token i.
func (r *reader) riseOverRun(i int) bool {
	a, ok := r.slopeLengthAt(i)
	if !ok {
		return false
	}
	if !r.asked(fitcheck.TopicRoofSlope) && !r.roofRises(i) {
		return false
	}
	rise, run := a, a
	if r.wordAt(i-1, "every", "each", "per", "cada") {
		j := a.last + 1
		for r.among(j, runWords) || r.markAt(j, ',') || r.riseWord(j) {
			j++
		}
		if rise, ok = r.slopeLengthAt(j); !ok || j == a.last+1 {
			return false
		}
	} else {
		j := a.last + 1
		for r.wordAt(j, "of", "up", "down", "vertical", "vertically", "de") || r.riseWord(j) {
			j++
		}
		if r.by(j) || !r.among(j, perRunLinks) {
			return false
		}
		for r.among(j, riseLinks) {
			j++
		}
		if run, ok = r.slopeLengthAt(j); !ok {
			return false
		}
	}
	if run.unit == noUnit && run.length != 12*fitcheck.Inch ||
		run.length < 6*fitcheck.Inch || run.unit == inch && run.length%(12*fitcheck.Inch) != 0 ||
		run.unit == foot && rise.unit != foot && run.length != 12*fitcheck.Inch ||
		rise.length > 2*run.length || rise.length <= 0 {
		return false
	}
	first, last := min(rise.first, run.first), max(rise.last, run.last)
	r.sayslope(fitcheck.Slope{Rise: rise.length * 12 * fitcheck.Inch / run.length, Run: 12 * fitcheck.Inch}, first, last)
	return true
}

// slopeLengthAt is the length that begins at token i: "5", "1 inch", "three feet", "a foot".
func (r *reader) slopeLengthAt(i int) (slopeLength, bool) {
	if r.used(i) || i < 0 || i >= len(r.toks) {
		return slopeLength{}, false
	}
	n, next := numeral{num: 1, den: 1}, i
	if r.wordAt(i, "a", "one", "un", "foot") && r.footAt(i+number(!r.wordAt(i, "foot"))) {
		next = i + number(!r.wordAt(i, "foot"))
	} else if n, next = r.numeralAt(i); next == i || n.bad || n.num <= 0 {
		return slopeLength{}, false
	}
	s := slopeLength{first: i, last: next - 1, unit: r.unitAt(next)}
	if r.markAt(next, '"') || r.wordAt(next, "in") && (r.markAt(next+1, '.') || r.wordAt(next+1, "in", "of", "per", "for", "over")) {
		s.unit = inch
	} else if r.wordAt(next, "in") {
		s.unit = noUnit // "5 in 12"
	}
	per := fitcheck.Inch
	switch s.unit {
	case foot:
		per = 12 * fitcheck.Inch
	case inch, noUnit:
	default:
		return slopeLength{}, false
	}
	if s.unit != noUnit {
		s.last = next
		if r.markAt(next+1, '.') && r.toks[next+1].glued && !r.sentenceEnd(next+1) {
			s.last++
		}
	}
	s.length = fitcheck.Length(n.num * int64(per) / n.den)
	return s, true
}

func (r *reader) footAt(i int) bool { return r.wordAt(i, "foot", "ft", "pie") }

// riseWord: the word says that a roof goes up or down.
func (r *reader) riseWord(i int) bool {
	return r.among(i, riseWords)
}

// roofRises: the sentence speaks of a roof or its pitch that rises.
func (r *reader) roofRises(i int) bool {
	from, to := r.sentence(i)
	if r.anyOf(from, to+1, notTheRoofs) {
		return false
	}
	if r.wordsIn(from, to+1, "pitch", "pitched", "slope", "slopes", "pendiente", "inclinacion") {
		return true
	}
	return r.wordsIn(from, to+1, "roof", "roofs", "techo", "run") && r.anyOf(from, to+1, riseVerbs)
}
