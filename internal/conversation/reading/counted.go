package reading

// countsElse: the number counts or names something else than skylights: "from the 60s",
// "2 guys looked", the last digits of a long ZIP code.
func (r *reader) countsElse(i, next int) bool {
	if r.markAt(i-1, '+') && r.toks[i].glued || i >= 2 && r.markAt(i-1, '-') && r.toks[i].glued && r.toks[i-2].kind == numToken {
		return true
	}
	if next < len(r.toks) && r.toks[next].glued && r.wordAt(next, "s", "ies") {
		return true
	}
	for r.wordAt(next, "other", "different", "of", "little", "young", "old") {
		next++
	}
	return r.thingAt(next) || r.wordAt(next, "guys", "guy", "men", "companies", "contractors", "contractor", "roofers", "roofer", "people", "quotes", "tenants", "coats",
		"buckets", "friends", "stories", "bedroom", "bedrooms", "cars", "car", "calls", "handymen", "places", "shops", "personas", "tipos", "kinds", "sizes", "types", "winters",
		"summers", "boards", "screws", "cracks", "leaks", "holes", "spots", "story", "percent", "boys", "girls", "owners")
}

// countAlone is where a number stands that is a whole clause, from which on a count is
// looked for: "I had 2 quotes already, it's my motorhome, 1"; 0 where none does.
func (r *reader) countAlone() int {
	for i := range r.toks {
		if r.used(i) {
			continue
		}
		n, next := r.countNumber(i)
		if next > i && n > 0 && r.endsCount(next) && (i == 0 || r.toks[i-1].kind == markToken && !r.toks[i].glued) {
			return i
		}
	}
	return 0
}

// endsCount: the clause ends, or only small words follow that a count may have.
func (r *reader) endsCount(i int) bool {
	return i >= len(r.toks) || r.toks[i].kind == markToken || r.wordAt(i, "one", "unit", "skylight", "dome", "please", "total", "only", "for", "thanks", "of", "tragaluz", "domo")
}
