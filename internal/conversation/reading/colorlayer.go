package reading

import "example.com/intake-bot/internal/fitcheck"

// Which layer of the plastic a color is said of.

var (
	bothOfSkylights = wordsOf(`sizes kinds skylights domes units rooms tamanos medidas domos tragaluces`)
	colorLinks      = wordsOf(`on the is for of a layer dome in de la el por en one plastic acrylic to at should
		be would will can stay stays goes go que sea es debe ser are son also instead actually too tambien igual
		color colour was supposed meant intended`)
)

// layerOf finds which layer a color was said of: the name of a layer right beside it.
func (r *reader) layerOf(n int) string {
	h := &r.choices[n]
	if v, ok := h.has("layer"); ok {
		if r.overPair(n, -1) && !r.wordsIn(h.first, h.last+2, "layer", "layers", "way", "capas") {
			return "" // "clear over white on all three": of three skylights
		}
		return r.layersOf(v) // "clear all the way through"
	}
	b := n // "both layers see-through clear": the color starts with the word before
	if v, ok := h.has("color"); ok && n > 0 && r.saidTwice(n-1, v) {
		b--
	}
	if v := r.layerOfBoth(b - 1); v != "" {
		return v
	}
	if v := r.bothOnOne(b, n); v != "" {
		return v
	}
	return r.layerBeside(b, n)
}

// layerBeside is the layer that is named before or after a color that starts with phrase b and ends with n.
func (r *reader) layerBeside(b, n int) string {
	if b > 0 && r.bothSkylights(b-1) {
		b = 0 // it tells of no layer
	}
	if r.layersFirst {
		if v := r.layerBefore(b, r.choices[b].first); v != "" {
			return v
		}
	}
	if v := r.layerAfter(n); v != "" {
		return v
	}
	if b > 1 && r.choices[b-1].first == r.choices[b-1].last && r.wordAt(r.choices[b-1].first, "color", "colour") {
		b-- // "the inside color should be white"
	}
	if b > 1 && !r.layersFirst && r.choices[b-2].has1("color") && r.isLayer(b-1) &&
		r.colorGap(r.choices[b-2].last+1, r.choices[b-1].first) {
		return "" // "bronze outside clear in": the layer is the color's before it
	}
	return r.layerBefore(b, r.choices[n].first)
}

// bothOnOne: "both are clear on the inside": the layer after a color that is said of both skylights.
func (r *reader) bothOnOne(b, n int) string {
	if b < 1 || n+1 == len(r.choices) || !r.choices[b-1].is("layer", "both") || !r.bothKinds(r.choices[b-1].last) {
		return ""
	}
	v, _ := r.choices[n+1].has("layer")
	if (v == "inner" || v == "outer") && r.colorGap(r.choices[n].last+1, r.choices[n+1].first) {
		return v
	}
	return ""
}

// layerBefore is the layer that is named before a phrase and up to a color at a token.
func (r *reader) layerBefore(b, color int) string {
	if b < 1 || !r.isLayer(b-1) || !r.colorGap(r.choices[b-1].last+1, color) {
		return ""
	}
	v, _ := r.choices[b-1].has("layer")
	return r.bothLayers(b-1, v)
}

// layerAfter is the layer that is named right after a color.
func (r *reader) layerAfter(n int) string {
	if v := r.inOrOut(r.choices[n].last + 1); v != "" {
		return v
	}
	if n+1 == len(r.choices) || !r.isLayer(n+1) {
		return ""
	}
	last, next := r.choices[n].last, &r.choices[n+1]
	v, _ := next.has("layer")
	if v == "both" && r.courtesyBetween(last+1, next.first) && r.endsAnswer(next.last+1, true) {
		return v // "Clear, both", "clear please, on both"
	}
	if r.colorGap(last+1, next.first) && !r.layerTaken(n+1) && !r.bothSkylights(n+1) {
		return v
	}
	return ""
}

// bothSkylights: "white over clear on both", "clear both sizes": the word for both stands for the
// skylights, not for the layers of one.
func (r *reader) bothSkylights(n int) bool {
	h := &r.choices[n]
	if !h.is("layer", "both") && !h.is("layer", "all") || r.wordsIn(h.first, h.last+2, "layer", "layers", "capa", "capas") {
		return false
	}
	if r.among(h.last+1, bothOfSkylights) || r.Units > 1 && r.wordAt(h.last, "domes") {
		return true
	}
	return r.overPair(n-1, -1) && r.colorGap(r.choices[n-1].last+1, h.first) ||
		r.overPair(n+1, 1) && r.colorGap(h.last+1, r.choices[n+1].first)
}

// overPair: the color is one of two that lie over each other, the other before (-1) or after it (1).
func (r *reader) overPair(n, way int) bool {
	at := func(n int) bool { return n >= 0 && n < len(r.choices) && r.choices[n].has1("color") }
	k := n + way
	if !at(k) {
		k += way // the word for over may be one of the layers' itself
	}
	if !at(n) || !at(k) {
		return false
	}
	return r.over(r.choices[min(n, k)].last+1, r.choices[max(n, k)].first)
}

// layersOf: all layers of a message that tells of two are both, of one the only one.
func (r *reader) layersOf(v string) string {
	if v != "all" {
		return v
	}
	for n := range r.choices {
		switch l, _ := r.choices[n].has("layers"); l {
		case "1":
			return "outer"
		case "2":
			return "both"
		}
	}
	return v
}

// layerOfBoth: "the inside of both is clear": the layer before the word for both skylights.
func (r *reader) layerOfBoth(n int) string {
	if n < 1 || r.Units < 2 || !r.choices[n].is("layer", "both") || !r.isLayer(n-1) {
		return ""
	}
	i := r.choices[n-1].last + 1
	if !r.wordAt(i, "of", "on", "for", "de", "en") || i+1 < r.choices[n].first ||
		!r.colorGap(r.choices[n].last+1, r.choices[n+1].first) {
		return ""
	}
	v, _ := r.choices[n-1].has("layer")
	return v
}

// bothLayers: "outer and inner are clear": the layer before is meant as well.
func (r *reader) bothLayers(n int, v string) string {
	if n > 0 && r.isLayer(n-1) && r.choices[n-1].last+2 == r.choices[n].first && r.wordAt(r.choices[n].first-1, "and", "y") {
		return "both"
	}
	return v
}

// layerFirst: layers are named before their colors: "outer clear, inner white".
func (r *reader) layerFirst() bool {
	for n := range r.choices {
		if _, ok := r.choices[n].has("color"); ok {
			return n > 0 && r.isLayer(n-1) && r.colorGap(r.choices[n-1].last+1, r.choices[n].first)
		}
	}
	return false
}

// layerTaken: the layer's name starts the next pair: "outer clear, inner white".
func (r *reader) layerTaken(n int) bool {
	if r.commaBetween(r.choices[n-1].last+1, r.choices[n].first) {
		return true
	}
	return r.layersFirst && n >= 2 && r.isLayer(n-2) && r.colorGap(r.choices[n-2].last+1, r.choices[n-1].first)
}

func (r *reader) isLayer(n int) bool {
	v, ok := r.choices[n].has("layer")
	return ok && v != "over"
}

func (r *reader) colorGap(from, to int) bool {
	for i := from; i < to; i++ {
		t := &r.toks[i]
		if r.inRef(i) {
			continue // "the inside of the kitchen one is white"
		}
		if t.kind != wordToken || !r.among(i, colorLinks) {
			return false
		}
	}
	return true
}

// courtesyBetween: a sign stands between a color and the word for both layers, and no more than courtesy and small
// words beside it.
func (r *reader) courtesyBetween(from, to int) bool {
	signs := 0
	for i := from; i < to; i++ {
		switch t := &r.toks[i]; {
		case t.mark(',') || t.mark('.') || t.mark('-') || t.mark('!'):
			signs++
		case !r.among(i, answerThanks) && !r.among(i, colorLinks):
			return false
		}
	}
	return signs == 1
}

// inOrOut: "white out, clear in": the layer is named after its color by one short word.
func (r *reader) inOrOut(i int) string {
	if !r.stopAt(i+1) && !r.among(i+1, andWords) && !r.choiceIs(i+1, fitcheck.TopicColor) {
		return ""
	}
	switch {
	case r.wordAt(i, "out"):
		return "outer"
	case r.wordAt(i, "in"):
		return "inner"
	}
	return ""
}
