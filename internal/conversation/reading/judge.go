package reading

import (
	"fmt"
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Where a number without a unit stops being plain inches. A skylight over 96 in a
// side is rare, 96 to 300 are likelier centimetres, above that millimetres; two whole
// numbers up to 10 name a nominal size in feet. Common practice, no source.
const (
	maxPlainInches = 96
	maxNominal     = 10
	maxFeet        = 15
)

// Sides and heights that no skylight has: most likely the unit is another one. What is
// merely unlikely is for the fit check to find. Common practice, no source.
const (
	longestSide = 20 * fitcheck.Foot
	tallestCurb = 4 * fitcheck.Foot
)

// judged is a measure with what it is of.
type judged struct {
	*measure
	topic      fitcheck.Topic
	candidates []fitcheck.Topic
	why        Why // "" for a fact
}

// resolve turns measures into facts and doubts.
func (r *reader) resolve(ms []measure) {
	var all []judged
	for k := range ms {
		m := &ms[k]
		if m.drop || m.other && (m.topic == "" || m.thing) || r.notTheirs(m) || r.hypothetical(m) {
			r.use(m.first, m.last)
			continue
		}
		if k > 0 && ms[k-1].drop && !m.where && m.shape == lone {
			m.topic, m.part, m.face = ms[k-1].topic, ms[k-1].part, ms[k-1].face // "the height isn't 4, it's 6"
			m.where, m.named = ms[k-1].where, ms[k-1].where
		}
		j := judged{measure: m}
		j.topic, j.candidates = r.topicOf(m)
		r.settleHeight(&j, all)
		if !r.isMeasure(&j) || r.unasked(&j) {
			continue
		}
		j.why = r.doubt(&j)
		r.use(m.first, m.last)
		all = append(all, j)
	}
	for _, j := range r.corrected(all) {
		r.record(&j)
	}
}

// settleHeight: a height without a part of its own belongs to what was measured last.
func (r *reader) settleHeight(j *judged, before []judged) {
	if j.topic != "" || len(j.parts) != 1 || j.parts[0].side != height || j.part != "" {
		return
	}
	for k := len(before) - 1; k >= 0; k-- {
		switch partOf(before[k].topic) {
		case "curb":
			j.topic = fitcheck.TopicCurbHeight
			return
		case "plastic", "bulge":
			j.topic = fitcheck.TopicDomeRise
			return
		}
	}
}

// isMeasure tells a length from a number that only stands there: a lone whole number
// needs a unit, a name, or a question that it answers.
func (r *reader) isMeasure(j *judged) bool {
	q := &j.parts[0]
	part := q.frac && q.num < q.den && q.unit == noUnit && r.askedSize() == "none" && !j.named
	if j.shape != lone || !q.bare && !part || j.square || j.round {
		return true
	}
	if q.side != noSide && q.side != someSide || j.topic != "" && j.named && (len(r.Asked) == 0 || r.askedSize() != "none" || j.measure.topic != "") {
		return true
	}
	if j.topic != "" && r.asked(j.topic) || j.shape != lone {
		return !r.timeNear(j.measure)
	}
	return j.named && len(r.Asked) == 0 && j.part != "skylight" && j.part != "dome" || r.alone(j.measure) && (len(r.Asked) == 0 || r.askedSize() != "none")
}

// unasked drops what no size question asked for and nothing marks as a size of ours:
// "9/10 sure", "a 2x4 to prop it open", hail of 1 3/4 inch.
func (r *reader) unasked(j *judged) bool {
	if j.shape == ranged && j.parts[0].bare && (r.timeNear(j.measure) || r.askedSize() == "none" && !j.where) {
		return true
	}
	if r.askedSize() != "none" {
		return false
	}
	if j.rough && j.topic == "" && j.shape == lone && len(r.Asked) > 0 {
		return true
	}
	if j.where && j.part != "skylight" {
		return false
	}
	if j.unreadable() || j.rough && j.shape == lone && len(r.Asked) > 0 {
		return true
	}
	first, last := r.sentence(j.first)
	labels := within(r.labels, first, last)
	for n := range labels {
		if labels[n].is("other", "other") && j.shape == lone {
			return true
		}
	}
	return r.nominal(j) && j.shape == pair && (len(r.Asked) > 0 || r.wordsIn(first, last, "takes", "lumber", "framed", "built", "made", "prop", "studs", "stud"))
}

// alone says whether the measure is all that the message says.
func (r *reader) alone(m *measure) bool {
	for i := range r.toks {
		if (i < m.first || i > m.last) && r.toks[i].kind != markToken {
			return false
		}
	}
	return true
}

// doubt finds why a measure is no fact.
func (r *reader) doubt(j *judged) Why {
	switch {
	case j.rough && j.shape == broken && j.readable():
		return WhyRough
	case j.unreadable():
		return WhyNumber
	case j.shape == ranged:
		return WhyRange
	case j.nominal && r.nominal(j):
		return WhyNominal
	case j.rough:
		return WhyRough
	case r.nominal(j):
		return WhyNominal
	case r.unitDoubt(j) || j.beyond():
		return WhyUnits
	case j.topic == "":
		return WhyWhich
	}
	return ""
}

// beyond: a length that can't be one of a skylight.
func (j *judged) beyond() bool {
	for k := range j.parts {
		l := j.parts[k].length()
		switch {
		case j.topic.OfSize() && l > longestSide:
			return true
		case (j.topic == fitcheck.TopicCurbHeight || j.topic == fitcheck.TopicDomeRise) && l > tallestCurb:
			return true
		}
	}
	return false
}

// readable: each of its numbers can be read, whatever they are together.
func (j *judged) readable() bool {
	for k := range j.parts {
		if !j.parts[k].valid() {
			return false
		}
	}
	return true
}

func (j *judged) unreadable() bool {
	if j.shape == broken || j.orphan || j.girth {
		return true
	}
	for k := range j.parts {
		if !j.parts[k].valid() && !(j.topic == fitcheck.TopicDomeRise && j.parts[k].num == 0 && !j.parts[k].bad) {
			return true
		}
	}
	return false
}

func (r *reader) nominal(j *judged) bool {
	if j.nominal && j.topic != fitcheck.TopicCurbHeight {
		return true
	}
	if j.topic != "" && !j.topic.OfSize() && j.topic != fitcheck.TopicCurbDiagonals && !(j.shape == pair && j.topic == fitcheck.TopicCurbHeight) {
		return false
	}
	if j.shape != pair {
		return false
	}
	for k := range j.parts {
		q := &j.parts[k]
		if q.unit != noUnit || q.frac || q.num > maxNominal*q.den || 2*q.num%q.den != 0 {
			return false
		}
	}
	return true
}

func (r *reader) unitDoubt(j *judged) bool {
	mixed := j.parts[0].unit
	for k := range j.parts {
		q := &j.parts[k]
		if q.unit == foot && q.length() > maxFeet*fitcheck.Foot {
			return true
		}
		if q.unit != noUnit || q.frac {
			continue
		}
		if q.num > maxPlainInches*q.den {
			return true
		}
		if mixed == foot || k+1 < len(j.parts) && j.parts[k+1].unit == foot {
			return true
		}
	}
	small := j.parts[0]
	if j.shape == pair && j.small(0) && j.small(1) {
		return true
	}
	if j.topic.OfSize() && j.shape != pair && small.unit == noUnit && !small.frac && small.num <= maxNominal*small.den {
		return true
	}
	return false
}

// small: a number without a unit that is likelier feet than inches.
func (j *judged) small(k int) bool {
	q := &j.parts[k]
	return q.unit == noUnit && !q.frac && q.num <= maxNominal*q.den
}

// record writes the fact or the doubt.
func (r *reader) record(j *judged) {
	units := j.units
	if len(units) == 0 {
		units = []int{0}
	}
	v := r.value(j)
	for _, unit := range units {
		switch {
		case j.why != "":
			r.unclear(j.topic, unit, j.why, v, j.first, j.last)
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
		if len(j.parts) != 1 {
			return nil
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
	case j.square || j.both && !j.round && q.side == noSide && j.shape == lone && j.squareBoth():
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

func (j *judged) squareBoth() bool { return false }

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

// corrected leaves out what a later measure of the same thing replaces.
func (r *reader) corrected(all []judged) []judged {
	var out []judged
	for _, j := range all {
		k := lastOf(out, &j)
		switch {
		case k < 0 || j.topic == "" && !j.fixed:
			out = append(out, j)
		case j.was:
		case r.wordAt(j.first-1, "or", "o") && j.why == "" && out[k].why == "":
			out[k].why, out[k].last = WhyRange, j.last
		case j.shape == pair && out[k].shape == pair && !j.fixed && !r.fixedBetween(&out[k], &j) && j.topic.OfSize() && !sameLengths(&out[k], &j):
			out = append(out, conflict(&out[k], j))
		case j.shape == lone && out[k].shape == pair && j.parts[0].side == noSide && j.fixed:
			out[k].replaceSide(&j)
		case j.shape == lone && out[k].shape == lone && (sidesMeet(&out[k].parts[0], &j.parts[0]) || out[k].paired(&j)):
			out[k].parts = []quantity{out[k].parts[0], j.parts[0]}
			out[k].shape, out[k].last = pair, j.last
		case j.fixed || r.fixedBetween(&out[k], &j) || out[k].why != "" && out[k].shape != broken || sameValue(r.value(&out[k]), r.value(&j)):
			out[k] = j
		default: // two measures of one thing: which of them holds is asked
			out[k].parts, out[k].shape, out[k].last = append(append([]quantity{}, out[k].parts...), j.parts...), broken, j.last
			out[k].why = WhyNumber
		}
	}
	return out
}

// conflict: of two sizes of one thing, that which names what it is of stands; where
// both or neither do, it is asked which holds.
func conflict(a *judged, b judged) judged {
	if !a.where || b.where {
		a.why, a.topic = WhyWhich, ""
	}
	b.why, b.topic = WhyWhich, ""
	return b
}

func sameValue(a, b fitcheck.Value) bool { return fmt.Sprint(a) == fmt.Sprint(b) }

// fixedBetween: the measure before is taken back or what it was before.
func (r *reader) fixedBetween(a, b *judged) bool {
	return a.was || r.wordsIn(max(0, a.first-5), a.first, "said", "thought", "wrote", "told", "gave", "sent", "had", "dije") ||
		r.wordsIn(a.last+1, b.first, "not", "no", "sorry", "actually", "wait", "instead", "again", "remeasured", "wrong", "now")
}

func sameLengths(a, b *judged) bool {
	for k := range a.parts {
		if a.parts[k].length() != b.parts[k].length() {
			return false
		}
	}
	return true
}

// paired: two diagonals, or two numbers called one way and the other.
func (j *judged) paired(k *judged) bool {
	a, b := j.parts[0].side, k.parts[0].side
	return !k.fixed && (j.topic == fitcheck.TopicCurbDiagonals || a == someSide && b == someSide)
}

func sidesMeet(a, b *quantity) bool {
	return a.side == width && b.side == length || a.side == length && b.side == width
}

func lastOf(all []judged, j *judged) int {
	for k := len(all) - 1; k >= 0; k-- {
		if all[k].topic == j.topic && slices.Equal(all[k].units, j.units) {
			return k
		}
	}
	return -1
}

// replaceSide: "25 1/2 x 49 1/2, sorry 49 3/4" corrects the side that it is nearer to.
func (j *judged) replaceSide(with *judged) {
	parts := append([]quantity{}, j.parts...)
	l := with.parts[0].length()
	if abs(parts[0].length()-l) < abs(parts[1].length()-l) {
		parts[0] = with.parts[0]
	} else {
		parts[1] = with.parts[0]
	}
	j.parts, j.last = parts, with.last
}

func abs(l fitcheck.Length) fitcheck.Length { return max(l, -l) }
