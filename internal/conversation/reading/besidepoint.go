package reading

import "example.com/intake-bot/internal/fitcheck"

// What a value's words tell where they do not tell the value: one of several, a small part
// that is lost, how a sheet is made, what a size is taken of.

var (
	beforeUsePlace = wordsOf(`the my our a el la mi detached`)
	usePlaceLinks  = wordsOf(`over on in above at en sobre for out`)
	addedOneWords  = wordsOf(`forgot add also another plus olvide agregue agrega falto`)
	afterOnlyDome  = wordsOf(`rises comes sticks goes bulges bows stands pops measures rise raises lifts
		humps bubbles leaks cracked came lasted has lets gets sube levanta mide tiene sale alza up`)
	lostWords  = wordsOf(`missing gone falta faltan off lost`)
	smallParts = wordsOf(`retainer strip strips screw screws trim clip clips gasket corner side sides rail
		rails bolt bolts rivet rivets weatherstrip flashing caulk tornillo tornillos empaque esquinero moldura
		tira`)
	glazedParts    = wordsOf(`dome skylight plastic bubble lens domo plastico burbuja tragaluz hole hoyo`)
	fellHedges     = wordsOf(`just has is all pretty much basically se me kinda already`)
	fellApartVerbs = wordsOf(`fell falling falls crumbled crumbling crumbles disintegrated deshizo deshace`)
	fallenParts    = wordsOf(`frame frames marco metal retainer flashing trim wood curb box flange ring madera
		cajon`)
	whiteSinceWords = wordsOf(`now anymore hardly barely turned gotten gone got used ya puso ahora clear
		transparente`)
	unseenParts = wordsOf(`ningun ninguna marco metal tornillos tornillo cajon madera caja curb aluminio
		retenedor`)
	corrodingParts = wordsOf(`frame frames aluminum aluminums aluminium aluminiums metal metals marco
		aluminio rim retainer`)
	besideWhiteMetal = wordsOf(`and dome domes plastic bubble lens acrylic domo plastico in inside skylight
		y around with`)
	corrodedColors = wordsOf(`white chalky dull blanco gray grey brown`)
	sheetParts     = wordsOf(`dome plastic bubble lens acrylic domo plastico burbuja acrilico`)
	sheetOrWish    = wordsOf(`dome domes plastic bubble lens acrylic domo plastico acrilico want need quiero
		layer layers`)
	corrosionWords = wordsOf(`pitted corroded flaky rusty crusty picado oxidado flaking powdery powder crust
		corrosion rust oxidation scale polvoso oxido pitting`)
	corrosionOf = wordsOf(`frame metal aluminum corroded corrosion pitted pitting rim marco aluminio rusty
		rusted retainer`)
	heardWords     = wordsOf(`ok okay k fine alright all bien bueno`)
	frameTalkWords = wordsOf(`frame metal shape rust bent aluminum condition marco aluminio far`)
	afterHeard     = wordsOf(`hang hold wait let ill whatever whats what bye later gonna deje dejeme espere
		adios`)
	notNowVerbs = wordsOf(`wont will cant cannot gotta need dont have should`)
	treeNames   = wordsOf(`oak oaks pine pines maple maples ash ashes birch birches spruce spruces cedar
		cedars fir firs walnut walnuts poplar poplars cypress elm elms locust`)
	betweenWishes = wordsOf(`maybe just only if the do tal vez quizas solo nomas`)
	wholeWishes   = wordsOf(`new whole skylight skylights unit complete entire everything nuevo tragaluz
		completo unidad todo`)
	domeWishes      = wordsOf(`top dome plastic bubble lens cover acrylic tapa domo plastico mica burbuja`)
	openToLinks     = wordsOf(`the a doing replacing getting do el la`)
	riskLeads       = wordsOf(`you le about on of de del the for what how if we get much sobre`)
	riskTails       = wordsOf(`i is risk part we no ahi`)
	quoteWords      = wordsOf(`quote price prices pricing cotice precio precios cotizacion`)
	bornSkylights   = wordsOf(`one ones hatch skylight skylights dome domes vent`)
	cappedLeads     = wordsOf(`the my wood over el la`)
	eitherUnitWords = wordsOf(`or o maybe might could be puede podria ser quiza quizas`)
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
		if r.harmAside(s, h) {
			return true
		}
		switch s.value {
		case fitcheck.ProblemHoleOpen:
			return r.smallPartLost(h) || r.goneSo(h) || r.screwHoles(h) || r.lacksAnswer(h) || r.frameHarmed(h)
		case fitcheck.ProblemCracked:
			return r.frameFell(h) || r.snapsOn(h) || r.frameHarmed(h)
		case fitcheck.ProblemLeaking:
			return r.fromElse(h) || h.first == h.last && r.wordAt(h.first, "water", "agua") && !r.saidAlone(h)
		case fitcheck.ProblemHazy:
			return r.litThrough(h) || r.nothingOf(h) || r.whiteMetal(h)
		}
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

// onlyRises: "the dome only rises 5 and a half": the "only" is of what it does.
func (r *reader) onlyRises(s sense, h *hit) bool {
	return s.value == fitcheck.WantDomeOnly && r.wordAt(h.last, "only", "just", "solo", "nomas") &&
		r.among(h.last+1, afterOnlyDome)
}

// bentOver: "metal bent over the wood" is how flashing lies, and no harm to the frame.
func (r *reader) bentOver(s sense, h *hit) bool {
	if s.value == fitcheck.ConditionBent && r.asked(fitcheck.TopicStyle) && (r.wordAt(h.last, "bends") || r.wordAt(h.first, "bends", "bent", "folded")) && (r.wordAt(h.last+1, "down", "over", "around", "past", "under") || r.wordAt(h.last, "down", "over", "around")) {
		return true // "the acrylic goes past the frame and bends down an inch"
	}
	return s.value == fitcheck.ConditionBent && r.askedSize() != "none" && !r.asked(s.topic) && r.wordAt(h.last, "bent", "folded") && r.wordAt(h.last+1, "over", "down", "around", "onto")
}

// smallPartLost: a strip, a screw or a corner piece that is gone leaves no open hole.
func (r *reader) smallPartLost(h *hit) bool {
	if !r.anyOf(h.first, h.last+1, lostWords) {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)+1
	return r.anyOf(from, to, smallParts) &&
		!r.anyOf(from, to, glazedParts)
}

// frameFell: "the frame fell apart": what broke is no plastic.
func (r *reader) frameFell(h *hit) bool {
	i := h.first - 1
	for r.among(i, fellHedges) {
		i--
	}
	return r.anyOf(h.first, h.last+1, fellApartVerbs) && r.among(i, fallenParts)
}

// litThrough: "milky white, you can't see the sky through it but it lets light in" tells
// what kind of white it is.
func (r *reader) litThrough(h *hit) bool {
	return r.asked(fitcheck.TopicColor) && !r.asked(fitcheck.TopicProblem) && r.wordsIn(h.first, h.last+1, "see", "ve", "mira") &&
		!r.anyOf(0, len(r.toks), whiteSinceWords) && r.whiteFirst(h.first)
}

// whiteFirst: a color that hides what is behind it is told before the token.
func (r *reader) whiteFirst(i int) bool {
	hits := within(r.choices, 0, i-1)
	for n := range hits {
		if v, ok := hits[n].has(string(fitcheck.TopicColor)); ok && v != fitcheck.ColorClear {
			return true
		}
	}
	return false
}

// nothingOf: "no se ve ningún marco": what is not seen is a part, not the sky.
func (r *reader) nothingOf(h *hit) bool {
	return r.wordAt(h.first, "no") && r.wordsIn(h.first, h.last+1, "ve", "ven", "veo") &&
		(r.among(h.last+1, unseenParts) || r.wordAt(h.last+1, "el", "la", "de", "un", "los") && r.among(h.last+2, unseenParts))
}

// whiteMetal: a frame that turned white is corroded or faded, no plastic that went dull.
func (r *reader) whiteMetal(h *hit) bool {
	if i := r.clauseStart(h.first); r.anyOf(i, h.first, corrodingParts) && !r.anyOf(i, h.first, besideWhiteMetal) {
		return true // "the aluminum has gone white and crusty", whatever was asked
	}
	if !r.asked(fitcheck.TopicFrameCondition) || r.asked(fitcheck.TopicProblem) || !r.anyOf(h.first, h.last+1, corrodedColors) {
		return false
	}
	from, to := r.sentence(h.first)
	return !r.anyOf(from, to+1, sheetParts)
}

// corrosionsColor: "corroded pretty bad, all white and flaky": the color is the corrosion's.
func (r *reader) corrosionsColor(h *hit) bool {
	from, to := r.sentence(h.first)
	if r.asked(fitcheck.TopicColor) || r.anyOf(r.clauseStart(h.first), r.clauseEnd(h.last)+1, sheetOrWish) {
		return false
	}
	i := h.last + 1
	if r.wordAt(i, "and", "y") {
		i++
	}
	if r.wordAt(h.first-1, "and", "y") && r.among(h.first-2, corrosionWords) && r.anyOf(from, h.first, corrodingParts) {
		return true // "the aluminum is all pitted and white"
	}
	return r.among(i, corrosionWords) && r.anyOf(from, to+1, corrosionOf)
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
func (r *reader) treeNamed(i int) bool {
	return r.among(i, treeNames)
}

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
	if !r.priced(h.first) || r.compared(h.first) || !(r.markAt(h.first-1, ',') || r.markAt(h.first-1, '/') || r.wordAt(h.first-1, "over", "in", "and", "y")) {
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

// eitherWish: "a new skylight or just the top, not sure": of two wishes with an "or" between them
// neither is meant where the words doubt.
func (r *reader) eitherWish(s sense, h *hit) bool {
	if s.value != fitcheck.WantDomeOnly && s.value != fitcheck.WantCompleteUnit {
		return false
	}
	from, to := r.sentence(h.first)
	or := -1
	for i := from; i <= to; i++ {
		if r.wordAt(i, "or", "o") && (i < h.first && r.allAmong(i+1, h.first, betweenWishes) || i > h.last && r.onlyWords(h.last+1, i, "part", "maybe", "itself")) {
			or = i
		}
	}
	if or < 0 || r.firstTalk("dontknow") == nil && r.firstTalk("maybe") == nil && !r.wordsIn(from, h.first, "whether") && !r.eitherDoes(from, to) {
		return false
	}
	wished := wholeWishes
	if s.value == fitcheck.WantCompleteUnit {
		wished = domeWishes
	}
	if or < h.first {
		return r.anyOf(from, or, wished)
	}
	return r.anyOf(or+1, to+1, wished)
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

// openTo: "the dome only but open to the whole unit": what somebody would hear about is no
// wish yet.
func (r *reader) openTo(s sense, h *hit) bool {
	if s.value == "?" || s.value == fitcheck.WantUnsure {
		return false
	}
	i := h.first - 1
	for r.among(i, openToLinks) {
		i--
	}
	return r.wordAt(i, "to") && r.wordAt(i-1, "open") || r.wordAt(i, "considering", "consider", "about") && r.wordsIn(max(0, i-2), i+1, "considering", "consider", "thinking", "thought") && r.wordsIn(h.last+1, len(r.toks), "but", "pero")
}

// riskUnknown: "no idea on hail, lots of trees": what is not known is no risk told.
func (r *reader) riskUnknown(h *hit) bool {
	for n := range r.talk {
		t := &r.talk[n]
		if !t.is("say", "dontknow") {
			continue
		}
		i := t.last + 1
		for r.among(i, riskLeads) {
			i++
		}
		if i == h.first && i > t.last+1 {
			return true
		}
		i = h.last + 1
		for r.among(i, riskTails) {
			i++
		}
		if i == t.first && (t.last+1 < len(r.toks)) {
			return true
		}
	}
	return r.wordAt(h.last+1, "is") && r.wordAt(h.last+2, "anybodys", "anyones")
}

// bothPriced: "quote me the dome and the whole thing": a price of each is wanted first.
func (r *reader) bothPriced(all []saying) bool {
	for k := 1; k < len(all); k++ {
		a, b := &all[k-1], &all[k]
		if a.value != b.value && a.value != fitcheck.WantUnsure && b.value != fitcheck.WantUnsure && r.wordsIn(a.last+1, b.first, "and", "y", "plus") &&
			r.anyOf(0, a.first, quoteWords) {
			return true
		}
	}
	return false
}

// otherWants: the message also names what could be wanted.
func (r *reader) otherWants(h *hit) bool {
	for n := range r.wants {
		if v, ok := r.wants[n].has(string(fitcheck.TopicWant)); ok && r.wants[n].first != h.first && v != fitcheck.WantUnsure {
			return true
		}
	}
	return false
}

// bearsSkylight: "boat hatch skylight 20 inch round": what else is named only says where the
// skylight is.
func (r *reader) bearsSkylight(h *hit) bool {
	return h.has1("other") && r.among(h.last+1, bornSkylights)
}

// standsBy: "the one by the chimney": what is named only says where the skylight is.
func (r *reader) standsBy(h *hit) bool {
	i := h.first
	if r.wordAt(i-1, "the", "my", "our", "la", "el") {
		i--
	}
	return h.has1("other") && i < h.first && (r.wordAt(i-1, "by", "near", "beside", "behind") || r.wordAt(i-1, "to") && r.wordAt(i-2, "next", "close") || r.wordAt(i-1, "a", "de") && r.wordAt(i-2, "junto", "cerca"))
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
	return r.wordAt(i, "caps", "capping", "covers") && r.wordsIn(r.clauseStart(h.first), i, "flange", "part", "lip", "frame", "piece")
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
	for _, two := range [2][2]int{{i, k}, {k, i}} {
		if r.wordAt(two[0], "inches", "inch", "in", "pulgadas") && !(r.wordAt(two[0], "in") && r.wordAt(two[0]+1, "the", "a", "my", "la", "el")) && r.among(two[1], metricWords) {
			return k
		}
	}
	return 0
}

// materialChosen: "47 x 47. acrylic, two layers", to the size of a box: what the dome is to be of,
// and not what was measured.
func (r *reader) materialChosen(m *measure, h *hit) bool {
	if !h.is("part", "plastic") || h.last > h.first || !r.among(h.first, sheetMaterials) || r.askedSize() == "none" || r.asked(fitcheck.TopicPlasticSize) || r.asked(fitcheck.TopicBulgeBase) {
		return false
	}
	return r.softBetween(m.last+1, h.first) || r.anyOf(m.last+1, h.first, materialWishes)
}
