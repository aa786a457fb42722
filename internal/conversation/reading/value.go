package reading

import "example.com/intake-bot/internal/fitcheck"

// record writes the fact or the doubt.
func (r *reader) record(j *judged) {
	units := j.units
	if len(units) == 0 {
		units = []int{0}
	}
	v := r.value(j)
	if j.why == WhyRange {
		v = nil // neither end is what it measures
	}
	if j.why == WhyRough && r.halfSure(j, units) {
		return
	}
	first, last := j.first, j.last
	if j.shaped[0] >= 0 {
		first, last = min(first, j.shaped[0]), max(last, j.shaped[1])
	}
	for _, unit := range units {
		switch {
		case j.why != "":
			r.unclear(j.topic, unit, j.why, v, first, last)
			if j.topic == "" {
				r.out.Unclear[len(r.out.Unclear)-1].Candidates = j.candidates
			}
		case v == nil:
			r.unclear(j.topic, unit, WhyNumber, nil, j.first, j.last)
		default:
			r.fact(j.topic, unit, v, j.first, j.last)
		}
	}
}

// value is the measure in the form of its topic; nil where it does not fit.
func (r *reader) value(j *judged) fitcheck.Value {
	if j.unreadable() {
		return nil
	}
	q := &j.parts[0]
	switch j.topic {
	case fitcheck.TopicCurbDiagonals:
		d := fitcheck.Diagonals{First: q.length()}
		if len(j.parts) > 1 {
			d.Second = j.parts[1].length()
		} else if j.both || j.square {
			d.Second = d.First
		}
		return d
	case fitcheck.TopicCurbHeight, fitcheck.TopicDomeRise:
		for k := range j.parts { // "6 inches front, 6 inches back"
			if j.parts[k].length() != q.length() {
				return nil
			}
		}
		return fitcheck.Height{Height: q.length()}
	}
	return j.size()
}

func (j *judged) size() fitcheck.Value {
	s := fitcheck.Size{Resolution: j.fineness()}
	q := &j.parts[0]
	l := q.length()
	switch {
	case j.shape == fourSides:
		return j.sides(s)
	case j.shape == pair:
		return j.twoSides(s)
	case len(j.parts) > 1:
		return nil
	case j.square, j.both && !j.round && q.side == noSide: // "47 1/2 both"
		s.Width, s.Length = l, l
	case j.round && j.radius:
		s.Diameter = 2 * l
	case j.round:
		s.Diameter = l
	case q.side == width:
		s.Width = l
	case q.side == length:
		s.Length = l
	default:
		s.One = l
	}
	return s
}

// twoSides: width is the smaller side unless the customer named the sides.
func (j *judged) twoSides(s fitcheck.Size) fitcheck.Value {
	a, b := &j.parts[0], &j.parts[1]
	s.Width, s.Length = a.length(), b.length()
	switch {
	case a.side == width || b.side == length:
	case a.side == length || b.side == width:
		s.Width, s.Length = s.Length, s.Width
	case a.side == height:
		s.Width, s.Length = s.Length, s.Width
	case s.Width > s.Length && b.side != height:
		s.Width, s.Length = s.Length, s.Width
	}
	return s
}

// sides keeps four sides in the order given, unless they make a true rectangle.
func (j *judged) sides(s fitcheck.Size) fitcheck.Value {
	var l [4]fitcheck.Length
	for k := range l {
		l[k] = j.parts[k].length()
	}
	a, b := l[0], l[1]
	switch {
	case l[0] == l[2] && l[1] == l[3]:
	case l[0] == l[1] && l[2] == l[3]:
		b = l[2]
	default:
		s.Sides = l[:]
		return s
	}
	s.Width, s.Length = min(a, b), max(a, b)
	return s
}

// fineness is the finest mark that any of the numbers shows, where that is a metric
// one. In inches it is left to the fit check: 25 1/2 is also what 25 8/16 is called, so
// halves and quarters say nothing of the tape.
func (j *judged) fineness() fitcheck.Length {
	var fine fitcheck.Length
	for k := range j.parts {
		if u := unitLengths[j.parts[k].unit]; u == 0 || u%fitcheck.Millimetre != 0 || u%fitcheck.Sixtyfourth == 0 {
			continue
		}
		if f := j.parts[k].resolution(j.parts[k].unit); f > 0 && (fine == 0 || f < fine) {
			fine = f
		}
	}
	return fine
}

// halfSure records the side that is sure of a size whose other side is a guess: "25 1/2 wide,
// length is a guess, maybe 48".
func (r *reader) halfSure(j *judged, units []int) bool {
	a, b := &j.parts[0], &j.parts[len(j.parts)-1]
	if !j.half || !j.topic.OfSize() || a.side != width && a.side != length || a.side == b.side {
		return false
	}
	one := *j.measure
	one.parts, one.shape = one.parts[:1], lone
	sure := judged{measure: &one, topic: j.topic}
	v := r.value(&sure)
	if v == nil {
		return false
	}
	for _, unit := range units {
		r.fact(j.topic, unit, v, j.first, a.last)
		r.unclear(j.topic, unit, WhyRough, nil, b.first, j.last)
	}
	return true
}
