package reading

var (
	ageHedges     = wordsOf(`about almost only now just over nearly like casi ya`)
	birthdayVerbs = wordsOf(`turned turning turn cumpli cumplio cumplo`)
	numberSources = wordsOf(`per asked ask says said according to for from dice dijo segun para midio got
		gets`)
	afterAge = wordsOf(`but so now yrs old with still this next last measured measures says held went got
		climbed read helped did wrote sent took came lo la se me midio subio pero que lol`)
)

// aged: a number is somebody's age: "my son who is 52", "my husband, 71, held the tape",
// "mi hijo de 22 lo midió", "I turned 65 in May".
func (r *reader) aged(i int) bool {
	n, next := r.toks[i].whole, i+1
	if r.toks[i].kind == wordToken {
		n, next = r.cardinal(i)
	} else if r.toks[i].dec > 0 || r.toks[i].code {
		return false
	}
	if next == i || n < 5 || n > 99 || r.measuredAt(next-1) || !r.ageEnds(next) || !r.ageBegins(i) {
		return false
	}
	r.use(i, next-1)
	return true
}

// allSame: "49 x 49 outside, same on all eight": how many there are, after a size.
func (r *reader) allSame(i int) bool {
	n, next := r.toks[i].whole, i+1
	if r.toks[i].kind == wordToken {
		n, next = r.cardinal(i)
	} else if r.toks[i].dec > 0 {
		return false
	}
	if next == i || n < 2 || n > 50 || !r.wordAt(i-1, "all", "los", "las") {
		return false
	}
	if !r.pairBefore(i) && !r.wordsIn(0, i, "sq", "square", "cuadrado", "cuadrados") {
		return false
	}
	if next < len(r.toks) && r.toks[next].kind == wordToken && !r.wordAt(next, "of", "r", "are", "were", "match") {
		return false
	}
	r.use(i, next-1)
	return true
}

// ageBegins: the words before a number tell whose age it is.
func (r *reader) ageBegins(i int) bool {
	k := i - 1
	for r.among(k, ageHedges) {
		k--
	}
	switch {
	case r.among(k, birthdayVerbs):
		return !r.wordAt(k-1, "it", "they", "that")
	case r.wordAt(k, "age", "aged", "edad", "im", "hes"), r.wordAt(k, "am") && r.wordAt(k-1, "i"):
		return true
	case r.wordAt(k, "is") && r.wordAt(k-1, "he", "she"), r.wordAt(k, "shes"):
		return r.kinBefore(k)
	case r.wordAt(k, "is", "was") && r.wordAt(k-1, "who"), r.wordAt(k, "whos"):
		return true
	case r.markAt(k, ',') && (len(r.toks) < 7 || r.anyOf(k-4, k, numberSources)):
		return false // "just asked my husband, 12"
	case r.wordAt(k, "is", "es") && r.askedSize() != "none" && r.wordsIn(k-4, k, "segun", "per", "according"):
		return false
	case r.wordAt(k, "is", "de", "thats", "es"), r.markAt(k, ','), r.markAt(k, '('):
		return r.among(k-1, kin)
	}
	return false
}

func (r *reader) kinBefore(i int) bool {
	return r.anyOf(0, i, kin)
}

// ageEnds: what follows makes no measure of the number: a sign, or what the person does.
func (r *reader) ageEnds(i int) bool {
	if r.wordAt(i, "and", "y") {
		_, _, _, part := r.spokenPart(i + 1)
		return !part && !r.numberAfter(i+1)
	}
	switch {
	case r.markAt(i, ','):
		return !r.numberAfter(i+1) || r.sizeLater(i+2)
	case i >= len(r.toks), r.markAt(i, ')'), r.markAt(i, '.'), r.markAt(i, '!'), r.markAt(i, '\n'), r.markAt(i, ';'):
		return true
	}
	return r.among(i, afterAge) || r.wordAt(i, "in") && r.among(i+1, monthWords)
}

// sizeLater: two sides follow, so a number before them is none.
func (r *reader) sizeLater(i int) bool {
	for ; i < len(r.toks); i++ {
		if r.by(i) && r.numberAfter(i+1) {
			return true
		}
	}
	return false
}
