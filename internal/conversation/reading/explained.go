package reading

import "example.com/intake-bot/internal/fitcheck"

// Where something else was asked, a value is taken only from a clause of which every word
// is understood: "um the white plastic frame kind" answers what kind of frame it is and
// says nothing of the plastic's color. What is lost so is asked in its turn.

// unexplained says whether the clause around a value, which answers nothing that was
// asked, has words that nothing explains.
func (r *reader) unexplained(t fitcheck.Topic, h *hit) bool {
	if len(r.Asked) == 0 || r.asked(t) || r.changeAsked(t, h.first, h.last) || r.tellsStyle(t, h) || h.is(string(fitcheck.TopicProblem), fitcheck.ProblemHoleOpen) && r.wordsIn(h.first, h.last+1, "tarp", "tarped", "covered", "plywood", "boarded", "boards") {
		return false
	}
	if t == fitcheck.TopicImpactRisk && (r.wordsIn(h.first, h.last+1, "course", "fairway") || r.wordAt(h.last+1, "course")) && r.wordsIn(r.clauseStart(h.first), r.clauseEnd(h.last)+1, "behind", "next", "beside", "near", "by", "on", "across", "backs", "along") {
		return false // "we have the golf course right behind us"
	}
	if t == fitcheck.TopicUse && (r.asked(fitcheck.TopicName) || r.asked(fitcheck.TopicPlace)) && r.wordAt(h.first-1, "mi", "my", "our", "nuestra") && r.wordsIn(max(0, h.first-3), h.first, "for", "para") {
		return false // "quiero un tragaluz nuevo para mi casa móvil"
	}
	if h.is(string(fitcheck.TopicProblem), fitcheck.ProblemLeaking) && r.wordsIn(h.first, h.last+1, "water", "raining", "agua", "into") {
		return false // "water is coming in on the piano"
	}
	if (t == fitcheck.TopicUse || t == fitcheck.TopicProfile && r.asked(fitcheck.TopicOutline) || t == fitcheck.TopicOutline && r.asked(fitcheck.TopicProfile) || t == fitcheck.TopicFrameCondition) && r.sentenceFirst(h.first) > 0 {
		return false // a sentence of its own after the answer, as in a mail
	}
	if t == fitcheck.TopicUse && !r.wordAt(h.last+1, "roof", "roofs", "style", "type") && r.wordsIn(max(r.clauseStart(h.first), h.first-5), h.first, "is", "its", "es") && r.wordsIn(max(r.clauseStart(h.first), h.first-4), h.first, "a", "an", "un", "una") {
		return false // "the building is a small medical office in Tampa", asked for the place
	}
	if r.ownHarm(t, h) || r.ownUse(t, h) || t == fitcheck.TopicImpactRisk && (r.weGet(h) || r.ofConcern(h)) {
		return false // "can't measure today, the skylight leaks worse by the minute"
	}
	if chosen(t) && r.pricedWith(h) {
		return false // "what would one cost me with double polycarbonate?"
	}
	if chosen(t) && t != fitcheck.TopicFinish && r.wishBefore(h.last) && !r.wordAt(h.last+1, "or", "o") {
		return false // "nothing's broken, we simply want to go from bronze to clear"
	}
	return !r.allExplained(h) && !(t == fitcheck.TopicImpactRisk && r.plenty(h))
}

// plenty: "lots of trees around us so I worry", "hay muchos árboles": how many there are is
// told for the risk's sake, whatever else the clause says.
func (r *reader) plenty(h *hit) bool {
	return r.wordsIn(max(r.clauseStart(h.first), h.first-4), h.last+1, "live", "fall", "falling", "drop", "dropping", "caen", "lots", "lot", "bunch", "many", "plenty", "tons", "surrounded", "under", "muchos", "muchas", "mucho", "rodeados", "big", "tall", "huge") &&
		!r.wordsIn(r.clauseStart(h.first), h.first, "if", "when", "dont", "used", "had", "no", "not")
}

// tellsStyle: early in a talk a phrase of four words tells by itself what is up there.
func (r *reader) tellsStyle(t fitcheck.Topic, h *hit) bool {
	from, to := r.sentence(h.first)
	return t == fitcheck.TopicStyle && h.last-h.first >= 3 && (r.asked(fitcheck.TopicUse) || r.asked(fitcheck.TopicCount) || r.asked(fitcheck.TopicProblem) || r.asked(fitcheck.TopicName) || r.asked(fitcheck.TopicPhotos)) &&
		!r.wordsIn(from, to+1, "can", "could", "want", "wants", "would", "will", "myself", "so", "neighbor", "neighbors", "brother", "brothers", "friend", "friends", "his", "her", "their", "new", "puedo", "quiero")
}

// weakly says whether a word that counts as an answer only stands in a clause that nothing
// else explains: "corroded where it meets the tar". It is asked about.
func (r *reader) weakly(s sense, h *hit) bool {
	switch s.topic {
	case fitcheck.TopicWant, fitcheck.TopicFrameCondition, fitcheck.TopicFinish, fitcheck.TopicLayers, fitcheck.TopicMaterial:
		return s.asked && r.asked(s.topic) && s.value != "?" && h.last-h.first < 2 && !r.allExplained(h) && !r.listedBeside(s, h) && !(chosen(s.topic) && r.plainAnswer(h))
	}
	return false
}

// listedBeside: another answer that was asked for begins right after the word, as in a list
// without its commas: "double both layers see-through clear", "sencillo bronce".
func (r *reader) listedBeside(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicLayers || len(r.Asked) < 2 || h.first != r.clauseStart(h.first) {
		return false
	}
	next := within(r.choices, h.last+1, h.last+2)
	for n := range next {
		if next[n].has1("color") || next[n].has1("layer") || next[n].has1("material") {
			return true
		}
	}
	return false
}

// allExplained: every word of the clause around the hit is understood.
func (r *reader) allExplained(h *hit) bool {
	from, to := r.clauseStart(h.first), min(r.clauseEnd(h.last), len(r.toks)-1)
	if r.wordAt(h.first-1, "so", "pues") {
		from = h.first // "it got to 38 below here so three"
	}
	for j := h.first - 1; j > from; j-- {
		if r.wordAt(j, "since", "because", "cause", "porque", "pq", "cuz") {
			from = j + 1 // "polycarb since we're in hail country"
			break
		}
	}
	for i := from; i <= to; i++ {
		if i >= h.first && i <= h.last {
			i = h.last
			continue
		}
		if i > h.last && r.wordAt(i, "because", "cause", "since", "porque", "por", "where", "when", "donde") || i > h.last && r.wordAt(i, "so") && r.wordAt(i+1, "i", "we", "it", "its", "they", "that", "you") {
			break // why it is so is another statement
		}
		if i > h.last && (r.wordAt(i, "from", "thanks") || r.wordAt(i, "por", "con", "de") && r.out.Language == "es") && r.wordsIn(i+1, min(i+5, len(r.toks)), "salt", "sun", "rain", "weather", "air", "beach", "ocean", "sea", "water", "moisture", "condensation", "humidity", "hail", "branch", "branches", "limb", "tree", "snow", "ice", "age", "years", "wind", "storm", "storms", "sol", "sal", "lluvia", "agua", "humedad", "granizo", "rama", "nieve", "viento", "mar", "playa", "aire") {
			break // "pitted from the salt air, we're two blocks from the beach"
		}
		if i > h.last && r.wordAt(i, "if") && r.wordsIn(i+1, min(i+5, len(r.toks)), "matters", "difference", "helps", "important", "matter") {
			break // "it's a rental house if that makes a difference"
		}
		if i > h.last && (r.wordAt(i, "in") && r.wordAt(i+1, "case") || r.wordAt(i, "as") && r.wordAt(i+1, "i", "we", "you") && r.wordsIn(i+2, min(i+6, len(r.toks)), "said", "mentioned", "told", "wrote", "know")) {
			break // "it's the tube kind in case that matters", "as I may have said"
		}
		if i > h.last && r.wordAt(i, "id", "wed", "ill") && r.wordAt(i+1, "like", "rather", "want", "prefer", "just", "love", "keep", "need") {
			break // "the frame is good I'd like to keep it"
		}
		if i > h.last && r.wordAt(i, "for", "para", "pa") && r.wordsIn(i+1, min(i+3, len(r.toks)), "heat", "cold", "noise", "warmth", "winter", "insulation", "kids", "strength", "frio", "calor", "ruido", "sol", "granizo", "hail") {
			break // "double for the noise"
		}
		if i > h.last && r.politeIf(i) {
			break // "en blanco si se puede"
		}
		if !r.explained(i) {
			return false
		}
	}
	return true
}

// everyWord: all words of the sentence are understood, so a "not" in it leaves nothing open.
func (r *reader) everyWord(i int) bool {
	from, to := r.sentence(i)
	for ; from <= to; from++ {
		if !r.explained(from) {
			return false
		}
	}
	return true
}

// explained: the token is a sign, a number, a name, a small word, or part of a phrase
// that has a meaning.
func (r *reader) explained(i int) bool {
	t := &r.toks[i]
	if t.kind != wordToken || t.used || t.named || t.roomJoined() || r.inRef(i) || r.labelAt[i] >= 0 || neutral.has(t.text) || fields[t.text] != "" {
		return true
	}
	if t.is("after") && r.wordAt(i+1, "all") || t.is("all") && r.wordAt(i-1, "after") {
		return true // "polycarbonate after all"
	}
	if t.word == nil {
		return false
	}
	if t.is("supposed", "meant", "intended") && r.wordAt(i+1, "to") && r.wordAt(i+2, "be", "say", "read") && r.asked(fitcheck.TopicConfirm) {
		return true // "the color was supposed to be bronze"
	}
	if t.is("he", "she") && r.wordAt(i+1, "says", "said", "thinks", "told") {
		return true
	}
	if t.word.filler || t.word.number.kind != notNumber || t.word.unit != noUnit || negWords.has(t.text) {
		return true
	}
	return covers(r.choices, i) || covers(r.styles, i) || covers(r.wants, i) || covers(r.talk, i) || covers(r.intros, i)
}

// covers says whether one of the phrases, which stand in order, has the token.
func covers(hits []hit, i int) bool {
	for n := range hits {
		if hits[n].first > i {
			return false
		}
		if i <= hits[n].last {
			return true
		}
	}
	return false
}

// neutral are words that change nothing of what is said beside them.
var neutral = wordsOf(`possible posible point should cambielo cambiela prefer prefiero swap likewise cambie cambien cambiele cambia ponga pongan pongale ponle pon haga hagan sea sean venga vengan ademas aparte ordered requested asked picked oh um uh us me him landlord landlady super gutter gutters decided finally choice pick mine preference nice great perfect soften bit family kids every each most once twice often sometimes usually always times spring springs summer summers june july august primavera verano mayo junio cada nobody noone sees notices lets ask before i im we my our want wants need needs would like could can be is are was has have got and with on of from in at for to up out
	worse today clima sol tiempo anos edad weather sun age elements corner corners sides edges too much more side edge spot spots bit little lot lots couple end ends part parts bunch whole swap replace replacing replaced roof please like around over near from back down away send
	holding held rock solid full stuff thing things kind sort looks seems look seem years year old new been only real really very pretty quite so too also btw tho though lol now here there still yet well please thanks deacon pastor janitor custodian carpenter plenty enough fyi cierto overall hi hello hey ok second thought time change guy
	said says bought built just all any some one ones it its this that these those them they theyre you u your the a an as by but or if when
	gray grey get winter winters cold heated match existing clean straight through rip put change switch esquina sola solo cambiar cambio poner
	make makes go goes ok believe running runs growing grows spreading spreads going goes started starting belong belongs
	own owned owns rent rents rented renting live lives lived bought manage manages run runs husband wife mom moms mother mothers dad dads son sons daughter daughters grandma
	grandmas grandpa customer customers client clients tenant tenants renter way across bad badly middle center completely totally kind kinda heat heating heated unheated insulated european
	except excepting change correction forgot mention mentioned note noted kindly aware advised say tell told already meant mean wrong forgotten add better instead rather otherwise hell heck crazy everywhere suppose guess mejor supongo upstairs downstairs bathroom kitchen hallway hall bedroom living dining laundry stairwell stairs room rooms shower tub entry closet porch lobby attic basement
	en al de del con para es son que un una lo la el las los muy mas ya y o mi mis rento rentamos renta vivo vivimos vive familia todavia aun sigue esquinas lados lado orillas orilla partes bano cocina sala pasillo recamara cuarto tengo tiene quiero necesito esta estan ahi aqui tambien pero por falta falto faltaba viejo viejos vieja viejas entonces dije dijimos decia dicho decir decirle decirles le les olvido olvide olvidaba cosa una acuerdo pedi pedimos mencione quise puse tome nota anote anotar anoten equivoque confundi perdon disculpe`)

// hintOfOther: of several topics asked at once, a word that only hints at one tells
// nothing of it in a clause that answers another: "just the dome" is a wish and says
// nothing of what is up there, nor "a regular house" of the frame.
func (r *reader) hintOfOther(s sense, h *hit) bool {
	if s.value == "?" && s.topic == fitcheck.TopicStyle && h.first == h.last && r.wordAt(h.last+1, "is", "measures", "mide") && h.last+2 < len(r.toks) && r.toks[h.last+2].kind == numToken {
		return true // "the frame is 26 x 50"
	}
	if s.value != "?" || !s.asked || len(r.Asked) < 2 || s.topic != fitcheck.TopicStyle && s.topic != fitcheck.TopicFrameCondition {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for _, layer := range [][]hit{r.choices, r.styles, r.wants} {
		hits := within(layer, r.sentenceFirst(h.first), to)
		for n := range hits {
			for _, o := range hits[n].senses {
				if hits[n].last >= from && o.topic != "" && o.topic != s.topic && o.value != "?" && r.asked(o.topic) && !r.negated(hits[n].first) {
					return true
				}
			}
		}
	}
	return false
}
