package reading

import (
	"strconv"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	glassPartners = wordsOf(`roof roofing mirror mirrors glazing sons son screen screens windows window door
		doors paint co company`)
	glassFirms     = wordsOf(`co company inc llc works shop repair service services contractors`)
	soloWords      = wordsOf(`nada nomas solo solamente unicamente puro pura`)
	hearsayVerbs   = wordsOf(`says said told thinks dice dijo`)
	hearsayTellers = wordsOf(`guy roofer contractor inspector handyman techero albanil neighbor`)
	lookDoubts     = wordsOf(`think guess maybe probably sure might could cant hard creo know tell may see`)
	lidCovered     = wordsOf(`frame metal rim sides edges outside`)
)

// said is one value of a topic as the message says it.
type saying struct {
	topic   fitcheck.Topic
	value   string
	first   int
	last    int
	unit    int
	asked   bool // an answer only
	negated bool
	doubted bool
	weak    bool // an answer only, beside words that nobody understands
}

// readChoices finds the values of enumerated topics.
func (r *reader) readChoices() {
	if r.out.Language != "en" && r.out.Language != "es" {
		return // words that look like ours may mean something else there
	}
	all := r.plainSayings(nil, r.choices)
	all = r.plainSayings(all, r.styles)
	for n := range r.wants {
		if h := &r.wants[n]; !r.toks[h.first].used && !r.saysStyle(all, h) {
			all = r.sayings(all, h)
		}
	}
	r.settle(r.ifElse(r.frameKinds(r.flatSheet(r.shapeLike(r.nakedSheet(r.liesOnWhat(all)))))))
	r.wishedChoices()
	r.noSecondLayer()
	r.noRisk()
	r.fallsOn()
	r.colors()
	r.layersOfColor()
}

// plainSayings adds what phrases say that are no part of a name, and that nothing was told by yet.
func (r *reader) plainSayings(all []saying, phrases []hit) []saying {
	for n := range phrases {
		if h := &phrases[n]; !r.toks[h.first].used && !h.is("none", "none") && !r.afterName(h) {
			all = r.sayings(all, h)
		}
	}
	return all
}

// afterName: the word goes on a name: "Tri County Glass".
func (r *reader) afterName(h *hit) bool {
	if r.glassFirm(h) {
		return true
	}
	if h.first == 0 || !r.toks[h.first-1].named || !r.known(fitcheck.TopicName) {
		return false
	}
	for _, w := range r.where {
		if w.topic == fitcheck.TopicName {
			return h.last+1 >= len(r.toks) && w.first <= h.first && h.first-w.first <= 4
		}
	}
	return false
}

// glassFirm: "Hilltop Glass & Mirror", "Tri County Glass Company".
func (r *reader) glassFirm(h *hit) bool {
	if !r.wordAt(h.first, "glass") {
		return false
	}
	if (r.markAt(h.last+1, '&') || r.wordAt(h.last+1, "and", "n")) && r.among(h.last+2, glassPartners) {
		return true
	}
	return h.first > 0 && r.among(h.last+1, glassFirms) && !r.softBreak(h.first-1)
}

// sayings picks the senses of a phrase that count here: those that answer what was
// asked, else those that stand on their own.
func (r *reader) sayings(all []saying, h *hit) []saying {
	answer := false
	for _, s := range h.senses {
		answer = answer || s.topic != "" && r.asked(s.topic)
	}
	for _, s := range h.senses {
		if s = r.inShape(r.tinyOnFoundation(s, h), h); !r.takes(s, h, answer) {
			continue
		}
		if s = r.hailToCome(s, h); r.leftOut(s, h) {
			continue
		}
		base := saying{topic: s.topic, first: h.first, last: h.last, asked: s.asked}
		base.negated = r.negatedHere(s, h)
		base.value = r.valueSaid(s, h, base.negated)
		base.doubted = r.doubtedHere(s, h)
		base.weak = r.weakly(s, h)
		for _, u := range r.unitsOfSense(s, h) {
			base.unit = u
			all = append(all, base)
		}
	}
	return all
}

// leftOut: what the words tell is passed over: another's, a thing of the past, or only asked about.
func (r *reader) leftOut(s sense, h *hit) bool {
	orMore := s.topic == fitcheck.TopicLayers && r.wordAt(h.last+1, "or", "o") && r.wholeAt(h.last+2) > 0
	if orMore && r.firstTalk("dontknow") != nil {
		return true // "one layer or two I have no idea"
	}
	if r.noOwnWish(s, h) || s.topic == fitcheck.TopicWant && r.unsureBeforeHearsay(h.first) {
		return true // "not sure, my roofer says replace it all"
	}
	if chosen(s.topic) && (r.betterThan(s, h) || r.pastOrPassed(s, h) || r.unknownValue(h)) {
		return true
	}
	return r.elsewhere(s, h) || r.onlyAsked(s, h) || r.unexplained(s.topic, h) || r.hintOfOther(s, h)
}

// betterThan: "I liked it better than the anodized"; "more than one layer" is told of layers.
func (r *reader) betterThan(s sense, h *hit) bool {
	the := number(r.wordAt(h.first-1, "the", "la", "el"))
	return s.topic != fitcheck.TopicLayers && r.wordAt(h.first-1-the, "than")
}

// pastOrPassed: "polycarbonate please, the last one was acrylic".
func (r *reader) pastOrPassed(s sense, h *hit) bool {
	return r.letGo(h) || r.pastValue(string(s.topic), h) || r.passedOver(string(s.topic), h)
}

// negatedHere says whether the words deny the value.
func (r *reader) negatedHere(s sense, h *hit) bool {
	if r.notJust(s, h) {
		return false
	}
	denied := r.negated(h.first) && !r.contrary(h.first) && !r.ownSubject(h) || r.deniedAfter(h.last) ||
		r.rareRisk(s, h) || r.farOff(s, h) || r.clueDenied(s, h) ||
		s.topic == fitcheck.TopicProblem && r.noneOfThem(h)
	if !denied || r.deniesOther(s, h) {
		return false
	}
	nothingBut := s.topic == fitcheck.TopicWant && r.among(h.first, soloWords) && !r.wordAt(h.first-1, "no")
	return !nothingBut // "nada más el domo"
}

// noneOfThem: "none are leaking yet".
func (r *reader) noneOfThem(h *hit) bool {
	return r.wordsIn(max(r.clauseStart(h.first), h.first-3), h.first, "none", "neither", "ninguno", "ninguna")
}

// valueSaid is the value that the words tell in their place, "?" where they leave it open.
func (r *reader) valueSaid(s sense, h *hit, negated bool) string {
	switch {
	case s.topic == fitcheck.TopicImpactRisk && s.value != "none" && !negated && r.seldom(h.first), r.wantHangs(s, h):
		return "?"
	case s.topic == fitcheck.TopicWant && r.eitherWish(s, h):
		return fitcheck.WantUnsure
	case r.notJust(s, h):
		return fitcheck.WantCompleteUnit
	}
	n := r.wholeAt(h.first - 1)
	if s.topic == fitcheck.TopicLayers && n > 0 && n < 4 && r.likeOldOne(h) {
		return strconv.Itoa(int(n))
	}
	if said, ok := r.saidInstead(s, h); ok {
		return said
	}
	if r.plasticLid(s, h) {
		return fitcheck.StyleDomeOverFrame
	}
	if s.topic == fitcheck.TopicLayers && r.eitherLayers(h) {
		return "?"
	}
	return s.value
}

// eitherLayers: "either one or two, which do you sell the most of".
func (r *reader) eitherLayers(h *hit) bool {
	return r.wordAt(h.first-1, "or", "o") && r.wordsIn(h.first-4, h.first, "either") &&
		(r.wholeAt(h.first-2) > 0 || r.wordAt(h.first-2, "single", "double", "sencillo", "doble"))
}

// doubtedHere says whether words of doubt hold for the value.
func (r *reader) doubtedHere(s sense, h *hit) bool {
	if softTopic(s.topic) || !r.doubtedBut(h.first, h.last, chosen(s.topic)) || r.seen(s.topic, h) ||
		r.wishBehind(s.topic, h.first, h.last) {
		return false
	}
	ofFrame := s.topic == fitcheck.TopicFrameCondition
	if ofFrame && s.value != fitcheck.ConditionGood && r.hedged(h) {
		return false // "kind of chalky" tells how it looks
	}
	// "looks like two layers": seen, not guessed
	return !(ofFrame || s.topic == fitcheck.TopicLayers) || !r.looksLike(h)
}

// unitsOfSense are the kinds that a value is told of, 0 for all of them.
func (r *reader) unitsOfSense(s sense, h *hit) []int {
	units := r.unitsAt(h.first, h.last)
	ofShape := s.topic == fitcheck.TopicOutline || s.topic == fitcheck.TopicProfile
	if unit := r.kindOfLook(h); unit > 0 && ofShape && (len(units) != 1 || r.nounLook(h.last)) {
		units = []int{unit}
	}
	if len(units) == 0 || !s.topic.OfUnit() {
		return []int{0}
	}
	return units
}

// unsureBeforeHearsay: nothing but a doubt goes before what somebody else says.
func (r *reader) unsureBeforeHearsay(first int) bool {
	h := r.firstTalk("dontknow")
	if h == nil {
		return false
	}
	next := h.last + 1
	if h.first > first && (next >= len(r.toks) || r.toks[next].kind == markToken) {
		return r.anyOf(0, first, hearsayVerbs) // "the roofer told me to get it all, I dont know"
	}
	if h.last > first || next >= len(r.toks) || r.toks[next].kind != markToken && !r.wordAt(next, "but", "pero") {
		return false
	}
	return r.hearsay(first) || r.anyOf(h.last, first, hearsayVerbs) && r.anyOf(h.last, first, hearsayTellers)
}

// otherCondition: another phrase says what the frame is like.
func (r *reader) otherCondition(h *hit) bool {
	for n := range r.choices {
		c := &r.choices[n]
		if c.first != h.first && c.has1(string(fitcheck.TopicFrameCondition)) && !r.wordAt(c.first, "old", "older", "viejo", "vieja") {
			return true
		}
	}
	return false
}

// looksLike: nothing but "looks like" goes before the words in their sentence.
func (r *reader) looksLike(h *hit) bool {
	from, to := r.sentence(h.first)
	for i := from; i < h.first; i++ {
		if r.wordAt(i, "looks", "look") && r.wordAt(i+1, "like") || r.wordAt(i, "parece", "parecen") {
			return !r.anyOf(from, to+1, lookDoubts)
		}
	}
	return false
}

// hedged: only a "kind of" stands before the words in their clause.
func (r *reader) hedged(h *hit) bool {
	from := r.clauseStart(h.first)
	kindOf := r.wordsIn(from, h.first, "kinda", "sorta") ||
		r.wordsIn(from, h.first, "kind", "sort") && r.wordsIn(from, h.first, "of")
	return kindOf && !r.anyOf(from, r.clauseEnd(h.last)+1, lookDoubts)
}

// plasticLid: "the plastic comes down over the frame like a shoebox lid": what goes over is
// the plastic.
func (r *reader) plasticLid(s sense, h *hit) bool {
	if s.value != fitcheck.StyleCurbMount || !r.wordsIn(h.first, h.last+1, "lid", "hat") {
		return false
	}
	for i := r.sentenceFirst(h.first); i < h.first; i++ {
		if r.wordAt(i, "plastic", "acrylic", "dome") && r.plasticGoesOver(i, h) {
			return true
		}
	}
	return false
}

// plasticGoesOver: the plastic at a token comes down over the frame, before the words of a lid.
func (r *reader) plasticGoesOver(i int, h *hit) bool {
	if r.wordsIn(i, h.first, "and", "which", "that", "with") {
		return false
	}
	return i+2 <= h.first && r.wordsIn(i+1, i+5, "down", "over") && r.anyOf(i+2, h.first+1, lidCovered)
}

func (r *reader) softQuestion(i int) bool { return r.wordAt(i-1, "to", "the", "from", "inside") }

// loneLayers: "double" is all that the message says, and no measure was asked for.
func (r *reader) loneLayers(h *hit) bool {
	if len(r.Asked) == 0 || r.askedSize() != "none" || !r.wordAt(h.first, "double", "doble", "triple", "sencillo", "single") {
		return false
	}
	return !r.asked(fitcheck.TopicCount) && !r.asked(fitcheck.TopicUse) && !r.asked(fitcheck.TopicName) &&
		r.aloneBetween(h.first, h.last)
}

// layersBeside: the clause is about layers, the material or a color.
func (r *reader) layersBeside(h *hit) bool {
	hits := within(r.choices, r.clauseStart(h.first), h.first-1)
	for n := range hits {
		if hits[n].has1("layers") && hits[n].last > hits[n].first || hits[n].has1("material") {
			return true
		}
	}
	return false
}

// colorBeside: the next or the last word is a color.
func (r *reader) colorBeside(h *hit) bool {
	for n := range r.choices {
		if c := &r.choices[n]; (c.first == h.last+1 || c.last == h.first-1) && c.has1("color") {
			return true
		}
	}
	return false
}

// shared: the phrase also means something of another topic, so what was asked decides.
func (h *hit) shared(t fitcheck.Topic) bool {
	for _, s := range h.senses {
		if s.topic != t && s.topic != "" && !s.joint {
			return true
		}
	}
	return false
}

// softTopic: what people see every day is a fact also with "I think".
func softTopic(t fitcheck.Topic) bool {
	return t == fitcheck.TopicProblem || t == fitcheck.TopicUse || t == fitcheck.TopicWant || t == fitcheck.TopicImpactRisk
}
