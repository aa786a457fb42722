package reading

import "example.com/intake-bot/internal/fitcheck"

// counts reads how many units there are: "3 skylights", "two of them", "just one".
func (r *reader) counts() {
	if r.known(fitcheck.TopicCount) {
		return
	}
	var found []countAt
	for i := range r.toks {
		if c, ok := r.countFrom(i); ok {
			found = append(found, c)
		}
	}
	for _, c := range found {
		r.countFact(c)
	}
	if len(found) == 0 && r.asked(fitcheck.TopicCount) {
		r.countAnswer()
	}
}

type countAt struct {
	value       int
	first, last int
}

func (r *reader) countFact(c countAt) {
	units := r.unitsAt(c.first, c.last)
	if len(units) != 1 {
		units = []int{0}
	}
	r.fact(fitcheck.TopicCount, units[0], fitcheck.Whole(c.value), c.first, c.last)
}

var countNouns = map[string]bool{"skylights": true, "skylight": true, "domes": true, "dome": true, "units": true, "unit": true,
	"bubbles": true, "lenses": true, "skylites": true, "tragaluces": true, "tragaluz": true, "domos": true, "domo": true,
	"claraboyas": true, "claraboya": true, "cupulas": true}

// countFrom reads a count with what it counts at token i.
func (r *reader) countFrom(i int) (countAt, bool) {
	if r.used(i) {
		return countAt{}, false
	}
	n, next := r.countNumber(i)
	if next == i || n < 1 || n > 500 {
		return countAt{}, false
	}
	if r.negated(i) || r.questioned(i) && !r.sized(i) {
		return countAt{}, false
	}
	for j := next; j < len(r.toks) && j < next+4; j++ {
		t := &r.toks[j]
		if t.kind != wordToken {
			return countAt{}, false
		}
		if countNouns[t.text] {
			if r.wordAt(j+1, "frame", "frames", "is", "size", "layer", "layers") && n == 1 {
				return countAt{}, false
			}
			return countAt{n, i, j}, !r.wordAt(i-1, "the", "that", "this", "of", "each", "every", "other", "no", "number", "unit", "any", "el", "la")
		}
		if !r.countAdjective(j) {
			break
		}
	}
	if r.wordAt(next, "of", "de") && r.wordAt(next+1, "them", "these", "those", "ellos", "ellas", "estos", "estas", "the") && n > 1 {
		return countAt{n, i, next + 1}, true
	}
	return countAt{}, false
}

func (r *reader) sized(i int) bool { return false }

// countAdjective: a word that may stand between a number and the units.
func (r *reader) countAdjective(i int) bool {
	return r.wordAt(i, "identical", "same", "matching", "old", "cracked", "leaking", "broken", "hazy", "plastic", "acrylic", "bubble",
		"square", "round", "big", "small", "large", "different", "separate", "skylight", "leaky", "yellow", "clear", "replacement", "new", "of", "the", "these", "those", "more", "bad", "flat", "curb", "mount", "mounted")
}

func (r *reader) countNumber(i int) (n, next int) {
	t := &r.toks[i]
	if t.kind == numToken {
		if t.dec > 0 || t.bad || t.code || t.whole > 500 || r.markAt(i+1, '/') || r.markAt(i-1, '/') || r.by(i+1) || r.by(i-1) || r.unitAt(i+1) != noUnit {
			return 0, i
		}
		return int(t.whole), i + 1
	}
	switch {
	case r.wordAt(i, "a") && r.wordAt(i+1, "pair", "couple") && r.wordAt(i+2, "of"):
		if r.wordAt(i+1, "couple") {
			return 0, i
		}
		return 2, i + 3
	case r.wordAt(i, "half") && r.wordAt(i+1, "a") && r.wordAt(i+2, "dozen"):
		return 6, i + 3
	case r.wordAt(i, "dozen"):
		return 12, i + 1
	}
	if v, end := r.cardinal(i); end > i && !r.by(end) && r.unitAt(end) == noUnit {
		return int(v), end
	}
	return 0, i
}

// countAnswer reads a bare number as the answer to "how many?".
func (r *reader) countAnswer() {
	for i := range r.toks {
		if r.used(i) || r.negated(i) {
			continue
		}
		n, next := r.countNumber(i)
		switch {
		case r.wordAt(i, "half") && r.wordAt(i+1, "a") && r.wordAt(i+2, "dozen"):
			n, next = 6, i+3
		case r.wordAt(i, "a") && r.wordAt(i+1, "dozen"):
			n, next = 12, i+2
		case r.wordAt(i, "pair", "both", "par"):
			n, next = 2, i+1
		case r.wordAt(i, "couple", "few", "several", "varios", "algunos", "bunch"):
			r.unclear(fitcheck.TopicCount, 0, WhyRough, nil, i, i)
			return
		case r.wordAt(i, "single", "solo"):
			n, next = 1, i+1
		}
		if next == i || n < 1 || n > 500 || r.wordAt(next, "days", "weeks", "minutes", "or", "to", "photos", "second", "sec") {
			continue
		}
		r.use(i, next-1)
		r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(n), i, next-1)
		return
	}
}
