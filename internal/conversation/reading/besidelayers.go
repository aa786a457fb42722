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
	if next == i || n < 1 || n > 100 || r.negated(i) || r.questioned(i) || r.wordAt(i-1, "the") && n > 1 || !r.layersToldBeside(i) || r.wordsIn(next, r.signFrom(next), "layer", "layers", "capa", "capas") ||
		r.anyOf(r.clauseStart(i), r.sentenceLast(i)+1, layerPlaces) {
		return countAt{}, false
	}
	if r.endsCount(next) && next < len(r.toks) && r.among(next, countNouns) {
		return countAt{n, i, next}, true
	}
	for j := next; j < next+3 && j < len(r.toks) && r.toks[j].kind == wordToken; j++ {
		if countNouns.has(r.toks[j].text) {
			return countAt{n, i, j}, true
		}
		if !r.countAdjective(j) && !r.wordAt(j, "solo", "single", "unico") {
			break
		}
	}
	j := i - 1
	for r.wordAt(j, "the", "about", "of") {
		j--
	}
	return countAt{n, i, next - 1}, (next >= len(r.toks) || r.toks[next].kind == markToken || r.wordAt(next, "total", "please", "thanks", "nomas", "needed") || r.among(next, countPlaceLinks) && r.among(next+1, countPlaceOwners)) &&
		(r.onlyAt(j) || r.wordAt(j, needWords...) && r.onlyAt(j-1))
}

// signFrom is the first sign from token i on, or the end.
func (r *reader) signFrom(i int) int {
	for i < len(r.toks) && r.toks[i].kind != markToken {
		i++
	}
	return i
}

func (r *reader) onlyAt(i int) bool {
	return r.wordAt(i, "just", "only", "solo", "nomas", "solamente")
}

// layersToldBeside: another clause tells the layers, with their noun or a word like "double"; what is there
// now is told for the sake of the number: "double now but I only want one".
func (r *reader) layersToldBeside(i int) bool {
	for n := range r.choices {
		h := &r.choices[n]
		if v, ok := h.has("layers"); ok && v != "?" && r.apart(min(h.last, i), max(h.first, i)) && !r.negated(h.first) && !r.anyOf(r.clauseStart(h.first), r.clauseEnd(h.last)+1, layersNowWords) && (r.wordsIn(h.first, h.last+1, "layer", "layers", "layered", "capa", "capas") || r.among(h.first, layerAdjectives)) {
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
	from, to := r.sentence(i)
	if !r.wordAt(i, "both", "ambas") || !r.wordsIn(from, to+1, "layer", "layers", "capa", "capas") || r.wordAt(i+1, "of") || r.clauseStart(i) == r.clauseEnd(i) && !r.wordsIn(from, i, "layer", "layers", "capas") {
		return false // also "both, two layers"
	}
	for j := i + 1; j < i+4 && j < len(r.toks) && r.toks[j].kind == wordToken; j++ {
		if countNouns.has(r.toks[j].text) {
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
	from, to := r.sentence(h.first)
	return r.wordAt(i, "with", "in", "con", "en") && r.priced(h.first) && r.anyOf(from, i, pricedThings) &&
		!r.anyOf(from, to+1, comparingWords)
}

// layersOfColor: "clear on both layers": as many layers as the color is said of.
func (r *reader) layersOfColor() {
	if r.known(fitcheck.TopicLayers) || r.doubtful(fitcheck.TopicLayers) || !r.known(fitcheck.TopicColor) || r.asked(fitcheck.TopicConfirm) || r.Units > 1 || len(r.refs) > 0 {
		return
	}
	for n := range r.choices {
		h := &r.choices[n]
		if !h.is("layer", "both") || !r.wordsIn(h.first, h.last+1, "layers", "capas") || r.negated(h.first) || r.questioned(h.first) || r.yesNoQuestion(h.first) {
			continue
		}
		if n > 0 && r.choices[n-1].has1("color") && r.layerOf(n-1) == "both" || n+1 < len(r.choices) && r.choices[n+1].has1("color") && r.layerOf(n+1) == "both" {
			r.fact(fitcheck.TopicLayers, 0, fitcheck.Whole(2), h.first, h.last)
			return
		}
	}
}
