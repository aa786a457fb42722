package reading

import "example.com/intake-bot/internal/fitcheck"

// What may follow a unit in one length: the inches behind feet, a part, marks of a tape.

var (
	tapeMarkWords = wordsOf(`little small tiny more of the those de las esas`)
)

// inchesAfter adds the inches after feet: 2' 1 1/2", 2 ft 1.5, two foot one and a half.
func (r *reader) inchesAfter(q *quantity) {
	first := q.last + 1
	i := first
	if r.markAt(i, '-') || r.markAt(i, ',') || r.wordAt(i, "and", "con", "y", "plus", "&") {
		i++
	}
	n, next := r.numeralAt(i)
	if next == i {
		n, next = r.numeralBySound(i)
	}
	if next == i || n.bad || r.splitsFeet(i, next) {
		return
	}
	rest := fitcheck.Length((n.num*int64(fitcheck.Inch) + n.den/2) / n.den)
	if rest >= fitcheck.Foot || n.num == 0 && r.unitAt(next) != inch {
		return
	}
	u := r.unitAt(next)
	if u == noUnit && n.frac && n.num < n.den && n.den < 8 && !r.markAt(q.last, '\'') { // "two feet and a half"
		q.last = next - 1
		if n.den != 2 || r.toks[i-1].kind != wordToken || i == first { // "4 ft 1/4": of a foot or of an inch
			q.bad = true
			return
		}
		q.num, q.den, q.fine = q.num*n.den+n.num*q.den, q.den*n.den, fitcheck.Foot/fitcheck.Length(n.fine)
		return
	}
	if u != noUnit && u != inch || u == noUnit && r.countsOther(next) {
		return
	}
	q.extra, q.fine, q.feetInches = rest, fitcheck.Inch/fitcheck.Length(n.fine), true
	q.last = next - 1
	if u == inch {
		q.last = next
		r.partAfterUnit(q)
	}
}

// splitsFeet: the number from i on is another length, not the inches of the feet
// before: "2 ft, 4 ft", "4 ft 26 wide".
func (r *reader) splitsFeet(i, next int) bool {
	if u := r.unitAt(next); u == foot || u == metre || u == centimetre || u == millimetre {
		return true
	}
	return r.toks[i-1].mark(',') && r.unitAt(next) != inch
}

// centimetresAfter: "1 metro 20", "1m20".
func (r *reader) centimetresAfter(q *quantity) {
	i := q.last + 1
	if r.wordAt(i, "con", "y", "and") {
		i++
	}
	w := r.wholeAt(i)
	if w < 10 || w > 99 || q.den != 1 {
		return
	}
	if u := r.unitAt(i + 1); u != noUnit && u != centimetre {
		return
	} else if u == centimetre {
		q.last = i + 1
	} else {
		q.last = i
	}
	q.extra, q.fine = fitcheck.Length(w)*fitcheck.Centimetre, fitcheck.Centimetre
}

// partAfterUnit: "25 inches and a half", "una pulgada y media".
func (r *reader) partAfterUnit(q *quantity) {
	i := q.last + 1
	if q.frac || q.dec || !r.wordAt(i, "and", "y", "n", "con") {
		if a, b, next, ok := r.slashed(i); ok && !q.frac && !q.dec && tapePart(b) && a < b && r.unitAt(next) == noUnit {
			r.addPart(q, a, b, next) // 25" 1/2
		}
		return
	}
	a, b, next, ok := r.spokenPart(i + 1)
	if !ok {
		a, b, next, ok = r.slashed(i + 1)
	}
	if ok && tapePart(b) && a > 0 && a < b {
		r.addPart(q, a, b, next)
	}
}

func (r *reader) addPart(q *quantity, a, b int64, next int) {
	q.extra += fitcheck.Inch * fitcheck.Length(a) / fitcheck.Length(b)
	q.fine, q.frac = fitcheck.Inch/fitcheck.Length(b), true
	q.last = next - 1
	if r.unitAt(next) == inch {
		q.last = next
	}
}

// tapeMarks is where words end that count the lines of a tape, whose width nobody told; 0 where none do.
func (r *reader) tapeMarks(i int) int {
	for r.among(i, tapeMarkWords) {
		i++
	}
	if !r.wordAt(i, "marks", "mark", "ticks", "tick", "lines", "notches", "hashes", "rayitas", "rayas") {
		return 0
	}
	if !r.wordAt(i+1, "past", "over", "more", "extra") {
		return i
	}
	if r.wordAt(i+2, "the", "a", "half") {
		return 0 // "3 of the little lines past the half"
	}
	return i + 1
}

func (r *reader) partNext(i int) bool {
	_, _, _, ok := r.slashed(i)
	return ok
}

// areaAfter: "4 sq ft", "4 feet squared": an area, no length.
func (r *reader) areaAfter(q *quantity) bool {
	return r.wordAt(q.last+1, "squared", "cuadrados", "cuadrado") && q.unit != noUnit ||
		q.unit == noUnit && r.wordAt(q.last+1, "sq", "square", "sqft", "cubic") && r.unitAt(q.last+2) == foot
}
