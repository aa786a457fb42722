package reading

import "example.com/intake-bot/internal/fitcheck"

var aloneGoesOn = wordsOf(`it its is do does can i we you will what how when where why my there theres the`)

// countByItself: "metal frame over a wood curb, one, frame corroded", "...curb. Two. Just the plastic": a
// number that is a clause of its own in the first message, about skylights. One that may be of
// layers, or numbers what is told, is none.
func (r *reader) countByItself() (countAt, bool) {
	if r.Units > 1 || len(r.refs) > 0 || len(r.Asked) > 0 && !r.asked(fitcheck.TopicName) {
		return countAt{}, false
	}
	if all := len(r.toks); !r.skylightNamed(0, all) || r.pairBetween(0, all) || r.anyOf(0, all, layerNouns) {
		return countAt{}, false
	}
	var found []countAt
	for i := 2; i < len(r.toks); i++ {
		n, next := r.countNumber(i)
		if r.wordAt(i, "one", "uno", "una") {
			n, next = 1, i+1
		}
		if next != i+1 || n < 1 || n > 24 || r.used(i) || r.toks[i].glued || r.questioned(i) || !r.aloneAt(i) {
			continue
		}
		found = append(found, countAt{n, i, i})
	}
	if len(found) != 1 {
		return countAt{}, false
	}
	return found[0], true
}

// aloneAt: the token is a clause by itself, beside none that tells how the plastic is to be. A
// numeral before a period numbers a list: "1. metal frame".
func (r *reader) aloneAt(i int) bool {
	if !r.markAt(i-1, ',') && !r.markAt(i-1, ';') && !r.sentenceEnd(i-1) || r.toks[i].kind == numToken && !r.markAt(i-1, ',') {
		return false
	}
	if i+1 < len(r.toks) && !r.markAt(i+1, ',') && !r.markAt(i+1, ';') && !r.sentenceEnd(i+1) {
		return false
	}
	if r.sentenceEnd(i-1) && r.markAt(i+1, ',') && r.among(i+2, aloneGoesOn) {
		return false // "I have two questions. One, do you ship?"
	}
	for _, k := range []int{i - 2, i + 2} {
		if r.choiceIs(k, fitcheck.TopicLayers) || r.choiceIs(k, fitcheck.TopicColor) ||
			r.wordAt(k, "acrylic", "polycarbonate", "acrilico", "policarbonato") {
			return false
		}
	}
	return true
}
