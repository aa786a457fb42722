package reading

import "example.com/intake-bot/internal/fitcheck"

// Counts that do not stand: several that differ, or one of which only some are needed.

var (
	fewerVerbs    = wordsOf(`were was have had i we need needs must should`)
	fewerStates   = wordsOf(`bad broken cracked leaking shot damaged busted fine good ok`)
	harmedCounted = wordsOf(`cracked broken leaking hazy shot busted bad damaged quebrados rotos`)
	thoseCounted  = wordsOf(`them those these em ellos ellas`)
	moreFixes     = wordsOf(`well or actually o bueno no wait but pero`)
	moreMaybes    = wordsOf(`maybe possibly perhaps might could quiza quizas tal`)
	fewerJobs     = wordsOf(`replacing replaced replacement fixed fixing changed doing redone new cambio cambiarse
		reemplazo`)
	fewerWants    = wordsOf(`need needing want doing replacing ordering necesito quiero ocupo`)
	fewerOrders   = wordsOf(`to do replace order fix change swap buy get cambiar`)
	takenBackTalk = wordsOf(`no wait actually sorry oops hold on i mean meant its it make that lets say espera perdon
		digo mejor son correction scratch`)
	takenBack      = wordsOf(`no wait actually sorry oops mean meant espera perdon digo correction scratch`)
	afterNoCount   = wordsOf(`of layers layer times years minutes more is are was were needs need es esta son no leaks`)
	beforeNewCount = wordsOf(`wait actually sorry its make that it i mean meant lets say`)
	insteadVerbs   = wordsOf(`do order get need want start replace`)
	afterInstead   = wordsOf(`for now right this first of`)
)

// countsDiffer: several counts, and no kinds named that they could be of.
func (r *reader) countsDiffer(found []countAt) bool {
	for _, c := range found {
		if len(r.refs) == 0 && c.value != found[0].value {
			return true
		}
	}
	return false
}

// countTakenBack: "two domes but one is fine", "five but only two need replacing".
func (r *reader) countTakenBack(c countAt) bool {
	if r.allAfterAll(c) {
		return false
	}
	_, last := r.sentence(c.first)
	for i := c.last + 1; i < last; i++ {
		if r.butCounts(i, last) {
			return true
		}
		n, next := r.countNumber(i)
		if next == i || n < 1 || n >= c.value {
			continue
		}
		if r.wordAt(next, "of") && r.wordAt(next+1, "which") && r.among(next+2, fewerVerbs) {
			return true // "six skylights, two of which were broken"
		}
		if r.soManyAre(c, i, next, last) {
			return true
		}
	}
	return false
}

// allAfterAll: "4, only one is cracked but I'd do all 4".
func (r *reader) allAfterAll(c countAt) bool {
	for i := c.last + 1; i < len(r.toks); i++ {
		if n, next := r.countNumber(i); next > i && n == c.value && r.wordAt(i-1, "all", "the", "los", "todos") {
			return true
		}
	}
	return false
}

// butCounts: a "but" stands at the token, and another count after it in the sentence.
func (r *reader) butCounts(i, last int) bool {
	if !r.wordAt(i, "but", "pero") {
		return false
	}
	for j := i + 1; j <= last; j++ {
		if n, next := r.countNumber(j); next > j && n > 0 && n < 100 && !r.countsElse(j, next) {
			return true
		}
	}
	return false
}

// soManyAre: "we have 6, 2 are broken": the smaller number at token i tells how some of those counted are.
func (r *reader) soManyAre(c countAt, i, next, last int) bool {
	return r.wordAt(next, "are", "is") && r.among(next+1, fewerStates) &&
		!r.room(i-1) && !r.wordAt(i-1, "every", "each") &&
		!r.harmedBefore(c.last+1, i) && !r.faultIn(c.last+1, i-1, nil) &&
		!r.wordsIn(next, last+1, "other", "others", "rest", "third", "both")
}

// harmedBefore: "three of my skylights are cracked, one is leaking bad": those counted are
// the harmed ones already.
func (r *reader) harmedBefore(from, to int) bool {
	for i := from; i < to; i++ {
		if r.wordAt(i, "are", "estan") && r.anyOf(i+1, min(i+4, to), harmedCounted) {
			return true
		}
	}
	return false
}

// partOfCount: "four of the bubbles are broken and two of those leak": of those counted
// before in the sentence.
func (r *reader) partOfCount(c countAt, before []countAt) bool {
	if len(before) == 0 || len(r.refs) > 0 && r.refs[0].first <= c.last || !r.among(c.last, thoseCounted) {
		return false
	}
	whole := before[len(before)-1]
	return c.value < whole.value && r.sentenceFirst(c.first) == r.sentenceFirst(whole.first)
}

// countTurned: "2. no, 3": the second number corrects the first.
func (r *reader) countTurned(n, next int) (m, end int) {
	j := next
	for r.markAt(j, ',') || r.markAt(j, '.') || r.markAt(j, '-') {
		j++
	}
	if !r.among(j, takenBack) {
		return n, next
	}
	for r.markAt(j, ',') || r.among(j, takenBackTalk) {
		j++
	}
	if m, end = r.countNumber(j); end > j && m > 0 && m != n && r.endsCount(end) {
		return m, end
	}
	return n, next
}

// maybeMore: "one. or maybe two, the second is so so": which of the two holds is asked.
func (r *reader) maybeMore(n, i, next int) bool {
	j := next
	for r.markAt(j, ',') || r.markAt(j, '.') || r.markAt(j, '-') || r.among(j, moreFixes) {
		j++
	}
	if !r.among(j, moreMaybes) {
		return false
	}
	for j++; r.wordAt(j, "be", "vez", "even", "sean", "it"); j++ {
	}
	m, end := r.countNumber(j)
	if end == j || m < 1 || m == n || end < len(r.toks) && r.toks[end].kind == wordToken && !r.endsCount(end) {
		return false
	}
	r.use(i, end-1)
	r.unclear(fitcheck.TopicCount, 0, WhyRange, nil, i, end-1)
	return true
}

// needsFewer: of those counted only some are to be done, and how many follows: "14 total
// but only need to do 4".
func (r *reader) needsFewer(n, next int) bool {
	for j := next; j < len(r.toks) && !r.sentenceEnd(j); j++ {
		if r.onlySomeNeed(j, n, next) {
			return true
		}
		k := r.onlyDone(j)
		if k == j {
			continue
		}
		verb := k
		for r.among(k, fewerOrders) {
			k++
		}
		if m, end := r.countNumber(k); end > k && m > 0 && m < n && (m > 1 || k > verb) {
			return r.endsFewer(end)
		}
	}
	return false
}

// onlySomeNeed: "5 but only 3 need replacing".
func (r *reader) onlySomeNeed(j, n, next int) bool {
	if !r.wordAt(j, "only", "just", "solo") || !r.wordAt(j-1, "but", "pero") ||
		r.wordsIn(max(0, next-4), next, "need", "want", "ocupo", "necesito", "quiero") {
		return false
	}
	m, end := r.countNumber(j + 1)
	return end > j+1 && m > 0 && m < n && r.wordAt(end, "need", "needs", "necesitan", "necesita") &&
		(end+1 >= len(r.toks) || r.toks[end+1].kind == markToken || r.among(end+1, fewerJobs))
}

// onlyDone is where words end that begin at the token and tell that only some are to be done; the token
// itself where there are none.
func (r *reader) onlyDone(j int) int {
	if r.wordAt(j, "voy", "vamos", "van") && r.wordAt(j+1, "a") && r.wordAt(j-1, "solo", "nomas", "solamente") {
		return j + 3 // "ocho pero nomas voy a cambiar tres"
	}
	if r.among(j, onlyWords) && r.among(j+1, fewerWants) {
		return j + 2
	}
	return j
}

// endsFewer: nothing follows the number but a mark, "of them" or "for now".
func (r *reader) endsFewer(end int) bool {
	return end >= len(r.toks) || r.toks[end].kind == markToken ||
		r.wordAt(end, "of") && r.wordAt(end+1, "them", "em", "those", "these") ||
		r.wordAt(end, "for", "right") && r.wordAt(end+1, "now")
}

// correctedTo: from token i on the number before is taken back for another: "wait no, two".
func (r *reader) correctedTo(i int) bool {
	back := false
	for i < len(r.toks) && (r.toks[i].kind == markToken || r.among(i, takenBackTalk)) {
		back = back || r.among(i, takenBack)
		i++
	}
	n, next := r.countNumber(i)
	return back && next > i && n > 0 && n < 100 && r.unitAt(next) == noUnit && !r.among(next, afterNoCount)
}

// corrects: the "no" before the number takes back another number: "two, no wait three".
func (r *reader) corrects(i int) bool {
	j := i - 1
	for r.among(j, beforeNewCount) || r.markAt(j, ',') {
		j--
	}
	if !r.wordAt(j, "no") {
		return false
	}
	for j--; r.markAt(j, ',') || r.markAt(j, '.') || r.wordAt(j, "wait", "oh", "oops"); j-- {
	}
	return j >= 0 && (r.toks[j].kind == numToken || isWhole(numberWords[r.toks[j].text].kind))
}

// countInstead: "3 of them, but only one is bad so let's do just one for now": how many are
// wanted of those that were counted.
func (r *reader) countInstead(c countAt) (countAt, bool) {
	for i := c.last + 1; i < len(r.toks); i++ {
		n, next := r.countNumber(i)
		if next == i || n < 1 || n >= c.value || !r.orderedInstead(c, i) {
			continue
		}
		if r.endsCount(next) || r.among(next, afterInstead) {
			return countAt{n, i, next - 1}, true
		}
	}
	return countAt{}, false
}

// orderedInstead: "so let's do just …" stands before the number at token i.
func (r *reader) orderedInstead(c countAt, i int) bool {
	return (r.wordAt(i-1, "do", "order") || r.wordsIn(max(0, i-3), i, "just", "only")) &&
		r.anyOf(max(c.last+1, i-4), i, insteadVerbs) &&
		r.wordsIn(c.last+1, i, "lets", "so", "but", "well", "ill")
}
