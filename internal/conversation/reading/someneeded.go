package reading

// How many are needed of those that are up there: "three skylights but only one needs a new dome", "I need one
// dome, there are three skylights (the other two are fine)".

var (
	beforeThereAre = wordsOf(`have has are theres got of our my there hay tengo tenemos tiene de mis nuestros total`)
	onlyNeedsNouns = wordsOf(`of them those these em dome domes skylight skylights de ellos ellas domo tragaluz`)
	onlyNeedsLinks = wordsOf(`a to be un una el ser new replacement nuevo nueva plastic its their`)
	newDomeWords   = wordsOf(`dome domes bubble bubbles lens plastic replacing replaced replacement fixed fixing
		changing changed domo domos burbuja plastico acrilico cambio cambiarse cambiar reemplazo`)
	soundOnes  = wordsOf(`ones one skylights domes tragaluces domos unos of them de`)
	soundVerbs = wordsOf(`is are look looks seem esta estan se sirven re`)
	soundWords = wordsOf(`fine ok okay good sound great alright solid perfect bien buenos buenas perfectos`)
)

// neededOf is the number that is needed where a larger one is only there.
func (r *reader) neededOf() (countAt, bool) {
	if r.Units > 1 || r.wordsIn(0, len(r.toks), "each", "apiece", "per", "every", "cada", "or", "o") {
		return countAt{}, false
	}
	all, ok := r.thereAre()
	if !ok {
		return countAt{}, false
	}
	var found []countAt
	sound := r.othersSound()
	for i := range r.toks {
		n, next := r.countNumber(i)
		if r.wordAt(i, "un", "una", "uno") {
			n, next = 1, i+1
		}
		if next == i || i >= all.first && i <= all.last || n < 1 ||
			r.wordAt(i-1, "other", "otros", "otras") || r.layersCounted(i) || r.measureAt(i) {
			continue
		}
		c := countAt{n, i, next - 1}
		if n >= all.value || !r.onlyNeeds(c) && !r.wishedOf(c, sound) {
			return countAt{}, false // "two in white and one clear"
		}
		found = append(found, c)
	}
	if len(found) != 1 {
		return countAt{}, false
	}
	return found[0], true
}

// thereAre: "we have three skylights", "hay tres tragaluces", "five up there", "of our four skylights".
func (r *reader) thereAre() (countAt, bool) {
	for i := range r.toks {
		n, next := r.countNumber(i)
		if next == i || n < 2 || n > 99 || r.layersCounted(i) || r.measureAt(i) ||
			!r.among(i-1, beforeThereAre) && i > 0 && !r.sentenceEnd(i-1) {
			continue
		}
		last := next
		for last < next+3 && last < len(r.toks) && r.toks[last].kind == wordToken && !countNouns.has(r.toks[last].text) &&
			(r.countAdjective(last) || r.wordAt(last, "them", "ellos")) {
			last++
		}
		if last < len(r.toks) && countNouns.has(r.toks[last].text) && r.toks[last].kind == wordToken ||
			r.wordAt(next, "up", "total", "alla", "arriba") ||
			r.wordAt(next, "of") && r.wordAt(next+1, "them", "these") {
			return countAt{n, i, min(last, len(r.toks)-1)}, true
		}
	}
	return countAt{}, false
}

// onlyNeeds: "only one needs a new dome", "just two of them need replacing", "solo uno necesita domo nuevo".
func (r *reader) onlyNeeds(c countAt) bool {
	if !r.wordAt(c.first-1, "only", "just", "solo", "solamente", "nomas") {
		return false
	}
	i := c.last + 1
	for r.among(i, onlyNeedsNouns) {
		i++
	}
	if !r.wordAt(i, "needs", "need", "necesita", "necesitan", "ocupa", "ocupan") {
		return false
	}
	for i++; r.among(i, onlyNeedsLinks); i++ {
	}
	return r.among(i, newDomeWords) ||
		r.wordAt(i-1, "replacement", "new", "plastic", "nuevo") && (i >= len(r.toks) || r.toks[i].kind == markToken)
}

// wishedOf: "I need one replacement dome": a number is wished for; "un domo" may be any one, and is a number
// where the others are said to be sound.
func (r *reader) wishedOf(c countAt, othersSound bool) bool {
	i := c.first - 1
	for r.wordAt(i, "just", "only", "solo", "nomas") {
		i--
	}
	if !r.among(i, needWords) && !r.wordAt(i, "order", "buy", "replace", "for", "comprar", "pedir") ||
		r.wordAt(i, "for") && !r.wordAt(i-1, "looking") ||
		r.wordAt(c.first, "un", "una") && !othersSound {
		return false
	}
	for k := c.last + 1; k < c.last+4 && k < len(r.toks) && r.toks[k].kind == wordToken; k++ {
		if countNouns.has(r.toks[k].text) {
			return !r.wordAt(k+1, "frame", "frames")
		}
		if !r.countAdjective(k) {
			break
		}
	}
	return false
}

// othersSound: "the other two are fine", "the rest look good", "los otros dos están bien".
func (r *reader) othersSound() bool {
	for i := range r.toks {
		if r.wordAt(i, "other", "others", "rest", "otros", "otras", "demas") && r.soundAfter(i+1) {
			return true
		}
	}
	return false
}

func (r *reader) soundAfter(i int) bool {
	for r.among(i, soundOnes) || r.wholeSaid(i) > 0 {
		i++
	}
	if !r.among(i, soundVerbs) {
		return false
	}
	for i++; r.wordAt(i, "all", "still", "just", "perfectly", "ven", "todavia", "muy"); i++ {
	}
	return r.among(i, soundWords) && !r.wordsIn(i, min(i+5, len(r.toks)), "but", "pero")
}

// soundOthers: others that are only said to be sound beside what is needed are no kind of their own, nor is one that
// is only denied: "I'm in Boise, not the other one".
func (r *reader) soundOthers(first, last int) bool {
	if r.Units > 1 {
		return false
	}
	i := first - 1
	for r.wordAt(i, "the", "la", "el") {
		i--
	}
	if r.wordAt(i, "not", "no") && (r.markAt(i-1, ',') || r.markAt(i-1, '(') || r.markAt(i-1, '-')) &&
		(last+1 >= len(r.toks) || r.toks[last+1].kind == markToken) {
		return true
	}
	_, needed := r.neededOf()
	return needed && r.othersSound()
}
