package reading

// earlierWrote: "the opening is 45 1/4 long, I wrote 54 1/4", "46 1/4. I'd told you 46 3/4": after a
// number the clause says nothing but what an earlier message held.
func (r *reader) earlierWrote(m *measure) bool {
	from := r.clauseStart(m.first)
	if !r.numberIn(0, from) || r.labelled(m.first, r.clauseEnd(m.last)) {
		return false
	}
	i := m.first - 1
	for r.wordAt(i, "you", "u", "that", "it", "was", "down", "as", "que", "era", "eran", "guys", "yall", "by", "mistake", "the", "in", "to") {
		i--
	}
	if !r.wordAt(i, "wrote", "told", "said", "typed", "put", "sent", "texted", "gave", "dije", "puse", "escribi", "mande", "dicho", "puesto", "escrito", "written", "given") {
		return false
	}
	for _, h := range within(r.labels, i, r.clauseEnd(m.last)) {
		if h.has1("axis") {
			return false // "25 1/2 wide, I wrote down 49 1/2 for the length"
		}
	}
	for i--; i >= from && r.wordAt(i, "had", "have", "le", "les", "te", "habia", "ya", "first", "before", "earlier", "mistakenly", "accidentally", "wrongly", "originally"); i-- {
	}
	return i < from || i == from && r.wordAt(i, "i", "id", "ive", "yo", "we", "where", "antes", "and", "because", "porque") || i == from+1 && r.wordAt(i, "i", "id", "ive", "d", "yo", "we")
}
