package reading

import "example.com/intake-bot/internal/fitcheck"

// allOrOne is the number of all, or a lone one.
func (r *reader) allOrOne() (countAt, bool) {
	if c, ok := r.inAll(); ok && !r.asked(fitcheck.TopicCount) { // "two for now. There are eight in all"
		r.use(c.first, c.last)
		return c, true
	}
	return r.oneSaid()
}

// inAll reads how many skylights there are of all kinds together: "5 in all, some small some big",
// "kitchen 25 x 25 and bath 25 x 49, 5 total", "5 skylights: kitchen 25 x 25 and bath 25 x 49".
func (r *reader) inAll() (countAt, bool) {
	for i := range r.toks {
		n := r.wholeSaid(i)
		if n < 2 || n > 99 || r.used(i) || r.by(i-1) || r.markAt(i-1, '/') || r.markAt(i-1, '$') || r.questioned(i) {
			continue
		}
		next := i + 1
		if r.noun(next) {
			if next++; r.headsKinds(n, i, next) {
				return countAt{n, i, next - 1}, true
			}
		}
		if last := r.totalEndsAt(next); last > 0 {
			return countAt{n, i, last}, true
		}
	}
	return countAt{}, false
}

// headsKinds: "5 skylights: kitchen … and bath …": the number opens a list of kinds.
func (r *reader) headsKinds(n, i, next int) bool {
	kinds := r.kindsFound()
	return kinds > 1 && n > kinds && r.sentenceFirst(i) >= i-3 && (r.markAt(next, ':') || r.markAt(next, ','))
}

// totalEndsAt is where "total", "in all" or "all together" ends that begins at the token, 0 for none.
func (r *reader) totalEndsAt(i int) int {
	switch {
	case r.wordAt(i, "altogether"), r.wordAt(i, "total") && (i+1 >= len(r.toks) || r.toks[i+1].kind == markToken):
		return i
	case r.wordAt(i, "in", "en") && r.wordAt(i+1, "all", "total"), r.wordAt(i, "all") && r.wordAt(i+1, "together"):
		return i + 1
	}
	return 0
}
