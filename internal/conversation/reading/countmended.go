package reading

import "example.com/intake-bot/internal/fitcheck"

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
		if n < 1 || n > 99 || r.toks[i].used || r.markAt(i+1, '/') || r.markAt(i+1, '"') || r.markAt(i+1, '\'') || r.wordAt(i+1, "x", "by", "layer", "layers", "inches", "ft", "feet", "cm", "mm", "sides", "capas") {
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
	if next := at + 1; next < len(r.toks) && r.toks[next].kind != markToken && !r.onlyBehind(next) && !r.wordAt(next, "not", "no", "instead", "total", "skylights", "domes", "of", "now", "altogether", "in", "tragaluces", "domos", "please") {
		return false // "I had 2 guys look at it already, sorry"
	}
	mended := r.wordsIn(0, len(r.toks), "actually", "sorry", "wait", "miscounted", "total", "another", "instead", "oops", "meant", "mejor", "perdon", "digo") || r.wordAt(at-1, "no") || r.wordAt(at-1, "it") && r.wordAt(at-2, "make") || r.wordAt(at-1, "be") && r.wordAt(at-2, "should")
	counts := r.wordsIn(0, len(r.toks), "miscounted", "skylights", "domes", "them", "total", "tragaluces", "domos", "found") || r.wordAt(at-1, "are") && r.wordAt(at-2, "there")
	if !old && !counts && !r.wordAt(at-2, "make", "its", "is", "be") && !r.wordAt(at-1, "its", "is", "be", "actually", "no", "wait", "sorry", "only", "just") && !r.markAt(at-1, ',') || r.wordAt(at-1, "at", "until", "till", "after", "by", "before", "around", "hasta", "las") {
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

// onlyBehind: "son 2 nomás", "son dos nada más", "it's 2 only": the number, and no more.
func (r *reader) onlyBehind(next int) bool {
	last := next
	if r.wordAt(next, "nada") && r.wordAt(next+1, "mas") {
		last++
	}
	return (last > next || r.among(next, onlyWords)) && r.markOrEnd(last+1)
}

// noMoreThan: "it's just 2", "there's only two", "2 only" as a clause.
func (r *reader) noMoreThan(i, next int) bool {
	if r.onlyBehind(next) && (i == 0 || r.markOrEnd(i-1)) {
		return true
	}
	return r.among(i-1, onlyWords) && (i == 1 || r.markOrEnd(i-2) || r.among(i-2, beWords) || r.among(i-2, andWords) ||
		r.wordAt(i-2, "theres", "there", "need", "want"))
}
