package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	measuredOrMoved = wordsOf(`snaps snap snapped inside measure measured keep put catch catches leaning stored`)
	boxArticles     = wordsOf(`a an the my our raised un una el la of de top`)
	sitsWords       = wordsOf(`sits sitting mounted all it its that which is set installed montado montada todo va esta right`)
	otherGlass      = wordsOf(`windows window doors door block blocks allergies`)
)

// frameOnBox: "plastic dome in a metal frame, on a wood curb" tells the kind unasked: a metal frame,
// and after a comma, which parts the words of a phrase, the box that it is on.
func (r *reader) frameOnBox() (value string, first, last int) {
	for i := range r.toks {
		part, end := r.laidAt(i)
		if part != framePart || end == i && !r.among(i, metalWords) || end+2 >= len(r.toks) || !r.markAt(end+1, ',') {
			continue
		}
		if to := r.boxBeneath(end + 2); to >= 0 && r.laidParts(0, len(r.toks)) != nil {
			return fitcheck.StyleCurbMount, i, to
		}
	}
	return "", 0, 0
}

// boxBeneath is where the box ends that words from a token on tell to be beneath: "on a wood curb",
// "sits on a raised box"; -1 for none.
func (r *reader) boxBeneath(from int) int {
	on := -1
	for k := from; k < min(from+6, len(r.toks)) && !r.toks[k].ends() && !r.among(k, negWords); k++ {
		if l := r.lieAt(k); l == liesOn || l == liesOver {
			on = k
		}
		if on < 0 || on == k {
			continue
		}
		part, to := r.laidAt(k)
		if part == boxPart && r.nothingBut(on+1, k, boxArticles) && r.nothingBut(from, on, sitsWords) {
			return to
		}
	}
	return -1
}

// nothingBut: each token between two is a word of the set.
func (r *reader) nothingBut(from, to int, s *wordSet) bool {
	for k := from; k < to; k++ {
		if !r.among(k, s) {
			return false
		}
	}
	return true
}

// liesUnasked is the kind that the parts of one sentence make, where nothing was asked: "I need a
// cover, the plastic is formed down over the outside of its frame". Two sentences that tell two
// kinds tell none.
func (r *reader) liesUnasked() (value string, first, last int) {
	for from := 0; from < len(r.toks); {
		to := max(r.sentenceLast(from), from)
		if v, a, b := kindOf(r.laidParts(from, min(to+1, len(r.toks)))); v != "" && !r.measuresOf(from, to) {
			if value != "" && v != value {
				return "", 0, 0
			}
			value, first, last = v, a, b
		}
		from = to + 1
	}
	return value, first, last
}

// measuresOf: the sentence has a number, so its words may name what was measured, "the flange that
// drops over the wood, 26 x 50", or it tells what moved, "the dome snaps on top of the frame".
func (r *reader) measuresOf(from, to int) bool {
	for i := from; i <= to; i++ {
		if r.toks[i].kind == numToken || r.among(i, measuredOrMoved) {
			return true
		}
	}
	return false
}

// glassOnBox: a skylight of flat glass on a box is one of glass: the box is told beside it.
func (r *reader) glassOnBox(all []saying) int {
	if r.anyOf(0, len(r.toks), sheetWords) {
		return -1 // "plastic over the glass"
	}
	glass := slices.IndexFunc(all, func(s saying) bool { return s.value == fitcheck.StyleGlass })
	if slices.ContainsFunc(all, func(s saying) bool {
		return s.value != fitcheck.StyleGlass && s.value != fitcheck.StyleCurbMount || s.doubted
	}) {
		return -1
	}
	if glass >= 0 && (r.sentenceFirst(all[glass].first) != r.sentenceFirst(all[0].first) ||
		r.among(all[glass].last+1, otherGlass)) {
		return -1 // "on a curb, and the house has glass windows"
	}
	return glass
}
