package reading

import "example.com/intake-bot/internal/fitcheck"

// noRisk: "no hail or nothing", told where something else was asked: nothing that could hit
// the skylight is there, if all that the message says is that.
func (r *reader) noRisk() {
	if len(r.Asked) == 0 || r.asked(fitcheck.TopicImpactRisk) || r.asked(fitcheck.TopicProblem) || r.known(fitcheck.TopicImpactRisk) {
		return
	}
	first, last := -1, -1
	for n := range r.choices {
		h := &r.choices[n]
		if v, ok := h.has(string(fitcheck.TopicImpactRisk)); !ok || v == "none" || v == "?" {
			continue
		}
		if !r.negated(h.first) || !r.everyWord(h.first) || r.whenever(h.first) {
			return
		}
		if first < 0 {
			first = h.first
		}
		last = h.last
	}
	if first >= 0 && !r.wordsIn(0, len(r.toks), "damage", "damaged", "dano", "yet") {
		r.fact(fitcheck.TopicImpactRisk, 0, fitcheck.ChoiceList{}, first, last)
	}
}
