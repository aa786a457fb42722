package reading

import "example.com/intake-bot/internal/fitcheck"

// Harm that is none: a small part that is lost, a frame that turned white, flashing that is bent over.

var (
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
)

// noSuchHarm says whether the words tell of something else than the harm that they name.
func (r *reader) noSuchHarm(s sense, h *hit) bool {
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
	return false
}

// bentOver: "metal bent over the wood" is how flashing lies, "the acrylic goes past the frame and bends
// down an inch" how the plastic does, and no harm to the frame.
func (r *reader) bentOver(s sense, h *hit) bool {
	if s.value != fitcheck.ConditionBent {
		return false
	}
	if r.asked(fitcheck.TopicStyle) && r.bendsDown(h) {
		return true
	}
	return r.wordAt(h.last, "bent", "folded") && r.wordAt(h.last+1, "over", "down", "around", "onto") &&
		r.askedSize() != "none" && !r.asked(s.topic)
}

// bendsDown: "bends down an inch", "folded over".
func (r *reader) bendsDown(h *hit) bool {
	return (r.wordAt(h.last, "bends") || r.wordAt(h.first, "bends", "bent", "folded")) &&
		(r.wordAt(h.last+1, "down", "over", "around", "past", "under") || r.wordAt(h.last, "down", "over", "around"))
}

// smallPartLost: a strip, a screw or a corner piece that is gone leaves no open hole.
func (r *reader) smallPartLost(h *hit) bool {
	if !r.anyOf(h.first, h.last+1, lostWords) {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)+1
	return r.anyOf(from, to, smallParts) && !r.anyOf(from, to, glazedParts)
}

// frameFell: "the frame fell apart": what broke is no plastic.
func (r *reader) frameFell(h *hit) bool {
	if !r.anyOf(h.first, h.last+1, fellApartVerbs) {
		return false
	}
	i := h.first - 1
	for r.among(i, fellHedges) {
		i--
	}
	return r.among(i, fallenParts)
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
	if !r.wordAt(h.first, "no") || !r.wordsIn(h.first, h.last+1, "ve", "ven", "veo") {
		return false
	}
	return r.among(h.last+1, unseenParts) ||
		r.wordAt(h.last+1, "el", "la", "de", "un", "los") && r.among(h.last+2, unseenParts)
}

// whiteMetal: a frame that turned white is corroded or faded, no plastic that went dull: "the aluminum has
// gone white and crusty", whatever was asked.
func (r *reader) whiteMetal(h *hit) bool {
	i := r.clauseStart(h.first)
	if r.anyOf(i, h.first, corrodingParts) && !r.anyOf(i, h.first, besideWhiteMetal) {
		return true
	}
	if !r.asked(fitcheck.TopicFrameCondition) || r.asked(fitcheck.TopicProblem) || !r.anyOf(h.first, h.last+1, corrodedColors) {
		return false
	}
	from, to := r.sentence(h.first)
	return !r.anyOf(from, to+1, sheetParts)
}

// corrosionsColor: "corroded pretty bad, all white and flaky": the color is the corrosion's.
func (r *reader) corrosionsColor(h *hit) bool {
	if r.asked(fitcheck.TopicColor) || r.anyOf(r.clauseStart(h.first), r.clauseEnd(h.last)+1, sheetOrWish) {
		return false
	}
	from, to := r.sentence(h.first)
	if r.wordAt(h.first-1, "and", "y") && r.among(h.first-2, corrosionWords) && r.anyOf(from, h.first, corrodingParts) {
		return true // "the aluminum is all pitted and white"
	}
	i := h.last + 1 + number(r.wordAt(h.last+1, "and", "y"))
	return r.among(i, corrosionWords) && r.anyOf(from, to+1, corrosionOf)
}
