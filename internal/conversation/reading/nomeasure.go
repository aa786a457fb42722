package reading

// Numbers that say how many measures there are, or what was wrong before.

// wroteBefore: "the length should be 52 3/4, I wrote 53 3/4": what was wrong before.
func (r *reader) wroteBefore(i int) bool {
	return r.wordAt(i-1, "wrote", "put", "typed", "texted", "said", "puse", "escribi", "dije") &&
		(r.wordAt(i-2, "i", "we", "mistakenly") || r.out.Language == "es") &&
		r.wordsIn(0, i-1, "should", "supposed", "meant", "debe", "deberia") && r.numbersBefore(i-1)
}

func (r *reader) numbersBefore(to int) bool {
	for i := range to {
		if r.toks[i].kind == numToken && !r.toks[i].used {
			return true
		}
	}
	return false
}

// howManyMeasures: "the two corner to corner measurements are …".
func (r *reader) howManyMeasures(i int) bool {
	n := r.wholeSaid(i)
	return n > 1 && n < 5 && r.wordAt(i-1, "the", "my", "these", "both", "las", "mis", "estas") &&
		r.wordsIn(i+1, min(i+6, len(r.toks)), "measurements", "measures", "numbers", "diagonals", "edges", "medidas", "diagonales",
			"orillas")
}
