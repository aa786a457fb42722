package reading

// Words that ask elsewhere, in a sentence without a question mark that tells a size.

var (
	didObjects  = wordsOf(`just only both all each it one two corner corners diagonals them these those`)
	didSubjects = wordsOf(`you u i we they he she it that my your this yall`)
)

// toldWhere: "la base de la burbuja, donde sale de la parte plana, mide 21 por 45", "all I know is the
// plastic is 28 by 28", "the wood on the right is a bit bowed".
func (r *reader) toldWhere(h *hit) bool {
	if r.wordAt(h.first, "donde") && (r.markAt(h.first-1, ',') || r.markAt(h.first-1, '(')) &&
		!r.wordAt(h.last+1, "puedo", "podemos", "compro", "consigo", "estan", "queda", "venden", "mando", "pago") {
		first, last := r.sentence(h.first)
		return r.numberIn(first, last+1)
	}
	if r.wordAt(h.first, "is", "are") && r.wordAt(h.first-1, "know", "have", "got", "see", "tell", "had") &&
		r.wordsIn(r.clauseStart(h.first), h.first, "all", "what", "only") {
		return true
	}
	return r.wordAt(h.first, "is", "are") && r.wordAt(h.first-1, "right") && r.wordAt(h.first-2, "the", "my", "your")
}

// didOnly: "diagonal is 70 1/4; did just the one", "walked it over, then did the same": what was done.
func (r *reader) didOnly(h *hit) bool {
	if r.wordAt(h.first, "did") && r.wordAt(h.last+1, "off", "from", "with", "by", "at", "myself", "twice", "inside") {
		return true // "did it off the step ladder"
	}
	return r.wordAt(h.first, "did") &&
		(r.among(h.first+1, didObjects) && !r.wordAt(h.first+2, "come", "get", "go", "work", "match", "ship", "arrive", "look") ||
			r.wordAt(h.first-1, "then", "and", "also") && !r.among(h.first+1, didSubjects))
}

// asTold: "medimos lo que me pidió", "las dos diagonales que me pidió": what was asked for, of which
// the message tells.
func (r *reader) asTold(h *hit) bool {
	return r.wordAt(h.first, "que") && h.first > 0 &&
		(r.wordAt(h.first-1, "lo", "la", "las", "los") ||
			r.toks[h.first-1].kind == wordToken && !r.softBreak(h.first-1) && !r.talkEnds(h.first-1)) &&
		!r.markAt(r.sentenceLast(h.last), '?') &&
		!r.wordsIn(r.clauseStart(h.first), h.first, "no", "olvide", "perdi", "repita", "digame", "borro", "borre", "recuerdo", "se")
}
