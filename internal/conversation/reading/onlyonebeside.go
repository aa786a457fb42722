package reading

// "Just one", told in one breath with the frame or with what is wanted.

// frameFollows: "just the one and the frame is fine": what follows the "and" is of the frame.
func (r *reader) frameFollows(i int) bool {
	if !r.among(i, andWords) && !r.among(i, butWords) {
		return false
	}
	i++
	for r.among(i, articles) || r.among(i, ownWords) || r.among(i, metalWords) || r.wordAt(i, "its", "old", "that", "su") {
		i++
	}
	return r.among(i, frameNouns)
}

// wantEnds: "just the plastic just one": what is wanted ends at the token.
func (r *reader) wantEnds(i int) bool {
	for n := range r.wants {
		if h := &r.wants[n]; h.last == i && h.has1("want") {
			return true
		}
	}
	return false
}

// onlyOneEs is where "solo uno", "solo es uno", "nomás es una" begins that ends at the token, -1 for none.
func (r *reader) onlyOneEs(i int) int {
	k := i - 1
	if r.wordAt(k, "es", "hay", "tengo") {
		k--
	}
	if r.wordAt(i, "uno", "una") && r.among(k, onlyWords) {
		return k
	}
	return -1
}
