package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// What the frame of the new unit is to look like, where its metal or the frame that is wished for is named.

var (
	finishLinks   = wordsOf(`on the over sobre de en el`)
	oldFrameWords = wordsOf(`old existing current my our viejo mi`)
	whichLinks    = wordsOf(`is the s would be one that sea es`)
)

// metalOfFinish: "bronze anodized aluminum", "anodized metal": the metal that a finish is on is no finish.
func (r *reader) metalOfFinish(h *hit) bool {
	if h.first != h.last || !r.wordAt(h.first, "aluminum", "aluminium", "metal", "alum", "aluminio") {
		return false
	}
	i := h.first - 1
	for r.among(i, finishLinks) {
		i--
	}
	for n := range r.choices {
		if c := &r.choices[n]; c.last == i && c.has1("finish") && !c.is("finish", "mill") {
			return true
		}
	}
	return false
}

// wishedFrame: "plain silver frame is fine", "el marco plateado está bien": asked for a finish, the frame
// that the words name by one is the new one, and what is said of it is no state of the old.
func (r *reader) wishedFrame(first, last int) bool {
	if !r.asked(fitcheck.TopicFinish) || r.asked(fitcheck.TopicFrameCondition) {
		return false
	}
	for i := first; i <= last; i++ {
		if !r.among(i, frameNouns) {
			continue
		}
		if from := r.finishOfFrame(i); from >= 0 {
			return !r.anyOf(max(0, min(from, i)-2), i, oldFrameWords)
		}
	}
	return false
}

// finishOfFrame is where the finish is told that stands with the frame at token i, -1 for none: "silver
// frame", "marco en plateado".
func (r *reader) finishOfFrame(i int) int {
	after := i + 1
	for r.wordAt(after, "de", "en", "color") {
		after++
	}
	for n := range r.choices {
		c := &r.choices[n]
		beside := c.first <= i && i <= c.last || c.last == i-1 || c.first == after && r.wordAt(i, "marco", "marcos")
		if beside && c.has1("finish") {
			return c.first
		}
	}
	return -1
}

// saysWhich: "whatever is strongest against limbs": the words after a "whatever" tell which, so nothing is
// left to the shop.
func (r *reader) saysWhich(h *hit) bool {
	next := h.last + 1
	for r.among(next, whichLinks) {
		next++
	}
	return slices.ContainsFunc(r.choices, func(c hit) bool {
		return c.first >= h.first && c.first <= next && c.last > h.last &&
			c.is("material", fitcheck.MaterialPolycarbonate)
	})
}
