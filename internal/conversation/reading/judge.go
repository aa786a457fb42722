package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var takesBack = wordsOf(`actually sorry meant correction oops wait really perdon digo realidad`)

// Where a number without a unit stops being plain inches. A skylight over 96 in a
// side is rare, 96 to 300 are likelier centimetres, above that millimetres; two whole
// numbers up to 10 name a nominal size in feet. Common practice, no source.
const (
	maxPlainInches = 96
	// where another number of the message is in inches
	maxSpokenInches = 144
	maxNominal      = 10
	maxFeet         = 15
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
		if m.other && m.shape == lone && m.parts[0].bare && r.asked(fitcheck.TopicLayers) {
			continue // "the room is cold so two"
		}
		if m.drop ||
			m.other && !(m.shape == broken && r.asked(fitcheck.TopicPlasticSize)) && (m.topic == "" || m.thing) ||
			r.notTheirs(m) || r.hypothetical(m) {
			r.use(m.first, m.last)
			continue
		}
		if k > 0 && !m.where && (ms[k-1].drop || r.takenBack(&ms[k-1], m)) && (m.shape == lone || m.shape == ms[k-1].shape) {
			m.topic, m.part, m.face = ms[k-1].topic, ms[k-1].part, ms[k-1].face // "the height isn't 4, it's 6"
			m.where, m.named = ms[k-1].where, ms[k-1].where
		}
		if len(all) > 0 && !m.where && m.shape == lone {
			if before := &all[len(all)-1]; before.where && before.shape == lone && r.sideFirst(m) &&
				sidesMeet(&before.parts[0], &m.parts[0]) && slices.Equal(m.units, before.units) {
				// "the curb is 25 3/4 wide on the outside. length still 49 1/2"
				m.topic, m.part, m.face = before.topic, before.part, before.face
			}
		}
		j := judged{measure: m}
		j.topic, j.candidates = r.topicOf(m)
		r.settleHeight(&j, all)
		r.besidePlastic(&j, ms)
		r.besideCurb(&j, ms)
		r.metalMeasured(&j)
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

// sideFirst: the side is named right before the measure, and nothing else that has it: "length
// still 49 1/2".
func (r *reader) sideFirst(m *measure) bool {
	i := m.first
	if !r.axisAt(i) {
		i--
	}
	for r.wordAt(i, "is", "still", "stays", "its", "was", "es", "sigue") || r.markAt(i, ':') {
		i--
	}
	return r.axisAt(i) && (i == 0 || r.toks[i-1].kind == markToken || r.wordAt(i-1, "and", "the", "y", "el", "la", "but"))
}

// takenBack: "the inside was 22 x 46 but it's actually 23 x 47".
func (r *reader) takenBack(a, b *measure) bool {
	if a.where && !b.where && a.shape == b.shape && r.wordsIn(a.last+1, b.first, "redid", "remeasured", "retook", "rechecked") {
		return true // "1st try on the curb was 25 1/4 x 49 1/4. Redid it and 25 1/2 x 49 1/2 is right"
	}
	return b.fixed && a.where && a.shape == b.shape && r.anyOf(a.last+1, b.first, takesBack)
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
	if q.side != noSide && q.side != someSide ||
		j.topic != "" && j.named && (len(r.Asked) == 0 || r.askedSize() != "none" || j.measure.topic != "") {
		return true
	}
	if j.diag && j.both && q.length() > fitcheck.Foot {
		return true // "49 1/2 por 49 1/2 por fuera y las dos diagonales dan 70"
	}
	if j.topic != "" && r.asked(j.topic) || j.shape != lone {
		return !r.timeNear(j.measure)
	}
	return j.named && len(r.Asked) == 0 && j.part != "skylight" && j.part != "dome" ||
		r.alone(j.measure) && (len(r.Asked) == 0 || r.askedSize() != "none")
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
	if j.part == "opening" && r.asked(fitcheck.TopicProblem) &&
		r.wordsIn(j.last+1, min(j.last+4, len(r.toks)), "hole", "hoyo", "agujero") {
		return true // how large a hole was broken
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
	if j.topic == fitcheck.TopicCurbHeight && j.parts[0].unit == inch && j.parts[0].side == height && r.sizeBefore(j.first) {
		return false // "my barn has 6, curb outside 36 x 60, 10 inches high"
	}
	first, last := r.sentence(j.first)
	labels := within(r.labels, first, last)
	for n := range labels {
		if labels[n].is("other", "other") && j.shape == lone && !r.bearsSkylight(&labels[n]) && !r.standsBy(&labels[n]) {
			return true
		}
	}
	return r.nominal(j) && j.shape == pair &&
		(len(r.Asked) > 0 || r.wordsIn(first, last, "takes", "lumber", "framed", "built", "made", "prop", "studs", "stud"))
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
	case j.tooThin():
		return WhyUnits
	case j.shape == ranged && j.dashedFeet():
		return WhyUnits
	case j.shape == ranged:
		return WhyRange
	case j.nominal && r.nominal(j):
		return WhyNominal
	case r.unitsAsked() && (j.rough || r.unitsUnsure()) || r.unitsEither(j.last) > 0:
		return WhyUnits
	case j.rough:
		return WhyRough
	case r.nominal(j):
		return WhyNominal
	case j.ofNoSide():
		return WhyNumber
	case r.unitDoubt(j) || j.beyond():
		return WhyUnits
	case j.topic == "":
		return WhyWhich
	}
	return ""
}

// ofNoSide: "the metal strip is 1 1/4 wide all around": so few inches are no side of a skylight.
func (j *judged) ofNoSide() bool {
	q := &j.parts[0]
	return j.topic.OfSize() && j.shape == lone && !j.round && (j.square || j.part != "") && (q.frac || q.unit == inch) &&
		q.length() < 4*fitcheck.Inch
}

// tooThin: a side without a unit that no skylight has in inches, "1.20 x 60", or one of a
// part of an inch, whose whole inches were lost.
func (j *judged) tooThin() bool {
	const least = 4
	if !j.topic.OfSize() || j.shape != pair {
		return false
	}
	for k := range j.parts {
		if q := &j.parts[k]; q.unit == noUnit && !q.feetInches && q.extra == 0 && q.num < least*q.den && (q.dec || q.frac) ||
			q.length() < fitcheck.Inch {
			return true
		}
	}
	return false
}

// dashedFeet: "3-6 x 5-2" are likelier feet and inches than ranges.
func (j *judged) dashedFeet() bool {
	for k := range j.parts {
		if q := &j.parts[k]; !q.bare || q.num >= 12 {
			return false
		}
	}
	return len(j.parts) == 4
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
	if j.topic != "" && !j.topic.OfSize() && j.topic != fitcheck.TopicCurbDiagonals &&
		!(j.shape == pair && j.topic == fitcheck.TopicCurbHeight && j.parts[0].num == 2*j.parts[0].den) {
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
	if j.halfMetric() {
		return true
	}
	for k := range j.parts {
		q := &j.parts[k]
		if q.unit == foot && q.length() > maxFeet*fitcheck.Foot {
			return true
		}
		if q.unit != noUnit || q.frac {
			continue
		}
		if q.num > maxPlainInches*q.den && !(r.inInches && q.num <= maxSpokenInches*q.den) {
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

// halfMetric: one of several numbers has a metric unit, another none.
func (j *judged) halfMetric() bool {
	metric, none := false, false
	for k := range j.parts {
		switch q := &j.parts[k]; {
		case q.unit == millimetre || q.unit == centimetre || q.unit == metre:
			metric = true
		case q.unit == noUnit && !q.frac:
			none = true
		}
	}
	return metric && none
}

// small: a number without a unit that is likelier feet than inches.
func (j *judged) small(k int) bool {
	q := &j.parts[k]
	return q.unit == noUnit && !q.frac && q.num <= maxNominal*q.den
}
