package reading

import "example.com/intake-bot/internal/fitcheck"

// Numbers beside layers: which are of layers, and which count skylights.

var (
	layerPlaces = wordsOf(`inside within under outside bottom air gap space between other or dentro encima
		maybe sure`)
	countPlaceLinks  = wordsOf(`for in over on para en`)
	countPlaceOwners = wordsOf(`the my our el la mi`)
	layersNowWords   = wordsOf(`now currently old is are was were has had ahora es era tiene viejo`)
	layerAdjectives  = wordsOf(`double single triple doble sencillo sencilla`)
	beforePricedOne  = wordsOf(`would does will do is might should of cuesta vale sale costaria`)
	afterPricedOne   = wordsOf(`cost costs run runs go goes cuesta vale sale`)
	pricedThings     = wordsOf(`one it them dome domes skylight skylights unit units uno domo domos tragaluz
		tragaluces`)
	comparingWords = wordsOf(`or vs versus than more extra difference if come o mas diferencia si`)
)

// countBesideLayers: "Two layers. I need one dome, not three.", "double, clear. Just the one": where
// layers are asked about and told by a word of their own, a number in another clause counts skylights if
// they stand behind it, or if it is "just one".
func (r *reader) countBesideLayers(i int) (countAt, bool) {
	if !r.asked(fitcheck.TopicLayers) || r.Units > 1 || r.used(i) {
		return countAt{}, false
	}
	n, next := r.countNumber(i)
	if r.wordAt(i, "una", "uno", "un") {
		n, next = 1, i+1
	}
	if next == i || n < 1 || n > 100 || r.wordAt(i-1, "the") && n > 1 || r.numberOfLayers(i, next) {
		return countAt{}, false
	}
	if r.endsCount(next) && r.noun(next) {
		return countAt{n, i, next}, true
	}
	for j := next; j < next+3 && j < len(r.toks) && r.toks[j].kind == wordToken; j++ {
		if r.noun(j) {
			return countAt{n, i, j}, true
		}
		if !r.countAdjective(j) && !r.wordAt(j, "solo", "single", "unico") {
			break
		}
	}
	return countAt{n, i, next - 1}, r.onlySoMany(i) && r.countOver(next)
}

// numberOfLayers: a number may be of the layers: no other clause tells them, or its own speaks of them.
func (r *reader) numberOfLayers(i, next int) bool {
	return r.negated(i) || r.questioned(i) || !r.layersToldBeside(i) ||
		r.wordsIn(next, r.signFrom(next), "layer", "layers", "capa", "capas") ||
		r.anyOf(r.clauseStart(i), r.sentenceLast(i)+1, layerPlaces)
}

// onlySoMany: "just one", "I only need the one".
func (r *reader) onlySoMany(i int) bool {
	j := i - 1
	for r.wordAt(j, "the", "about", "of") {
		j--
	}
	return r.among(j, onlyWords) || r.among(j, needWords) && r.among(j-1, onlyWords)
}

// countOver: nothing but a place or a courtesy follows a number: "one for the kitchen", "one please".
func (r *reader) countOver(next int) bool {
	return r.stopAt(next) || r.wordAt(next, "total", "please", "thanks", "nomas", "needed") ||
		r.among(next, countPlaceLinks) && r.among(next+1, countPlaceOwners)
}

// signFrom is the first sign from token i on, or the end.
func (r *reader) signFrom(i int) int {
	for i < len(r.toks) && r.toks[i].kind != markToken {
		i++
	}
	return i
}

// layersToldBeside: another clause tells the layers, with their noun or a word like "double"; what is there
// now is told for the sake of the number: "double now but I only want one".
func (r *reader) layersToldBeside(i int) bool {
	for n := range r.choices {
		h := &r.choices[n]
		v, ok := h.has("layers")
		if !ok || v == "?" || !r.apart(min(h.last, i), max(h.first, i)) || r.negated(h.first) {
			continue
		}
		named := r.wordsIn(h.first, h.last+1, "layer", "layers", "layered", "capa", "capas") || r.among(h.first, layerAdjectives)
		if named && !r.anyOf(r.clauseStart(h.first), r.clauseEnd(h.last)+1, layersNowWords) {
			return true
		}
	}
	return false
}

// apart: a sign or a word that goes on to something else stands between two tokens.
func (r *reader) apart(from, to int) bool {
	for k := from + 1; k < to; k++ {
		if r.toks[k].kind == markToken || r.wordAt(k, "and", "but", "y", "pero") {
			return true
		}
	}
	return false
}

// countsSkylights: the phrase for layers is a number of skylights, whose layers are told beside it.
func (r *reader) countsSkylights(h *hit) bool {
	for i := h.first; i <= h.last; i++ {
		if _, ok := r.countBesideLayers(i); ok {
			return true
		}
	}
	return false
}

// bothOfLayers: "two layers, both white", "clear on both layers": both are the layers.
func (r *reader) bothOfLayers(i int) bool {
	if !r.wordAt(i, "both", "ambas") || r.wordAt(i+1, "of") {
		return false
	}
	from, to := r.sentence(i)
	if !r.wordsIn(from, to+1, "layer", "layers", "capa", "capas") {
		return false
	}
	if r.clauseStart(i) == r.clauseEnd(i) && !r.wordsIn(from, i, "layer", "layers", "capas") {
		return false // "both, two layers"
	}
	for j := i + 1; j < i+4 && j < len(r.toks) && r.toks[j].kind == wordToken; j++ {
		if r.noun(j) {
			return false
		}
	}
	if r.wordAt(i+1, "layer", "layers", "capas") || !r.wordAt(i-1, "for", "on", "in", "para", "en") {
		return true
	}
	return i > 1 && r.colorAt(i-2) // "two layers, clear on both"; not "two layers for both"
}

// priceOfOne: "what would one cost me": the price of a piece, not how many.
func (r *reader) priceOfOne(i int) bool {
	return r.wordAt(i, "one", "uno", "una") && r.priced(i) && (r.among(i-1, beforePricedOne) || r.among(i+1, afterPricedOne))
}

// pricedWith: "what would one cost me with double polycarbonate?": what is asked for the price of is
// how it is wanted, unless it is compared.
func (r *reader) pricedWith(h *hit) bool {
	i := h.first - 1
	for r.wordAt(i, "a", "an", "the") {
		i--
	}
	if !r.wordAt(i, "with", "in", "con", "en") || !r.priced(h.first) {
		return false
	}
	from, to := r.sentence(h.first)
	return r.anyOf(from, i, pricedThings) && !r.anyOf(from, to+1, comparingWords)
}

// layersOfColor: "clear on both layers": as many layers as the color is said of.
func (r *reader) layersOfColor() {
	if r.known(fitcheck.TopicLayers) || r.doubtful(fitcheck.TopicLayers) || !r.known(fitcheck.TopicColor) {
		return
	}
	if r.asked(fitcheck.TopicConfirm) || r.Units > 1 || len(r.refs) > 0 {
		return
	}
	for n := range r.choices {
		h := &r.choices[n]
		if !h.is("layer", "both") || !r.wordsIn(h.first, h.last+1, "layers", "capas") {
			continue
		}
		if r.negated(h.first) || r.questioned(h.first) || r.yesNoQuestion(h.first) {
			continue
		}
		if r.colorOfBoth(n-1) || r.colorOfBoth(n+1) {
			r.fact(fitcheck.TopicLayers, 0, fitcheck.Whole(2), h.first, h.last)
			return
		}
	}
}

// colorOfBoth: the phrase is a color that is said of both layers.
func (r *reader) colorOfBoth(n int) bool {
	return n >= 0 && n < len(r.choices) && r.choices[n].has1("color") && r.layerOf(n) == "both"
}
