package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	measureFollows = wordsOf(`x by layer layers inches ft feet cm mm sides capas`)
	mendedGoesOn   = wordsOf(`not no instead total skylights domes of now altogether in tragaluces domos please`)
	mendedWords    = wordsOf(`actually sorry wait miscounted total another instead oops meant mejor perdon digo`)
	mendedThings   = wordsOf(`miscounted skylights domes them total tragaluces domos found`)
	mendedLeads    = wordsOf(`its is be actually no wait sorry only just`)
	hourPreps      = wordsOf(`at until till after by before around hasta las`)
)

// countMended reads another number of skylights than the talk knows: "actually it's 14", "4 not
// 3, found another one", "make it 3", whatever was asked.
func (r *reader) countMended() bool {
	if r.Count == 0 || r.Units > 1 || r.asked(fitcheck.TopicCount) || len(r.refs) > 0 && !r.onlyAnother() || r.pairBetween(0, len(r.toks)) {
		return false
	}
	at, numbers, old := -1, 0, false
	for i := range r.toks {
		n := r.wholeSaid(i)
		if r.toks[i].kind != numToken && n < 0 || r.wordAt(i, "one", "uno", "una", "un") {
			continue
		}
		if n < 1 || n > 99 || r.toks[i].used || r.markAt(i+1, '/') || r.markAt(i+1, '"') || r.markAt(i+1, '\'') || r.among(i+1, measureFollows) {
			return false
		}
		numbers++
		denied := r.wordAt(i-1, "not", "no", "instead") && at >= 0 || r.wordAt(i-1, "of") && r.wordAt(i-2, "instead")
		switch {
		case denied && n == r.Count:
			old = true
		case at < 0 && n != r.Count:
			at = i
		default:
			return false
		}
	}
	if at < 0 || numbers > 2 || r.labelled(0, len(r.toks)-1) && !r.wordsIn(0, len(r.toks), "skylight", "skylights", "dome", "domes") {
		return false
	}
	if next := at + 1; next < len(r.toks) && r.toks[next].kind != markToken && !r.among(next, mendedGoesOn) {
		return false // "I had 2 guys look at it already, sorry"
	}
	mended := r.anyOf(0, len(r.toks), mendedWords) || r.wordAt(at-1, "no") || r.wordAt(at-1, "it") && r.wordAt(at-2, "make") || r.wordAt(at-1, "be") && r.wordAt(at-2, "should")
	counts := r.anyOf(0, len(r.toks), mendedThings) || r.wordAt(at-1, "are") && r.wordAt(at-2, "there")
	if !old && !counts && !r.wordAt(at-2, "make", "its", "is", "be") && !r.among(at-1, mendedLeads) && !r.markAt(at-1, ',') || r.among(at-1, hourPreps) {
		return false // "sorry, I work until 5"
	}
	sized := r.askedSize() != "none" || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicRoofSlope) || r.asked(fitcheck.TopicPlace) || r.asked(fitcheck.TopicPhone)
	if !old && !mended || sized && !counts && !old || !r.asked(fitcheck.TopicConfirm) && len(r.toks) > 14 {
		return false
	}
	r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(r.wholeSaid(at)), at, at)
	for i := range r.toks {
		if r.toks[i].kind == numToken || r.wholeSaid(i) > 0 && !r.wordAt(i, "one") {
			r.use(i, i)
		}
	}
	r.refs = nil
	return true
}

// onlyAnother: what looks like a kind is the one more that makes the new number.
func (r *reader) onlyAnother() bool {
	for k := range r.refs {
		if ref := &r.refs[k]; !r.wordsIn(ref.first, ref.last+1, "another", "other", "otro", "otra") {
			return false
		}
	}
	return true
}
