package reading

import "example.com/intake-bot/internal/fitcheck"

// Where something else was asked, a value is taken only from a clause of which every word
// is understood: "um the white plastic frame kind" answers what kind of frame it is and
// says nothing of the plastic's color. What is lost so is asked in its turn.

var (
	openHoleCovers = wordsOf(`tarp tarped covered plywood boarded boards`)
	besidePreps    = wordsOf(`behind next beside near by on across backs along`)
	riskPlenty     = wordsOf(`live fall falling drop dropping caen lots lot bunch many plenty tons surrounded under
		muchos muchas mucho rodeados big tall huge`)
	riskNotNow   = wordsOf(`if when dont used had no not`)
	styleOfOther = wordsOf(`can could want wants would will myself so neighbor neighbors brother brothers
		friend friends his her their new puedo quiero`)
	whyStarts   = wordsOf(`because cause since porque por where when donde`)
	whySubjects = wordsOf(`i we it its they that you`)
	wearCauses  = wordsOf(`salt sun rain weather air beach ocean sea water moisture condensation humidity hail
		branch branches limb tree snow ice age years wind storm storms sol sal lluvia agua humedad granizo rama
		nieve viento mar playa aire`)
	idLikeVerbs    = wordsOf(`like rather want prefer just love keep need`)
	choicePurposes = wordsOf(`heat cold noise warmth winter insulation kids strength frio calor ruido sol
		granizo hail`)
)

// unexplained says whether the clause around a value, which answers nothing that was
// asked, has words that nothing explains.
func (r *reader) unexplained(t fitcheck.Topic, h *hit) bool {
	if len(r.Asked) == 0 || r.asked(t) || r.changeAsked(t, h.first, h.last) || r.tellsStyle(t, h) {
		return false
	}
	if r.openOrWet(h) || r.plainByItself(t, h) {
		return false
	}
	return !r.allExplained(h) && !(t == fitcheck.TopicImpactRisk && r.plenty(h))
}

// plainByItself: what is said can mean nothing else, whatever the words around it say.
func (r *reader) plainByItself(t fitcheck.Topic, h *hit) bool {
	if r.ownSentence(t) && r.sentenceFirst(h.first) > 0 || r.ownHarm(t, h) || r.ownUse(t, h) {
		return true // "can't measure today, the skylight leaks worse by the minute"
	}
	switch t {
	case fitcheck.TopicUse:
		return r.forMyHome(h) || r.buildingIs(h)
	case fitcheck.TopicImpactRisk:
		return r.golfBeside(h) || r.weGet(h) || r.ofConcern(h)
	}
	if !chosen(t) {
		return false
	}
	if r.pricedWith(h) {
		return true // "what would one cost me with double polycarbonate?"
	}
	// "nothing's broken, we simply want to go from bronze to clear"
	return t != fitcheck.TopicFinish && r.wishBefore(h.last) && !r.wordAt(h.last+1, "or", "o")
}

// ownSentence: the topic may be told in a sentence of its own after the answer, as in a mail.
func (r *reader) ownSentence(t fitcheck.Topic) bool {
	switch t {
	case fitcheck.TopicUse, fitcheck.TopicFrameCondition:
		return true
	case fitcheck.TopicProfile:
		return r.asked(fitcheck.TopicOutline)
	case fitcheck.TopicOutline:
		return r.asked(fitcheck.TopicProfile)
	}
	return false
}

// openOrWet: "there's a tarp over the hole", "water is coming in on the piano".
func (r *reader) openOrWet(h *hit) bool {
	return h.is(string(fitcheck.TopicProblem), fitcheck.ProblemHoleOpen) && r.anyOf(h.first, h.last+1, openHoleCovers) ||
		h.is(string(fitcheck.TopicProblem), fitcheck.ProblemLeaking) &&
			r.wordsIn(h.first, h.last+1, "water", "raining", "agua", "into")
}

// golfBeside: "we have the golf course right behind us".
func (r *reader) golfBeside(h *hit) bool {
	return (r.wordsIn(h.first, h.last+1, "course", "fairway") || r.wordAt(h.last+1, "course")) &&
		r.anyOf(r.clauseStart(h.first), r.clauseEnd(h.last)+1, besidePreps)
}

// forMyHome: "quiero un tragaluz nuevo para mi casa móvil", where a name or place was asked.
func (r *reader) forMyHome(h *hit) bool {
	return (r.asked(fitcheck.TopicName) || r.asked(fitcheck.TopicPlace)) && r.wordAt(h.first-1, "mi", "my", "our", "nuestra") &&
		r.wordsIn(max(0, h.first-3), h.first, "for", "para")
}

// buildingIs: "the building is a small medical office in Tampa", asked for the place.
func (r *reader) buildingIs(h *hit) bool {
	from := r.clauseStart(h.first)
	return !r.wordAt(h.last+1, "roof", "roofs", "style", "type") &&
		r.wordsIn(max(from, h.first-5), h.first, "is", "its", "es") &&
		r.wordsIn(max(from, h.first-4), h.first, "a", "an", "un", "una")
}

// plenty: "lots of trees around us so I worry", "hay muchos árboles": how many there are is
// told for the risk's sake, whatever else the clause says.
func (r *reader) plenty(h *hit) bool {
	from := r.clauseStart(h.first)
	return r.anyOf(max(from, h.first-4), h.last+1, riskPlenty) && !r.anyOf(from, h.first, riskNotNow)
}

// tellsStyle: early in a talk a phrase of four words tells by itself what is up there.
func (r *reader) tellsStyle(t fitcheck.Topic, h *hit) bool {
	if t != fitcheck.TopicStyle || h.last-h.first < 3 {
		return false
	}
	early := r.asked(fitcheck.TopicUse) || r.asked(fitcheck.TopicCount) || r.asked(fitcheck.TopicProblem) ||
		r.asked(fitcheck.TopicName) || r.asked(fitcheck.TopicPhotos)
	from, to := r.sentence(h.first)
	return early && !r.anyOf(from, to+1, styleOfOther)
}

// weakly says whether a word that counts as an answer only stands in a clause that nothing
// else explains: "corroded where it meets the tar". It is asked about.
func (r *reader) weakly(s sense, h *hit) bool {
	switch s.topic {
	case fitcheck.TopicWant, fitcheck.TopicFrameCondition, fitcheck.TopicFinish, fitcheck.TopicLayers, fitcheck.TopicMaterial:
	default:
		return false
	}
	if !s.asked || !r.asked(s.topic) || s.value == "?" || h.last-h.first > 1 || r.allExplained(h) || r.listedBeside(s, h) {
		return false
	}
	return !(chosen(s.topic) && r.plainAnswer(h))
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
	for i := r.explainedFrom(h); i < h.first; i++ {
		if !r.explained(i) {
			return false
		}
	}
	to := min(r.clauseEnd(h.last), len(r.toks)-1)
	for i := h.last + 1; i <= to && !r.turnsAside(i); i++ {
		if !r.explained(i) {
			return false
		}
	}
	return true
}

// explainedFrom is where the words begin that have to be understood with the hit.
func (r *reader) explainedFrom(h *hit) int {
	if r.wordAt(h.first-1, "so", "pues") {
		return h.first // "it got to 38 below here so three"
	}
	from := r.clauseStart(h.first)
	for j := h.first - 1; j > from; j-- {
		if r.among(j, whyWords) {
			return j + 1 // "polycarb since we're in hail country"
		}
	}
	return from
}

// turnsAside: what begins at the token says why or what for it is so, which is another statement.
func (r *reader) turnsAside(i int) bool {
	return r.saysWhy(i) || r.saysFromWhat(i) || r.saysWhatFor(i) || r.saysInCase(i) ||
		r.politeIf(i) || // "en blanco si se puede"
		r.wordAt(i, "id", "wed", "ill") && r.among(i+1, idLikeVerbs) // "the frame is good I'd like to keep it"
}

// saysWhy: "… because it rained", "… so I need one".
func (r *reader) saysWhy(i int) bool {
	return r.among(i, whyStarts) || r.wordAt(i, "so") && r.among(i+1, whySubjects)
}

// saysFromWhat: "pitted from the salt air, we're two blocks from the beach".
func (r *reader) saysFromWhat(i int) bool {
	from := r.wordAt(i, "from", "thanks") || r.wordAt(i, "por", "con", "de") && r.out.Language == "es"
	return from && r.anyOf(i+1, min(i+5, len(r.toks)), wearCauses)
}

// saysWhatFor: "double for the noise".
func (r *reader) saysWhatFor(i int) bool {
	return r.wordAt(i, "for", "para", "pa") && r.anyOf(i+1, min(i+3, len(r.toks)), choicePurposes)
}

// saysInCase: "it's the tube kind in case that matters", "it's a rental house if that makes a difference",
// "as I may have said".
func (r *reader) saysInCase(i int) bool {
	if r.wordAt(i, "in") && r.wordAt(i+1, "case") {
		return true
	}
	if r.wordAt(i, "if") && r.wordsIn(i+1, min(i+5, len(r.toks)), "matters", "difference", "helps", "important", "matter") {
		return true
	}
	return r.wordAt(i, "as") && r.wordAt(i+1, "i", "we", "you") &&
		r.wordsIn(i+2, min(i+6, len(r.toks)), "said", "mentioned", "told", "wrote", "know")
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
	if t.kind != wordToken || t.used || t.named || t.roomJoined() || r.inRef(i) || r.labelAt[i] >= 0 {
		return true
	}
	if neutral.has(t.text) || fields[t.text] != "" {
		return true
	}
	if t.is("after") && r.wordAt(i+1, "all") || t.is("all") && r.wordAt(i-1, "after") {
		return true // "polycarbonate after all"
	}
	if t.word == nil {
		return false
	}
	if r.supposedToBe(i) || t.is("he", "she") && r.wordAt(i+1, "says", "said", "thinks", "told") {
		return true
	}
	if t.word.filler || t.word.number.kind != notNumber || t.word.unit != noUnit || negWords.has(t.text) {
		return true
	}
	return covers(r.choices, i) || covers(r.styles, i) || covers(r.wants, i) || covers(r.talk, i) || covers(r.intros, i)
}

// supposedToBe: "the color was supposed to be bronze", said to the list.
func (r *reader) supposedToBe(i int) bool {
	return r.wordAt(i, "supposed", "meant", "intended") && r.wordAt(i+1, "to") && r.wordAt(i+2, "be", "say", "read") &&
		r.asked(fitcheck.TopicConfirm)
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

// hintOfOther: of several topics asked at once, a word that only hints at one tells
// nothing of it in a clause that answers another: "just the dome" is a wish and says
// nothing of what is up there, nor "a regular house" of the frame.
func (r *reader) hintOfOther(s sense, h *hit) bool {
	if s.value != "?" {
		return false
	}
	if s.topic == fitcheck.TopicStyle && r.measuredThing(h) {
		return true
	}
	if !s.asked || len(r.Asked) < 2 || s.topic != fitcheck.TopicStyle && s.topic != fitcheck.TopicFrameCondition {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for _, layer := range [][]hit{r.choices, r.styles, r.wants} {
		hits := within(layer, r.sentenceFirst(h.first), to)
		for n := range hits {
			if hits[n].last >= from && r.answersBeside(&hits[n], s.topic) {
				return true
			}
		}
	}
	return false
}

// measuredThing: "the frame is 26 x 50".
func (r *reader) measuredThing(h *hit) bool {
	return h.first == h.last && r.wordAt(h.last+1, "is", "measures", "mide") &&
		h.last+2 < len(r.toks) && r.toks[h.last+2].kind == numToken
}

// answersBeside: the hit answers another topic that was asked.
func (r *reader) answersBeside(h *hit, t fitcheck.Topic) bool {
	for _, o := range h.senses {
		if o.topic != "" && o.topic != t && o.value != "?" && r.asked(o.topic) && !r.negated(h.first) {
			return true
		}
	}
	return false
}
