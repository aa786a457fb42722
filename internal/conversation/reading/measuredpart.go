package reading

import "example.com/intake-bot/internal/fitcheck"

var afterParts = wordsOf(`these those they theyre that thats it its are is were all both esas estas esos eso son es`)

// measuredPart is the part that the message names as what was measured, "" where it names none
// or several.
func (r *reader) measuredPart() string {
	return r.partNamed(func(h *hit) bool { return !r.onlyTold(h) })
}

// onlyTold: a clause without a number tells what the part is like, or that it can't be reached:
// "22 1/2 by 46 1/2 inside. silver frame", "i cant reach the plastic, inside it's 22 x 46".
func (r *reader) onlyTold(h *hit) bool {
	if !h.has1("part") || r.asked(fitcheck.TopicStyle) {
		return false
	}
	if r.besidesFinish(h) {
		return true
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := from; i <= to; i++ {
		if r.toks[i].kind == numToken {
			return false
		}
	}
	if r.cantTold(h) {
		return true
	}
	if r.wordsIn(from, to+1, "measure", "measured", "measures", "mide", "medi", "hole", "opening") {
		return false // "I also measured the hole in the frame"
	}
	for _, l := range within(r.labels, from, to) {
		if l.has1("face") || l.has1("topic") {
			return false // "inside of the old frame's flange, where it caps the curb"
		}
	}
	for _, c := range within(r.choices, from, to) {
		if c.has1(string(fitcheck.TopicFinish)) && (h.is("part", "frame") || h.is("part", "flange")) {
			return true
		}
	}
	for _, st := range within(r.styles, from, to) {
		if st.first <= h.first && h.last <= st.last && st.last-st.first >= 3 && !r.pairBefore(from) {
			return true // "metal frame on a wood curb, just plastic. 26 x 26"
		}
	}
	return r.tellsState(from, to)
}

// besidesFinish: "22 x 46 inside with a silver frame": the finish is told, not what was measured.
func (r *reader) besidesFinish(h *hit) bool {
	if !h.is("part", "frame") && !h.is("part", "flange") {
		return false
	}
	for _, c := range within(r.choices, r.clauseStart(h.first), h.last) {
		if c.has1(string(fitcheck.TopicFinish)) && c.last >= h.first-1 {
			i := c.first - 1
			for r.wordAt(i, "a", "an", "the", "un", "el") {
				i--
			}
			return r.wordAt(i, "with", "con")
		}
	}
	return false
}

// notMeasured: "I didn't measure the plastic, it's 22 x 46": the size is of anything but that part.
func (r *reader) notMeasured(part string) bool {
	for n := range r.labels {
		h := &r.labels[n]
		if h.is("part", part) && r.wordsIn(r.clauseStart(h.first), h.first, "measure", "measured", "medi", "medimos") && r.cantTold(h) {
			return true
		}
	}
	return false
}

// ofWhole: what stands beside the size is a word for the skylight, which says not what was measured.
func (m *measure) ofWhole() bool {
	return (m.part == "dome" || m.part == "skylight") && m.face == "" && m.topic == ""
}

// namedLater: "one dome 37 x 37. These are plastic edge to edge": the next sentence does nothing but
// say what was measured of a skylight.
func (r *reader) namedLater(m *measure, i int) bool {
	if !m.ofWhole() {
		return false
	}
	for r.among(i, afterParts) {
		i++
	}
	if !r.labelsOnly(i) || !r.labelled(i, r.sentenceLast(i)) {
		return false
	}
	m.part = ""
	return true
}
