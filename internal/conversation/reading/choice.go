package reading

import (
	"strconv"

	"example.com/intake-bot/internal/fitcheck"
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
	var all []saying
	for n := range r.choices {
		h := &r.choices[n]
		if r.toks[h.first].used || h.is("none", "none") || r.afterName(h) {
			continue
		}
		all = r.sayings(all, h)
	}
	for n := range r.styles {
		if h := &r.styles[n]; !r.toks[h.first].used && !h.is("none", "none") && !r.afterName(h) {
			all = r.sayings(all, h)
		}
	}
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

// afterName: the word goes on a name: "Tri County Glass".
func (r *reader) afterName(h *hit) bool {
	if r.wordAt(h.first, "glass") && (r.markAt(h.last+1, '&') || r.wordAt(h.last+1, "and", "n")) && r.wordAt(h.last+2, "roof", "roofing", "mirror", "mirrors", "glazing", "sons", "son", "screen", "screens", "windows", "window", "door", "doors", "paint", "co", "company") || r.wordAt(h.first, "glass") && h.first > 0 && r.wordAt(h.last+1, "co", "company", "inc", "llc", "works", "shop", "repair", "service", "services", "contractors") && !r.softBreak(h.first-1) {
		return true // "Hilltop Glass & Mirror"
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
		s = r.hailToCome(s, h)
		base := saying{topic: s.topic, value: s.value, first: h.first, last: h.last, asked: s.asked}
		base.negated = r.negated(h.first) && !r.contrary(h.first) && !r.ownSubject(h) || r.deniedAfter(h.last) || r.rareRisk(s, h) || r.farOff(s, h) || r.clueDenied(s, h)
		if s.topic == fitcheck.TopicProblem && r.wordsIn(max(r.clauseStart(h.first), h.first-3), h.first, "none", "neither", "ninguno", "ninguna") {
			base.negated = true // "none are leaking yet"
		}
		if base.negated && (r.deniesOther(s, h) || s.topic == fitcheck.TopicWant && r.wordAt(h.first, "nada", "nomas", "solo", "solamente", "unicamente", "puro", "pura") && !r.wordAt(h.first-1, "no")) {
			base.negated = false
		}
		if s.topic == fitcheck.TopicLayers && r.wordAt(h.first-1, "or", "o") && (r.wholeAt(h.first-2) > 0 || r.wordAt(h.first-2, "single", "double", "sencillo", "doble")) && r.wordsIn(max(0, h.first-4), h.first, "either") {
			base.value = "?" // "either one or two, which do you sell the most of"
		}
		if s.topic == fitcheck.TopicLayers && r.wordAt(h.last+1, "or", "o") && r.wholeAt(h.last+2) > 0 && r.firstTalk("dontknow") != nil {
			continue // "one layer or two I have no idea"
		}
		if r.plasticLid(s, h) {
			base.value = fitcheck.StyleDomeOverFrame
		}
		if said, ok := r.saidInstead(s, h); ok {
			base.value = said
		}
		if n := r.wholeAt(h.first - 1); s.topic == fitcheck.TopicLayers && n > 0 && n < 4 && r.likeOldOne(h) {
			base.value = strconv.Itoa(int(n))
		}
		if r.notJust(s, h) {
			base.value, base.negated = fitcheck.WantCompleteUnit, false
		}
		if s.topic == fitcheck.TopicWant && r.eitherWish(s, h) {
			base.value = fitcheck.WantUnsure
		}
		if r.noOwnWish(s, h) {
			continue
		}
		if r.wantHangs(s, h) {
			base.value = "?"
		}
		if s.topic == fitcheck.TopicWant && r.unsureBeforeHearsay(h.first) {
			continue // "not sure, my roofer says replace it all"
		}
		if chosen(s.topic) && r.wordAt(h.first-1-number(r.wordAt(h.first-1, "the", "la", "el")), "than") && s.topic != fitcheck.TopicLayers {
			continue // "I liked it better than the anodized"
		}
		if chosen(s.topic) && (r.letGo(h) || r.pastValue(string(s.topic), h) || r.passedOver(string(s.topic), h)) {
			continue // "polycarbonate please, the last one was acrylic"
		}
		if chosen(s.topic) && r.unknownValue(h) || r.elsewhere(s, h) || r.onlyAsked(s, h) || r.unexplained(s.topic, h) || r.hintOfOther(s, h) {
			continue
		}
		base.doubted = !softTopic(s.topic) && r.doubtedBut(h.first, h.last, chosen(s.topic)) && !r.seen(s.topic, h) && !r.wishBehind(s.topic, h.first, h.last)
		if s.topic == fitcheck.TopicFrameCondition && s.value != fitcheck.ConditionGood && r.hedged(h) {
			base.doubted = false // "kind of chalky" tells how it looks
		}
		if (s.topic == fitcheck.TopicLayers || s.topic == fitcheck.TopicFrameCondition) && base.doubted && r.looksLike(h) {
			base.doubted = false // "looks like two layers": seen, not guessed
		}
		base.weak = r.weakly(s, h)
		if s.topic == fitcheck.TopicImpactRisk && s.value != "none" && !base.negated && r.seldom(h.first) {
			base.value = "?"
		}
		units := r.unitsAt(h.first, h.last)
		if unit := r.kindOfLook(h); unit > 0 && (len(units) != 1 || r.nounLook(h.last)) && (s.topic == fitcheck.TopicOutline || s.topic == fitcheck.TopicProfile) {
			units = []int{unit}
		}
		if len(units) == 0 || !s.topic.OfUnit() {
			units = []int{0}
		}
		for _, u := range units {
			base.unit = u
			all = append(all, base)
		}
	}
	return all
}

// unsureBeforeHearsay: nothing but a doubt goes before what somebody else says.
func (r *reader) unsureBeforeHearsay(first int) bool {
	h := r.firstTalk("dontknow")
	if h != nil && h.first > first && (h.last+1 >= len(r.toks) || r.toks[h.last+1].kind == markToken) {
		return r.wordsIn(0, first, "says", "said", "told", "thinks", "dice", "dijo") // "the roofer told me to get it all, I dont know"
	}
	if h == nil || h.last > first || h.last+1 >= len(r.toks) || r.toks[h.last+1].kind != markToken && !r.wordAt(h.last+1, "but", "pero") {
		return false
	}
	return r.hearsay(first) || r.wordsIn(h.last, first, "says", "said", "told", "thinks", "dice", "dijo") && r.wordsIn(h.last, first, "guy", "roofer", "contractor", "inspector", "handyman", "techero", "albanil", "neighbor")
}

// otherCondition: another phrase says what the frame is like.
func (r *reader) otherCondition(h *hit) bool {
	for n := range r.choices {
		if c := &r.choices[n]; c.first != h.first && c.has1(string(fitcheck.TopicFrameCondition)) && !r.wordAt(c.first, "old", "older", "viejo", "vieja") {
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
			return !r.wordsIn(from, to+1, "think", "guess", "maybe", "probably", "sure", "might", "could", "cant", "hard", "creo")
		}
	}
	return false
}

// hedged: only a "kind of" stands before the words in their clause.
func (r *reader) hedged(h *hit) bool {
	from := r.clauseStart(h.first)
	return (r.wordsIn(from, h.first, "kinda", "sorta") || r.wordsIn(from, h.first, "kind", "sort") && r.wordsIn(from, h.first, "of")) &&
		!r.wordsIn(from, r.clauseEnd(h.last)+1, "think", "guess", "maybe", "probably", "sure", "know", "tell", "could", "might", "may", "cant", "see")
}

// plasticLid: "the plastic comes down over the frame like a shoebox lid": what goes over is
// the plastic.
func (r *reader) plasticLid(s sense, h *hit) bool {
	if s.value != fitcheck.StyleCurbMount || !r.wordsIn(h.first, h.last+1, "lid", "hat") {
		return false
	}
	for i := r.sentenceFirst(h.first); i < h.first; i++ {
		if r.wordAt(i, "plastic", "acrylic", "dome") && i+2 <= h.first && r.wordsIn(i+1, min(i+5, len(r.toks)), "down", "over") && r.wordsIn(i+2, h.first+1, "frame", "metal", "rim", "sides", "edges", "outside") && !r.wordsIn(i, h.first, "and", "which", "that", "with") ||
			r.wordAt(i, "plastic", "acrylic", "dome") && r.wordsIn(i+1, i+5, "over") && r.wordsIn(i+2, h.first, "frame", "metal", "rim") && !r.wordsIn(i, h.first, "and", "which", "that", "with") {
			return true
		}
	}
	return false
}

// takes says whether a sense counts here at all: on its own, or as the answer that was asked for.
func (r *reader) takes(s sense, h *hit, answer bool) bool {
	switch {
	case s.topic == "" || s.topic == fitcheck.TopicColor:
		return false
	case s.topic == fitcheck.TopicLayers && r.wordAt(h.last+1, "is", "are") && r.pairAt(h.last+2):
		return false // "actually 1 is 30 x 30"
	case s.asked && s.topic == fitcheck.TopicLayers && r.loneLayers(h):
		return true
	case s.asked && !r.asked(s.topic) && !r.ofFrame(s, h) && !r.listLayers(s, h) && !r.whyChosen(s, h) && r.fieldBefore(h.first) != s.topic && !(s.topic == fitcheck.TopicProfile && r.shapeSaid(h.first)):
		return false
	case answer && !r.asked(s.topic) && h.shared(s.topic):
		return false
	case s.asked && s.topic != fitcheck.TopicImpactRisk && r.thingIn(h):
		return false
	}
	if s.topic == fitcheck.TopicLayers && !r.asked(s.topic) && s.value == "1" && r.wordAt(h.first, "one", "una") && (r.wordAt(h.last+1, "cracked", "broke", "broken") || r.wordAt(h.last+1, "is", "was", "has", "got", "looks", "esta") && r.faultIn(h.last+2, min(h.last+3, len(r.toks)-1), nil)) {
		return false // "one pane is fogged"
	}
	if s.topic == fitcheck.TopicLayers && r.countsSkylights(h) || s.topic == fitcheck.TopicFinish && r.metalOfFinish(h) || s.value == fitcheck.ConditionGood && r.wishedFrame(h.first, h.last) {
		return false
	}
	if s.topic == fitcheck.TopicLayers && !r.asked(s.topic) && r.wordAt(h.first-1, "or", "o") && r.wholeAt(h.first-2) > 0 {
		return false // "one or two layers"
	}
	if s.value == fitcheck.StyleBareDome && r.wordAt(h.first, "only", "just") && (!r.asked(fitcheck.TopicStyle) && (len(r.Asked) > 0 || r.wordsIn(0, len(r.toks), "need", "want", "like", "sell", "buy", "order", "replace", "new")) || r.wordsIn(0, len(r.toks), "frame", "frames", "metal", "curb", "box", "boxes") && !r.wordsIn(0, len(r.toks), "no")) {
		return false // "frame looks fine, only the plastic": a wish
	}
	if s.topic == fitcheck.TopicWant && s.value == fitcheck.WantDomeOnly && (r.asked(fitcheck.TopicPlasticSize) || r.asked(fitcheck.TopicRetainerOpening)) && !r.asked(s.topic) && r.wordsIn(h.first, h.last+1, "only", "just") && r.wordsIn(h.first, h.last+1, "plastic", "acrylic", "sheet", "plastico") && !r.wishedAloud(h) {
		return false // "plastic only, 24 1/2 x 48 1/2": what was measured
	}
	if k := r.sentenceFirst(h.first); s.topic == fitcheck.TopicWant && r.wordAt(k, "do", "does") && r.wordAt(k+1, "you", "u", "yall") && r.wordAt(k+2, "make", "sell", "carry", "have", "stock") && r.wordAt(h.first-1, "or") {
		return false // "do you make glass ones too, or just the plastic ones?"
	}
	if s.value == fitcheck.WantCompleteUnit && h.first == h.last && r.wordAt(h.first, "both", "all", "ambos", "ambas") && r.wordsIn(r.sentenceFirst(h.first), h.first, "only", "just", "solo", "nomas") && r.wordsIn(r.sentenceFirst(h.first), h.first, "plastic", "dome", "domes", "plastico", "domos") {
		return false // "I only need the plastic part, both": both skylights
	}
	if s.value == fitcheck.WantCompleteUnit && h.first == h.last && r.wordAt(h.first, "both", "all") && r.wordAt(h.last+1, "of") && r.wordAt(h.first-1, "for", "on", "in") {
		return false // "plastic only for both of them"
	}
	if s.topic == fitcheck.TopicWant && r.wordAt(h.last+1, "for") && r.wholeAt(h.last+2) > 0 && r.wordAt(h.last+3, "of") && r.wordAt(h.last+4, "them", "those", "these") && r.wordsIn(h.last+5, len(r.toks), "third", "other", "others", "rest", "last", "everything") {
		return false // "plastic only for 2 of them, the third needs everything"
	}
	if from, to := r.sentence(h.first); s.value == fitcheck.WantCompleteUnit && r.wordAt(h.last, "frame", "frames", "marco", "marcos") && r.wordsIn(h.first, h.last, "with", "con") && (r.wordsIn(from, to+1, "plastic", "lens", "lenses", "only", "fix", "plastico") || r.wordsIn(from, h.last, "for") && r.wordsIn(from, h.last, "skylight", "skylights") && !r.wordsIn(from, h.last, "complete", "whole", "entire", "full", "looking")) {
		return false // "domes for skylights with metal frames"
	}
	if s.value == fitcheck.WantCompleteUnit && r.wordsIn(h.first, h.last+1, "replaced", "redone") && r.wordsIn(r.sentenceFirst(h.first), h.first, "roof", "techo", "kitchen", "house") {
		return false // "the roof was replaced, everything redone"
	}
	if from, to := r.sentence(h.first); s.value == fitcheck.StyleBareDome && r.wordsIn(h.first, h.last+1, "around") && r.wordsIn(from, to+1, "frame", "curb", "box", "retainer", "retaining") {
		return false // "the frame is screwed around the perimeter into the roof"
	}
	if s.topic == fitcheck.TopicProblem && (r.asked(fitcheck.TopicFrameCondition) || r.asked(fitcheck.TopicColor)) && !r.asked(s.topic) && (r.wordsIn(h.first, h.last+1, "puso") || r.wordsIn(h.first, h.last+1, "tronado") && r.wordsIn(h.first, min(h.last+4, len(r.toks)), "marco")) {
		return false // "el marco se puso negro"
	}
	if s.topic == fitcheck.TopicProfile && !r.asked(s.topic) && (r.wordsIn(h.first, h.last+1, "bent", "bends") || r.wordsIn(r.clauseStart(h.first), h.first, "crack")) {
		return false // "frame is bent one way"
	}
	if s.value == "golf" && r.wordAt(h.last, "green") && h.last+1 < len(r.toks) && r.toks[h.last+1].kind == wordToken && !r.wordAt(h.last+1, "so", "and", "at", "of", "on", "here", "with") {
		return false // "the green barn"
	}
	if s.topic == fitcheck.TopicWant && (r.differenceBetween(h.first) || r.differenceBetween(h.first-4)) && !r.wordsIn(h.first-4, h.first, "is", "are", "its", "looks", "esta", "estan", "es") {
		return false // "what's the cost difference between the dome and the whole unit"
	}
	if s.topic == fitcheck.TopicWant && r.askedSize() != "none" && r.wordAt(h.first, "not", "no") && r.wordAt(h.last, "frame", "marco") && r.numberNear(h) {
		return false // "not the frame, I took the wood: 30 x 30"
	}
	if s.topic == fitcheck.TopicWant && s.value != fitcheck.WantUnsure && r.neitherChosen(r.sentence(h.first)) {
		return false // "maybe the dome, maybe the full unit"
	}
	if s.topic == fitcheck.TopicWant && r.wordsIn(max(r.clauseStart(h.first), h.first-3), h.first, "across", "around", "along") {
		return false // "41 inches across the whole thing"
	}
	if s.topic == fitcheck.TopicProblem && s.value == fitcheck.ProblemHazy && r.asked(fitcheck.TopicColor) && !r.asked(s.topic) && r.wordsIn(h.first, h.last+1, "through", "thru") && r.wordsIn(0, h.first, "kind", "type", "milky", "sort", "white") && !r.turnedHazy() {
		return false // "white, the milky kind you can't see through"
	}
	if s.topic == fitcheck.TopicFrameCondition && h.first == h.last && r.wordAt(h.first, "old", "older", "viejo", "vieja") && r.otherCondition(h) {
		return false // "the old frame is bent"
	}
	if s.topic == fitcheck.TopicStyle && s.value == "?" && r.wordAt(h.first, "old", "viejo", "vieja", "square", "round", "white", "black", "brown", "flat") && r.firstTalk("dontknow") != nil {
		return false // "honestly no idea, it's old", "not sure, all I see is a square of daylight"
	}
	if s.value == fitcheck.WantDomeOnly && r.asked(fitcheck.TopicMaterial) && r.wordAt(h.last+1, "to") && r.wordAt(h.last+2, "me", "us") {
		return false // "no clue, it's just plastic to me"
	}
	if s.topic == fitcheck.TopicOutline && !r.asked(s.topic) && r.wordAt(h.last, "square") && r.measuresCorners() {
		return false // "corner to corner 54 3/8 both ways so it's square"
	}
	if s.value == fitcheck.ProblemHazy && r.asked(fitcheck.TopicFrameCondition) && !r.asked(s.topic) && r.wordAt(h.first, "no") && r.wordsIn(h.first, h.last+1, "ve", "veo") {
		return false // "no se ve nada, está todo tapado de silicón"
	}
	if s.topic == fitcheck.TopicProblem && h.first == h.last && r.asked(fitcheck.TopicColor) && !r.asked(s.topic) && r.wordAt(h.first, "milky", "lechoso", "lechosa", "smoky", "opaco", "opaque", "cloudy", "frosted", "lechosos") && (len(r.toks) < 8 || r.wordAt(h.first, "smoky") && r.wordAt(h.first-1, "was", "were")) && !r.turnedHazy() {
		return false // "blanco, del lechoso"
	}
	if s.topic == fitcheck.TopicProblem && h.first == h.last && r.asked(fitcheck.TopicColor) && !r.asked(s.topic) && r.colorBeside(h) {
		return false // "smoky brown"
	}
	if s.topic == fitcheck.TopicWant && r.wordAt(h.first, "with") && r.wordAt(h.first-1, "piece", "glued", "molded", "moulded", "built", "one", "together", "integral", "part", "came") && !r.asked(s.topic) {
		return false // "all one piece with the frame": what it is like
	}
	if s.topic == fitcheck.TopicFrameCondition && s.value == fitcheck.ConditionGood && h.first == h.last && (r.wordAt(h.first, "completo", "completa") && r.asked(fitcheck.TopicWant) || r.wordAt(h.first, "ok", "okay") && h.first == 0 && r.wordAt(h.last+1, "so", "here", "well")) {
		return false // "completo, con marco", "ok so …"
	}
	if s.topic == fitcheck.TopicFrameCondition && s.value == fitcheck.ConditionGood && h.first == h.last && r.layersBeside(h) {
		return false // "one layer is fine"
	}
	if s.topic == fitcheck.TopicFrameCondition && s.value == fitcheck.ConditionGood && r.wordAt(h.first, "no") && r.wordAt(h.last, "damage") && r.asked(fitcheck.TopicProblem) && !r.wordsIn(r.clauseStart(h.first), h.first, "frame", "metal", "marco") && !(r.wordAt(h.last+1, "on", "to", "in") && r.wordsIn(h.last+2, h.last+4, "frame", "metal", "marco")) {
		return false // "no damage, only updating"
	}
	if s.topic == fitcheck.TopicFinish && h.first == h.last && r.wordAt(h.first, "metal") && r.wordAt(h.first+1, "frame", "roof", "ring", "trim", "edge") && len(r.toks) > 3 {
		return false // "metal frame on a wooden box": what it is like
	}
	if s.value == fitcheck.StyleBareDome && !r.asked(fitcheck.TopicStyle) && r.wordAt(h.first, "sin") && r.wordAt(h.last, "marco") && r.wordsIn(r.sentenceFirst(h.first), h.first, "solo", "nomas", "puro", "pura", "busco", "buco", "quiero", "necesito") {
		return false // "solo la burbuja, sin marco": a wish
	}
	if s.topic == fitcheck.TopicWant && !r.asked(s.topic) && r.wordAt(h.first, "sin") && r.wordAt(h.last, "marco") && r.wordsIn(r.sentenceFirst(h.first), h.first, "atornillado", "atornillada", "pegado", "clavado") && !r.wordsIn(r.sentenceFirst(h.first), h.first, "quiero", "necesito", "busco", "ocupo") {
		return false // "plástico atornillado directo, sin marco": what it is like
	}
	if s.topic == fitcheck.TopicWant && !r.asked(s.topic) && r.wordAt(h.first, "without") && r.wordsIn(r.sentenceFirst(h.first), h.first, "screwed", "bolted", "nailed", "glued", "caulked", "sits", "attached") && !r.wordsIn(r.sentenceFirst(h.first), h.first, "want", "need", "like") {
		return false // "it's screwed straight to the roof without any frame"
	}
	if s.topic == fitcheck.TopicFinish && !r.asked(s.topic) && (r.asked(fitcheck.TopicStyle) || r.asked(fitcheck.TopicFrameCondition) && !r.wordsIn(0, len(r.toks), "want", "need", "like", "please", "prefer", "quiero", "favor")) {
		return false // what is up there, no wish
	}
	if s.topic == fitcheck.TopicStyle && !r.asked(s.topic) && r.wordAt(h.first, "on") && r.wordAt(h.first+1, "the", "my", "our") && h.last == h.first+2 && !r.wordAt(h.last+1, "mount", "mounted") {
		return false // "diagonals on the curb"
	}
	if s.topic == fitcheck.TopicProblem && r.wordAt(h.first, "nothings") && r.wordsIn(h.last+1, min(h.last+3, len(r.toks)), "except", "but", "besides", "other", "only") {
		return false // "nothings broken except the dome"
	}
	return !r.otherwiseMeant(s, h) && !r.shapeOfOther(s, h) && !r.besideThePoint(s, h)
}

// turnedHazy: it was not so from the start: "clear but now you can hardly see through it".
func (r *reader) turnedHazy() bool {
	return r.wordsIn(0, len(r.toks), "now", "anymore", "hardly", "but", "turned", "gotten", "ya", "pero", "puso", "ahora")
}

func (r *reader) softQuestion(i int) bool { return r.wordAt(i-1, "to", "the", "from", "inside") }

// loneLayers: "double" is all that the message says, and no measure was asked for.
func (r *reader) loneLayers(h *hit) bool {
	return len(r.Asked) > 0 && r.askedSize() == "none" && !r.asked(fitcheck.TopicCount) && !r.asked(fitcheck.TopicUse) && !r.asked(fitcheck.TopicName) && r.aloneBetween(h.first, h.last) &&
		r.wordAt(h.first, "double", "doble", "triple", "sencillo", "single")
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
