package reading

import "example.com/intake-bot/internal/fitcheck"

// Hail told of a place and not of a day: "lots of hail here", "we get a hailstorm nearly every
// spring", "hail is rare". It harmed nothing; it may come.

// hailUsual: the words of hail tell what the weather is like where the skylight is.
func (r *reader) hailUsual(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if !r.wordsIn(h.first, h.last+1, "hail", "hails", "hailstorm", "hailstorms", "granizo", "granizos", "granizadas") || r.hurt(h) || r.negated(h.first) {
		return false
	}
	if r.wordsIn(r.sentenceFirst(h.first), r.sentenceLast(h.last)+1, "leak", "leaks", "leaking", "hole", "holes", "got", "had", "came", "smashed", "shattered", "busted", "ruined", "beat", "pounded", "went", "split", "dents", "claim", "insurance", "gotten", "tore", "was", "were", "fell", "cayo") {
		return false
	}
	return r.wordsIn(from, to+1, "lots", "lot", "every", "each", "usually", "often", "always", "regularly", "frequent", "plenty", "tons", "mucho", "bastante", "seguido", "siempre", "nuts", "bad", "terrible", "crazy", "brutal", "awful", "fierce", "feo", "fuerte") && r.wordsIn(from, to+1, "here", "live", "get", "gets", "area", "country", "spring", "springs", "summer", "year", "season", "around", "have", "see", "hay", "cae", "aqui")
}

// rareRisk: "we rarely see hail", "hardly ever any hail", "hail is rare": it is denied.
func (r *reader) rareRisk(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicImpactRisk && !(s.value == fitcheck.ProblemStorm && r.asked(fitcheck.TopicImpactRisk)) || s.value == "none" || s.value == "?" {
		return false
	}
	from := r.clauseStart(h.first)
	for k := h.first - 1; k >= max(from, h.first-6); k-- {
		if r.wordAt(k, "rarely", "seldom", "hardly", "barely", "scarcely", "rare", "raramente", "casi") && !(r.wordAt(k, "casi") && !r.wordAt(k+1, "no", "nunca")) && !r.wordAt(k-1, "not") {
			return !r.wordsIn(from, k, "last", "storm", "only")
		}
	}
	return r.wordAt(h.last+1, "is", "es", "are") && (r.wordAt(h.last+2, "rare", "uncommon", "unusual", "scarce", "raro") || r.wordAt(h.last+2, "very", "pretty", "really", "muy", "so") && r.wordAt(h.last+3, "rare", "uncommon", "unusual", "raro"))
}
