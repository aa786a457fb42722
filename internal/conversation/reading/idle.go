package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	styleWishes = wordsOf(`whole complete entire completo keep reuse buy wanted like ocupo only want need replace get
		order looking replacing quiero necesito porque because prefiero rather cambiar`)
	saysItIs      = wordsOf(`its thats theyre is are like as es son ser be it`)
	styleOrders   = wordsOf(`replace replacing order buy purchase need get getting change reemplazar cambiar comprar`)
	unknownVerbs  = wordsOf(`know sure tell see unsure se clue idea remember`)
	roundVerbs    = wordsOf(`year turned go come comes came get gets looked look going goes working`)
	shipVerbs     = wordsOf(`ship deliver send mail envian mandan entregan`)
	useArticles   = wordsOf(`the el la del my and`)
	layerBelow    = wordsOf(`underneath under inside below bottom abajo adentro`)
	frameFaults   = wordsOf(`damage problem problems issue issues rust`)
	sheetingWords = wordsOf(`sheeting tarp bag bags stapled taped`)
	caulkers      = wordsOf(`i we he she they husband wife guy roofer landlord son dad was got`)
	wholeWishes   = wordsOf(`want need replace replaced replacing replacement buy order get sell looking new just for
		interested quiero necesito lets prefer like go give price quote please pls rather do mejor`)
	layerOfWhat   = wordsOf(`plastic acrylic polycarbonate plexiglass dome the glazing clear white bronze`)
	talkOpeners   = wordsOf(`im so lets where what back ya vamos ahora aqui estoy sorry we were hold let`)
	talkOfFrame   = wordsOf(`frame metal it marco rust bent corroded`)
	vagueProblems = wordsOf(`missing break broke broken split splits bust busted smashed chipped puncture punctured
		brittle crumbling cloud fog yellow smoky dingy loose draft drafty noise noisy birds bird bees wasps mice rats
		squirrel squirrels rot rotted rotten mold moldy moho roto rota rotos partido partida volo arranco lona hoyo
		agujero damp condensation sweats sweating suelto feo amarillo manchado opaque milky`)
	vagueUses = wordsOf(`mobile manufactured plant business office offices store retail shelter art van stable gym
		salon boat bote bus commercial industrial negocio oficina tienda remolque coop library hospital airport mall
		comercial`)
	vagueOutlines = wordsOf(`round circle triangle oval rectangle circulo`)
	tradeTitles   = wordsOf(`facilities maintenance director engineer custodian janitor dept department secretary
		principal administrator`)
	useSpeakers   = wordsOf(`i im we at to from near by my is was`)
	skylightHints = wordsOf(`it its one ones both ours mine ambos they them these esta this cover thing lid job project
		building manage outline shape footprint own manager roof lo la se`)
	harmedHints     = wordsOf(`hit got damage damaged from by took came size sized destroyed last por after cayo dano in`)
	hurtWords       = wordsOf(`hit damage damaged destroyed cracked broke broken took last dano rompio quebro`)
	thingLinks      = wordsOf(`from by where when for so because cause since over above like porque para cuando donde`)
	beforeSubject   = wordsOf(`the my our metal aluminum old el and but`)
	ownSubjectVerbs = wordsOf(`is are has looks esta estan`)
	plainOnes       = wordsOf(`single a the an just regular plain`)
	priceAgainst    = wordsOf(`over than against vs versus above`)
	priceWords      = wordsOf(`upcharge surcharge extra more difference cost costs price premium`)
	priceAsks       = wordsOf(`what whats how much tell is any`)
)

// saysStyle: "just a plastic dome screwed to the wood" tells what is there, not what
// is wanted.
func (r *reader) saysStyle(all []saying, h *hit) bool {
	from, to := r.sentence(h.first)
	if r.asked(fitcheck.TopicStyle) && !r.asked(fitcheck.TopicWant) && !(h.first > 0 && (h.first == r.clauseStart(h.first) || r.frameTold(h.first-1)) && r.wordAt(h.first, "just", "solo", "nomas") && (h.last+1 >= len(r.toks) || r.sentenceEnd(h.last+1))) && !r.anyOf(from, to+1, styleWishes) {
		return true
	}
	if len(r.Asked) == 0 && h.is("want", fitcheck.WantDomeOnly) && h.last-h.first < 3 && r.markAt(h.last+1, ',') && r.wordAt(h.last+2, "no") && r.wordAt(h.last+3, "frame", "metal") && r.wordsIn(from, h.first, "bolted", "screwed", "nailed", "fastened", "attached") && !r.wordsIn(from, h.first, "frame", "need", "want") && !r.wordsIn(h.last, to+1, "please", "need", "want") {
		return true // "bolted straight down to the deck, just the plastic, no frame"
	}
	if bare := r.wordAt(h.last, "plastic", "acrylic", "plastico", "acrilico") && h.last == h.first+1; bare && !r.asked(fitcheck.TopicWant) && r.among(h.first-1, saysItIs) && !r.wordAt(h.first-2, "want", "wanted", "need", "think", "do") {
		return true // "to me it's just plastic"
	}
	for _, s := range all {
		if s.value == fitcheck.StyleCurbMount && len(r.Asked) == 0 && r.anyOf(from, h.first+1, styleOrders) {
			continue // "replace only the dome on a curb-mounted skylight"
		}
		if s.topic == fitcheck.TopicStyle && !s.asked && (h.is("want", fitcheck.WantDomeOnly) || !r.wordAt(h.first, "complete", "whole", "entire", "full")) && (s.first <= h.last+1 || s.first == h.last+2 && r.markAt(h.last+1, ',') && s.value == fitcheck.StyleBareDome && !r.wordAt(s.first, "no", "sin")) && h.first <= s.last {
			return true
		}
		if s.topic == fitcheck.TopicProblem && !r.asked(fitcheck.TopicWant) && s.first > h.last && s.first-h.last <= 3 && !r.softBetween(h.last+1, s.first) {
			return true
		}
	}
	return false
}

// frameTold: the word ends what tells of the frame's condition: "frames fine", before "just plastic".
func (r *reader) frameTold(i int) bool {
	return slices.ContainsFunc(r.choices, func(h hit) bool {
		return h.last == i && h.first < i && h.has1(string(fitcheck.TopicFrameCondition))
	})
}

// unknownTo: "I don't know if it's cracked".
func (r *reader) unknownTo(first int) bool {
	for i := r.clauseStart(first); i < first; i++ {
		if r.wordAt(i, "if", "whether", "si") && r.among(i-1, unknownVerbs) {
			return true
		}
	}
	return false
}

// idle: words that state something only where the message is about that: hail that
// harmed nothing, "the whole thing" that nobody wants to buy, the plastic's kind told
// to say what the frame is like.
func (r *reader) idle(s sense, h *hit) bool {
	if s.topic == fitcheck.TopicProblem && s.asked && r.asked(fitcheck.TopicFrameCondition) && r.wordAt(h.first, "dull", "dulled", "faded") {
		return true // of the frame, where that was asked too
	}
	if s.topic == fitcheck.TopicProblem && s.value == "none" && r.asked(fitcheck.TopicFrameCondition) && !r.asked(s.topic) && r.wordsIn(r.sentenceFirst(h.first), h.first, "frame", "frames", "metal", "marco") {
		return true // "frame is still solid, no issues with it"
	}
	if s.topic == fitcheck.TopicProblem && r.asked(fitcheck.TopicConfirm) && r.markAt(r.sentenceLast(h.last), '?') {
		return true // "yes. how do you ship, will it break?"
	}
	if s.value == fitcheck.ConditionGood && r.opensTalk(h) {
		return true // "ok I'm back, where were we?"
	}
	if r.asked(fitcheck.TopicConfirm) && r.inLongYes(h) {
		return true // "I can't find nothing wrong" in the summary
	}
	if s.topic == fitcheck.TopicProfile && r.asked(fitcheck.TopicRoofSlope) {
		return true
	}
	if s.topic == fitcheck.TopicOutline && r.wordAt(h.first, "round") && (r.among(h.first-1, roundVerbs) || r.wordAt(h.first-1, "way") && r.wordAt(h.first-2, "the", "all", "other")) {
		return true // "rusted all the way round", "we live there year round"
	}
	if s.topic == fitcheck.TopicProblem && s.value == fitcheck.ProblemOther && (len(r.Asked) > 0 && !r.asked(s.topic) || r.wordAt(h.last+1, "style", "fashioned", "school")) {
		return true // also "an old style one"
	}
	if s.topic == fitcheck.TopicProblem && r.wordAt(h.last+1, "rated", "proof", "resistant", "grade") {
		return true // "need hurricane rated skylights"
	}
	if s.topic == fitcheck.TopicUse && r.wordAt(h.last, "flat") && (r.flatThing(h.last+1) || r.wordAt(h.first, "a") && r.wordAt(h.last+1, "on")) {
		return true // "my flat skylight cracked", "our flat rubber roof"
	}
	if s.topic == fitcheck.TopicFinish && r.wordAt(h.last+1, "no", "not", "idk", "dont", "unsure") && r.dontKnowAt(h.last+1) {
		return true // "del aluminio no sé"
	}
	if s.topic == fitcheck.TopicFrameCondition && s.value == fitcheck.ConditionWeathered && r.wordAt(h.last, "dirty", "sucio", "sucios", "dusty") && r.soundFrame(h) {
		return true // "the frame is fine, a little dirty"
	}
	if s.topic == fitcheck.TopicUse && !r.asked(s.topic) && r.wordAt(h.first-1, "my", "the", "our", "mi", "la") && r.wordAt(h.first-2, "to", "a") && r.anyOf(r.sentenceFirst(h.first), h.first, shipVerbs) {
		return true // "do you ship to my office?"
	}
	if s.topic == fitcheck.TopicUse && len(r.Asked) > 0 && !r.asked(s.topic) && !r.asked(fitcheck.TopicName) && !r.asked(fitcheck.TopicPlace) && !r.asked(fitcheck.TopicProblem) && r.room(h.last) && ((h.first == 0 || r.toks[h.first-1].kind == markToken || r.among(h.first-1, useArticles)) && r.wordAt(h.last+1, "one", "ones") || r.inRef(h.last) && (r.Units > 1 || r.kindsNamed() > 1) && len(r.groups) == 0) {
		return true // "the garage one is bent": which of them
	}
	if s.value == fitcheck.StyleNoneYet && r.askedSize() != "none" && r.wordsIn(h.first, h.last+1, "lo", "la") {
		return true // "el ancho todavía no lo tengo"
	}
	if s.topic == fitcheck.TopicOutline && !r.asked(s.topic) && r.askedSize() != "none" && r.wordAt(h.last, "square", "cuadrado", "cuadrada") && slices.ContainsFunc(r.out.Facts, func(f Fact) bool { return f.Topic.OfSize() }) {
		return true // "25 3/4 by 25 3/4, so it is square": the size says so
	}
	if s.topic == fitcheck.TopicProblem && r.asked(fitcheck.TopicFrameCondition) && !r.asked(s.topic) && r.wordAt(h.first, "crumbles", "crumbling", "crumbled", "flakes", "flaking") {
		return true // "the frame is corroded. It crumbles when you touch it"
	}
	if s.value == fitcheck.ProblemHazy && h.first == h.last && r.wordAt(h.first, "milky", "lechoso", "lechosa") && r.anyOf(h.last+1, min(h.last+4, len(r.toks)), layerBelow) {
		return true // "a clear one on top and a milky one underneath": layers
	}
	if s.topic == fitcheck.TopicWant && r.asked(fitcheck.TopicMaterial) && r.wordsIn(h.first, h.last+1, "acrilico", "acrylic", "policarbonato", "polycarbonate") {
		return true // "el de acrílico nomás": which material
	}
	if s.topic == fitcheck.TopicWant && r.wordAt(h.last, "everything", "todo") && r.wordAt(h.last+1, "else", "lo") {
		return true // "the frame and everything else is fine"
	}
	if s.topic == fitcheck.TopicFinish && h.first == h.last && r.wordAt(h.first, "metal", "aluminum") && r.wordsIn(r.clauseStart(h.first), r.clauseEnd(h.last)+1, "roof", "roofing", "seam", "techo", "siding") {
		return true // "the roof is standing seam metal"
	}
	if s.value == fitcheck.StyleBareDome && r.wordAt(h.last, "frame", "frames", "marco") && r.among(h.last+1, frameFaults) {
		return true // "no frame damage"
	}
	if s.value == fitcheck.StyleBareDome && r.anyOf(h.first, h.last+1, sheetingWords) && r.wordsIn(h.first, min(h.last+2, len(r.toks)), "hole", "opening", "over") {
		return true // "there's just plastic sheeting stapled over the hole"
	}
	if s.value == fitcheck.StyleBareDome && r.asked(fitcheck.TopicFinish) {
		return true // "there's no frame finish since it's just the dome"
	}
	if s.value == fitcheck.ProblemHazy && r.frameSubject(h) {
		return true // "the frame has gone a bit chalky"
	}
	first, last := r.sentence(h.first)
	if len(r.Asked) == 0 || !r.asked(s.topic) {
		if r.vagueWord(s.topic, h) && !r.ofSkylight(first, last, h) && !r.useAlone(s.topic, h) {
			return true
		}
	}
	switch {
	case s.topic == fitcheck.TopicProblem && h.first == h.last && r.wordAt(h.first, "hail", "granizo", "storm", "storms", "tormenta") && !r.asked(s.topic):
		return !r.harmed(first, last+1, h)
	case s.topic == fitcheck.TopicFrameCondition && s.value == fitcheck.ConditionGood && (r.asked(fitcheck.TopicFinish) || r.asked(fitcheck.TopicColor) || r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicLayers)) && !(r.sentenceFirst(h.first) > 0 && r.wordsIn(h.first, h.last+1, "frame", "frames", "marco") && !r.wordsIn(r.clauseStart(h.first), h.first, "on", "for", "finish")):
		return true // "raw aluminum is fine": an answer, no report
	case s.topic == fitcheck.TopicFrameCondition && s.value == fitcheck.ConditionCaulkedOver && h.first == h.last && !r.asked(s.topic) &&
		r.among(h.first-1, caulkers):
		return true // "leaked last year, I caulked it"
	case s.topic == fitcheck.TopicWant && r.wordAt(h.first, "whole", "entire", "everything") && !r.asked(s.topic) && !(r.Units > 1 && len(r.unitsAt(h.first, h.last)) == 1):
		if r.wordAt(h.last, "unit", "units") && r.aloneInClause(h.first, h.last) && !r.faultIn(h.last+1, len(r.toks)-1, nil) {
			return false // "whole unit, 2 layers"
		}
		return !r.anyOf(first, last+1, wholeWishes)
	case chosen(s.topic) && r.pricedAgainst(h.first):
		return true
	case s.topic == fitcheck.TopicLayers && r.wordAt(h.last+1, "of") && !r.among(h.last+2, layerOfWhat):
		return true // "one layer of 2x6"
	case s.topic == fitcheck.TopicMaterial || s.topic == fitcheck.TopicLayers || s.topic == fitcheck.TopicProblem && s.value == fitcheck.ProblemOther:
		return !r.asked(s.topic) && r.inStyle(h)
	}
	return false
}

// opensTalk: an "ok" only opens what is said next, which is not of the frame.
func (r *reader) opensTalk(h *hit) bool {
	if h.last > h.first && r.wordAt(h.first, "ok", "okay", "good", "great") && (r.wordAt(h.first+1, "so", "its", "then") || h.first == 0 && r.wordAt(h.first, "ok", "okay") && !r.asked(fitcheck.TopicFrameCondition)) {
		return true // "ok so metal frame on a box"
	}
	if h.first != h.last || !r.wordAt(h.first, "ok", "okay", "bueno", "bien") || h.first > 0 && !r.softBreak(h.first-1) && !r.sentenceEnd(h.first-1) {
		return false
	}
	next := h.last + 1
	if r.markAt(next, ',') {
		next++
	}
	return r.among(next, talkOpeners) && !r.anyOf(next, r.sentenceLast(next)+1, talkOfFrame)
}

// vagueWord: an everyday word that tells something of a skylight only where one is spoken of.
func (r *reader) vagueWord(t fitcheck.Topic, h *hit) bool {
	if h.last > h.first {
		return false
	}
	switch t {
	case fitcheck.TopicProblem:
		return r.among(h.first, vagueProblems)
	case fitcheck.TopicUse:
		return r.among(h.first, vagueUses)
	case fitcheck.TopicOutline:
		return r.among(h.first, vagueOutlines)
	}
	return false
}

// ofSkylight: the sentence names a part of a skylight, a job, or says "it".
func (r *reader) ofSkylight(first, last int, h *hit) bool {
	if last-first < 3 || last-first == 3 && r.toks[last].kind == markToken || r.wordsIn(first, h.first, "para") {
		return true
	}
	if h.has1(string(fitcheck.TopicProblem)) && h.first == r.clauseStart(h.first) && (h.last >= last || r.softBreak(h.last+1) || r.sentenceEnd(h.last+1)) {
		return true // "casa en Houston 77036, roto"
	}
	if r.anyOf(first, last+1, tradeTitles) && len(r.Asked) == 0 && r.wordsIn(0, len(r.toks), "skylight", "skylights", "dome", "domes", "bubbles") {
		return true // "Facilities at the airport. We have 11 domes …"
	}
	if first == 0 && h.first <= 2 && len(r.Asked) == 0 && last < 10 && r.wordsIn(last+1, len(r.toks), "skylight", "skylights", "dome", "domes", "bubbles") && !r.anyOf(first, last, useSpeakers) {
		return true // "Public library, Minot ND. 9 domes …"
	}
	for i := first; i <= last; i++ {
		if r.toks[i].kind == numToken && r.wordAt(h.first, "round", "circle", "oval", "rectangle", "triangle") {
			return true
		}
		if i >= h.first && i <= h.last {
			continue
		}
		if l := r.labelFrom(i); l != nil && (l.senses[0].kind == "part" || l.senses[0].kind == "topic" || l.senses[0].kind == "shape") {
			return true
		}
		if r.among(i, skylightHints) {
			return true
		}
	}
	return false
}

// harmed: the sentence says that something was hit or broken.
func (r *reader) harmed(first, last int, h *hit) bool {
	if r.anyOf(first, last, harmedHints) {
		return true
	}
	choices := within(r.choices, first, last-1)
	for n := range choices {
		if o := &choices[n]; o.first != h.first && o.senses[0].topic == fitcheck.TopicProblem && !o.senses[0].asked {
			return true
		}
	}
	return h.first == first && h.last+1 >= last
}

// hurt: the sentence says that it was hit or broken, not that it may be.
func (r *reader) hurt(h *hit) bool {
	first, last := r.sentence(h.first)
	return r.anyOf(first, last+1, hurtWords)
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

// inSizeName: the words name what a size is of: "the hole in the roof is 22 x 22".
func (r *reader) inSizeName(h *hit) bool {
	if r.labelAt[h.first] < 0 {
		return false
	}
	l := &r.labels[r.labelAt[h.first]]
	kind := l.senses[0].kind
	if r.asked(fitcheck.TopicProblem) && r.wordAt(h.last, "hole", "hoyo", "agujero") {
		return false // "now there's a 6 inch hole"
	}
	if l.named && l.is("part", "opening") && l.first == h.first {
		return true
	}
	return l.named && (l.first <= h.first && h.last <= l.last && (kind == "topic" || l.last > l.first || l.is("part", "opening")) || kind == "topic" && h.first <= l.last)
}

// thingIn: the clause of a short answer names some other thing: "triple A battery".
func (r *reader) thingIn(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := from; i <= to; i++ {
		if (i < h.first || i > h.last) && r.thingAt(i) && !r.speaks(i) && !(i < h.first && r.wordsIn(i+1, h.first, "so", "entonces")) && !(i > h.last && r.anyOf(h.last+1, i, thingLinks)) && !r.wordsIn(from, i, "match", "matching", "matches") {
			return true
		}
	}
	return false
}

// dontKnowAt: a "don't know" begins at the token.
func (r *reader) dontKnowAt(i int) bool {
	hits := within(r.talk, i, i)
	return len(hits) > 0 && hits[0].is("say", "dontknow")
}

// soundFrame: another phrase says that the frame is sound.
func (r *reader) soundFrame(h *hit) bool {
	for n := range r.choices {
		if c := &r.choices[n]; c.first != h.first && c.is(string(fitcheck.TopicFrameCondition), fitcheck.ConditionGood) && !r.negated(c.first) {
			return true
		}
	}
	return false
}

// frameSubject: the clause begins with the frame: what it says is of that.
func (r *reader) frameSubject(h *hit) bool {
	i := r.clauseStart(h.first)
	for r.among(i, beforeSubject) {
		i++
	}
	return i < h.first && r.wordAt(i, "frame", "frames", "marco", "marcos", "metal") && !r.wordsIn(i+1, h.first, "and", "dome", "plastic", "around")
}

// useAlone: "Joan Becker, 68502, office. Three skylights …": the building by itself beside who
// and where.
func (r *reader) useAlone(t fitcheck.Topic, h *hit) bool {
	mark := func(i int) bool { return i >= 0 && i < len(r.toks) && r.toks[i].kind == markToken }
	return t == fitcheck.TopicUse && mark(h.first-1) && (mark(h.last+1) || h.last+1 == len(r.toks)) && h.first > 1 && (r.toks[h.first-2].used || r.toks[h.first-2].named)
}

// ownSubject: the words are a statement by themselves, so that a "not" further before is another's:
// "he never called me back frame is a bit weathered".
func (r *reader) ownSubject(h *hit) bool {
	return h.last > h.first+1 && r.wordAt(h.first, "frame", "frames", "marco", "marcos") && r.among(h.first+1, ownSubjectVerbs) && !negWords.has(r.toks[max(h.first-1, 0)].text) && !r.wordAt(h.first-1, "the", "my", "our", "el", "los")
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
