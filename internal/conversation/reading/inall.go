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
			next++
		}
		if next == i+2 && n > r.kindsFound() && r.kindsFound() > 1 && r.sentenceFirst(i) >= i-3 && (r.markAt(next, ':') || r.markAt(next, ',')) {
			return countAt{n, i, next - 1}, true
		}
		last := next
		switch {
		case r.wordAt(next, "altogether"), r.wordAt(next, "total") && (next+1 >= len(r.toks) || r.toks[next+1].kind == markToken):
		case r.wordAt(next, "in", "en") && r.wordAt(next+1, "all", "total"), r.wordAt(next, "all") && r.wordAt(next+1, "together"):
			last++
		default:
			continue
		}
		return countAt{n, i, last}, true
	}
	return countAt{}, false
}
