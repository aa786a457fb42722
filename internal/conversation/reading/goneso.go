package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	goneHow = wordsOf(`so very really kind kinda sort sorta bad brittle soft dry chalky dull dark dim flat green black
		gray grey crazy pretty quite rather almost nearly`)
	goneSmallWords = wordsOf(`it its is they theyre them all just now so and but the a everywhere please yes yeah poof
		completely totally agua por todos lados`)
)

// goneSo: "the skylights have gone yellow", "it's gone brittle": what it turned into, and not that
// it is away.
func (r *reader) goneSo(h *hit) bool {
	if !r.wordAt(h.last, "gone") {
		return false
	}
	if r.wordAt(h.last+1, "from") && r.wordsIn(h.last+2, min(h.last+5, len(r.toks)), "to") {
		return true // "it's gone from clear to yellow"
	}
	if h.first == h.last && !r.saidAlone(h) {
		return true // "my contractor is gone until Monday"
	}
	for n := range r.choices {
		if c := &r.choices[n]; c.first <= h.last && c.last > h.last || c.first == h.last+1 && c.is("problem", fitcheck.ProblemHazy) {
			return true
		}
	}
	return r.among(h.last+1, goneHow)
}

// saidAlone: nothing but small words stands beside the words in their sentence: "It's all gone."
func (r *reader) saidAlone(h *hit) bool {
	from, to := r.sentence(h.first)
	for i := from; i <= to; i++ {
		if (i < h.first || i > h.last) && r.toks[i].kind == wordToken && !r.among(i, goneSmallWords) {
			return false
		}
	}
	return true
}
