package reading

import "example.com/intake-bot/internal/fitcheck"

// openingOfRetainer: "retaining frame is 27 x 51 on the outside and 22 x 46 at its opening": an opening
// told in the sentence that measures the retaining frame is that frame's, where it lies in it and the
// words before it name nothing else.
func (r *reader) openingOfRetainer(a, m *measure) bool {
	if m.part != "opening" && m.face != "inside" && m.face != "clear" || m.topic != "" ||
		m.part != "opening" && m.part != "" ||
		a.part != "retainer" && a.topic != fitcheck.TopicRetainerOutside ||
		len(a.units) != len(m.units) {
		return false
	}
	if r.breakBetween(a.last, m.first) &&
		!r.wordAt(r.sentenceFirst(m.first), "its", "the", "opening", "inside", "in", "su", "la", "abertura", "en") {
		return false
	}
	for _, h := range within(r.labels, a.last+1, r.clauseEnd(m.last)) {
		if p, ok := h.has("part"); ok && p != "opening" && p != "retainer" {
			return false
		}
		if h.has1("topic") {
			return false
		}
	}
	in, ok := m.extent()
	out, known := a.extent()
	if !ok || !known || in[0] >= out[0] || in[1] >= out[1] {
		return false
	}
	if h := r.labelFrom(a.last + 1); a.face == "" && h != nil && h.is("face", "outside") {
		a.face = "outside" // "retainer 26.5 x 50.5 outside with an opening of 21.5 x 45.5"
	}
	return true
}
