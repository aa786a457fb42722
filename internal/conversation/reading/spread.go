package reading

import "slices"

// A unit that is said once holds for the numbers beside it.

var (
	otherOne      = wordsOf(`otro otra other another second segundo segunda one uno una`)
	joinsSameUnit = wordsOf(`and to or y a o de the on wide long w l ancho largo`)
)

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
