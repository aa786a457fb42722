package reading

// onlyIf: what is said after a count makes it depend on something: "two unless the garage one is bad
// too", "three, depending on the price". A choice told so is one all the same.
func (r *reader) onlyIf(last int) bool {
	to := r.sentenceLast(last)
	for i := last + 1; i <= to; i++ {
		if r.wordAt(i, "unless") ||
			r.wordAt(i, "depending", "depends") && r.wordAt(i+1, "on", "how", "if") ||
			r.wordAt(i, "salvo") && r.wordAt(i+1, "que") || r.wordAt(i, "dependiendo") ||
			r.wordAt(i, "menos") && r.wordAt(i-1, "a") && r.wordAt(i+1, "que") {
			return true
		}
	}
	return false
}
