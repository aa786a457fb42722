package reading

import "example.com/intake-bot/internal/fitcheck"

// A number of skylights that only its place in a message tells, where something else was asked.

var (
	orderAllVerbs = wordsOf(`put do make need want get order for on`)
	allLinks      = wordsOf(`are is of them the son exactly`)
)

// countBetween: "barn, 3, yellow and brittle": a number alone between two signs, where the
// building was asked about.
func (r *reader) countBetween() {
	defer r.countAtEnd()
	for i := 1; i < len(r.toks); i++ {
		n, next := r.countNumber(i)
		if next == i || n < 1 || n > 50 || r.used(i) || r.toks[i].glued {
			continue
		}
		if r.toks[i-1].kind != markToken || !r.stopAt(next) || r.markAt(next, '-') {
			continue
		}
		r.use(i, next-1)
		r.countFact(countAt{n, i, next - 1})
		return
	}
}

// countAfterUse: "Iris Cole, 28801, house, one. fiberglass frame": a number between two
// signs, right behind the building.
func (r *reader) countAfterUse() (countAt, bool) {
	if len(r.Asked) > 0 && !r.asked(fitcheck.TopicName) && !r.asked(fitcheck.TopicPlace) {
		return countAt{}, false
	}
	for i := 2; i < len(r.toks); i++ {
		if !r.markAt(i-1, ',') || !r.saysUse(i-2) {
			continue
		}
		n, next := r.countNumber(i)
		ends := next == len(r.toks) || r.markAt(next, ',') || r.sentenceEnd(next)
		if next == i+1 && n > 0 && n < 10 && !r.toks[i].used && ends {
			return countAt{n, i, i}, true
		}
	}
	return countAt{}, false
}

// countAtEnd: "frame good, just the plastic, one", "metal frame on a curb, just the one": the
// last words of an answer to something that no number answers.
func (r *reader) countAtEnd() {
	if r.known(fitcheck.TopicCount) || r.countInLine() || len(r.Asked) == 0 && !r.skylightNamed(0, len(r.toks)) {
		return
	}
	if r.numberAsked() || len(r.refs) > 0 || r.allOrdered() {
		return
	}
	last := len(r.toks) - 1
	for last > 0 && r.toks[last].kind == markToken {
		last--
	}
	first := last
	if r.wordAt(last, "them", "those") && r.wordAt(last-1, "of") {
		first = last - 2
	}
	n := int(r.wholeAt(first))
	if r.wordAt(first, "one", "uno", "una", "un") {
		n = 1
	}
	if n < 1 || n > 12 || first < 2 || r.used(first) || r.toks[first].glued || r.toks[first].kind != wordToken {
		return
	}
	if r.beginsLastPart(first) {
		r.countFact(countAt{n, first, last})
	}
}

// numberAsked: what was asked may be answered by a number, or by a word that goes before one.
func (r *reader) numberAsked() bool {
	return r.askedSize() != "none" || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicColor) ||
		r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicCount)
}

// allOrdered takes "actually put all three on it", said to the list, as how many there are.
func (r *reader) allOrdered() bool {
	if !r.asked(fitcheck.TopicConfirm) || r.Units > 1 {
		return false
	}
	for n := range r.intros {
		h := &r.intros[n]
		k := int(numberWords[r.toks[h.last].text].value)
		if k > 1 && h.is("nth", "all") && r.among(h.first-1, orderAllVerbs) && !r.wordAt(h.last+1, "layers", "layer", "sides") {
			r.countFact(countAt{k, h.first, h.last})
			return true
		}
	}
	return false
}

// beginsLastPart: the number, with "just" or "just the" before it, begins the last part of the message.
func (r *reader) beginsLastPart(first int) bool {
	start := first
	switch {
	case r.wordAt(first-1, "the") && r.wordAt(first-2, "just", "only"):
		start = first - 2
	case r.among(first-1, onlyWords):
		start = first - 1
	}
	if start < 1 {
		return false
	}
	return r.markAt(start-1, ',') || r.sentenceEnd(start-1) || start < first && r.wordAt(start-1, "its", "is", "and")
}

// allTold: "same for all three of them", "all three the same": how many there are, where that was
// not known.
func (r *reader) allTold() bool {
	if r.Units > 1 || r.Count > 0 || r.known(fitcheck.TopicCount) || r.asked(fitcheck.TopicCurbDiagonals) {
		return false
	}
	for n := range r.intros {
		h := &r.intros[n]
		k := 0
		for i := h.first; i <= h.last; i++ {
			k = max(k, r.wholeSaid(i))
		}
		if k == 4 && r.askedSize() != "none" &&
			!r.wordsIn(0, len(r.toks), "them", "skylights", "domes", "tragaluces", "domos") {
			continue // all four sides
		}
		if h.is("nth", "all") && k > 1 && r.toldAlike(h) && !r.wordAt(h.last+1, "sides", "layers", "corners", "ways") {
			r.countFact(countAt{k, h.first, h.last})
			return true
		}
	}
	return false
}

// toldAlike: "same for all three", "all three are identical".
func (r *reader) toldAlike(h *hit) bool {
	if r.wordAt(h.first-1, "for") && r.wordAt(h.first-2, "same") {
		return true
	}
	next := h.last + 1
	for r.among(next, allLinks) {
		next++
	}
	return r.wordAt(next, "same", "alike", "identical", "iguales") && !r.wordAt(next+1, "way", "side")
}
