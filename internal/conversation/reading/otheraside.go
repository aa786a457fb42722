package reading

var (
	measuredLater = wordsOf(`later tomorrow tonight soon weekend afterwards luego manana despues`)
	weatherNow    = wordsOf(`raining rainy snowing snow pouring cold hot windy wet dark icy lloviendo nevando frio`)
	outOfReach    = wordsOf(`cant cannot couldnt didnt havent hidden covered buried unreachable`)
)

// otherAside: after a measure that was asked for, an aside names another part, which is for later, out of reach,
// denied, or where the weather is: "25 1/2 x 49 1/2, inside tomorrow", "23 x 23, plastic is hidden".
func (r *reader) otherAside(m *measure, h *hit) bool {
	if r.askedSize() == "none" || !isName(h) || !r.softBetween(m.last+1, h.first) || r.numberIn(h.last+1, r.clauseEnd(h.last)+1) {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	return r.anyOf(from, to+1, measuredLater) || r.anyOf(h.last+1, to+1, outOfReach) ||
		h.has1("face") && (r.anyOf(from, h.first, weatherNow) || r.deniesFace(h))
}

// deniesFace: ", not the inside", where the outside was asked for.
func (r *reader) deniesFace(h *hit) bool {
	i := h.first - 1
	if r.wordAt(i, "the") {
		i--
	}
	return r.wordAt(i, "not") && r.ofOther(h.last+1)
}
