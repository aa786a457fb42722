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
		if part != framePart || end == i && !metalWords.has(r.toks[i].text) || end+2 >= len(r.toks) || !r.toks[end+1].mark(',') {
			continue
		}
		on := -1
		for k := end + 2; k < min(end+8, len(r.toks)) && !r.toks[k].ends() && !negWords.has(r.toks[k].text); k++ {
			if l := r.lieAt(k); l == liesOn || l == liesOver {
				on = k
			}
			if part, to := r.laidAt(k); part == boxPart && on >= 0 && on < k && r.onlyArticles(on+1, k) && r.onlySits(end+2, on) && r.laidParts(0, len(r.toks)) != nil {
				return fitcheck.StyleCurbMount, i, to
			}
		}
	}
	return "", 0, 0
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

func (r *reader) onlyArticles(from, to int) bool {
	for k := from; k < to; k++ {
		if !r.among(k, boxArticles) {
			return false
		}
	}
	return true
}

func (r *reader) onlySits(from, to int) bool {
	for k := from; k < to; k++ {
		if !r.among(k, sitsWords) {
			return false
		}
	}
	return true
}

// glassOnBox: a skylight of flat glass on a box is one of glass: the box is told beside it.
func (r *reader) glassOnBox(all []saying) int {
	for i := range r.toks {
		if r.among(i, sheetWords) {
			return -1 // "plastic over the glass"
		}
	}
	glass := slices.IndexFunc(all, func(s saying) bool { return s.value == fitcheck.StyleGlass })
	if slices.ContainsFunc(all, func(s saying) bool {
		return s.value != fitcheck.StyleGlass && s.value != fitcheck.StyleCurbMount || s.doubted
	}) {
		return -1
	}
	if glass >= 0 && (r.sentenceFirst(all[glass].first) != r.sentenceFirst(all[0].first) || r.among(all[glass].last+1, otherGlass)) {
		return -1 // "on a curb, and the house has glass windows"
	}
	return glass
}
