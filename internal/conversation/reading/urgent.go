package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// What cannot wait: an open hole, or something that fell and let the water in.

// openHole: an open hole, or water that comes in, and a cry for help; an open hole before a
// storm.
func (r *reader) openHole() {
	for _, f := range r.out.Facts {
		if l, ok := f.Value.(fitcheck.ChoiceList); ok && f.Topic == fitcheck.TopicProblem && has(l, fitcheck.ProblemHoleOpen) &&
			r.weatherAhead() {
			r.request(RequestUrgent)
		}
	}
	if r.known(fitcheck.TopicProblem) && r.out.Language == "en" && !slices.Contains(r.out.Requests, RequestHelp) &&
		(r.wordAt(len(r.toks)-1, "help") || r.markAt(len(r.toks)-1, '!') && r.wordsIn(0, len(r.toks), "help")) &&
		!r.negated(len(r.toks)-1) {
		for _, f := range r.out.Facts {
			if l, ok := f.Value.(fitcheck.ChoiceList); ok && f.Topic == fitcheck.TopicProblem &&
				(has(l, fitcheck.ProblemHoleOpen) || has(l, fitcheck.ProblemLeaking)) {
				r.request(RequestUrgent)
			}
		}
	}
}

// struck: something fell or smashed it, and water comes in: "tree fell on our roof, rain coming in".
func (r *reader) struck() bool {
	if !r.wordsIn(0, len(r.toks), "fell", "smashed", "shattered", "crashed", "landed", "hit", "through", "thru", "cayo") {
		return false
	}
	for i := range r.toks {
		if r.wordAt(i, "in") && r.wordAt(i-1, "coming", "pouring", "getting", "comes", "running") &&
			r.wordsIn(max(0, i-4), i, "rain", "water", "snow", "its") && !r.negated(i) {
			return r.wordsIn(0, len(r.toks), "tree", "branch", "limb", "smashed", "shattered", "through", "thru", "hail", "storm")
		}
	}
	return false
}
