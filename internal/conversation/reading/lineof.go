package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// A list of questions is often answered a line each, and each line in its own way:
// "24 x 39 for the first and 32 x 48 for the second", then "1: 25 x 41 2: 33 x 49".

// lineOf gives the tokens of the line around a token; to is not part of it.
func (r *reader) lineOf(i int) (from, to int) {
	for from = i; from > 0 && !r.toks[from-1].mark('\n'); from-- {
	}
	for to = i; to < len(r.toks) && !r.toks[to].mark('\n'); to++ {
	}
	return from, to
}

// refsOfLine gives the kinds of unit that the line around the token names, where it
// names several, and whether they stand after what is said of them; else all.
func (r *reader) refsOfLine(i int) ([]unitRef, bool) {
	from, to := r.lineOf(i)
	lo, hi := 0, 0
	for k := range r.refs {
		if r.refs[k].last < from {
			lo = k + 1
		}
		if r.refs[k].first < to {
			hi = k + 1
		}
	}
	if hi-lo < 2 || hi-lo == len(r.refs) {
		return r.refs, r.trailing
	}
	return r.refs[lo:hi], r.namedAfter(r.refs[lo:hi], from, to)
}

// lineTopics gives the sizes that were asked for to the lines that tell sizes, in
// their order, where there are as many of each and no size is named.
func (r *reader) lineTopics(ms []measure) {
	var asked []fitcheck.Topic
	for _, t := range r.Asked {
		if t.OfLength() && !slices.Contains(asked, t) {
			asked = append(asked, t)
		}
	}
	lines := make([]int, len(ms))
	n, last := 0, -1
	for k := range ms {
		from, _ := r.lineOf(ms[k].first)
		if from != last {
			n, last = n+1, from
		}
		lines[k] = n - 1
		if ms[k].where || ms[k].diag || ms[k].other || ms[k].shape == broken {
			return
		}
	}
	if len(asked) < 2 || n != len(asked) {
		return
	}
	for k := range ms {
		ms[k].topic = asked[lines[k]]
	}
}

// askedTogether gives two sizes that were asked for together, the outer first, to the two
// that the message tells: one that says what it is of leaves the other, and two that say
// nothing come in the order asked. Only where the outer goes around the inner, as it must:
// else it is asked which is which.
func (r *reader) askedTogether(ms []measure) {
	if !r.askedTwoSizes() || len(ms) == 0 || len(ms) > 2 {
		return
	}
	if len(ms) == 1 {
		r.otherOfAsked(&ms[0])
		return
	}
	if r.Units <= 1 && ms[0].walledFrom(&ms[1]) {
		r.refs, ms[0].units, ms[1].units = nil, nil, nil // "the first is 25 1/2 x 49 1/2, the second 23 x 47"
	}
	outer := 0
	if !ms[0].where && !ms[1].where && ms[1].walledFrom(&ms[0]) && ms[1].lipAround(&ms[0]) {
		outer = 1 // told the other way around
	}
	for k := range ms {
		m := &ms[k]
		if m.drop || m.was || m.fixed || m.other || m.diag || m.topic != "" && !m.where || !slices.Equal(m.units, ms[0].units) {
			return
		}
		if !m.where {
			continue
		}
		switch t, _ := r.topicOf(m); t {
		case r.Asked[k]:
		case r.Asked[1-k]:
			outer = 1
		default:
			return
		}
	}
	if !ms[outer].around(&ms[1-outer]) || ms[0].where && ms[1].where {
		return
	}
	ms[outer].topic, ms[1-outer].topic = r.Asked[0], r.Asked[1]
}

// otherOfAsked: "I can't get to the outside, sorry. Okay, I got 22 x 46": of two sizes that
// were asked for, one can't be had, so what is told without a name is the other. Else it may
// be either.
func (r *reader) otherOfAsked(m *measure) {
	if m.where || m.topic != "" {
		return
	}
	for n := range r.labels {
		h := &r.labels[n]
		if h.first >= r.clauseStart(m.first) && h.first <= r.clauseEnd(m.last) || !isName(h) || !r.cantTold(h) {
			continue
		}
		for k, t := range r.Asked {
			if own, _ := sizeTopic(partOf(t), h.senses[0].value); h.is("part", partOf(t)) ||
				h.is("topic", string(t)) || h.is("face", h.senses[0].value) && own == t {
				m.topic = r.Asked[1-k]
				return
			}
		}
	}
	_, m.either = m.extent() // a single side is asked for its other one anyway
}

func (r *reader) askedTwoSizes() bool {
	return len(r.Asked) == 2 && r.Asked[0].OfSize() && r.Asked[1].OfSize()
}

// walledFrom: the size is larger than the other by about the same both ways, as what goes
// around a thing is, and as two unlike skylights hardly ever are. Common practice, no source.
func (m *measure) walledFrom(other *measure) bool {
	a, ok := m.extent()
	b, known := other.extent()
	return ok && known && walls(a[0]-b[0], a[1]-b[1])
}

// lipAround: so much larger as a lip or two walls make it, and not as a nominal size and the
// true one of the same thing differ.
func (m *measure) lipAround(other *measure) bool {
	const least = 3 * fitcheck.Inch / 2
	a, _ := m.extent()
	b, _ := other.extent()
	return min(a[0]-b[0], a[1]-b[1]) >= least
}

// walls: two differences that the same walls, or the same lip, can make.
func walls(d, e fitcheck.Length) bool {
	return min(d, e) > 0 && max(d, e) <= 8*fitcheck.Inch && abs(d-e) <= fitcheck.Inch
}

// around: the size is larger than the other both ways.
func (m *measure) around(other *measure) bool {
	a, ok := m.extent()
	b, known := other.extent()
	return ok && known && a[0] > b[0] && a[1] > b[1]
}

// extent is the smaller and the larger side of a size, a diameter twice.
func (m *measure) extent() (e [2]fitcheck.Length, ok bool) {
	switch {
	case m.shape == pair && len(m.parts) == 2:
		a, b := m.parts[0].length(), m.parts[1].length()
		return [2]fitcheck.Length{min(a, b), max(a, b)}, true
	case len(m.parts) == 1 && (m.square || m.round || m.both || m.shape == square || m.shape == round):
		return [2]fitcheck.Length{m.parts[0].length(), m.parts[0].length()}, true
	}
	return e, false
}
