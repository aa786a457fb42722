package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Harm that is none of the skylight up there: the neighbor's broke, the old one did, the leak was the
// chimney's, a tape measure fell to pieces, somebody came off the roof.

var (
	othersWords = wordsOf(`neighbor neighbors neighbour neighbours friend friends brother brothers sister sisters
		cousin cousins mom moms dad dads parents buddy buddys coworker coworkers boss inlaws vecino vecinos vecina hermano
		hermana primo prima amigo amiga cunado cunada suegro suegra papas`)
	toolWords = wordsOf(`tape ladder phone camera cell level drill pencil flashlight measure iphone cinta
		flexometro escalera telefono celular camara taladro`)
	skyWords = wordsOf(`skylight skylights skylite skylites dome domes bubble bubbles plastic lens acrylic glass
		tragaluz tragaluces domo domos claraboya burbuja plastico mica it ours mine`)
	elseLeaks = wordsOf(`ac air hvac chimney pipe pipes toilet tub plumbing sink dishwasher vent vents stack boot
		shower furnace heater aire chimenea tubo tuberia plomeria regadera tinaco gutter gutters canaleta`)
	ownOnes       = wordsOf(`mine ours mio mia mios nuestro nuestra`)
	ownToo        = wordsOf(`too also same likewise tambien did as igual`)
	othersHarmers = wordsOf(`kid kids son boy dog tree ball nino hijo arbol rama`)
	ofOthers      = wordsOf(`on of at de del over`)
	othersOne     = wordsOf(`one roof house barn garage was cracked broke leaked`)
	replacedWords = wordsOf(`old last previous original viejo vieja anterior`)
	replacedLeads = wordsOf(`the our my el la domo tragaluz`)
	wantsNewOne   = wordsOf(`need want order get buy a`)
	turnedOutTalk = wordsOf(`turned out ended up was is to be being actually really just only came comes coming from
		the a an our my but and it that which pero que resulto ser era es del de la el una venia viene`)
	turnedOutBe  = wordsOf(`was is be being from ser era es del de venia viene`)
	leakThereToo = wordsOf(`side too also and tambien y`)
	toolOwners   = wordsOf(`the my la el mi his her tape cell`)
	toolBreaks   = wordsOf(`fell slid dropped broke slipped se snapped shattered cracked`)
	leakClues    = wordsOf(`paint stain stains stained peeling bubbling mancha manchas pintura damp mold musty`)
	leakLately   = wordsOf(`now yet anymore today ahorita lately since`)
	leakNames    = wordsOf(`leak leaks leaking leaked leaky drips dripping gotera goteras gotea fuga fugas filtra
		filtraciones`)
	holeCovers  = wordsOf(`plywood tarp tarped boarded covered osb lona triplay tapado`)
	holeCutters = wordsOf(`cut cutting make will gonna need framed`)
)

// harmAside: the harm is another thing's.
func (r *reader) harmAside(s sense, h *hit) bool {
	switch s.value {
	case "none":
		return false
	case fitcheck.ProblemLeaking:
		if r.leakElse(h) {
			return true
		}
	case fitcheck.ProblemHoleOpen:
		if r.wordAt(h.first-1, "i", "we", "he", "she") && r.wordAt(h.first, "came", "fell", "slid", "got", "went") {
			return true // "she wrote it down before I came off the roof"
		}
	}
	return r.othersSkylight(h) || r.replacedOne(h) || r.toolBroke(h)
}

// othersSkylight: "my neighbor's skylight cracked, mine is fine", "el domo de mi vecino se rompió, el mío está bien".
func (r *reader) othersSkylight(h *hit) bool {
	own := r.ownOneAfter(h.last)
	if own < 0 || r.anyOf(own, min(own+6, len(r.toks)), ownToo) {
		return false
	}
	if r.wordsIn(own-2, own, "and", "y") && r.wordAt(own+1, "is", "are") && r.wordAt(own+2, "next") {
		return false // "… cracked and mine is next"
	}
	for i := r.clauseStart(h.first); i < h.first; i++ {
		if r.among(i, othersWords) {
			return r.ownedByThem(i)
		}
	}
	return false
}

// ownOneAfter is where "mine" or "ours" stands after a token, -1 for none.
func (r *reader) ownOneAfter(last int) int {
	for i := last + 1; i < len(r.toks); i++ {
		if r.among(i, ownOnes) {
			return i
		}
	}
	return -1
}

// ownedByThem: "my neighbor's dome", "on my brother's"; not "my neighbor's tree".
func (r *reader) ownedByThem(i int) bool {
	if r.among(i+1, othersHarmers) {
		return false
	}
	return r.anyOf(max(0, i-3), i, ofOthers) || r.anyOf(i+1, i+3, skyWords) || r.among(i+1, othersOne)
}

// replacedOne: "the old one was cracked, this one is just cloudy".
func (r *reader) replacedOne(h *hit) bool {
	from := r.clauseStart(h.first)
	for i := from; i < h.first; i++ {
		if r.oldOneAt(i, from) && r.newOneAfter(h.last) {
			return true
		}
	}
	return false
}

// oldOneAt: "the old one", "el domo viejo".
func (r *reader) oldOneAt(i, from int) bool {
	return r.among(i, replacedWords) && (i == from || r.among(i-1, replacedLeads)) &&
		(r.wordAt(i+1, "one", "dome", "skylight", "plastic", "bubble") || r.wordAt(i-1, "domo", "el", "tragaluz"))
}

// newOneAfter: "this one is …", "y este …": the one up there now is told of after the token.
func (r *reader) newOneAfter(last int) bool {
	for k := last + 1; k < len(r.toks) && k < last+14; k++ {
		if r.wordAt(k, "this", "new", "current", "present") && r.wordAt(k+1, "one", "dome", "skylight") &&
			!r.anyOf(last+1, k, wantsNewOne) {
			return true
		}
		if r.wordAt(k, "este", "esta") && r.wordAt(k-1, "y", "pero") {
			return true
		}
	}
	return false
}

// leakElse: "the leak turned out to be the chimney", "la gotera era del aire".
func (r *reader) leakElse(h *hit) bool {
	i, said := h.last+1, false
	for ; r.markAt(i, ',') || r.among(i, turnedOutTalk); i++ {
		said = said || r.among(i, turnedOutBe)
	}
	return said && r.among(i, elseLeaks) && !r.among(i+1, leakThereToo) &&
		!r.wordsIn(r.clauseStart(h.first), h.first, "not", "no", "isnt")
}

// toolBroke: "the tape fell off the roof and shattered", "la cinta se me cayó y se hizo pedazos".
func (r *reader) toolBroke(h *hit) bool {
	if r.anyOf(h.first, h.last+5, skyWords) {
		return false // "my ladder slid and cracked the dome"
	}
	for i := h.first - 1; i >= r.sentenceFirst(h.first) && i > h.first-12; i-- {
		if r.among(i, skyWords) && !r.wordAt(i, "it") || r.wordAt(i, "hit", "onto", "into", "through", "sobre") {
			return false
		}
		if r.among(i, toolWords) && !r.wordAt(i+1, "on", "over", "around") {
			return r.among(i-1, toolOwners) && r.toolFell(i, h)
		}
	}
	return false
}

// toolFell: "the tape fell", "I dropped my phone".
func (r *reader) toolFell(i int, h *hit) bool {
	return r.anyOf(i+1, min(i+5, h.last+1), toolBreaks) ||
		r.wordsIn(max(0, i-3), i, "dropped", "broke", "avente", "solte")
}

// clueDenied: "no leak, the ceiling paint is peeling from steam": what only hints at a leak counts for nothing
// where a leak is denied by name.
func (r *reader) clueDenied(s sense, h *hit) bool {
	if s.value != fitcheck.ProblemLeaking || r.leakNamed(h) || !r.anyOf(h.first, h.last+1, leakClues) {
		return false
	}
	return slices.ContainsFunc(r.choices, func(c hit) bool {
		return c.first != h.first && c.is(string(fitcheck.TopicProblem), fitcheck.ProblemLeaking) &&
			r.leakNamed(&c) && r.negated(c.first) &&
			!r.anyOf(c.last+1, min(c.last+4, len(r.toks)), leakLately)
	})
}

func (r *reader) leakNamed(h *hit) bool {
	return r.anyOf(h.first, h.last+1, leakNames)
}

// holeThere: "no skylight there at all, just an open hole with plywood on it": there is an opening.
func (r *reader) holeThere() bool {
	for i := range r.toks {
		if r.holeOpenAt(i) && !r.negated(i) {
			return !r.anyOf(max(0, i-6), i, holeCutters)
		}
	}
	return false
}

// holeOpenAt: "an open hole", "the hole is boarded up".
func (r *reader) holeOpenAt(i int) bool {
	return r.wordAt(i, "hole", "opening", "hoyo", "agujero", "hueco") &&
		(r.wordAt(i-1, "open", "gaping") || r.wordAt(i+1, "abierto") ||
			r.anyOf(i+1, min(i+7, len(r.toks)), holeCovers))
}
