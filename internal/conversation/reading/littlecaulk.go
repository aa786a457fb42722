package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	littleOf = wordsOf(`little bit tiny touch dab bead some spot spots smidge trace slight bits
		poco poquito poquita algo tantito`)
	exceptFor  = wordsOf(`except excepting but apart besides excepto salvo menos pero`)
	fullOf     = wordsOf(`all everywhere whole entire completely totally covered buried over todo toda lleno llena mucho mucha`)
	littleGoes = wordsOf(`a of the old minor roof black un una de y`)
)

// littleCaulk: "frame's fine, a little caulk on it": a little of it, on a frame that is said to be sound, does not
// bury it.
func (r *reader) littleCaulk(h *hit) bool {
	i := h.first
	for i > 0 && r.among(i-1, littleGoes) {
		i--
	}
	if !r.among(i-1, littleOf) && !r.among(i, littleOf) || r.anyOf(i-4, i, exceptFor) ||
		r.anyOf(r.clauseStart(i), r.clauseEnd(h.last)+1, fullOf) {
		return false
	}
	for n := range r.choices {
		if c := &r.choices[n]; c.is(string(fitcheck.TopicFrameCondition), fitcheck.ConditionGood) && !r.negated(c.first) {
			return true
		}
	}
	return false
}
