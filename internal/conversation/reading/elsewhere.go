package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	hailFalls       = wordsOf(`hail hailstorm hailstorms granizo granizada granizadas`)
	hailHabits      = wordsOf(`cae caen get gets hay por because since cause for lots mucho graniza area season`)
	hailOnce        = wordsOf(`cayo last broke rompio quebro paso pasado pasada hit took`)
	whyWords        = wordsOf(`because cause cuz coz bc since due porque pq por pues`)
	riskHappened    = wordsOf(`broke cracked fell hit rompio quebro cayo no not dont`)
	materialWas     = wordsOf(`is was the old es era el`)
	materialReasons = whyWords.and(`for account para`)
	riskHarm        = wordsOf(`broke broken cracked fell hit got took last old ruined destroyed smashed damage damaged
		new need replace rompio rompieron quebro quebraron rajo rajaron cayo pego dano viejo vieja nuevo nueva
		necesito no not dont never nunca`)
	thatOneWords      = oldOneWords.and(`that this which`)
	writerPlaces      = wordsOf(`the a my our your local public town la el un`)
	toPlacePreps      = wordsOf(`by to at from past a en`)
	writerWent        = wordsOf(`went stopped drove asked ran walked headed fui pase pregunte vine`)
	ownSkylight       = wordsOf(`skylight skylights roof dome tragaluz techo`)
	orOurSkylight     = ownSkylight.and(`we our`)
	oldOneWords       = wordsOf(`old new other last same existing`)
	reuseVerbs        = wordsOf(`reuse keep save use reusar reutilizar usar`)
	onlyAskedCompares = wordsOf(`or vs versus than more difference cost diferencia entre o`)
	forThemWords      = wordsOf(`that this it us me mine these them`)
	openingFraming    = wordsOf(`drywall sheetrock walls plaster rafter rafters ceiling joists joist trusses`)
	whereArticles     = theOrMine.and(`a`)
	abovePreps        = wordsOf(`over in above for at sobre en arriba`)
	valueDoes         = wordsOf(`ayuda aguanta dura sirve cuesta quita protege deja help helps hold holds last cost
		costs keep keeps work works stop block yellows lasts`)
	askingAuxiliaries = wordsOf(`would will could can should does did`)
)

// hailToCome: hail that may come is an answer to what could hit the skylight, and no harm
// that was done.
func (r *reader) hailToCome(s sense, h *hit) sense {
	if s.topic != fitcheck.TopicProblem || s.value != fitcheck.ProblemStorm {
		return s
	}
	if !r.asked(fitcheck.TopicProblem) && r.hailUsual(h) || r.hailFeared(h) {
		return sense{kind: string(fitcheck.TopicImpactRisk), value: "hail", topic: fitcheck.TopicImpactRisk}
	}
	return s
}

// hailFeared: the hail is the answer to what could hit it, or why a material is wished for.
func (r *reader) hailFeared(h *hit) bool {
	if !r.anyOf(h.first, h.last+1, hailFalls) {
		return false
	}
	feared := r.asked(fitcheck.TopicImpactRisk) || r.asked(fitcheck.TopicMaterial) && r.fallsHere(h) || r.reasonOfMaterial(h)
	return feared && !r.hurt(h)
}

// fallsHere: "policarbonato, porque aquí cae mucho granizo": why a sheet was chosen.
func (r *reader) fallsHere(h *hit) bool {
	from, to := r.sentence(h.first)
	return r.anyOf(from, to+1, hailHabits) && !r.anyOf(from, to+1, hailOnce)
}

// whyChosen: "poly cause of the trees", "policarbonato porque aquí cae granizo": what could hit the
// skylight is told as the reason of a choice.
func (r *reader) whyChosen(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicImpactRisk || s.value != "hail" && s.value != "trees" && s.value != "golf" || r.negated(h.first) {
		return false
	}
	if r.reasonOfMaterial(h) || r.ofConcern(h) {
		return true
	}
	from, to := r.sentence(h.first)
	return (r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicLayers)) &&
		r.anyOf(from, h.first, whyWords) && !r.anyOf(from, to+1, riskHappened)
}

// reasonOfMaterial: "polycarbonate because of the hail up here": in one sentence a material is wished for, and
// what could hit it is the reason; "polycarbonate, hail broke the last one" tells what happened.
func (r *reader) reasonOfMaterial(h *hit) bool {
	from, to := r.sentence(h.first)
	chosen := within(r.choices, from, h.first-1)
	for n := range chosen {
		c := &chosen[n]
		if c.last >= h.first || !r.materialWished(c) {
			continue
		}
		if r.anyOf(c.last+1, h.last+1, materialReasons) && !r.anyOf(c.last+1, to+1, riskHarm) {
			return true
		}
	}
	return false
}

// materialWished: the choice is a material, and not what there is: "is acrylic", "plastic".
func (r *reader) materialWished(c *hit) bool {
	_, ok := c.has(string(fitcheck.TopicMaterial))
	return ok && !r.wordAt(c.first, "plastic", "plastico") && !r.among(c.first-1, materialWas)
}

// elsewhere says whether a value's words are of something else than its topic.
func (r *reader) elsewhere(s sense, h *hit) bool {
	if r.ofOtherThing(s.topic, h) || r.cameThrough(s, h) || s.topic == fitcheck.TopicProblem && r.harmedTiles(h) {
		return true
	}
	if r.unknownTo(h.first) || r.astray(s.topic, h.first, h.last) || r.idle(s, h) {
		return true
	}
	switch s.topic {
	case fitcheck.TopicUse:
		return r.useElsewhere(h)
	case fitcheck.TopicStyle, fitcheck.TopicProblem:
		return r.inSizeName(h)
	case fitcheck.TopicProfile: // "across the flat plastic"
		return r.inSizeName(h) || r.soldSo(h) || r.askedSize() != "none" && r.labelAt[h.last] >= 0 &&
			(r.labels[r.labelAt[h.last]].is("part", "plastic") || r.labels[r.labelAt[h.last]].has1("topic"))
	case fitcheck.TopicMaterial: // "the acrylic itself measures 24 x 27"
		return !r.asked(s.topic) && h.first == h.last && r.wordAt(h.last+1, "itself", "measures", "mide")
	case fitcheck.TopicLayers:
		return r.layersElsewhere(h)
	case fitcheck.TopicFinish:
		return r.finishElsewhere(h)
	case fitcheck.TopicWant: // "not the frame", said of a finish; "leave the frame plain"
		return r.wordAt(h.first, "not") && r.asked(fitcheck.TopicFinish) ||
			r.wordAt(h.first, "leave", "keep") && r.choiceAt(h.last+1)
	}
	return false
}

// useElsewhere: a building that is not the skylight's: "detached garage at home", "a restaurant, over the kitchen".
func (r *reader) useElsewhere(h *hit) bool {
	if r.asked(fitcheck.TopicPlace) && r.wordAt(h.last, "office") && r.wordsIn(max(0, h.first-1), h.last, "post") {
		return true // "Bozeman, thats our post office"
	}
	if !r.asked(fitcheck.TopicUse) {
		if r.officeAtHome(h) || r.ofTheWriter(h) || r.aboutPeople(h) || r.passingPlace(h) {
			return true
		}
		if len(r.Asked) > 0 && r.keptThere(h) {
			return true
		}
	} else if r.wordsIn(r.clauseStart(h.first), r.clauseEnd(h.last)+1, "now", "ahorita") && r.passingPlace(h) {
		return true // "estoy en la iglesia ahorita, al rato le contesto"
	}
	return h.last > h.first && r.wordAt(h.first, "at", "over") && (r.otherUse(h) || r.wordAt(h.last+1, "depot", "goods"))
}

// layersElsewhere: a number that counts no layers: "one clear and one white", "a condo, just one".
func (r *reader) layersElsewhere(h *hit) bool {
	if r.wordAt(h.last, "both") && r.wordAt(h.last+1, "ways", "sides", "directions", "lados") {
		return true // "84 cm both ways"
	}
	if !r.asked(fitcheck.TopicLayers) {
		if r.wordAt(h.last+1, "or", "o") && r.layersOr(h.last+2) || r.layersOr(h.first) {
			return true // "one layer or two?"
		}
		if h.last-h.first < 2 && r.wordAt(h.last, "one", "two", "uno", "dos") {
			return true
		}
	}
	if r.likeOldOne(h) {
		return r.wholeAt(h.first-1) == 0
	}
	if h.first != h.last {
		return false
	}
	if r.wordAt(h.first, "one", "uno") && r.among(h.first-1, thatOneWords) {
		return true // "bronze, two layers like the old one"
	}
	return r.refAt(h.first, h.first+1) ||
		r.wordAt(h.first, "one") && r.choiceAt(h.first+1) && r.wordsIn(r.sentenceFirst(h.first), h.first, "two", "double", "2")
}

// finishElsewhere: a color or coat that is the plastic's.
func (r *reader) finishElsewhere(h *hit) bool {
	if h.has1("color") && r.plasticTold(h) {
		return true // "powder coat. On the plastic, make it white"
	}
	if h.has1("color") && r.wordAt(h.last+1, "instead") && r.wordAt(h.last+2, "of") && r.wordAt(h.last+3, "clear", "see") {
		return true // "make it white instead of clear": no frame is clear
	}
	if r.wordAt(h.last+1, "not") && r.wordAt(h.last+2, "the", "my") && r.wordAt(h.last+3, "frame", "metal") {
		return true // "I meant the color, white, not the frame"
	}
	return r.asked(fitcheck.TopicColor) && r.wordAt(h.last, "color") // "no color"
}

// ofTheWriter: where the writer works, is now or was, which is not where the skylight is: "I
// work at a deli", "at the drug store, will measure later", "I saw your shop".
func (r *reader) ofTheWriter(h *hit) bool {
	from := r.clauseStart(h.first)
	if r.wordsIn(from, h.first+1, "saw", "vi") && r.wordsIn(from, h.last+1, "your", "su") {
		return true
	}
	return r.gaveNumberThere(h) || r.wentThere(h) || r.worksThere(h) || r.isThereNow(h)
}

// gaveNumberThere: "the lady at the hardware store gave me your number", "bill it to the main office".
func (r *reader) gaveNumberThere(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	return r.wordsIn(from, to+1, "gave", "dio", "paso") && r.wordsIn(from, to+1, "number", "numero") ||
		r.wordsIn(from, h.first, "bill", "invoice", "facture")
}

// wentThere: "went by the library to look up words for this".
func (r *reader) wentThere(h *hit) bool {
	i := h.first - 1
	for r.among(i, writerPlaces) {
		i--
	}
	return r.among(i, toPlacePreps) && r.anyOf(max(r.clauseStart(h.first), i-4), i, writerWent) && !r.skylightTold(h)
}

// worksThere: "I work at a deli".
func (r *reader) worksThere(h *hit) bool {
	from := r.clauseStart(h.first)
	return r.wordsIn(from, h.first, "work", "trabajo") && r.wordsIn(from, h.first, "at", "in", "for", "en", "para") &&
		r.wordsIn(from, h.first, "i", "yo") && !r.anyOf(from, r.sentenceLast(h.last)+1, orOurSkylight)
}

// isThereNow: "at the drug store, will measure later", "estoy en la oficina ahorita".
func (r *reader) isThereNow(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if !r.wordAt(from, "at", "en", "im", "estoy") || !r.wordsIn(from, h.last+1, "the", "la", "el") {
		return false
	}
	return r.wordsIn(h.last+1, to+1, "now", "ahorita", "ahora") ||
		r.wordsIn(to+1, min(to+6, len(r.toks)), "measure", "later", "tomorrow", "luego", "manana")
}

// skylightTold: the sentence of the building speaks of a skylight or a roof.
func (r *reader) skylightTold(h *hit) bool {
	return r.anyOf(r.clauseStart(h.first), r.sentenceLast(h.last)+1, ownSkylight)
}

// likeOldOne: "two layers like the old one": the "one" is no number of layers.
func (r *reader) likeOldOne(h *hit) bool {
	return h.last > h.first+1 && r.wordAt(h.first, "layers", "layer") &&
		r.wordAt(h.last, "one") && r.among(h.last-1, oldOneWords)
}

// onlyAsked says whether a value stands in a question that states nothing; a wish may be
// put as one: "can I get just the dome?".
func (r *reader) onlyAsked(s sense, h *hit) bool {
	from, to := r.sentence(h.first)
	switch s.topic {
	case fitcheck.TopicWant:
		if r.asksToReuse(h) || r.asksOfWant(s, h) {
			return true
		}
	case fitcheck.TopicLayers, fitcheck.TopicMaterial: // "a rough price on a double dome"
		if !s.asked && r.priced(h.first) && !r.anyOf(from, to+1, onlyAskedCompares) {
			return false
		}
	case fitcheck.TopicProfile, fitcheck.TopicOutline:
		if r.wordsIn(from, to+1, "match", "replace", "replacement", "mine", "my") {
			return false // "can you match a pyramid skylight"
		}
	}
	if r.wishBehind(s.topic, h.first, h.last) || r.pricedWith(h) {
		return false
	}
	if chosen(s.topic) && (r.howMuchMore(h) || r.asksOfValue(h)) {
		return true
	}
	if !r.questioned(h.first) && (!r.yesNoQuestion(h.first) || softTopic(s.topic)) {
		return false
	}
	return !r.wished(s, h) && !(s.topic == fitcheck.TopicUse && !r.softQuestion(h.first))
}

// asksToReuse: "can I reuse my frame if it's bent?".
func (r *reader) asksToReuse(h *hit) bool {
	to := r.sentenceLast(h.first)
	return r.among(h.first, reuseVerbs) && r.markAt(to, '?') &&
		(!r.asked(fitcheck.TopicWant) || r.wordsIn(h.last+1, to, "if", "si"))
}

// asksOfWant: "what's included in the complete one".
func (r *reader) asksOfWant(s sense, h *hit) bool {
	from, to := r.sentence(h.first)
	if s.value == fitcheck.WantUnsure && r.otherWants(h) {
		return false
	}
	return r.wordAt(from, "whats", "what", "which", "how", "why") && r.asksPlainly(from, to) && !r.priced(h.first)
}

// howMuchMore: "how much more is the polycarbonate".
func (r *reader) howMuchMore(h *hit) bool {
	from := r.sentenceFirst(h.first)
	return r.wordAt(from, "how") && r.wordAt(from+1, "much") && r.wordsIn(from, h.first, "more", "extra", "less", "cheaper")
}

// wished: the question asks for what is wanted: "can I order the dome by itself".
func (r *reader) wished(s sense, h *hit) bool {
	from, to := r.sentence(h.first)
	if s.topic != fitcheck.TopicWant || r.wordAt(to+1, "or") || r.wordsIn(from, to+1, "better", "should", "worth", "which", "or") {
		return false
	}
	near := max(0, h.first-3)
	return r.wordAt(h.first-1, "i", "can", "just") || r.madeFor(h) || r.priced(h.first) ||
		r.wordsIn(h.first, h.last+1, "itself", "alone", "without", "sin") || r.wordsIn(near, h.last+1, "just", "only") ||
		r.wordsIn(from, h.first, "cambiar", "comprar", "pedir", "ordenar") &&
			r.wordsIn(near, h.last+1, "nomas", "solo", "puro", "pura", "solamente")
}

// madeFor: "do you make a dome for these".
func (r *reader) madeFor(h *hit) bool {
	return r.wordsIn(r.sentenceFirst(h.first), h.first, "make", "do", "build", "get") &&
		r.wordAt(h.last+1, "for") && r.among(h.last+2, forThemWords)
}

// whereabouts: "25 x 49 over the bathroom", "22 x 46 thats the drywall opening": where the
// skylight is, and what its opening is framed with, make no other thing of a size.
func (r *reader) whereabouts(m *measure, h *hit) bool {
	if r.among(h.first, openingFraming) && r.askedSize() != "none" && m.parts[0].num > 12*m.parts[0].den {
		return true
	}
	i := h.first - 1
	for r.among(i, whereArticles) {
		i--
	}
	if i > m.last && r.wordAt(i, "on") && r.wordAt(h.last+1, "one", "skylight", "dome", "unit") {
		return true // "27 x 27 on the kitchen one"
	}
	return i > m.last && r.among(i, abovePreps)
}

// behindHouse: "the recording studio behind our house": the house only tells where it is.
func (r *reader) behindHouse(first, last int) bool {
	if !r.wordsIn(first, last+1, "house", "home", "casa") ||
		!r.wordsIn(max(0, first-3), first, "behind", "beside", "atras", "detras") ||
		r.wordsIn(max(0, first-6), first, "skylight", "skylights", "dome") {
		return false
	}
	vague := false
	for n := range r.choices {
		c := &r.choices[n]
		v, ok := c.has("use")
		if ok && c.first != first && v != "?" {
			return false // told by the other word
		}
		vague = vague || ok && v == "?"
	}
	return vague
}

// otherUse: some other words of the message tell what the building is.
func (r *reader) otherUse(h *hit) bool {
	use, _ := h.has("use")
	for n := range r.choices {
		c := &r.choices[n]
		if v, ok := c.has("use"); ok && v != use && c.first != h.first && !r.wordAt(c.first, "at", "over") {
			return true
		}
	}
	return false
}

// asksOfValue: the sentence asks what a value does: "would two layers stop the drumming",
// "¿la doble ayuda con el ruido?".
func (r *reader) asksOfValue(h *hit) bool {
	from, to := r.sentence(h.first)
	if r.opensAsking(from) && h.first <= from+2 {
		return true
	}
	if r.markAt(to, '?') && h.first <= from+1 && r.wordAt(h.last+1, "isnt", "doesnt", "wont", "wouldnt", "arent") {
		return true // "bronze isn't too dark is it?"
	}
	return r.markAt(to, '?') && h.first <= from+1 && r.among(h.last+1, valueDoes)
}

// opensAsking: a verb before a value, as a question has it: "would two layers …", "is the bronze …".
func (r *reader) opensAsking(i int) bool {
	switch {
	case r.among(i, askingAuxiliaries):
		if r.wordAt(i+1, "the", "a", "an") {
			i++
		}
	case r.wordAt(i, "is", "are") && r.wordAt(i+1, "the", "a", "an"):
		i++
	default:
		return false
	}
	hits := within(r.choices, i+1, i+1)
	if len(hits) == 0 || !chosen(hits[0].senses[0].topic) {
		return false
	}
	next := hits[0].last + 1
	return next < len(r.toks) && r.toks[next].kind == wordToken
}
