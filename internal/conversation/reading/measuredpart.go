package reading

import "example.com/intake-bot/internal/fitcheck"

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
	return r.tellsState(from, to)
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
	for r.wordAt(i, "these", "those", "they", "theyre", "that", "thats", "it", "its", "are", "is", "were", "all", "both", "esas", "estas", "esos", "eso", "son", "es") {
		i++
	}
	if !r.labelsOnly(i) || !r.labelled(i, r.sentenceLast(i)) {
		return false
	}
	m.part = ""
	return true
}
