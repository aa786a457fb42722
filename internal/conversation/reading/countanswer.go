package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	countOnce   = wordsOf(`were had replaced fixed bought sold did after before until till`)
	betterOnes  = wordsOf(`newer old bigger better nicer fresh cheaper fancier which what each every`)
	vagueCounts = wordsOf(`couple few several varios algunos bunch`)
	unaBefore   = wordsOf(`nomas solo es solamente nada mas son tengo`)
	notPieces   = wordsOf(`days weeks minutes photos second sec`)
)

// countAnswer reads a bare number as the answer to "how many?".
func (r *reader) countAnswer() {
	if c, ok := r.timesAnswer(); ok {
		r.use(c.first, c.last)
		r.countFact(c)
		return
	}
	if c, ok := r.countDrawn(); ok {
		r.use(c.first, c.last)
		if r.comesTo(c.first) {
			r.wholeCount(c)
			return
		}
		r.countFact(c)
		return
	}
	if c, ok := r.onlyThat(); ok {
		r.countFact(c)
		return
	}
	for i := r.countAlone(); i < len(r.toks); i++ {
		if r.notTheAnswer(i) {
			continue
		}
		if r.among(i, vagueCounts) {
			r.unclear(fitcheck.TopicCount, 0, WhyRough, nil, i, i)
			return
		}
		n, next := r.answeredNumber(i)
		if next == i || n < 1 || n > 500 || r.countsElse(i, next) || r.among(next, notPieces) {
			continue
		}
		if r.answerAt(n, i, next) {
			return
		}
	}
}

// comesTo: "the owner roofed over one, so it would be two": what it comes to is no doubt.
func (r *reader) comesTo(i int) bool {
	return r.wordAt(i-1, "be") && r.wordAt(i-2, "would", "will") && r.wordsIn(max(0, i-5), i-2, "so")
}

// notTheAnswer: whatever number stands here says something else than how many are needed.
func (r *reader) notTheAnswer(i int) bool {
	if r.used(i) || r.negated(i) && !r.corrects(i) || r.overtaken(i) || r.among(i-1, countOnce) {
		return true // "call me after 5", "there were 4, I replaced 2, so 2 left"
	}
	if r.layersCounted(i) || r.measureAt(i) || r.bothOfLayers(i) || r.priceOfOne(i) {
		return true
	}
	if r.wordAt(i, "one") && r.among(i-1, betterOnes) {
		return true // "I just want a newer one", "he circled each one", "how do I know which one it is?"
	}
	_, next := r.countNumber(i)
	return r.fractionAt(next)
}

// answeredNumber is countNumber with the words that are a number only as an answer.
func (r *reader) answeredNumber(i int) (n, next int) {
	switch {
	case r.wordAt(i, "a") && r.wordAt(i+1, "half") && r.wordAt(i+2, "dozen"):
		return 6, i + 3
	case r.wordAt(i, "a") && r.wordAt(i+1, "dozen"):
		return 12, i + 2
	case r.wordAt(i, "media") && r.wordAt(i+1, "docena"):
		return 6, i + 2
	case r.wordAt(i, "pair", "both", "par") && !r.wordAt(i+1, "ways", "sides", "directions", "edges"): // not "27 1/2 both ways"
		return 2, i + 1
	case r.wordAt(i, "una") && (i == 0 || r.among(i-1, unaBefore)) && r.stopAt(i+1):
		return 1, i + 1
	case r.wordAt(i, "single", "solo") && r.endsCount(i+1):
		return 1, i + 1
	}
	return r.countNumber(i)
}

// answerAt takes the number as the answer, or says why it is none; false where the search goes on.
func (r *reader) answerAt(n, i, next int) bool {
	if r.countRange(i, next) || r.maybeMore(n, i, next) {
		return true
	}
	if r.correctedTo(next) || r.needsFewer(n, next) {
		return false // "one. wait no, two, forgot the laundry room", "14 total but only need to do 4"
	}
	if r.countTakenBack(countAt{n, i, next - 1}) || r.countOfKind(next) || r.countsOfSorts(next) || r.twoCounts(next) {
		r.unclear(fitcheck.TopicCount, 0, WhyNumber, nil, i, next-1)
		return true
	}
	if m, end := r.countTurned(n, next); end > next {
		r.use(i, end-1)
		r.countFact(countAt{m, end - 1, end - 1})
		return true
	}
	n, next = r.countSum(n, next)
	r.use(i, next-1)
	r.countFact(countAt{n, i, next - 1})
	r.sharesOf(next)
	return true
}
