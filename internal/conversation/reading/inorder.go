package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Kinds of unit that are told of in one breath: in their order, by a share of each, or with
// one name for all.

var (
	bothElse       = wordsOf(`me my us he she ways sides directions layers lados capas`)
	orderFixes     = wordsOf(`no not wait actually sorry or meant perdon digo o instead now correction`)
	sameWhat       = wordsOf(`frame frames framing kind type style setup marco tipo`)
	ofTotalVerbs   = wordsOf(`are of son de measure miden`)
	totalGoesOn    = wordsOf(`are son of de over on en`)
	kindJoins      = wordsOf(`and y & the el la`)
	numberedThings = wordsOf(`skylight unit dome number tragaluz domo`)
	kindNumbers    = wordsOf(`first second third fourth 1st 2nd 3rd 4th primero primera segundo segunda tercero tercera`)
)

// FarSizes is how far sizes of one skylight's parts lie apart at the most, side by side: plastic,
// retainer, frame and curb nest within each other (common practice, no source). What lies
// further apart is of two skylights.
const FarSizes = 7 * fitcheck.Inch

// sizesInOrder: "24 x 48 and 36 x 36", where two kinds are known, or two skylights of which
// nothing told them apart so far: each size is the next one's.
func (r *reader) sizesInOrder(ms []measure) {
	if len(ms) < 2 || len(ms) != r.Units && (r.Units > 1 || r.Count < len(ms) && !r.twoTold(ms)) {
		return
	}
	named := &ms[0]
	if last := &ms[len(ms)-1]; last.says() && !named.says() {
		named = last // "25 x 25 and 25 x 49, plastic edge to edge"
	}
	for k := range ms {
		m := &ms[k]
		if !m.wholeSize() || (m.says() || r.Units > 1) && !m.sameThing(named) {
			return
		}
		if k > 0 && !farApart(m, &ms[k-1]) || r.correctedBetween(&ms[max(k-1, 0)], m) {
			return
		}
	}
	for k := range ms {
		m := &ms[k]
		m.units = []int{k + 1}
		m.topic, m.part, m.face, m.where = named.topic, named.part, named.face, named.where
	}
}

// wholeSize: both sides of a skylight of which it is not known yet which it is.
func (m *measure) wholeSize() bool {
	return m.shape == pair && !m.other && !m.drop && len(m.units) == 0
}

// sameThing: the words say that the same was measured.
func (m *measure) sameThing(o *measure) bool {
	return m.topic == o.topic && m.part == o.part && m.face == o.face
}

// twoTold: nobody said how many there are, but "both" goes before the two sizes, or they answer what
// was measured, or one of them tells it, with nothing but an "and" between: no one skylight has two
// sizes so far apart.
func (r *reader) twoTold(ms []measure) bool {
	if r.Count > 0 || len(ms) != 2 {
		return false
	}
	a, b := &ms[0], &ms[1]
	for i := range a.first {
		if r.wordAt(i, "both", "ambos", "ambas") && !r.among(i+1, bothElse) {
			return true
		}
	}
	for i := a.last + 1; i < b.first; i++ {
		if !r.joinsSizes(i) {
			return false
		}
	}
	if r.askedSize() != "none" && !r.askedTwoSizes() {
		return true
	}
	return r.Units == 0 && (a.says() != b.says() || r.markAt(b.last+1, ',') && r.labelsOnly(b.last+2))
}

// joinsSizes: an "and" or a mark for it.
func (r *reader) joinsSizes(i int) bool {
	return r.wordAt(i, "and", "y") || r.markAt(i, ',') || r.markAt(i, '&') || r.markAt(i, '\n') || r.markAt(i, '"')
}

// says: the words say what was measured, and not only that it is of a skylight.
func (m *measure) says() bool { return m.where && !m.ofWhole() }

// correctedBetween: "24 x 48, no wait, 36 x 36".
func (r *reader) correctedBetween(a, b *measure) bool {
	return b.fixed || r.anyOf(a.last+1, b.first, orderFixes)
}

func farApart(a, b *measure) bool {
	short, long := sidesOf(a)
	otherShort, otherLong := sidesOf(b)
	return abs(short-otherShort) > FarSizes || abs(long-otherLong) > FarSizes
}

func sidesOf(m *measure) (short, long fitcheck.Length) {
	a, b := m.parts[0].length(), m.parts[1].length()
	return min(a, b), max(a, b)
}

// nameForAll: "four are 25 x 49 and two are 37 x 37 outside of the curb": the name after the
// last of the counted kinds is that of all.
func (r *reader) nameForAll(ms []measure) {
	last := &ms[len(ms)-1]
	if !last.where && r.namedByFirst(ms) {
		return
	}
	if !last.where || last.topic == "" && last.part == "" && last.face == "" {
		return
	}
	for k := range ms[:len(ms)-1] {
		if ms[k].where || ms[k].shape != last.shape {
			return
		}
	}
	for i := ms[0].first; i < last.first; i++ {
		if r.labelKind(i, "part") || r.labelKind(i, "face") || r.labelKind(i, "topic") {
			return // it is named before
		}
	}
	for k := range ms[:len(ms)-1] {
		ms[k].topic, ms[k].part, ms[k].face, ms[k].where = last.topic, last.part, last.face, true
	}
}

// namedByFirst: "two that measure 25 x 49 on the outside of the curb and one that measures
// 33 x 33": the name stands with the first alone.
func (r *reader) namedByFirst(ms []measure) bool {
	first := &ms[0]
	if len(ms) < 2 || !first.where || first.topic == "" && first.part == "" && first.face == "" {
		return false
	}
	for k := range ms[1:] {
		if m := &ms[k+1]; m.where || m.topic != "" || m.part != "" || m.face != "" || m.shape != pair && m.shape != square {
			return false
		}
	}
	for k := range ms[1:] {
		m := &ms[k+1]
		m.topic, m.part, m.face, m.where = first.topic, first.part, first.face, true
	}
	return true
}

// listedKinds: "two skylights, the bathroom one and the hall one. metal frames": a list of the
// kinds alone says nothing of any of them, nor does what comes after speak of the last.
func (r *reader) listedKinds() {
	if len(r.refs) < 2 || len(r.groups) > 0 {
		return
	}
	from, to := r.refs[0].first, r.refs[len(r.refs)-1].last
	start := r.sentenceFirst(from)
	if start != r.sentenceFirst(to) || r.sentenceLast(to)+1 >= len(r.toks) || r.pairBetween(start, from) {
		return
	}
	for i := from; i <= r.sentenceLast(to); i++ {
		if r.inRef(i) {
			continue
		}
		if r.toks[i].kind == numToken || covers(r.styles, i) || covers(r.wants, i) || r.choiceFact(i) {
			return
		}
	}
	r.kindList = r.kindsInOrder()
	r.refs, r.trailing = nil, false
}

// inRef: the token is part of what names a kind.
func (r *reader) inRef(i int) bool {
	return slices.ContainsFunc(r.refs, func(u unitRef) bool { return u.first <= i && i <= u.last })
}

// choiceFact: the word says something of a unit: a room says none.
func (r *reader) choiceFact(i int) bool {
	for n := range r.choices {
		h := &r.choices[n]
		if h.first <= i && i <= h.last && h.senses[0].topic != "" && h.senses[0].topic != fitcheck.TopicUse {
			return true
		}
	}
	return false
}

// bothNamed: "one is hazy, the other cracked, both 25 x 49": all kinds that the message names.
func (r *reader) bothNamed() {
	known := r.kindsNamed()
	if known < 2 {
		return
	}
	for n := range r.intros {
		h := &r.intros[n]
		if !h.is("nth", "all") || r.noKind(h) && !r.colorAt(h.last+1) || r.refAt(h.first, h.last+1) ||
			r.refs[0].first > h.first {
			continue
		}
		count := 2
		for i := h.first; i <= h.last; i++ {
			count = max(count, int(r.wholeAt(i)))
		}
		if count == known {
			all := make([]int, known)
			for k := range all {
				all[k] = k + 1
			}
			r.refs = append(r.refs, unitRef{h.first, h.last, all})
		}
	}
	r.sortRefs()
}

// sameKind: "the second one is 37 x 37, same frame".
func (r *reader) sameKind() {
	for i := range r.toks {
		if !r.sameFrame(i) || i+2 < len(r.toks) && r.toks[i+2].kind == numToken {
			continue
		}
		units := r.unitsAt(i, i)
		if len(units) == 0 && r.Units > 1 && r.asked(fitcheck.TopicStyle) {
			units = []int{0}
		}
		if len(units) == 1 && units[0] != 1 {
			r.out.SameKind = append(r.out.SameKind, units[0])
			r.use(i, i+1)
		}
	}
}

// sameFrame: "same frame", "same kind", with nothing before it that measures it.
func (r *reader) sameFrame(i int) bool {
	return r.wordAt(i, "same", "mismo") && r.among(i+1, sameWhat) &&
		!r.wordsIn(max(0, i-3), i, "of", "outside", "inside", "de", "not")
}

// someOfTotal: "six skylights, four are 25 x 49": the others are of another kind.
func (r *reader) someOfTotal(ms []measure, counts []countAt) bool {
	total := slices.IndexFunc(r.out.Facts, func(f Fact) bool { return f.Topic == fitcheck.TopicCount && f.Unit == 0 })
	k := slices.IndexFunc(counts, func(c countAt) bool { return c.value > 1 })
	if total < 0 || k < 0 || !r.among(counts[k].last+1, ofTotalVerbs) {
		return false
	}
	c, all := counts[k], r.out.Facts[total]
	n, _ := all.Value.(fitcheck.Whole)
	if int(n) <= c.value || len(ms[k].units) > 0 {
		return false
	}
	r.forgetTotal()
	ms[k].units = []int{1}
	r.fact(fitcheck.TopicCount, 1, fitcheck.Whole(c.value), c.first, c.last)
	r.fact(fitcheck.TopicCount, 2, n-fitcheck.Whole(c.value), c.first, c.last)
	return true
}

// totalFirst: "I need 2: one is 25 x 25, the other one 30 x 30": as many as kinds are named after.
func (r *reader) totalFirst(c countAt) bool {
	kinds := r.kindsNamed()
	if kinds < 2 || c.value < kinds {
		return false
	}
	first, next := r.refs[0].first, c.last+1
	if c.last >= first || r.pairBetween(c.last, first) || r.wordAt(first, "other", "others", "rest") {
		return false
	}
	return !r.among(next, totalGoesOn) && !(r.wordAt(next, "in") && !r.wordAt(next+1, "total", "all"))
}

// twoCounts: "4 and 2", of kinds that nothing was told of, or of which the sum is meant.
func (r *reader) twoCounts(next int) bool {
	return r.wordAt(next, "and", "y", "plus") && r.wholeAt(next+1) > 0 && r.endsCount(next+2)
}

// bothKinds: "1st: …, 2nd: … both white": both of them, not both layers.
func (r *reader) bothKinds(i int) bool {
	for k := range r.refs {
		if len(r.refs[k].units) > 1 && r.refs[k].last < i+1 && i-r.refs[k].last <= 1 {
			return true
		}
	}
	return false
}

// joinRefs: "#2 and #3 should be bronze": what is said of both.
func (r *reader) joinRefs() {
	for k := 0; k+1 < len(r.refs); k++ {
		a, b := &r.refs[k], &r.refs[k+1]
		if len(b.units) != 1 || len(a.units) != 1 && k == 0 || slices.Contains(a.units, b.units[0]) {
			continue
		}
		if b.units[0] > r.Units && !(r.numberedRef(*a) && r.numberedRef(*b)) || !r.refsJoined(a, b, k+2 < len(r.refs)) {
			continue
		}
		both := append(slices.Clone(a.units), b.units[0])
		a.units, b.units = both, both
	}
}

// refsJoined: nothing but an "and" stands between two kinds, or a comma too where more of them follow.
func (r *reader) refsJoined(a, b *unitRef, more bool) bool {
	i := a.last + 1
	for r.among(i, kindJoins) || r.markAt(i, '&') || more && r.markAt(i, ',') {
		i++
	}
	return i == b.first && (r.wordsIn(a.last+1, b.first, "and", "y") || r.markAt(a.last+1, '&'))
}

// numberedRef: the kind is named by its number: "#2", "the third".
func (r *reader) numberedRef(ref unitRef) bool {
	for i := ref.first; i <= ref.last; i++ {
		if r.toks[i].kind == numToken && (r.markAt(i-1, '#') || r.among(i-1, numberedThings)) {
			return true
		}
	}
	return r.anyOf(ref.first, ref.last+1, kindNumbers)
}

// bothOfOne: "bath: 2 layers, both clear": the layers of the one kind that the sentence is about.
func (r *reader) bothOfOne() {
	for k := 1; k < len(r.refs); k++ {
		if r.layersOfOneKind(k) {
			r.refs = slices.Delete(r.refs, k, k+1)
			return
		}
	}
}

// layersOfOneKind: the k-th kind is a "both" that follows the two layers of the only kind in its sentence.
func (r *reader) layersOfOneKind(k int) bool {
	ref, before := r.refs[k], r.refs[k-1]
	from := r.sentenceFirst(ref.first)
	if !r.wordAt(ref.first, "both", "ambas") || len(before.units) != 1 || from > before.first ||
		k > 1 && r.refs[k-2].first >= from {
		return false
	}
	return slices.ContainsFunc(within(r.choices, before.last+1, ref.first-1), func(h hit) bool {
		v, ok := h.has("layers")
		return ok && v == "2"
	})
}
