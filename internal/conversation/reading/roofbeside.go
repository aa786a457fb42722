package reading

import "example.com/intake-bot/internal/fitcheck"

// What covers the roof, told beside an answer in a clause of its own.

var besideRoofAnswer = wordsOf(`a an all just old new regular plain de puro pura`)

// besideAnswer: beside a slope that was asked for "6/12, and it's clay tile", "es de lámina"; anywhere "our
// shingles run up against it", since whose they are says where they lie. A flat roof's is left alone.
func (r *reader) besideAnswer(h *hit) bool {
	if r.measuredFrom(h.first) || r.markAt(r.sentenceLast(h.last), '?') {
		return false
	}
	if r.wordAt(h.first-1, "our", "my", "nuestras", "mis") && r.wordsIn(h.first, h.last+1, "shingles", "tiles", "shakes", "tejas") {
		return h.last+1 < len(r.toks) && r.toks[h.last+1].kind == wordToken
	}
	if !r.asked(fitcheck.TopicRoofSlope) || !r.slopeInNumbers() {
		return false
	}
	i := h.first - 1
	for r.among(i, besideRoofAnswer) {
		i--
	}
	itself := r.wordAt(i, "its") || r.wordAt(i, "is") && r.wordAt(i-1, "it") ||
		r.wordAt(i, "theyre") ||
		r.wordAt(i, "es", "son") && i+1 == h.first-number(r.wordAt(h.first-1, "de"))
	return itself && r.onlyWords(r.clauseStart(i), i, "and", "but", "y", "pero", "so", "also", "it", "oh", "well", "techo", "el")
}

// slopeInNumbers: the message tells a slope that is not flat.
func (r *reader) slopeInNumbers() bool {
	for i := range r.out.Facts {
		if s, ok := r.out.Facts[i].Value.(fitcheck.Slope); ok && s.Rise > 0 {
			return true
		}
	}
	return false
}
