package reading

import "example.com/intake-bot/internal/fitcheck"

// calledByColor: the color at a token stands for the one kind that the talk knows to have it: "the
// white one is polycarbonate", "el blanco es de policarbonato". To the question for a color it is an
// answer: "the white one".
func (r *reader) calledByColor(i int) bool {
	if !colorNames.has(r.toks[i].text) || r.Names[r.toks[i].text] == 0 || r.asked(fitcheck.TopicColor) {
		return false
	}
	one := r.wordAt(i+1, "one", "ones") || r.noun(i+1)
	if !one && !r.wordAt(i-1, "el", "la", "los", "las") && !(r.noun(i-1) && r.wordAt(i-2, "el", "la", "los", "las")) || one && !r.wordAt(i-1, "the") {
		return false
	}
	return r.saidOfLook(i + 1 + number(one))
}
