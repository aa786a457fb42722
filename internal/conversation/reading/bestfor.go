package reading

var (
	purposeLinks    = wordsOf(`for against with to if when para contra si cuando`)
	purposeClauses  = wordsOf(`if when to si cuando against contra`)
	purposeArticles = wordsOf(`the a an my our this these el la los las mi un una`)
	noPurposes      = wordsOf(`it that them this those me us mine ours rest others one ones both all everything
		choices eso esto esos todo mi nosotros resto`)
)

// bestForWhat: "what do you recommend for insulation?", "¿cuál es lo más usado contra el
// calor?": a question about a purpose, which leaves no choice to the shop. "What you
// recommend for the color" and "for us" do.
func (r *reader) bestForWhat(h *hit) bool {
	if !r.asksWhat(h) {
		return false
	}
	_, last := r.sentence(h.first)
	i := h.last + 1
	for i <= last && !r.among(i, purposeLinks) {
		i++
	}
	if r.among(i, purposeClauses) {
		return i < last
	}
	for i++; r.among(i, purposeArticles); i++ {
	}
	if i > last || i >= len(r.toks) || r.toks[i].kind != wordToken {
		return false
	}
	_, topic := topicWords[r.toks[i].text]
	return !topic && !r.among(i, noPurposes)
}

// asksWhat: "what" or "which" opens the clause, right before the phrase.
func (r *reader) asksWhat(h *hit) bool {
	first := r.clauseStart(h.first)
	for first < h.first && r.among(first, talkLeads) {
		first++
	}
	return r.wordAt(first, "what", "whats", "which", "que", "cual") && first >= h.first-2 &&
		!r.wordAt(h.first, "whatever", "whichever")
}
