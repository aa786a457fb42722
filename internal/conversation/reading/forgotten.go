package reading

var (
	beforeForgotten = wordsOf(`about the my our that this one another other two three a an in over on of for both`)
	afterForgotten  = wordsOf(`in over on at too also room one ones skylight skylights dome domes has is as so sorry lol and y`)
	forgotToSay     = wordsOf(`mention tell say add count include list put`)
)

// forgotThing: "i forgot the laundry room", "forgot about the bath one", "forgot to tell you": what did not
// come to mind before is no "don't know".
func (r *reader) forgotThing(h *hit) bool {
	if !r.wordAt(h.last, "forgot", "forget") {
		return false
	}
	i := h.last + 1
	if r.wordAt(i, "to") && r.among(i+1, forgotToSay) {
		return true
	}
	at := i
	for r.among(i, beforeForgotten) {
		i++
	}
	if i == at || i >= len(r.toks) || !r.room(i) && !r.noun(i) && !r.wordAt(i, "one", "ones") {
		return i > at && r.wordAt(i-1, "one", "other", "another") && (i >= len(r.toks) || r.toks[i].kind == markToken)
	}
	return i+1 >= len(r.toks) || r.toks[i+1].kind == markToken || r.among(i+1, afterForgotten)
}
