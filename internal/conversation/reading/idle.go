package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// What a phrase tells only where the message is about that, topic by topic.

var (
	wholeUnitWishes = wordsOf(`want need replace replaced replacing replacement buy order get sell looking new just for
		interested quiero necesito lets prefer like go give price quote please pls rather do mejor`)
	layerOfWhat   = wordsOf(`plastic acrylic polycarbonate plexiglass dome the glazing clear white bronze`)
	layerBelow    = wordsOf(`underneath under inside below bottom abajo adentro`)
	roundVerbs    = wordsOf(`year turned go come comes came get gets looked look going goes working`)
	shipVerbs     = wordsOf(`ship deliver send mail envian mandan entregan`)
	useArticles   = wordsOf(`the el la del my and`)
	frameFaults   = wordsOf(`damage problem problems issue issues rust`)
	sheetingWords = wordsOf(`sheeting tarp bag bags stapled taped`)
	caulkers      = wordsOf(`i we he she they husband wife guy roofer landlord son dad was got`)
	talkOpeners   = wordsOf(`im so lets where what back ya vamos ahora aqui estoy sorry we were hold let`)
	talkOfFrame   = wordsOf(`frame metal it marco rust bent corroded`)
	plainOnes     = wordsOf(`single a the an just regular plain`)
	priceAgainst  = wordsOf(`over than against vs versus above`)
	priceWords    = wordsOf(`upcharge surcharge extra more difference cost costs price premium`)
	priceAsks     = wordsOf(`what whats how much tell is any`)
)

// idle: words that state something only where the message is about that: hail that
// harmed nothing, "the whole thing" that nobody wants to buy, the plastic's kind told
// to say what the frame is like.
func (r *reader) idle(s sense, h *hit) bool {
	if r.asked(fitcheck.TopicConfirm) && r.inLongYes(h) {
		return true // "I can't find nothing wrong" in the summary
	}
	if r.vague(s.topic, h) || chosen(s.topic) && r.pricedAgainst(h.first) {
		return true
	}
	switch s.topic {
	case fitcheck.TopicProblem:
		return r.idleProblem(s, h)
	case fitcheck.TopicFrameCondition:
		return r.idleCondition(s, h)
	case fitcheck.TopicUse:
		return r.idleUse(h)
	case fitcheck.TopicOutline:
		return r.idleOutline(h)
	case fitcheck.TopicWant:
		return r.idleWant(h)
	case fitcheck.TopicFinish:
		return r.idleFinish(h)
	case fitcheck.TopicStyle:
		return r.idleStyle(s, h)
	case fitcheck.TopicProfile:
		return r.asked(fitcheck.TopicRoofSlope)
	case fitcheck.TopicLayers, fitcheck.TopicMaterial:
		return s.topic == fitcheck.TopicLayers && r.layerOfElse(h) || !r.asked(s.topic) && r.inStyle(h)
	}
	return false
}

// idleProblem: harm of the frame, or of nothing at all.
func (r *reader) idleProblem(s sense, h *hit) bool {
	asked := r.asked(s.topic)
	switch {
	case r.problemOfFrame(s, h):
		return true
	case r.asked(fitcheck.TopicConfirm) && r.markAt(r.sentenceLast(h.last), '?'):
		return true // "yes. how do you ship, will it break?"
	case r.wordAt(h.last+1, "rated", "proof", "resistant", "grade"):
		return true // "need hurricane rated skylights"
	case s.value == fitcheck.ProblemHazy && r.milkyLayer(h):
		return true
	case h.first == h.last && r.wordAt(h.first, "hail", "granizo", "storm", "storms", "tormenta") && !asked:
		first, last := r.sentence(h.first)
		return !r.harmed(first, last+1, h)
	case s.value != fitcheck.ProblemOther:
		return false
	}
	return len(r.Asked) > 0 && !asked ||
		r.wordAt(h.last+1, "style", "fashioned", "school") || // "an old style one"
		!asked && r.inStyle(h)
}

// problemOfFrame: the frame is what the words tell of.
func (r *reader) problemOfFrame(s sense, h *hit) bool {
	if s.value == fitcheck.ProblemHazy && r.frameSubject(h) {
		return true // "the frame has gone a bit chalky"
	}
	if !r.asked(fitcheck.TopicFrameCondition) {
		return false
	}
	if s.asked && r.wordAt(h.first, "dull", "dulled", "faded") {
		return true // of the frame, where that was asked too
	}
	if r.asked(s.topic) {
		return false
	}
	if s.value == "none" && r.wordsIn(r.sentenceFirst(h.first), h.first, "frame", "frames", "metal", "marco") {
		return true // "frame is still solid, no issues with it"
	}
	// "the frame is corroded. It crumbles when you touch it"
	return r.wordAt(h.first, "crumbles", "crumbling", "crumbled", "flakes", "flaking")
}

// milkyLayer: "a clear one on top and a milky one underneath": layers.
func (r *reader) milkyLayer(h *hit) bool {
	return h.first == h.last && r.wordAt(h.first, "milky", "lechoso", "lechosa") &&
		r.anyOf(h.last+1, min(h.last+4, len(r.toks)), layerBelow)
}

// idleCondition: what is no report of the frame's state.
func (r *reader) idleCondition(s sense, h *hit) bool {
	switch s.value {
	case fitcheck.ConditionGood:
		return r.opensTalk(h) || // "ok I'm back, where were we?"
			r.askedLook() && !r.frameInAnswer(h) // "raw aluminum is fine": an answer, no report
	case fitcheck.ConditionWeathered:
		// "the frame is fine, a little dirty"
		return r.wordAt(h.last, "dirty", "sucio", "sucios", "dusty") && r.soundFrame(h)
	case fitcheck.ConditionCaulkedOver:
		// "leaked last year, I caulked it"
		return h.first == h.last && !r.asked(s.topic) && r.among(h.first-1, caulkers)
	}
	return false
}

// askedLook: one of what the shop lets choose was asked for.
func (r *reader) askedLook() bool {
	return r.asked(fitcheck.TopicFinish) || r.asked(fitcheck.TopicColor) || r.asked(fitcheck.TopicMaterial) ||
		r.asked(fitcheck.TopicLayers)
}

// frameInAnswer: a later sentence of the answer names the frame in the phrase itself: "bronze. the frame
// is fine".
func (r *reader) frameInAnswer(h *hit) bool {
	return r.sentenceFirst(h.first) > 0 && r.wordsIn(h.first, h.last+1, "frame", "frames", "marco") &&
		!r.wordsIn(r.clauseStart(h.first), h.first, "on", "for", "finish")
}

// idleUse: the building is not told for the skylight's.
func (r *reader) idleUse(h *hit) bool {
	if r.wordAt(h.last, "flat") && (r.flatThing(h.last+1) || r.wordAt(h.first, "a") && r.wordAt(h.last+1, "on")) {
		return true // "my flat skylight cracked", "our flat rubber roof"
	}
	if r.asked(fitcheck.TopicUse) {
		return false
	}
	if r.wordAt(h.first-1, "my", "the", "our", "mi", "la") && r.wordAt(h.first-2, "to", "a") &&
		r.anyOf(r.sentenceFirst(h.first), h.first, shipVerbs) {
		return true // "do you ship to my office?"
	}
	askedOther := len(r.Asked) > 0 &&
		!r.asked(fitcheck.TopicName) && !r.asked(fitcheck.TopicPlace) && !r.asked(fitcheck.TopicProblem)
	return askedOther && r.room(h.last) && r.tellsWhich(h)
}

// tellsWhich: "the garage one is bent": the room tells which of the skylights is spoken of.
func (r *reader) tellsWhich(h *hit) bool {
	if r.inRef(h.last) && (r.Units > 1 || r.kindsNamed() > 1) && len(r.groups) == 0 {
		return true
	}
	opens := h.first == 0 || r.toks[h.first-1].kind == markToken || r.among(h.first-1, useArticles)
	return opens && r.wordAt(h.last+1, "one", "ones")
}

// idleOutline: a "round" that is a way, and a "square" that the size tells as well.
func (r *reader) idleOutline(h *hit) bool {
	if r.wordAt(h.first, "round") && (r.among(h.first-1, roundVerbs) ||
		r.wordAt(h.first-1, "way") && r.wordAt(h.first-2, "the", "all", "other")) {
		return true // "rusted all the way round", "we live there year round"
	}
	// "25 3/4 by 25 3/4, so it is square": the size says so
	return !r.asked(fitcheck.TopicOutline) && r.askedSize() != "none" &&
		r.wordAt(h.last, "square", "cuadrado", "cuadrada") &&
		slices.ContainsFunc(r.out.Facts, func(f Fact) bool { return f.Topic.OfSize() })
}

// idleWant: nothing is wished for by the words.
func (r *reader) idleWant(h *hit) bool {
	if r.asked(fitcheck.TopicMaterial) &&
		r.wordsIn(h.first, h.last+1, "acrilico", "acrylic", "policarbonato", "polycarbonate") {
		return true // "el de acrílico nomás": which material
	}
	if r.wordAt(h.last, "everything", "todo") && r.wordAt(h.last+1, "else", "lo") {
		return true // "the frame and everything else is fine"
	}
	if !r.wordAt(h.first, "whole", "entire", "everything") || r.asked(fitcheck.TopicWant) ||
		r.Units > 1 && len(r.unitsAt(h.first, h.last)) == 1 {
		return false
	}
	if r.wordAt(h.last, "unit", "units") && r.aloneInClause(h.first, h.last) &&
		!r.faultIn(h.last+1, len(r.toks)-1, nil) {
		return false // "whole unit, 2 layers"
	}
	first, last := r.sentence(h.first)
	return !r.anyOf(first, last+1, wholeUnitWishes)
}

// idleFinish: the metal is not the new frame's.
func (r *reader) idleFinish(h *hit) bool {
	if r.wordAt(h.last+1, "no", "not", "idk", "dont", "unsure") && r.dontKnowAt(h.last+1) {
		return true // "del aluminio no sé"
	}
	// "the roof is standing seam metal"
	return h.first == h.last && r.wordAt(h.first, "metal", "aluminum") &&
		r.wordsIn(r.clauseStart(h.first), r.clauseEnd(h.last)+1, "roof", "roofing", "seam", "techo", "siding")
}

// idleStyle: no kind of skylight is told.
func (r *reader) idleStyle(s sense, h *hit) bool {
	switch s.value {
	case fitcheck.StyleNoneYet:
		// "el ancho todavía no lo tengo"
		return r.askedSize() != "none" && r.wordsIn(h.first, h.last+1, "lo", "la")
	case fitcheck.StyleBareDome:
		return r.asked(fitcheck.TopicFinish) || // "there's no frame finish since it's just the dome"
			r.wordAt(h.last, "frame", "frames", "marco") && r.among(h.last+1, frameFaults) || // "no frame damage"
			r.sheetOverHole(h)
	}
	return false
}

// sheetOverHole: "there's just plastic sheeting stapled over the hole".
func (r *reader) sheetOverHole(h *hit) bool {
	return r.anyOf(h.first, h.last+1, sheetingWords) &&
		r.wordsIn(h.first, min(h.last+2, len(r.toks)), "hole", "opening", "over")
}

// layerOfElse: "one layer of 2x6".
func (r *reader) layerOfElse(h *hit) bool {
	return r.wordAt(h.last+1, "of") && !r.among(h.last+2, layerOfWhat)
}

// opensTalk: an "ok" only opens what is said next, which is not of the frame.
func (r *reader) opensTalk(h *hit) bool {
	if h.last > h.first && r.wordAt(h.first, "ok", "okay", "good", "great") && r.opensInPhrase(h) {
		return true // "ok so metal frame on a box"
	}
	if h.first != h.last || !r.wordAt(h.first, "ok", "okay", "bueno", "bien") ||
		h.first > 0 && !r.softBreak(h.first-1) && !r.sentenceEnd(h.first-1) {
		return false
	}
	next := h.last + 1
	if r.markAt(next, ',') {
		next++
	}
	return r.among(next, talkOpeners) && !r.anyOf(next, r.sentenceLast(next)+1, talkOfFrame)
}

// opensInPhrase: the "ok" of a longer phrase opens the message or what follows from it.
func (r *reader) opensInPhrase(h *hit) bool {
	return r.wordAt(h.first+1, "so", "its", "then") ||
		h.first == 0 && r.wordAt(h.first, "ok", "okay") && !r.asked(fitcheck.TopicFrameCondition)
}

// inStyle: the words are part of a description of the frame.
func (r *reader) inStyle(h *hit) bool {
	from, _ := r.sentence(h.first)
	styles := within(r.styles, from, h.first)
	for n := range styles {
		s := &styles[n]
		if s.first <= h.first && h.last <= s.last && s.last > s.first {
			return r.asked(fitcheck.TopicStyle)
		}
	}
	return false
}

// priced: the question is what it costs.
func (r *reader) priced(i int) bool {
	first, last := r.sentence(i)
	talk := within(r.talk, first, last)
	for n := range talk {
		if talk[n].is("req", "price") {
			return true
		}
	}
	return false
}

// pricedAgainst: the value from token i on is what a price is held against: "two layers, and what
// is the upcharge for that over a single one".
func (r *reader) pricedAgainst(i int) bool {
	k := i - 1
	for r.among(k, plainOnes) {
		k--
	}
	return r.among(k, priceAgainst) &&
		r.anyOf(r.sentenceFirst(i), k, priceWords) &&
		r.anyOf(r.sentenceFirst(i), k, priceAsks)
}

// dontKnowAt: a "don't know" begins at the token.
func (r *reader) dontKnowAt(i int) bool {
	hits := within(r.talk, i, i)
	return len(hits) > 0 && hits[0].is("say", "dontknow")
}

// soundFrame: another phrase says that the frame is sound.
func (r *reader) soundFrame(h *hit) bool {
	return slices.ContainsFunc(r.choices, func(c hit) bool {
		return c.first != h.first && c.is(string(fitcheck.TopicFrameCondition), fitcheck.ConditionGood) &&
			!r.negated(c.first)
	})
}
