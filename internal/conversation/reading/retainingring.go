package reading

// retainingRing: "ring is still there and its good", "the metal band", "el aro de aluminio": what holds a round
// dome down is called a ring, and no stain or seal is meant.
func (r *reader) retainingRing(i int) bool {
	switch {
	case r.wordAt(i, "ring", "rings", "rim", "aro", "aros", "anillo"):
		return r.clauseStart(i) == i || r.wordAt(i-1, "the", "my", "that", "its", "and", "el", "mi", "un") || r.ofMetal(i)
	case r.wordAt(i, "band", "bands", "strip", "strips", "bracket", "brackets", "trim"):
		return r.ofMetal(i)
	}
	return false
}

// ofMetal: the word before or the words after say that the part is of metal, or what it does.
func (r *reader) ofMetal(i int) bool {
	return r.among(i-1, metalWords) || r.wordAt(i-1, "retaining", "retainer", "clamping", "holding") ||
		r.wordAt(i+1, "de") && r.among(i+2, metalWords)
}
