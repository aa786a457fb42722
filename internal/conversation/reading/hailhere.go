package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

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
	if !r.anyOf(h.first, h.last+1, hailWords) || r.hurt(h) || r.negated(h.first) ||
		r.anyOf(r.sentenceFirst(h.first), r.sentenceLast(h.last)+1, hailHarm) {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)+1
	return r.anyOf(from, to, hailOften) && r.anyOf(from, to, hailWhere)
}

// rareRisk: "we rarely see hail", "hardly ever any hail", "hail is rare": it is denied.
func (r *reader) rareRisk(s sense, h *hit) bool {
	if !r.risks(s) {
		return false
	}
	from := r.clauseStart(h.first)
	for k := h.first - 1; k >= max(from, h.first-6); k-- {
		if r.rareAt(k) {
			return !r.wordsIn(from, k, "last", "storm", "only")
		}
	}
	if !r.wordAt(h.last+1, "is", "es", "are") {
		return false
	}
	next := h.last + 2
	if r.wordAt(next, "very", "pretty", "really", "muy", "so") {
		next++
	}
	return r.wordAt(next, "rare", "uncommon", "unusual", "scarce", "raro")
}

// rareAt: "rarely", "casi nunca"; not "not rare", nor a "casi" alone.
func (r *reader) rareAt(k int) bool {
	if r.wordAt(k, "casi") && !r.wordAt(k+1, "no", "nunca") {
		return false
	}
	return r.among(k, rareWords) && !r.wordAt(k-1, "not")
}

// cameThrough: "we had hail last year but it's fine", "a storm last week, nothing broke": the weather is told
// for what it did not do.
func (r *reader) cameThrough(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicProblem || s.value != fitcheck.ProblemStorm ||
		h.has1(string(fitcheck.TopicFrameCondition)) || slices.ContainsFunc(r.choices, r.otherHarm) {
		return false
	}
	to := r.sentenceLast(h.last)
	for i := h.last + 1; i <= to; i++ {
		switch {
		case r.among(i, throughDenials) && r.anyOf(i+1, min(i+5, to+1), throughHarm):
			return !r.wordsIn(i+1, to+1, "until", "but", "except", "pero", "like")
		case r.cameThroughAt(i):
			return !r.negated(i) && !r.wordsIn(i+1, to+1, "but", "except", "pero", "until") &&
				!r.anyOf(h.last+1, i, throughElse)
		}
	}
	return false
}

// otherHarm: the phrase tells of harm, and not of the weather alone.
func (r *reader) otherHarm(c hit) bool {
	t := string(fitcheck.TopicProblem)
	return c.has1(t) && !c.is(t, fitcheck.ProblemStorm) && !c.is(t, "none") && !c.senses[0].asked &&
		!r.negated(c.first) && !r.wordAt(c.first-1, "nothing", "nada", "never", "none")
}

// cameThroughAt: "fine", "held up", "made it".
func (r *reader) cameThroughAt(i int) bool {
	return r.among(i, throughFine) || r.wordAt(i, "held") && r.wordAt(i+1, "up") ||
		r.wordAt(i, "made") && r.wordAt(i+1, "it")
}
