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
	from := r.clauseStart(i)
	if r.wordAt(next, "of") && r.wordAt(next+1, "these", "those", "them", "em") && r.anyOf(from, i, countedBy) && r.anyOf(from, i, didVerbs) && !r.wordsIn(from, i, "need", "want", "get") {
		return true
	}
	if !r.wordAt(next, "of") || !r.wordAt(next+1, "them", "em") || !r.wordAt(i-1, "broke", "cracked", "smashed", "busted", "snapped") {
		return false
	}
	return r.ofTiles(i)
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
		k := i - 1
		for r.among(k, countFillers) {
			k--
		}
		there := r.wordAt(k, "theres", "hay") || r.wordAt(k, "are", "is") && r.wordAt(k-1, "there") || r.wordAt(k, "count", "counted", "counting", "conte") && r.among(k-1, counterWords)
		if !there || r.used(i) {
			continue
		}
		n, next := r.countNumber(i)
		if next == i || n < 1 || n > 500 || !r.endsCount(next) || r.negated(i) || r.countRange(i, next) || r.correctedTo(next) || r.countsElse(i, next) {
			continue
		}
		if ok {
			return countAt{}, false
		}
		found, ok = countAt{n, i, next - 1}, true
	}
	return found, ok && r.otherBefore(found.first)
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
		if !r.among(i, forgetVerbs) || !r.anyOf(i+1, min(i+7, len(r.toks)), countSaidVerbs) {
			continue
		}
		to, old := r.sentenceLast(i), -1
		for k := i + 1; k <= to; k++ {
			n, next := r.countNumber(k)
			if next == k || n < 1 || n > 100 || r.pairAt(k) {
				continue
			}
			if old < 0 {
				if !r.wordAt(next, "of", "skylights", "domes") && !r.markAt(next, ',') || r.wordAt(k-1, "layers") {
					return false
				}
				old = k
				r.use(k, next-1)
				k = next - 1
				continue
			}
			if r.among(k-1, countIsNow) && r.endsCount(next) {
				r.use(k, next-1)
				r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(n), k, next-1)
				return true
			}
			return false
		}
	}
	return false
}
