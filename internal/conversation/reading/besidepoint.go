package reading

import "example.com/intake-bot/internal/fitcheck"

// What a value's words tell where they do not tell the value: one of several, how a sheet is made,
// what a size is taken of.

var (
	beforeUsePlace = wordsOf(`the my our a el la mi detached`)
	usePlaceLinks  = wordsOf(`over on in above at en sobre for out`)
	addedOneWords  = wordsOf(`forgot add also another plus olvide agregue agrega falto`)
	heardWords     = wordsOf(`ok okay k fine alright all bien bueno`)
	frameTalkWords = wordsOf(`frame metal shape rust bent aluminum condition marco aluminio far`)
	afterHeard     = wordsOf(`hang hold wait let ill whatever whats what bye later gonna deje dejeme espere
		adios`)
	notNowVerbs = wordsOf(`wont will cant cannot gotta need dont have should`)
	treeNames   = wordsOf(`oak oaks pine pines maple maples ash ashes birch birches spruce spruces cedar
		cedars fir firs walnut walnuts poplar poplars cypress elm elms locust`)
	riskLeads       = wordsOf(`you le about on of de del the for what how if we get much sobre`)
	riskTails       = wordsOf(`i is risk part we no ahi`)
	skylightsBorne  = wordsOf(`one ones hatch skylight skylights dome domes vent`)
	cappedLeads     = wordsOf(`the my wood over el la`)
	eitherUnitWords = wordsOf(`or o maybe might could be puede podria ser quiza quizas`)
	unitDoubts      = wordsOf(`tell know sure certain unsure idk dunno remember say se seguro segura`)
	metricWords     = wordsOf(`cm cms centimeters centimetres mm millimeters millimetres centimetros milimetros
		metric`)
	sheetMaterials = wordsOf(`acrylic polycarbonate lexan plexiglass acrilico policarbonato`)
	materialWishes = wordsOf(`like want prefer in make need quiero prefiero`)
)

// besideThePoint says whether a value's words tell something else than the value here.
func (r *reader) besideThePoint(s sense, h *hit) bool {
	switch s.topic {
	case fitcheck.TopicUse:
		return r.oneOfThem(h) || r.sheWould(h) || r.onlyKnown(h) || r.othersSkylight(&hit{first: h.last + 1, last: h.last})
	case fitcheck.TopicStyle:
		return s.value == fitcheck.StyleNoneYet && r.holeThere() || r.sizeNamed(h) || r.frameGone(s, h) || r.frameUnwanted(s, h)
	case fitcheck.TopicProfile:
		return r.wordAt(h.first, "no") && r.holeThere() // "no dome at all, just an open hole": none is there
	case fitcheck.TopicWant:
		return r.onlyRises(s, h) || r.openTo(s, h) || r.bothCosted(s, h)
	case fitcheck.TopicImpactRisk:
		return r.riskUnknown(h) || r.golferTold(h)
	case fitcheck.TopicFrameCondition:
		return r.bentOver(s, h) || r.veryTall(h) || r.frameAside(s, h) || r.noneLeft(h.last)
	case fitcheck.TopicProblem:
		return r.harmAside(s, h) || r.noSuchHarm(s, h)
	}
	return false
}

// oneOfThem: "two. No wait, there's one over the garage too, so three": where one of several
// is tells nothing of the others.
func (r *reader) oneOfThem(h *hit) bool {
	if r.asked(fitcheck.TopicUse) {
		return false
	}
	i := h.first - 1
	for r.among(i, beforeUsePlace) {
		i--
	}
	if !r.among(i, usePlaceLinks) {
		return false
	}
	i--
	for r.wordAt(i, "out", "more", "mas", "is", "another") {
		i--
	}
	n := fitcheck.Whole(r.wholeSaid(i)) // already read as part of a sum, it may be
	if n < 1 {
		return false
	}
	if r.anyOf(r.sentenceFirst(i), i, addedOneWords) {
		return true // "forgot the one in the garage"
	}
	for k := range r.out.Facts {
		if f := &r.out.Facts[k]; f.Topic == fitcheck.TopicCount {
			all, ok := f.Value.(fitcheck.Whole)
			return ok && all > n
		}
	}
	return false
}

// sizeNamed: where a size was asked for, the words are the name of what it is of: "inside
// the metal lip that slides over the box", or of flashing that is measured along.
func (r *reader) sizeNamed(h *hit) bool {
	if r.askedSize() == "none" || r.asked(fitcheck.TopicStyle) {
		return false
	}
	if r.wordsIn(h.first, h.last+1, "bent", "folded") || r.wordAt(h.first, "retainer", "retaining") && r.wordAt(h.last, "top") {
		return true
	}
	labels := within(r.labels, h.first, h.last)
	for n := range labels {
		if l := &labels[n]; l.last > l.first+1 && (l.has1("topic") || l.is("part", "flange")) {
			return true
		}
	}
	return false
}

// onlyHeard: "ok, let me check tomorrow", "fine whatever": the question was heard, and
// nothing of the frame is said.
func (r *reader) onlyHeard(first, last int) bool {
	if first > 0 || !r.among(first, heardWords) || r.anyOf(last+1, len(r.toks), frameTalkWords) {
		return false
	}
	i := last + 1
	for r.among(i, talkLeads) || r.markAt(i, ',') || r.markAt(i, '.') || r.markAt(i, '-') || r.markAt(i, '!') {
		i++
	}
	return r.among(i, afterHeard) || r.wordAt(i, "i", "we") && r.among(i+1, notNowVerbs)
}

// treeNamed: "two white oaks", "a silver maple": a color that is part of a tree's name.
func (r *reader) treeNamed(i int) bool { return r.among(i, treeNames) }

// harmedPart: the words of an earlier sentence name the plastic because it broke, not as
// what is measured: "the plastic busted when snow slid off. Measures 36 by 36".
func (r *reader) harmedPart(h *hit) bool {
	if !h.is("part", "plastic") || r.asked(fitcheck.TopicPlasticSize) {
		return false
	}
	from, to := r.sentence(h.first)
	hits := within(r.choices, from, to)
	for n := range hits {
		if s := &hits[n].senses[0]; s.topic == fitcheck.TopicProblem && !s.asked {
			return true
		}
	}
	return false
}

// listedForPrice: "a quote on (1) 36 x 36 polycarb double dome, clear/white?": the colors end
// the list of what a price is asked for.
func (r *reader) listedForPrice(h *hit) bool {
	if !r.priced(h.first) || r.compared(h.first) || !r.goesOnList(h.first) {
		return false
	}
	hits := within(r.choices, r.sentenceFirst(h.first), h.first-1)
	for n := range hits {
		if hits[n].has1("material") || hits[n].has1("layers") && hits[n].last > hits[n].first {
			return !r.wordsIn(hits[n].last+1, h.first, "or", "o", "vs")
		}
	}
	return false
}

// goesOnList: a sign or a small word before the token goes on with a list.
func (r *reader) goesOnList(i int) bool {
	return r.markAt(i-1, ',') || r.markAt(i-1, '/') || r.wordAt(i-1, "over", "in", "and", "y")
}

// onlyWords: none but the given words stand between two tokens, the second not counted.
func (r *reader) onlyWords(from, to int, words ...string) bool {
	for i := from; i < to; i++ {
		if !r.wordAt(i, words...) {
			return false
		}
	}
	return true
}

// allAmong: none but words of the set stand between two tokens, the second not counted.
func (r *reader) allAmong(from, to int, s *wordSet) bool {
	for i := from; i < to; i++ {
		if !r.among(i, s) {
			return false
		}
	}
	return true
}

// riskUnknown: "no idea on hail, lots of trees": what is not known is no risk told.
func (r *reader) riskUnknown(h *hit) bool {
	for n := range r.talk {
		if t := &r.talk[n]; t.is("say", "dontknow") && (r.unknownThen(t, h) || r.thenUnknown(h, t)) {
			return true
		}
	}
	return r.wordAt(h.last+1, "is") && r.wordAt(h.last+2, "anybodys", "anyones")
}

// unknownThen: "no idea on hail".
func (r *reader) unknownThen(t, h *hit) bool {
	i := t.last + 1
	for r.among(i, riskLeads) {
		i++
	}
	return i == h.first && i > t.last+1
}

// thenUnknown: "hail I have no idea about".
func (r *reader) thenUnknown(h, t *hit) bool {
	i := h.last + 1
	for r.among(i, riskTails) {
		i++
	}
	return i == t.first && t.last+1 < len(r.toks)
}

// bearsSkylight: "boat hatch skylight 20 inch round": what else is named only says where the
// skylight is.
func (r *reader) bearsSkylight(h *hit) bool {
	return h.has1("other") && r.among(h.last+1, skylightsBorne)
}

// standsBy: "the one by the chimney": what is named only says where the skylight is.
func (r *reader) standsBy(h *hit) bool {
	i := h.first
	if r.wordAt(i-1, "the", "my", "our", "la", "el") {
		i--
	}
	if i == h.first || !h.has1("other") {
		return false
	}
	return r.wordAt(i-1, "by", "near", "beside", "behind") ||
		r.wordAt(i-1, "to") && r.wordAt(i-2, "next", "close") ||
		r.wordAt(i-1, "a", "de") && r.wordAt(i-2, "junto", "cerca")
}

// cappedOver: "the flange that caps the curb is 33 3/4 x 33 3/4 inside": the curb is only what
// it goes over.
func (r *reader) cappedOver(h *hit) bool {
	if !h.is("part", "curb") {
		return false
	}
	i := h.first - 1
	for r.among(i, cappedLeads) {
		i--
	}
	return r.wordAt(i, "caps", "capping", "covers") &&
		r.wordsIn(r.clauseStart(h.first), i, "flange", "part", "lip", "frame", "piece")
}

// unitsAsked: "not sure if this tape is in inches or centimeters", "could be cm could be
// inches".
func (r *reader) unitsAsked() bool {
	for i := range r.toks {
		if k := r.unitsEither(i); k > 0 {
			return true
		}
	}
	return false
}

// unitsUnsure: somebody can't tell which of two units a tape is in: "I can't tell if this is inches or
// centimeters"; not "let me know if you want inches or cm".
func (r *reader) unitsUnsure() bool {
	for i := range r.toks {
		if from := max(r.sentenceFirst(i), i-8); r.unitsEither(i) > 0 &&
			r.wordsIn(from, i, "if", "whether", "sure", "si", "unsure") && r.anyOf(from, i, unitDoubts) &&
			!r.wordsIn(from, i, "you", "want", "need", "prefer", "quiere", "prefiere") {
			return true
		}
	}
	return false
}

// unitsEither is the token of the second of two units that stand there as one or the
// other: "cm or inches"; 0 for none.
func (r *reader) unitsEither(i int) int {
	k := i + 1
	for r.among(k, eitherUnitWords) || r.markAt(k, ',') {
		k++
	}
	if k == i+1 || k == i+2 && r.markAt(i+1, ',') {
		return 0
	}
	if r.inchesAt(i) && r.among(k, metricWords) || r.inchesAt(k) && r.among(i, metricWords) {
		return k
	}
	return 0
}

// inchesAt: "inches"; not the "in" of "in the house".
func (r *reader) inchesAt(i int) bool {
	return r.wordAt(i, "inches", "inch", "pulgadas") ||
		r.wordAt(i, "in") && !r.wordAt(i+1, "the", "a", "my", "la", "el")
}

// materialChosen: "47 x 47. acrylic, two layers", to the size of a box: what the dome is to be of,
// and not what was measured.
func (r *reader) materialChosen(m *measure, h *hit) bool {
	if !h.is("part", "plastic") || h.last > h.first || !r.among(h.first, sheetMaterials) {
		return false
	}
	if r.askedSize() == "none" || r.asked(fitcheck.TopicPlasticSize) || r.asked(fitcheck.TopicBulgeBase) {
		return false
	}
	return r.softBetween(m.last+1, h.first) || r.anyOf(m.last+1, h.first, materialWishes)
}
