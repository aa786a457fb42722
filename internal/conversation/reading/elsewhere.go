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
	if s.topic == fitcheck.TopicProblem && s.value == fitcheck.ProblemStorm && !r.asked(fitcheck.TopicProblem) && r.hailUsual(h) {
		return sense{kind: string(fitcheck.TopicImpactRisk), value: "hail", topic: fitcheck.TopicImpactRisk}
	}
	if s.topic == fitcheck.TopicProblem && s.value == fitcheck.ProblemStorm && (r.asked(fitcheck.TopicImpactRisk) || r.asked(fitcheck.TopicMaterial) && r.fallsHere(h) || r.reasonOfMaterial(h)) && r.anyOf(h.first, h.last+1, hailFalls) && !r.hurt(h) {
		return sense{kind: string(fitcheck.TopicImpactRisk), value: "hail", topic: fitcheck.TopicImpactRisk}
	}
	return s
}

// fallsHere: "policarbonato, porque aquí cae mucho granizo": why a sheet was chosen.
func (r *reader) fallsHere(h *hit) bool {
	from, to := r.sentence(h.first)
	return r.anyOf(from, to+1, hailHabits) && !r.anyOf(from, to+1, hailOnce)
}

// whyChosen: "poly cause of the trees", "policarbonato porque aquí cae granizo": what could hit the
// skylight is told as the reason of a choice.
func (r *reader) whyChosen(s sense, h *hit) bool {
	if s.topic == fitcheck.TopicImpactRisk && (s.value == "hail" || s.value == "trees" || s.value == "golf") && !r.negated(h.first) && (r.reasonOfMaterial(h) || r.ofConcern(h)) {
		return true
	}
	return s.topic == fitcheck.TopicImpactRisk && (s.value == "hail" || s.value == "trees" || s.value == "golf") && (r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicLayers)) &&
		r.anyOf(r.sentenceFirst(h.first), h.first, whyWords) && !r.negated(h.first) &&
		!r.anyOf(r.sentenceFirst(h.first), r.sentenceLast(h.first)+1, riskHappened)
}

// reasonOfMaterial: "polycarbonate because of the hail up here": in one sentence a material is wished for, and
// what could hit it is the reason; "polycarbonate, hail broke the last one" tells what happened.
func (r *reader) reasonOfMaterial(h *hit) bool {
	from, to := r.sentence(h.first)
	chosen := within(r.choices, from, h.first-1)
	for n := range chosen {
		c := &chosen[n]
		if _, ok := c.has(string(fitcheck.TopicMaterial)); !ok || c.last >= h.first || r.wordAt(c.first, "plastic", "plastico") || r.among(c.first-1, materialWas) {
			continue
		}
		if r.anyOf(c.last+1, h.last+1, materialReasons) && !r.anyOf(c.last+1, to+1, riskHarm) {
			return true
		}
	}
	return false
}

// elsewhere says whether a value's words are of something else than its topic.
func (r *reader) elsewhere(s sense, h *hit) bool {
	if r.ofOtherThing(s.topic, h) || r.cameThrough(s, h) || s.topic == fitcheck.TopicProblem && r.harmedTiles(h) || r.unknownTo(h.first) || r.astray(s.topic, h.first, h.last) || r.idle(s, h) {
		return true
	}
	switch s.topic {
	case fitcheck.TopicUse: // "detached garage at home", "a restaurant, over the kitchen"
		if r.asked(fitcheck.TopicPlace) && r.wordAt(h.last, "office") && r.wordsIn(max(0, h.first-1), h.last, "post") {
			return true // "Bozeman, thats our post office"
		}
		if r.asked(s.topic) && r.wordsIn(r.clauseStart(h.first), r.clauseEnd(h.last)+1, "now", "ahorita") && r.passingPlace(h) {
			return true // "estoy en la iglesia ahorita, al rato le contesto"
		}
		if !r.asked(s.topic) && (r.officeAtHome(h) || r.ofTheWriter(h) || r.aboutPeople(h) || r.passingPlace(h) || len(r.Asked) > 0 && r.keptThere(h)) {
			return true
		}
		return h.last > h.first && r.wordAt(h.first, "at", "over") && (r.otherUse(h) || r.wordAt(h.last+1, "depot", "goods"))
	case fitcheck.TopicStyle, fitcheck.TopicProblem:
		return r.inSizeName(h)
	case fitcheck.TopicProfile: // "across the flat plastic"
		return r.inSizeName(h) || r.soldSo(h) || r.askedSize() != "none" && r.labelAt[h.last] >= 0 &&
			(r.labels[r.labelAt[h.last]].is("part", "plastic") || r.labels[r.labelAt[h.last]].has1("topic"))
	case fitcheck.TopicMaterial: // "the acrylic itself measures 24 x 27"
		return !r.asked(s.topic) && h.first == h.last && r.wordAt(h.last+1, "itself", "measures", "mide")
	case fitcheck.TopicLayers: // "one clear and one white", "84 cm both ways", "a condo, just one"
		if !r.asked(s.topic) && (r.wordAt(h.last+1, "or", "o") && r.layersOr(h.last+2) || r.layersOr(h.first)) {
			return true // "one layer or two?"
		}
		if r.wordAt(h.last, "both") && r.wordAt(h.last+1, "ways", "sides", "directions", "lados") || !r.asked(s.topic) && h.last-h.first < 2 && r.wordAt(h.last, "one", "two", "uno", "dos") {
			return true
		}
		if r.likeOldOne(h) {
			return r.wholeAt(h.first-1) == 0
		}
		if h.first == h.last && r.wordAt(h.first, "one", "uno") && r.among(h.first-1, thatOneWords) {
			return true // "bronze, two layers like the old one"
		}
		return h.first == h.last && (r.refAt(h.first, h.first+1) ||
			r.wordAt(h.first, "one") && r.choiceAt(h.first+1) && r.wordsIn(r.sentenceFirst(h.first), h.first, "two", "double", "2"))
	case fitcheck.TopicFinish: // "I meant the color, white, not the frame", "no color"
		if h.has1("color") && r.plasticTold(h) {
			return true // "powder coat. On the plastic, make it white"
		}
		if h.has1("color") && r.wordAt(h.last+1, "instead") && r.wordAt(h.last+2, "of") && r.wordAt(h.last+3, "clear", "see") {
			return true // "make it white instead of clear": no frame is clear
		}
		return r.wordAt(h.last+1, "not") && r.wordAt(h.last+2, "the", "my") && r.wordAt(h.last+3, "frame", "metal") ||
			r.asked(fitcheck.TopicColor) && r.wordAt(h.last, "color")
	case fitcheck.TopicWant: // "not the frame", said of a finish; "leave the frame plain"
		return r.wordAt(h.first, "not") && r.asked(fitcheck.TopicFinish) || r.wordAt(h.first, "leave", "keep") && r.choiceAt(h.last+1)
	}
	return false
}

// ofTheWriter: where the writer works, is now or was, which is not where the skylight is: "I
// work at a deli", "at the drug store, will measure later", "I saw your shop".
func (r *reader) ofTheWriter(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if r.wordsIn(from, h.first+1, "saw", "vi") && r.wordsIn(from, h.last+1, "your", "su") ||
		r.wordsIn(from, to+1, "gave", "dio", "paso") && r.wordsIn(from, to+1, "number", "numero") || r.wordsIn(from, h.first, "bill", "invoice", "facture") {
		return true // "the lady at the hardware store gave me your number", "bill it to the main office"
	}
	i := h.first - 1
	for r.among(i, writerPlaces) {
		i--
	}
	if r.among(i, toPlacePreps) && r.anyOf(max(from, i-4), i, writerWent) && !r.anyOf(from, r.sentenceLast(h.last)+1, ownSkylight) {
		return true // "went by the library to look up words for this"
	}
	if r.wordsIn(from, h.first, "work", "trabajo") && r.wordsIn(from, h.first, "at", "in", "for", "en", "para") && r.wordsIn(from, h.first, "i", "yo") && !r.anyOf(from, r.sentenceLast(h.last)+1, orOurSkylight) {
		return true
	}
	return r.wordAt(from, "at", "en", "im", "estoy") && r.wordsIn(from, h.last+1, "the", "la", "el") && (r.wordsIn(h.last+1, to+1, "now", "ahorita", "ahora") || r.wordsIn(to+1, min(to+6, len(r.toks)), "measure", "later", "tomorrow", "luego", "manana"))
}

// likeOldOne: "two layers like the old one": the "one" is no number of layers.
func (r *reader) likeOldOne(h *hit) bool {
	return h.last > h.first+1 && r.wordAt(h.first, "layers", "layer") && r.wordAt(h.last, "one") && r.among(h.last-1, oldOneWords)
}

// onlyAsked says whether a value stands in a question that states nothing; a wish may be
// put as one: "can I get just the dome?".
func (r *reader) onlyAsked(s sense, h *hit) bool {
	from, to := r.sentence(h.first)
	switch s.topic {
	case fitcheck.TopicWant: // "what's included in the complete one"
		if r.among(h.first, reuseVerbs) && r.markAt(to, '?') && (!r.asked(s.topic) || r.wordsIn(h.last+1, to, "if", "si")) {
			return true // "can I reuse my frame if it's bent?"
		}
		if !(s.value == fitcheck.WantUnsure && r.otherWants(h)) && r.wordAt(from, "whats", "what", "which", "how", "why") && r.asksPlainly(from, to) && !r.priced(h.first) {
			return true
		}
	case fitcheck.TopicLayers, fitcheck.TopicMaterial: // "a rough price on a double dome"
		if r.priced(h.first) && !s.asked && !r.anyOf(from, to+1, onlyAskedCompares) {
			return false
		}
	}
	if (s.topic == fitcheck.TopicProfile || s.topic == fitcheck.TopicOutline) && r.wordsIn(from, to+1, "match", "replace", "replacement", "mine", "my") {
		return false // "can you match a pyramid skylight"
	}
	if r.wishBehind(s.topic, h.first, h.last) || r.pricedWith(h) {
		return false
	}
	if chosen(s.topic) && r.wordAt(from, "how") && r.wordAt(from+1, "much") && r.wordsIn(from, h.first, "more", "extra", "less", "cheaper") {
		return true // "how much more is the polycarbonate"
	}
	if chosen(s.topic) && r.asksOfValue(h) {
		return true
	}
	if !r.questioned(h.first) && (!r.yesNoQuestion(h.first) || softTopic(s.topic)) {
		return false
	}
	return !r.wished(s, h) && !(s.topic == fitcheck.TopicUse && !r.softQuestion(h.first))
}

// wished: the question asks for what is wanted: "can I order the dome by itself".
func (r *reader) wished(s sense, h *hit) bool {
	from, to := r.sentence(h.first)
	return s.topic == fitcheck.TopicWant && !r.wordAt(to+1, "or") && !r.wordsIn(from, to+1, "better", "should", "worth", "which", "or") &&
		(r.wordAt(h.first-1, "i", "can", "just") || r.wordsIn(from, h.first, "make", "do", "build", "get") && r.wordAt(h.last+1, "for") && r.among(h.last+2, forThemWords) || r.priced(h.first) || r.wordsIn(h.first, h.last+1, "itself", "alone", "without", "sin") ||
			r.wordsIn(max(0, h.first-3), h.last+1, "just", "only") ||
			r.wordsIn(from, h.first, "cambiar", "comprar", "pedir", "ordenar") && r.wordsIn(max(0, h.first-3), h.last+1, "nomas", "solo", "puro", "pura", "solamente"))
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
	if !r.wordsIn(first, last+1, "house", "home", "casa") || !r.wordsIn(max(0, first-3), first, "behind", "beside", "atras", "detras") || r.wordsIn(max(0, first-6), first, "skylight", "skylights", "dome") {
		return false
	}
	vague := false
	for n := range r.choices {
		c := &r.choices[n]
		if v, ok := c.has("use"); ok && c.first != first && v != "?" {
			return false // told by the other word
		} else if ok && v == "?" {
			vague = true
		}
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
	return len(hits) > 0 && chosen(hits[0].senses[0].topic) && hits[0].last+1 < len(r.toks) && r.toks[hits[0].last+1].kind == wordToken
}
