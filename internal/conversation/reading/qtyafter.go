package reading

import "example.com/intake-bot/internal/fitcheck"

// Counts that stand after what they count: "25 x 49 (qty 9), 30 x 30 (qty 4)", and counts
// of sorts that no size tells apart: "3 big ones and 1 small one".

var kindSizeWords = wordsOf(`big large bigger larger small smaller little long longer short shorter square round
	wide narrow largo largos largas cuadrado cuadrados cuadradas redondo redondos grande grandes chico chicos chica
	chicas pequeno pequenos pequena pequenas`)

// countsAfter finds the counts that stand after sizes of two sides; fewer than two are left
// to the plain counts. Their numbers are no lengths.
func (r *reader) countsAfter() []countAt {
	if r.asked(fitcheck.TopicCurbDiagonals) {
		return nil
	}
	var found []countAt
	from := 0
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind != numToken || t.used || t.dec > 0 || t.whole < 1 || t.whole > 99 {
			continue
		}
		if c, ok := r.countAfter(from, i); ok {
			found = append(found, c)
			from = c.last + 1
		}
	}
	if len(found) < 2 {
		return nil
	}
	for _, c := range found {
		r.use(c.first, c.last)
	}
	return found
}

// countAfter is the count at a number, where a size of two sides ends right before it.
func (r *reader) countAfter(from, i int) (countAt, bool) {
	j := i - 1
	named := false
	for r.wordAt(j, "qty", "quantity", "cantidad", "need") ||
		(r.markAt(j, ':') || r.markAt(j, '=')) && r.wordAt(j-1, "qty", "quantity", "cantidad", "need") {
		named = true
		j--
	}
	open := r.markAt(j, '(')
	for r.markAt(j, '(') || r.markAt(j, ',') || r.markAt(j, '-') && !r.toks[j].glued {
		j--
	}
	if j == i-1 || j < from || r.toks[j].kind != numToken && !r.markAt(j, '"') && r.unitAt(j) == noUnit || !r.pairBetween(from, j) {
		return countAt{}, false
	}
	closed := open && r.markAt(i+1, ')')
	after := r.wordAt(i+1, "ea", "pcs", "pc", "units", "skylights", "domes", "pieces", "piezas") ||
		r.wordAt(i+1, "of", "de") && r.wordAt(i+2, "them", "those", "these", "ellos", "estos", "esos")
	if !named && !closed && !after ||
		named && !closed && !after && i+1 < len(r.toks) && r.toks[i+1].kind != markToken && !r.softBreak(i+1) {
		return countAt{}, false
	}
	return countAt{int(r.toks[i].whole), i, i}, true
}

// pairBetween: a "by" between numbers stands there.
func (r *reader) pairBetween(from, to int) bool {
	for i := from + 1; i < to; i++ {
		if r.by(i) && r.numberAfter(i+1) {
			return true
		}
	}
	return false
}

// countedAfter gives each size that a count follows its kind, and records the counts.
func (r *reader) countedAfter(ms []measure, counts []countAt) bool {
	if len(counts) == 0 || len(r.refs) > 0 {
		return false
	}
	of := make([]int, len(counts))
	for n, c := range counts {
		of[n] = -1
		for k := range ms {
			if ms[k].last < c.first && (ms[k].shape == pair || ms[k].shape == square) {
				of[n] = k
			}
		}
		if of[n] < 0 || n > 0 && of[n] == of[n-1] {
			return false
		}
	}
	r.forget(fitcheck.TopicCount)
	for n, c := range counts {
		m := &ms[of[n]]
		m.units = []int{n + 1}
		if n > 0 && !m.where && m.topic == "" {
			last := &ms[of[n-1]]
			m.topic, m.part, m.face, m.where = last.topic, last.part, last.face, last.where
		}
		r.fact(fitcheck.TopicCount, n+1, fitcheck.Whole(c.value), c.first, c.last)
	}
	return true
}

// countsOfSizes: "3 big ones and 1 small one": two counts, each of a sort that is told by
// nothing but how large it is.
func (r *reader) countsOfSizes() bool {
	var found []countAt
	for i := 0; i < len(r.toks); i++ {
		n, next := r.countNumber(i)
		for next > i && r.wordAt(next, "of", "the", "those", "de", "los", "las") {
			next++
		}
		if next == i || n < 1 || n > 99 || r.used(i) || !r.among(next, kindSizeWords) {
			continue
		}
		if r.wordAt(next, "wide", "long", "narrow", "largo") && (n > 12 || r.wordsIn(0, len(r.toks), "wide", "width", "ancho")) &&
			!r.wordAt(next+1, "one", "ones", "skylight", "skylights", "dome", "domes", "unit", "units") {
			return false // "curb outside is 31 wide, 47 long"
		}
		for r.wordAt(next, "big", "large", "small", "little") && r.wordAt(next+1, "square", "round", "long", "old") {
			next++
		}
		last := next
		if r.wordAt(last+1, "one", "ones", "skylight", "skylights", "dome", "domes", "unit", "units") {
			last++
		}
		if r.by(last+1) ||
			last+1 < len(r.toks) &&
				(r.toks[last+1].kind == numToken || r.wordAt(last+1, "crack", "cracks", "hole", "holes", "chip", "chips", "leak", "leaks")) {
			return false
		}
		found = append(found, countAt{n, i, last})
		i = last
	}
	if len(found) != 2 || !r.onlyJoins(found[0].last+1, found[1].first) ||
		r.toks[found[0].last].text == r.toks[found[1].last].text && r.wordAt(found[0].last-1, r.toks[found[1].last-1].text) {
		return false
	}
	for k, c := range found {
		r.fact(fitcheck.TopicCount, k+1, fitcheck.Whole(c.value), c.first, c.last)
		r.use(c.first, c.first)
	}
	return true
}

// onlyJoins: nothing but a comma or "and" stands between two tokens.
func (r *reader) onlyJoins(from, to int) bool {
	if r.wordAt(from, "over", "in", "on", "at", "for", "above", "sobre", "en") { // where they are
		for k := 0; k < 4 && from < to && !r.wordAt(from, "and", "y", "plus", "then") && r.toks[from].kind == wordToken; k++ {
			from++
		}
	}
	for i := from; i < to; i++ {
		if !r.markAt(i, ',') && !r.wordAt(i, "and", "y", "plus", "then") {
			return false
		}
	}
	return from < to
}
