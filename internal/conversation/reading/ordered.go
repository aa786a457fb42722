package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Where sizes come first and what they are is told after them, in their order; and where one
// of two kinds is named only by the other.

var whereBothAre = wordsOf(`in on are over of at were need estan en sobre necesitan`)

// orderedTold: "25 1/2 x 49 1/2, 22 1/2 x 46 1/2, first is the outside of the curb, second is
// the inside", "outside then inside": two sizes, and after them what each is of.
func (r *reader) orderedTold(ms []measure) {
	if len(ms) != 2 || ms[0].shape != ms[1].shape || ms[0].shape != pair && ms[0].shape != square {
		return
	}
	if ms[0].face != "" && ms[1].face != "" && ms[0].face != ms[1].face || ms[0].topic != "" && ms[1].topic != "" {
		return // told already
	}
	from := ms[1].last + 1
	second := -1
	for i := from; i < len(r.toks); i++ {
		if r.wordAt(i, "second", "2nd", "segundo", "segunda") && r.wordsIn(from, i, "first", "1st", "primero", "primera") ||
			r.wordAt(i, "then", "luego", "despues") && r.labelsOnly(i+1) {
			second = i
			break
		}
	}
	if second < 0 || !r.labelled(from, second-1) || !r.labelled(second, r.sentenceLast(second)) {
		return
	}
	r.namedFrom(&ms[0], from, second-1)
	r.namedFrom(&ms[1], second, r.sentenceLast(second))
	for k := range ms {
		if other := &ms[1-k]; ms[k].part == "" && ms[k].topic == "" && other.part != "" {
			ms[k].part = other.part
		}
	}
	r.refs = slices.DeleteFunc(r.refs, func(u unitRef) bool { return u.first >= from })
}

// namedFrom takes what a measure is of from the names between two tokens alone.
func (r *reader) namedFrom(m *measure, from, to int) {
	m.topic, m.part, m.face, m.units, m.where, m.drop, m.fixed = "", "", "", nil, true, false, false
	labels := within(r.labels, from, to)
	for n := range labels {
		for _, s := range labels[n].senses {
			switch {
			case s.kind == "topic" && m.topic == "":
				m.topic = fitcheck.Topic(s.value)
			case s.kind == "part" && m.part == "":
				m.part = s.value
			case s.kind == "face" && m.face == "":
				m.face = s.value
			}
		}
	}
}

// firstOfTwo: "22 x 22, the other two are 30 x 46": what comes before the other kind is of
// the first; how many others there are is their count.
func (r *reader) firstOfTwo(ms []measure) {
	other := -1
	for k := range ms {
		switch {
		case k+1 < len(ms) && r.isCount(&ms[k], &ms[k+1]):
		case len(ms[k].units) == 0 && other < 0 && (ms[k].shape == pair || ms[k].square):
		case slices.Equal(ms[k].units, []int{2}) && other < 0:
			other = k
		default:
			return
		}
	}
	if other < 1 || r.Units > 2 {
		return
	}
	for k := range ms[:other] {
		ms[k].units = []int{1}
	}
	r.countOfOthers(ms[:other])
}

// countOfOthers: "the other three are 24 x 24".
func (r *reader) countOfOthers(before []measure) {
	if len(before) > 1 && before[0].shape == lone {
		before = before[1:] // its count: "four are 25 x 25 and the other three …"
	}
	for k := range r.refs {
		ref := &r.refs[k]
		n := r.wholeAt(ref.last)
		if t := &r.toks[ref.last]; t.kind == wordToken && t.word != nil && isWhole(t.word.number.kind) {
			n = t.word.number.value // used, as a part of the kind's name
		}
		if n > 1 && ref.last > ref.first && slices.Equal(ref.units, []int{2}) &&
			r.wordsIn(ref.first, ref.last, "other", "others", "otros", "otras") && len(before) == 1 {
			r.fact(fitcheck.TopicCount, 2, fitcheck.Whole(n), ref.first, ref.last)
		}
	}
}

// withAndWithout: "25 5/8 with the flashing and 25 1/2 without" are one side twice.
func (r *reader) withAndWithout(a, b *quantity) bool {
	after := min(b.last+4, len(r.toks))
	return r.wordsIn(a.last+1, b.first, "with", "con") && r.wordsIn(b.last+1, after, "without", "sin", "w/o") ||
		r.wordsIn(a.last+1, b.first, "without", "sin") && r.wordsIn(b.last+1, after, "with", "con") ||
		r.wordsIn(max(0, a.first-3), a.first, "with", "con") && r.wordsIn(a.last+1, b.first, "without", "sin")
}

// faceAfterPor: "los dos por fuera": the "por" leads to a face, not to a second side.
func (r *reader) faceAfterPor(i int) bool {
	return r.wordAt(i, "por") && r.wordAt(i+1, "fuera", "dentro", "afuera", "adentro", "el", "la")
}

// bothOfThem: "one leaks, the other I can't see through. Both in my shop": two are spoken of.
func (r *reader) bothOfThem() (countAt, bool) {
	for i := range r.toks {
		if !r.wordAt(i, "both", "ambos", "ambas") || !r.sentenceEnd(i-1) ||
			!r.among(i+1, whereBothAre) ||
			r.wordAt(i+2, "sides", "ways", "layers", "ends", "edges", "corners") ||
			r.wordsIn(0, i, "roofer", "bid", "quote", "guy", "contractor", "roofers", "bids") {
			continue
		}
		for k := range i {
			if r.wordAt(k, "one", "uno", "una") && (k == 0 || r.toks[k-1].kind == markToken) &&
				!r.wordAt(k+1, "of", "side", "end", "edge", "corner", "layer", "way", "de", "lado") {
				for j := k + 1; j < i; j++ {
					if r.wordAt(j, "other", "otro", "otra") && r.wordAt(j-1, "the", "el", "la") &&
						!r.wordAt(j+1, "side", "end", "edge", "corner", "layer", "way", "lado") {
						return countAt{2, i, i}, true
					}
				}
			}
		}
	}
	return countAt{}, false
}

// countsRefs: "two, the kitchen one and the bath one": the number is of the units named
// after it, all together.
func (r *reader) countsRefs(c countAt) bool {
	kinds := map[int]bool{}
	if r.wordAt(c.last, "of", "de") || r.wordAt(c.last+1, "of", "de", "for", "para") {
		return false // "two of the first kind and one of the second"
	}
	for k := range r.refs {
		if r.refs[k].first <= c.last || len(r.refs[k].units) != 1 {
			return false
		}
		kinds[r.refs[k].units[0]] = true
	}
	return c.value > 1 && len(kinds) == c.value
}
