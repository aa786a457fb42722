package reading

import "example.com/intake-bot/internal/fitcheck"

// Numbers of what was done or broken, which are none of what is needed.

var (
	countedBy      = wordsOf(`i ive we weve he hes they`)
	didVerbs       = wordsOf(`set hung done seen installed built sold fixed mounted replaced`)
	brokenTiles    = wordsOf(`tile tiles shingle shingles slate slates shakes tejas`)
	countFillers   = wordsOf(`just only exactly about up there all a total`)
	counterWords   = wordsOf(`i we just up yo los`)
	forgetVerbs    = wordsOf(`scratch forget disregard ignore olvide olvidese olvida`)
	countSaidVerbs = wordsOf(`said told wrote say dije puse`)
)

// countedOnce: "I have set close to a hundred of these", "I broke four of them last time" beside tiles.
func (r *reader) countedOnce(i, next int) bool {
	if !r.wordAt(next, "of") || !r.wordAt(next+1, "these", "those", "them", "em") {
		return false
	}
	from := r.clauseStart(i)
	if r.anyOf(from, i, countedBy) && r.anyOf(from, i, didVerbs) && !r.wordsIn(from, i, "need", "want", "get") {
		return true
	}
	broke := r.wordAt(i-1, "broke", "cracked", "smashed", "busted", "snapped")
	return broke && r.wordAt(next+1, "them", "em") && r.ofTiles(i)
}

// ofTiles: tiles or shingles were spoken of last: "clay tile. I broke four of them getting the cat down".
func (r *reader) ofTiles(i int) bool {
	for k := i - 1; k >= 0 && k > i-40; k-- {
		switch w := r.wordText(k); {
		case r.among(k, brokenTiles):
			return true
		case theirThings.has(w) && w != "it" && w != "its" && w != "roof" && w != "they":
			return false
		}
	}
	return false
}

// countThere: "bought it off two artists. The skylights are all round. There's four.": of several numbers the
// one in a sentence that says how many there are.
func (r *reader) countThere() (countAt, bool) {
	found, ok := countAt{}, false
	for i := range r.toks {
		if r.used(i) || !r.thereBefore(i) {
			continue
		}
		n, next := r.countNumber(i)
		if next == i || n < 1 || n > 500 || !r.endsCount(next) || r.negated(i) {
			continue
		}
		if r.countRange(i, next) || r.correctedTo(next) || r.countsElse(i, next) {
			continue
		}
		if ok {
			return countAt{}, false
		}
		found, ok = countAt{n, i, next - 1}, true
	}
	return found, ok && r.otherBefore(found.first)
}

// thereBefore: "there's", "there are just", "I counted": words that say how many there are.
func (r *reader) thereBefore(i int) bool {
	k := i - 1
	for r.among(k, countFillers) {
		k--
	}
	return r.wordAt(k, "theres", "hay") || r.wordAt(k, "are", "is") && r.wordAt(k-1, "there") ||
		r.wordAt(k, "count", "counted", "counting", "conte") && r.among(k-1, counterWords)
}

// otherBefore: another number stands before the token.
func (r *reader) otherBefore(i int) bool {
	for k := range i {
		if _, next := r.countNumber(k); next > k {
			return true
		}
	}
	return false
}

// countScratched: "scratch what I said about two of them, it's three", whatever was asked.
func (r *reader) countScratched() bool {
	if r.Units > 1 {
		return false
	}
	for i := range r.toks {
		if r.among(i, forgetVerbs) && r.anyOf(i+1, min(i+7, len(r.toks)), countSaidVerbs) {
			if old := r.nextCount(i+1, r.sentenceLast(i)); old >= 0 {
				return r.countAfterScratched(old)
			}
		}
	}
	return false
}

// nextCount is the next number that is none of a size; -1 where there is none.
func (r *reader) nextCount(from, to int) int {
	for k := from; k <= to; k++ {
		if n, next := r.countNumber(k); next > k && n > 0 && n <= 100 && !r.pairAt(k) {
			return k
		}
	}
	return -1
}

// countAfterScratched takes the count behind one that is withdrawn: "… two of them, it's three".
func (r *reader) countAfterScratched(old int) bool {
	_, next := r.countNumber(old)
	if r.wordAt(old-1, "layers") || !r.wordAt(next, "of", "skylights", "domes") && !r.markAt(next, ',') {
		return false
	}
	r.use(old, next-1)
	k := r.nextCount(next, r.sentenceLast(old))
	if k < 0 {
		return false
	}
	n, end := r.countNumber(k)
	if !r.among(k-1, countIsNow) || !r.endsCount(end) {
		return false
	}
	r.use(k, end-1)
	r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(n), k, end-1)
	return true
}
