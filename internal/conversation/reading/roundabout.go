package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	aboutWhat   = wordsOf(`the it its this that these them my our all each every`)
	beforeRound = wordsOf(`is its it are theyre thats was be a one ones the and or dome domes skylight skylights
		totally perfectly completely fully mine both all no yes`)
	flatThingNouns = wordsOf(`roof roofs roofing rooftop deck glass skylight skylights one ones dome domes top tops
		plastic panel panels window windows side sides faces`)
	flatThingLooks = wordsOf(`rubber tar gravel black white old new metal foam membrane epdm tpo pvc tin steel torch
		down hot mop mopped rolled roll bitumen modified built up commercial leaky leaking sloped low slope big little
		ugly plain style type kind of and acrylic clear single double ply pane`)
)

// aroundOnly takes the shape out of what was found where "round" stands for "around": "a wood
// box sticking up round the hole".
func (r *reader) aroundOnly() {
	not := func(h hit) bool { return r.roundAbout(h.first) }
	r.labels = slices.DeleteFunc(r.labels, not)
	r.choices = slices.DeleteFunc(r.choices, not)
	r.styles = slices.DeleteFunc(r.styles, not)
}

// roundAbout: the token is a "round" before an article or a pronoun, and not after what says how
// something is: "it's round the size is 36".
func (r *reader) roundAbout(i int) bool {
	if r.asked(fitcheck.TopicOutline) || r.wordAt(i-1, "definitely", "pretty", "look", "looks", "much", "seems", "really", "very") {
		return false
	}
	if r.wordAt(i, "round") && r.wordAt(i-1, "way") && r.wordAt(i-2, "the", "all", "whole", "entire") {
		return true // "screws go in sideways the whole way round"
	}
	return r.wordAt(i, "round") && r.among(i+1, aboutWhat) && i > 0 && r.toks[i-1].kind == wordToken &&
		!r.among(i-1, beforeRound)
}

// flatThing: what is flat is named from the token on, by itself or after what it is made of:
// "flat glass", "flat tar and gravel roof".
func (r *reader) flatThing(i int) bool {
	for k := i; k < min(i+5, len(r.toks)) && r.toks[k].kind == wordToken; k++ {
		if r.among(k, flatThingNouns) {
			return true
		}
		if !r.among(k, flatThingLooks) {
			return false
		}
	}
	return false
}
