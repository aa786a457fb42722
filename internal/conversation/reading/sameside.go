package reading

// Where one number stands for both sides.

// sameAgain: "48 wide, same length"; not "the same length as the first one".
func (r *reader) sameAgain(m *measure, h *hit) bool {
	return m.shape == lone && h.first-m.last <= 3 && r.only(m.last+1, h.first-1) && (h.last+1 >= len(r.toks) || r.sentenceEnd(h.last+1))
}

// sameSide: "49 x same", "49, same": the other side is as long.
func (r *reader) sameSide(m *measure) {
	if m.shape != lone || m.diag || m.parts[0].side == height || r.askedSize() == "none" && !m.where {
		return
	}
	i := m.last + 1
	for r.by(i) || r.markAt(i, ',') || r.wordAt(i, "and", "y", "the", "lo", "el", "is", "es") || i < len(r.toks) && i > m.last && m.parts[0].side != noSide && r.labelKind(i, "axis") {
		i++
	}
	if r.wordAt(i, "same", "igual", "mismo", "itself") && (i+1 >= len(r.toks) || r.toks[i+1].kind == markToken) {
		m.square, m.last = true, i
	}
}
