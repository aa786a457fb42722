package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// "One is …, the other …": two kinds that only these words tell apart.

var (
	sideOrLayer = wordsOf(`way side direction edge end day layer dimension diagonal pair inside within under half
		quarter eighth inch`)
	notOtherKind = wordsOf(`the other this that first second no each every just only old new another which top
		bottom inner outer inside outside upper lower`)
)

// oneAndOther: "one is 24x48, the other 30x30", "30x30 on one and 30x46 on the other".
func (r *reader) oneAndOther() {
	if r.asked(fitcheck.TopicCurbDiagonals) && r.Units < 2 {
		return // "uno mide 84 y el otro 84 1/4"
	}
	one, other := -1, -1
	for i := range r.toks {
		if r.among(i+1, sideOrLayer) ||
			r.wordAt(i, "one") && r.wordAt(i+1, "and") && r.wordAt(i+2, "a") && r.wordAt(i+3, "half", "quarter") ||
			r.wordAt(i+1, "of") && !r.pairAt(i+2) || r.numberAt(i-1).kind == tensWord {
			continue // also "twenty one and a half one way and forty five the other"
		}
		switch {
		case one >= 0 && other < 0 && r.acrossTo(one, i):
			one = -1 // "from one outer edge to the other"
		case one < 0 &&
			(r.wordAt(i, "one", "ones") && !r.room(i-1) || r.wordAt(i, "uno", "una") && r.wordAt(i+1, "es", "mide", "de", "tiene")) &&
			!r.among(i-1, notOtherKind):
			one = i
		case r.wordAt(i, "other", "others", "otra", "otro") && (r.soundOthers(i, i) || r.wordAt(i+1, "one") && r.soundOthers(i, i+1)):
		case one >= 0 && other < 0 && r.wordAt(i, "other", "others", "otra", "otro") &&
			(r.wordAt(i-1, "the", "la", "el") && !r.wordAt(i-2, "not") ||
				r.wordAt(i-1, "y") && r.wordAt(i+1, "de", "es", "mide") ||
				r.softBreak(i-1) && r.wordAt(i+1, "is", "measures")):
			other = i
		}
	}
	if one >= 0 && other < 0 {
		if r.asked(fitcheck.TopicLayers) || r.layersSaid(2) {
			return // "two, one clear and one white", "two layers, one clear one white"
		}
		r.oneAndOne(one)
		return
	}
	if one < 0 {
		return
	}
	for _, ref := range r.refs {
		if len(ref.units) == 1 && ref.units[0] == 1 {
			return
		}
	}
	r.refs = slices.DeleteFunc(r.refs, func(u unitRef) bool { return u.first <= other && other <= u.last })
	r.refs = append(r.refs, unitRef{one, one, []int{1}}, unitRef{other, other, []int{2}})
	r.toks[one].used = true
}

// oneAndOne: "one clear one white".
func (r *reader) oneAndOne(first int) {
	found := []unitRef{{first, first, []int{1}}}
	for i := first + 1; i < len(r.toks); i++ {
		if r.wordAt(i, "one") && !r.wordAt(i-1, "the", "no", "each", "this", "that", "only", "just", "at", "and_") &&
			!r.wordAt(i+1, "way", "side", "of", "more", "day", "time", "layer", "end", "edge") && r.choiceAt(i+1) && r.choiceAt(first+1) {
			found = append(found, unitRef{i, i, []int{len(found) + 1}})
		}
	}
	if len(found) > 1 && len(r.refs) == 0 {
		r.refs = found
	}
}
