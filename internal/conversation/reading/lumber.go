package reading

// lumberWords are boards by their nominal size in words: "two by sixes".
var lumberWords = wordsOf(`fours sixes eights tens twelves`)

// spokenLumber takes "two by sixes" for what something is built of, which is no measure. Where a
// length was asked for it is the answer, a nominal one, unless a measure follows.
func (r *reader) spokenLumber() (first, last int) {
	first = -1
	for i := range r.toks {
		if r.wordAt(i, "two", "2", "2x", "one", "1") && (r.by(i+1) && r.among(i+2, lumberWords) || r.among(i+1, lumberWords)) {
			last = i + 1
			if r.by(i + 1) {
				last++
			}
			if first = i; i > 0 && r.wholeAt(i-1) > 0 && !r.by(i-2) { // "3 two by fours stacked"
				first--
			}
			r.use(first, last)
		}
	}
	return first, last
}

// lumberOnly asks for the measure where boards were all the answer.
func (r *reader) lumberOnly(first, last int) {
	asked := r.askedSize()
	if first < 0 || asked == "none" || r.known(asked) || r.doubtful(asked) {
		return
	}
	r.unclear(asked, 0, WhyNominal, nil, first, last)
}
