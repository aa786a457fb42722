package reading

// bestForWhat: "what do you recommend for insulation?", "¿cuál es lo más usado contra el
// calor?": a question about a purpose, which leaves no choice to the shop. "What you
// recommend for the color" and "for us" do.
func (r *reader) bestForWhat(h *hit) bool {
	_, last := r.sentence(h.first)
	first := r.clauseStart(h.first)
	for first < h.first && r.wordAt(first, "so", "ok", "okay", "well", "and", "y", "hmm", "um", "entonces", "bueno", "pues") {
		first++
	}
	asks := r.wordAt(first, "what", "whats", "which", "que", "cual") && first >= h.first-2 && !r.wordAt(h.first, "whatever", "whichever")
	if !asks {
		return false
	}
	i := h.last + 1
	for i <= last && !r.wordAt(i, "for", "against", "with", "to", "if", "when", "para", "contra", "si", "cuando") {
		i++
	}
	if r.wordAt(i, "if", "when", "to", "si", "cuando", "against", "contra") {
		return i < last
	}
	for i++; r.wordAt(i, "the", "a", "an", "my", "our", "this", "these", "el", "la", "los", "las", "mi", "un", "una"); i++ {
	}
	if i > last || i >= len(r.toks) || r.toks[i].kind != wordToken {
		return false
	}
	_, topic := topicWords[r.toks[i].text]
	return !topic && !r.wordAt(i, "it", "that", "them", "this", "those", "me", "us", "mine", "ours", "rest", "others", "one", "ones", "both", "all", "everything",
		"choices", "eso", "esto", "esos", "todo", "mi", "nosotros", "resto")
}
