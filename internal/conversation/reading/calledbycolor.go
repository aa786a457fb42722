package reading

import "example.com/intake-bot/internal/fitcheck"

// calledByColor: the color at a token stands for the one kind that the talk knows to have it: "the
// white one is polycarbonate", "el blanco es de policarbonato". To the question for a color it is an
// answer: "the white one".
func (r *reader) calledByColor(i int) bool {
	if !r.among(i, colorNames) || r.Names[r.toks[i].text] == 0 || r.asked(fitcheck.TopicColor) {
		return false
	}
	if r.wordAt(i+1, "one", "ones") || r.noun(i+1) {
		return r.wordAt(i-1, "the") && r.saidOfLook(i+2)
	}
	the := i - 1
	if r.noun(the) {
		the--
	}
	return r.wordAt(the, "el", "la", "los", "las") && r.saidOfLook(i+1)
}
