package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	countGapWords = wordsOf(`of them em those these the skylights ellos ellas esos estos ea each pcs pc qty quantity
		count that at with con measuring sized size outside inside curb curbs openings holes kind same identical small
		big large smaller bigger larger little ones one square round de son miden mide measure measures are is other
		others medium tiny huge chicos chicas grandes pequenos pequenas medianos medianas iguales otros otras upstairs
		downstairs arriba abajo`)
	whereLinks   = wordsOf(`in on over above for en sobre at along del de para near by`)
	leadsToCount = wordsOf(`son hay have need got are want there the quote order price for of plus buy get tengo
		necesito los las other otros otras our my mis these those only just`)
)

// countedKinds finds how many units there are of each size: "2 of them are 24x48 and
// one is 30x30", "2 - 24x48". Two sizes with a count each are two kinds of unit.
func (r *reader) countedKinds(ms []measure) []measure {
	counts := make([]countAt, len(ms))
	n := 0
	var out []measure
	var outCounts []countAt
	for k := range ms {
		m := &ms[k]
		if k+1 < len(ms) && r.isCount(m, &ms[k+1]) {
			counts[k+1] = countAt{int(m.parts[0].num), m.first, m.last}
			continue
		}
		if m.shape == lone && m.parts[0].bare && !m.round && !m.square {
			out, outCounts = append(out, *m), append(outCounts, countAt{})
			continue
		}
		if c := r.countInWords(m); c.value > 0 && (counts[k].value == 0 || c.first > counts[k].last) {
			counts[k] = c // of "two: one 2x2 and one 2x4" the nearer
		}
		if counts[k].value > 0 {
			n++
		}
		out, outCounts = append(out, *m), append(outCounts, counts[k])
	}
	r.recordKinds(out, outCounts, n)
	return out
}

// totalOfKinds: "two skylights: first …, second …": a total is no count of one kind.
func (r *reader) totalOfKinds() {
	if len(r.refs) == 0 || r.wordAt(r.refs[0].first, "one") && r.refs[0].first == r.refs[0].last {
		return // "two, 24 x 48 on one and 30 x 30 on the other"
	}
	kinds, n, each := [2]bool{}, 0, false
	for _, f := range r.out.Facts {
		if f.Unit == 1 || f.Unit == 2 {
			kinds[f.Unit-1] = true
		}
		n = max(n, f.Unit)
		each = each || f.Topic == fitcheck.TopicCount && f.Unit > 0
	}
	more := slices.ContainsFunc(r.out.Facts, func(f Fact) bool {
		all, ok := f.Value.(fitcheck.Whole)
		return f.Topic == fitcheck.TopicCount && ok && int(all) > n
	})
	if named := max(n, r.unclearKinds()); named > 1 && !each {
		r.out.Total = r.totalTold(named)
	}
	if kinds[0] && kinds[1] && (each || !more) { // how many there are of each is still to be asked
		r.forgetTotal()
	}
}

// isCount: a lone whole number that counts what the next measure measures.
func (r *reader) isCount(m, next *measure) bool {
	q := &m.parts[0]
	if n := &next.parts[0]; n.frac && n.num < n.den {
		return false // "57 inches and 5 of the eighths"
	}
	if m.shape != lone || !q.bare || q.side != noSide || q.num > 99 ||
		next.shape == lone && !next.round && !next.square ||
		next.parts[0].unit != noUnit && next.shape == lone {
		return false
	}
	if m.first == 0 && r.markAt(m.last+1, ',') && m.last+2 == next.first && next.shape == pair && q.num <= 12 &&
		next.parts[0].num > 4*next.parts[0].den {
		return true // "2, 24 1/2 x 48 1/2 is the plastic"
	}
	return r.countGap(m.last+1, next.first)
}

// countGap: only words that join a count to a size stand between.
func (r *reader) countGap(from, to int) bool {
	for i := from; i < to; i++ {
		t := &r.toks[i]
		if end := r.whereTold(i, to); end > i {
			i = end
			continue
		}
		if t.among(countGapWords) || t.mark('-') || t.mark(':') || t.mark(')') || t.mark('@') ||
			t.kind == wordToken && (countNouns.has(t.text) || t.word != nil && t.word.filler) {
			continue
		}
		return false
	}
	return true
}

// whereTold: "over the gym", "en la cocina": where the counted ones are, up to the last of
// four words; i where no such words stand there.
func (r *reader) whereTold(i, to int) int {
	if !r.among(i, whereLinks) || r.by(i) && r.toks[i].text != "by" {
		return i
	}
	end := i
	if r.wordAt(i, "de") && !r.wordAt(i+1, "la", "el", "las", "los", "mi", "arriba", "abajo") ||
		r.wordAt(i+1, "center", "centers", "average", "total", "hand") {
		return i
	}
	for end+1 < to && end < i+4 && r.toks[end+1].kind == wordToken && r.wholeAt(end+1) < 0 && !r.softBreak(end+1) &&
		!r.refAt(end+1, end+2) && !r.wordAt(end+1, "are", "is", "son", "measure", "measures", "miden", "mide") {
		end++
	}
	return end
}

// countInWords: "one is 30x30", "two curbs outside 24x48".
func (r *reader) countInWords(m *measure) (found countAt) {
	for i := m.from; i < m.first; i++ {
		n := r.wholeAt(i)
		if n < 1 || n > 50 || r.toks[i].used || r.markAt(i-1, '/') || r.unitAt(i+1) != noUnit {
			continue
		}
		if i > m.from && !r.softBreak(i-1) && !r.sentenceEnd(i-1) && !r.toks[i-1].mark(':') && !r.among(i-1, leadsToCount) {
			continue
		}
		if r.countGap(i+1, m.first) {
			found = countAt{int(n), i, i}
		}
	}
	return found
}

// recordKinds gives measures with counts their kinds, and records the counts.
func (r *reader) recordKinds(ms []measure, counts []countAt, n int) {
	if n == 0 && len(r.refs) == 0 {
		r.sizesInOrder(ms)
		r.twoSizes(ms)
		r.kindsByRoom(ms)
	}
	if len(r.refs) > 0 {
		r.countsOfRefs(ms, counts)
		return
	}
	if n == 0 || n == 1 && r.someOfTotal(ms, counts) {
		return
	}
	if n > 1 {
		r.forget(fitcheck.TopicCount) // the total of all kinds
		dropTotal(ms, counts)
		r.nameForAll(ms)
	}
	unit := 0
	for k := range ms {
		c := counts[k]
		if n > 1 && c.value > 0 {
			unit++
		}
		if n > 1 && unit > 0 && len(ms[k].units) == 0 {
			ms[k].units = []int{unit}
		}
		if c.value > 0 && (n > 1 || c.value > 1 && !r.known(fitcheck.TopicCount)) {
			r.fact(fitcheck.TopicCount, min(unit, n), fitcheck.Whole(c.value), c.first, c.last)
		}
	}
}

// dropTotal: "we need nine total. seven of 50 x 50 and two of 26 x 50": the number of all.
func dropTotal(ms []measure, counts []countAt) {
	total := int64(0)
	for _, c := range counts {
		total += int64(c.value)
	}
	for k := range ms {
		if m := &ms[k]; m.shape == lone && m.parts[0].bare && m.parts[0].num == total {
			m.drop = true
		}
	}
}

// countsOfRefs: "four are 25 x 25 and the other three 25 x 37": each size has its kind by
// name, and some are counted.
func (r *reader) countsOfRefs(ms []measure, counts []countAt) {
	n, kinds := 0, 0
	for k, c := range counts {
		n += number(c.value > 0)
		for _, u := range ms[k].units {
			kinds = max(kinds, u)
		}
	}
	for k := range ms {
		if m := &ms[k]; kinds > 1 && m.shape == lone && m.parts[0].bare && m.parts[0].words && len(m.units) == 0 &&
			m.parts[0].num == int64(kinds) {
			m.drop = true // "son dos, uno de 60 por 60 y otro de 60 por 120"
		}
	}
	for k, c := range counts {
		if c.value > 0 && r.totalFirst(c) {
			continue
		}
		if m := &ms[k]; (c.value > 1 || c.value == 1 && n > 1 && !r.wordAt(c.first-1, "the", "other")) && len(m.units) == 1 &&
			(m.shape == pair || m.shape == square) {
			r.forgetTotal()
			r.fact(fitcheck.TopicCount, m.units[0], fitcheck.Whole(c.value), c.first, c.last)
		}
	}
}

// forgetTotal: where one kind has its count, the number of all is no count of a kind.
func (r *reader) forgetTotal() {
	r.out.Facts = slices.DeleteFunc(r.out.Facts, func(f Fact) bool { return f.Topic == fitcheck.TopicCount && f.Unit == 0 })
}

// twoSizes: "two sizes: 25 x 25 over the baths, 49 x 49 over the gym": as many sizes as
// kinds were spoken of.
func (r *reader) twoSizes(ms []measure) {
	kinds := 0
	for i := range r.toks {
		if n := r.wholeAt(i); n > 1 && n < 5 &&
			(r.wordAt(i+1, "sizes", "kinds", "types", "medidas", "tamanos") ||
				r.wordAt(i+1, "different", "diff", "distintos", "diferentes") &&
					r.wordAt(i+2, "sizes", "kinds", "types", "ones", "skylights", "domes", "units", "tamanos", "medidas")) {
			kinds = int(n)
		}
	}
	for k := range ms {
		if ms[k].shape != pair && ms[k].shape != square || ms[k].other || ms[k].drop {
			return
		}
	}
	if kinds < 2 || len(ms) != kinds {
		return
	}
	for k := range ms {
		ms[k].units = []int{k + 1}
	}
}
