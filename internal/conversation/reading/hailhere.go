package reading

import "example.com/intake-bot/internal/fitcheck"

// Hail told of a place and not of a day: "lots of hail here", "we get a hailstorm nearly every
// spring", "hail is rare". It harmed nothing; it may come.

var (
	hailWords = wordsOf(`hail hails hailstorm hailstorms granizo granizos granizadas`)
	hailHarm  = wordsOf(`leak leaks leaking hole holes got had came smashed shattered busted ruined beat pounded went
		split dents claim insurance gotten tore was were fell cayo`)
	hailOften = wordsOf(`lots lot every each usually often always regularly frequent plenty tons mucho bastante seguido
		siempre nuts bad terrible crazy brutal awful fierce feo fuerte`)
	hailWhere      = wordsOf(`here live get gets area country spring springs summer year season around have see hay cae aqui`)
	rareWords      = wordsOf(`rarely seldom hardly barely scarcely rare raramente casi`)
	throughDenials = negWords.and(`nada`)
	throughHarm    = wordsOf(`broke break broken crack cracked damage damaged happened happen hurt hit wrong leak leaked
		touch rompio quebro paso harm harmed bother`)
	throughFine = wordsOf(`fine ok okay alright survived unharmed undamaged unscathed intact bien intacto aguanto`)
	throughElse = wordsOf(`frame curb marco roof house until else rest was other others`)
)

// hailUsual: the words of hail tell what the weather is like where the skylight is.
func (r *reader) hailUsual(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if !r.anyOf(h.first, h.last+1, hailWords) || r.hurt(h) || r.negated(h.first) {
		return false
	}
	if r.anyOf(r.sentenceFirst(h.first), r.sentenceLast(h.last)+1, hailHarm) {
		return false
	}
	return r.anyOf(from, to+1, hailOften) && r.anyOf(from, to+1, hailWhere)
}

// rareRisk: "we rarely see hail", "hardly ever any hail", "hail is rare": it is denied.
func (r *reader) rareRisk(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicImpactRisk && !(s.value == fitcheck.ProblemStorm && r.asked(fitcheck.TopicImpactRisk)) || s.value == "none" || s.value == "?" {
		return false
	}
	from := r.clauseStart(h.first)
	for k := h.first - 1; k >= max(from, h.first-6); k-- {
		if r.among(k, rareWords) && !(r.wordAt(k, "casi") && !r.wordAt(k+1, "no", "nunca")) && !r.wordAt(k-1, "not") {
			return !r.wordsIn(from, k, "last", "storm", "only")
		}
	}
	return r.wordAt(h.last+1, "is", "es", "are") && (r.wordAt(h.last+2, "rare", "uncommon", "unusual", "scarce", "raro") || r.wordAt(h.last+2, "very", "pretty", "really", "muy", "so") && r.wordAt(h.last+3, "rare", "uncommon", "unusual", "raro"))
}

// cameThrough: "we had hail last year but it's fine", "a storm last week, nothing broke": the weather is told
// for what it did not do.
func (r *reader) cameThrough(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicProblem || s.value != fitcheck.ProblemStorm || h.has1(string(fitcheck.TopicFrameCondition)) {
		return false
	}
	to := r.sentenceLast(h.last)
	for n := range r.choices {
		if c := &r.choices[n]; c.has1(string(fitcheck.TopicProblem)) && !c.is(string(fitcheck.TopicProblem), fitcheck.ProblemStorm) && !c.is(string(fitcheck.TopicProblem), "none") && !r.negated(c.first) && !r.wordAt(c.first-1, "nothing", "nada", "never", "none") && !c.senses[0].asked {
			return false
		}
	}
	for i := h.last + 1; i <= to; i++ {
		switch {
		case r.among(i, throughDenials) && r.anyOf(i+1, min(i+5, to+1), throughHarm):
			return !r.wordsIn(i+1, to+1, "until", "but", "except", "pero", "like")
		case r.among(i, throughFine) || r.wordAt(i, "held") && r.wordAt(i+1, "up") || r.wordAt(i, "made") && r.wordAt(i+1, "it"):
			return !r.negated(i) && !r.wordsIn(i+1, to+1, "but", "except", "pero", "until") && !r.anyOf(h.last+1, i, throughElse)
		}
	}
	return false
}
