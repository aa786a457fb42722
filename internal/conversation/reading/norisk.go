package reading

import "example.com/intake-bot/internal/fitcheck"

var harmCauses = wordsOf(`fell hit came caused cause broke fault just cayo rompio quebro`)

// noRisk: "no hail or nothing", told where something else was asked: nothing that could hit
// the skylight is there, if all that the message says is that.
func (r *reader) noRisk() {
	if r.asked(fitcheck.TopicImpactRisk) || r.asked(fitcheck.TopicProblem) || r.known(fitcheck.TopicImpactRisk) {
		return
	}
	first, last, kinds, unknown := -1, -1, 0, false
	for n := range r.choices {
		h := &r.choices[n]
		if v, ok := h.has(string(fitcheck.TopicImpactRisk)); !ok || v == "none" || v == "?" {
			continue
		}
		if !r.negated(h.first) || r.whenever(h.first) {
			return
		}
		if !r.everyWord(h.first) {
			unknown = true
		}
		kinds++
		if first < 0 {
			first = h.first
		}
		last = h.last
	}
	if (unknown || len(r.Asked) == 0) && (kinds < 2 || r.anyOf(0, len(r.toks), harmCauses)) {
		return // two of them denied are enough: "there's not a tree within a mile and it never hails"
	}
	if first >= 0 && !r.wordsIn(0, len(r.toks), "damage", "damaged", "dano", "yet") {
		r.fact(fitcheck.TopicImpactRisk, 0, fitcheck.ChoiceList{}, first, last)
	}
}
