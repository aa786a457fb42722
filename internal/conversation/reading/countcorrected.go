package reading

import "example.com/intake-bot/internal/fitcheck"

// Another number of skylights than the one that was told or said back.

var (
	sizeOrLayers = wordsOf(`height length width tall long wide high inch inches alto altura largo ancho capas layers
		layer cold number`)
	countReasons     = wordsOf(`we i they there theres since because cause cuz bc maintenance`)
	countGoesOn      = wordsOf(`not no instead now en skylights domes domos tragaluces`)
	countChangeVerbs = wordsOf(`change cambie cambia cambien correct bump up`)
	countHeads       = quantityWords.and(`order skylights domes`)
	countHolders     = wordsOf(`theres there have need are want got son tengo hay solo`)
	oneMoreWords     = wordsOf(`more another extra otro otra mas`)
	oneMoreFound     = wordsOf(`found add one 1 forgot missed otro uno two encontramos falta`)
	summaryVerbs     = wordsOf(`wrote put said have say says listed typed show shows got dice pusieron puso
		escribio escribieron anotaron`)
	summaryWriters = wordsOf(`you u it that summary guys ya yall`)
	theyWrote      = wordsOf(`dice pusieron puso escribio escribieron anotaron`)
	countIsNow     = wordsOf(`its is be just only actually have son es solo nomas are theres it`)
)

// countCorrected: "theres 2 not 1", "todo bien pero son 3", "make it 7 not 6", "we found
// one more so 7 total", "change the count from 2 to 4".
func (r *reader) countCorrected(i, next int) bool {
	from, to := r.sentence(i)
	if r.anyOf(from, to+1, sizeOrLayers) && !r.wordsIn(from, to+1, "skylights", "domes", "units", "domos", "tragaluces") {
		return false // "put 9 not 8 for the height"
	}
	ends := r.endsCount(next) || r.onlyBehind(next)
	if !ends && !r.among(next, countReasons) && !r.among(next, countGoesOn) {
		return false
	}
	if ends && r.noMoreThan(i, next) {
		return true
	}
	return r.among(i-1, countHolders) || r.madeCount(i, next) || r.countChangedTo(i)
}

// madeCount: "make it 7", "put 4 instead", "change that to 7", "one more, so 7".
func (r *reader) madeCount(i, next int) bool {
	j := i - 1
	return r.wordAt(j, "it", "that") && r.wordAt(j-1, "make") ||
		r.wordAt(j, "put", "ponga", "pongan", "pongale") && r.wordAt(next, "not", "no", "instead", "en") ||
		r.wordAt(j, "to") && r.wordAt(j-1, "it", "that") && r.wordAt(j-2, "change", "bump", "up", "switch", "make") ||
		r.wordAt(j, "sean", "serian", "fueran") ||
		r.wordAt(j, "so", "total", "entonces") && r.oneMore(i)
}

// countChangedTo: "change the count from 2 to 4".
func (r *reader) countChangedTo(i int) bool {
	from := r.sentenceFirst(i)
	return r.wordAt(i-1, "to", "a") && r.anyOf(from, i-1, countChangeVerbs) && r.anyOf(from, i-1, countHeads)
}

// oneMore: the message tells that there are more than was thought.
func (r *reader) oneMore(i int) bool {
	return r.anyOf(0, i, oneMoreWords) && r.anyOf(0, i, oneMoreFound)
}

// countOfSummary: "you wrote four skylights. It's three": the first is what was said back.
func (r *reader) countOfSummary(i int) bool {
	if !r.asked(fitcheck.TopicConfirm) {
		return false
	}
	wrote := r.among(i-1, theyWrote) || r.among(i-1, summaryVerbs) && r.among(i-2, summaryWriters)
	return wrote && r.countLater(i+1)
}

// saidBackWrong: "you wrote four skylights. It's three": the count that holds.
func (r *reader) saidBackWrong(i, next int) bool {
	if !r.asked(fitcheck.TopicConfirm) || !r.endsCount(next) && !r.wordAt(next, "not", "no") || !r.among(i-1, countIsNow) {
		return false
	}
	for k := range i {
		n, end := r.countNumber(k)
		if end > k && n > 0 && r.countOfSummary(k) && (r.among(end, countNouns) || r.toks[end].kind == wordToken && end+1 == i-1) {
			return true
		}
	}
	return false
}

// countLater: another number follows that counts.
func (r *reader) countLater(i int) bool {
	for ; i < len(r.toks); i++ {
		if n, next := r.countNumber(i); next > i && n > 0 {
			return true
		}
	}
	return false
}

// miscounted: "actually 3, I miscounted", "it's 12, not 14. I counted wrong".
func (r *reader) miscounted(i, next int) bool {
	all := len(r.toks)
	wrong := r.wordsIn(0, all, "miscounted") || r.wordsIn(0, all, "counted", "conte") && r.wordsIn(0, all, "wrong", "mal")
	return wrong && r.endsCount(next) && !r.wordAt(i-1, "not", "no") && !r.negated(i)
}
