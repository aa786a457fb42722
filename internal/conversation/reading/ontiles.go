package reading

import "example.com/intake-bot/internal/fitcheck"

// Where the slope of the roof is asked, people tell of the roof: what lies on it, what they broke of that, and
// how the part slopes that has the skylight.

var tileNouns = wordsOf(`tile tiles shingle shingles slate slates shake shakes teja tejas panel panels`)

// tilesOf: "clay tile. I broke four of them", "cracked both of them": the tiles, where no skylight was named.
func (r *reader) tilesOf(i int) bool {
	if !r.asked(fitcheck.TopicRoofSlope) ||
		!(r.wordAt(i, "of") && r.wordAt(i+1, "them", "em", "those")) && !(r.wordAt(i, "de") && r.wordAt(i+1, "ellas", "esas")) {
		return false
	}
	return r.anyOf(0, i, tileNouns) && !r.skylightNamed(0, i)
}

// harmedTiles: the harm is told of the tiles.
func (r *reader) harmedTiles(h *hit) bool {
	for i := h.last + 1; i < min(h.last+4, len(r.toks)); i++ {
		if r.tilesOf(i) {
			return true
		}
	}
	return false
}

// flatThere: "4/12 on the house but the skylight is on the porch which is flat": of two slopes that under the
// skylight.
func (r *reader) flatThere() {
	if !r.asked(fitcheck.TopicRoofSlope) || !r.known(fitcheck.TopicRoofSlope) {
		return
	}
	told := -1
	for _, w := range r.where {
		if w.topic == fitcheck.TopicRoofSlope {
			told = w.first
		}
	}
	for i := told + 1; i < len(r.toks); i++ {
		if !r.wordAt(i, "skylight", "skylights", "dome", "domes", "tragaluz", "domo") ||
			!r.wordsIn(i+1, min(i+4, len(r.toks)), "on", "over", "in", "above", "en", "sobre") ||
			r.skylightNamed(r.clauseStart(told), told) {
			continue
		}
		for k := i + 1; k < len(r.toks); k++ {
			if r.wordAt(k, "flat", "plano", "plana") && !r.negated(k) && !r.questioned(k) &&
				!r.wordAt(k-1, "almost", "nearly", "mostly", "pretty", "fairly", "kinda", "casi") {
				r.forget(fitcheck.TopicRoofSlope)
				r.sayslope(fitcheck.Slope{Rise: 0, Run: run}, k, k)
				return
			}
		}
	}
}
