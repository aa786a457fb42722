package reading

// tradeWords are all that a question has which asks no more than what the shop is there for.
var tradeWords = wordSet(`do does are is this that the you u ya yall guys all people folks place company store ones who sell sells make makes carry have handle offer supply deal in with still also
	can could i we get buy order one ones from replace
	plastic acrylic replacement new old any these those a for skylight skylights dome domes skylite curb mount mounted hi hello hey there so
	venden vende tienen tiene hacen hace manejan ustedes domos domo tragaluces tragaluz de plastico aqui`)

// ofTrade: "do you guys do skylights": to go on with the talk is the answer.
func (r *reader) ofTrade(h *hit) bool {
	_, to := r.sentence(h.first)
	noun := false
	for i := h.first; i <= to; i++ {
		t := &r.toks[i]
		if t.kind == markToken {
			continue
		}
		if t.kind != wordToken || !tradeWords[t.text] {
			return false
		}
		noun = noun || countNouns[t.text] || t.is("one", "ones")
	}
	return noun
}
