package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	priceLeads = wordsOf(`on for need quote order want`)
	countTails = wordsOf(`total please pls shipped delivered sent iguales igual`)
)

// countClause: "just 1", "I need three": a number that ends its clause after a word of
// needing, with nothing that it could measure.
func (r *reader) countClause(i int) (countAt, bool) {
	n, next := r.countNumber(i)
	if next == i || n < 1 || n > 100 || r.used(i) || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicCount) {
		return countAt{}, false
	}
	sized := len(r.Asked) > 0 && r.askedSize() != "none"
	if sized && !r.pairBefore(i) && !r.allAlike(i+1) || r.negated(i) || r.countOfSummary(i) {
		return countAt{}, false
	}
	if r.countUnasked(n, i, next) || r.saidBackWrong(i, next) || r.priceOnCount(i, next) || r.countConfirmed(i, next) {
		return countAt{n, i, next - 1}, true
	}
	if n > 1 && n <= 24 && !sized && r.alikeByThemselves(i, next) {
		return countAt{n, i, next - 1}, true
	}
	if !r.endsCountClause(n, i, next) {
		return countAt{}, false
	}
	j := i - 1
	for r.wordAt(j, "the", "about") || r.among(j, onlyWords) && r.among(j-1, needWords) {
		j--
	}
	if !sized && r.countLed(i, j) {
		return countAt{n, i, next - 1}, true
	}
	if !r.countNeeded(i, j, next) {
		return countAt{}, false
	}
	if sized {
		r.use(i, next-1) // "25 x 49, need 3"
	}
	return countAt{n, i, next - 1}, true
}

// allAlike: "all the same", "iguales".
func (r *reader) allAlike(i int) bool {
	return r.wordAt(i, "all") && r.wordAt(i+1, "the", "same", "alike") || r.wordAt(i, "iguales")
}

// countUnasked: a number that says how many where nothing was asked yet.
func (r *reader) countUnasked(n, i, next int) bool {
	if len(r.Asked) > 0 {
		return false
	}
	if r.madeInstead(i, next) {
		return true
	}
	if n == 1 {
		return false
	}
	if r.wordAt(i-1, "all") && r.markAt(i-2, ',') && r.endsCount(next) &&
		r.wordsIn(max(0, i-8), i, "skylights", "domes", "bubbles", "units") {
		return true // "hail got my shop skylights, all 6"
	}
	if r.wordAt(i-1, "so") && r.endsCount(next) && r.wordsIn(0, i, "each", "apiece") && r.skylightNamed(0, i) {
		return true // "one skylight on each, so 4"
	}
	return n <= 24 && r.countedOn(i, next)
}

// priceOnCount: "price on (8), mill finish".
func (r *reader) priceOnCount(i, next int) bool {
	return r.markAt(i-1, '(') && r.markAt(next, ')') && r.among(i-2, priceLeads)
}

// countConfirmed: the number puts another one right that was said back.
func (r *reader) countConfirmed(i, next int) bool {
	if !r.asked(fitcheck.TopicConfirm) {
		return false
	}
	return r.countCorrected(i, next) || r.miscounted(i, next) ||
		r.endsCount(next) && r.inRef(i-1) && r.wordsIn(r.clauseStart(i), i, "make", "put", "need", "want")
}

// endsCountClause: a number ends its clause, or what follows says nothing of what it counts.
func (r *reader) endsCountClause(n, i, next int) bool {
	return next >= len(r.toks) || r.softBreak(next) || r.sentenceEnd(next) || r.among(next, countTails) ||
		n > 1 && (r.wordsAfterBy(next+1) || r.wordAt(next, "asap") || r.forBuilding(next)) ||
		r.wordAt(next, "in") && r.wordAt(next+1, "over", "above", "sobre") ||
		r.wordAt(next, "all") && r.wordAt(next+1, "the", "same", "identical", "alike") ||
		r.wordAt(i-1, "be") && r.wordAt(next, "not", "instead") || // "should be 3 instead"
		r.wordAt(next, "not", "no") && r.wholeAt(next+1) > 0 // "3 not 2"
}

// countLed: before the number, at j, stand words that lead to a count: "put me down for 4", "the skylights
// are all yellow. There are 7.", "son dos y los dos están quebrados".
func (r *reader) countLed(i, j int) bool {
	if r.putDownFor(j) || r.recounted(j) || r.listedCount(j) {
		return true
	}
	there := r.wordAt(j, "are") && r.wordAt(j-1, "there") || r.wordAt(j, "theres", "hay")
	if len(r.Asked) == 0 && there && r.wordsIn(0, j, "skylights", "domes", "bubbles", "tragaluces", "domos") {
		return true
	}
	return r.wordAt(j, "son") && r.clauseStart(i) == j
}

// countNeeded: before the number, at j, stands a word of needing or of no more than that.
func (r *reader) countNeeded(i, j, next int) bool {
	return r.among(j, needWords) ||
		r.quantityIs(j) ||
		r.asked(fitcheck.TopicConfirm) && r.wordAt(j, "it", "that") && r.wordAt(j-1, "make") || // "make it 3"
		r.wordAt(j, "like") && r.wordAt(j-1, "id", "would") || // "I'd like 3"
		r.wordAt(j, "tengo", "tenemos", "hay") && r.wordAt(next, "iguales") || // "tengo 3 iguales"
		r.onlyBeforeCount(i, j) // "actually just 1"
}

// quantityIs: "the count should be 3"; not "the number of layers is 2".
func (r *reader) quantityIs(j int) bool {
	return r.wordAt(j, "be", "is") && r.wordsIn(max(0, j-3), j, "count", "quantity", "qty", "number") &&
		!r.wordsIn(max(0, j-3), j, "layers", "layer", "capas", "sides", "panes")
}

func (r *reader) onlyBeforeCount(i, j int) bool {
	return r.among(j, onlyWords) && (r.clauseStart(i) == j || r.wordAt(j-1, "mas", "actually", "sorry", "well", "no"))
}
