package reading

import "example.com/intake-bot/internal/fitcheck"

// What somebody says of the list that was shown, in a sentence of its own where no phrase tells it:
// that it agrees, that nothing is wrong in it, that it is as they said; or that it is not.

var (
	confirmExcept   = wordsOf(`but except however although unless if pero excepto salvo though exception`)
	confirmMistakes = wordsOf(`mistake mistakes error errors wrong errores falta`)
	mistakeFinders  = wordsOf(`find found see saw spot notice caught catch there theres encontre encontramos
		encuentro veo vi hay`)
	confirmMends      = wordsOf(`change fix correct add cambiar corregir`)
	nothingWords      = wordsOf(`nothing nada isnt wouldnt not dont`)
	agreeVerbs        = wordsOf(`match matches agree agrees tallies coincide coinciden`)
	agreeSubjects     = wordsOf(`they it we i both us numbers summary list everything all of that todo`)
	agreesWith        = wordsOf(`with con my our mine what`)
	allInList         = wordsOf(`have it its everything all that thats list todo esta got`)
	confirmListWords  = wordsOf(`list it that this everything summary numbers order all todo lista eso`)
	confirmOrderNouns = wordsOf(`order list lead skylight numbers s`)
	askedBefore       = wordsOf(`asked told gave ordered wanted pedi dije`)
	toldYouVerbs      = wordsOf(`told said gave wrote sent described measured`)
	toldParticles     = wordsOf(`yo se le lo los la te`)
	toldByMe          = wordsOf(`dije di mande puse dijimos medi`)
)

// confirmSaid settles the list by such a sentence.
func (r *reader) confirmSaid() bool {
	for i := 0; i < len(r.toks); i = r.sentenceLast(i) + 1 {
		to := r.sentenceLast(i) + 1
		if r.markAt(to-1, '?') {
			continue
		}
		value := ""
		switch {
		case r.saysOtherwise(i, to):
			value = fitcheck.ConfirmNo
		case r.saysItAgrees(i, to) && !r.anyOf(i, len(r.toks), confirmExcept):
			value = fitcheck.ConfirmYes
		default:
			continue
		}
		r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(value), i, to-1)
		return true
	}
	return false
}

// saysItAgrees: "they match", "I can't find a mistake in there", "you have it just the way I told
// you", "all of that is true", "I'm happy with the list".
func (r *reader) saysItAgrees(from, to int) bool {
	for i := from; i < to; i++ {
		if r.nothingWrong(from, i) || r.nothingToMend(from, i, to) {
			return true
		}
		if !r.negated(i) && (r.agreesAt(i) || r.allAsTold(from, i) || r.pleasedWith(i, to)) {
			return true
		}
	}
	return false
}

// nothingWrong: "I can't find a mistake in there", "nothing is off".
func (r *reader) nothingWrong(from, i int) bool {
	if r.among(i, confirmMistakes) {
		return r.anyOf(from, i, mistakeFinders) && r.negated(i)
	}
	return r.wordAt(i, "off") && r.wordsIn(from, i, "nothing", "thing", "single", "nada") && r.negated(i) && !r.aboutRoofPart(i+1)
}

// nothingToMend: "nothing needs fixing", "I wouldn't change a thing".
func (r *reader) nothingToMend(from, i, to int) bool {
	if r.wordAt(i, "fixing", "changing", "correcting", "correction", "corrections") {
		return r.wordAt(i-1, "needs", "need", "requires", "no") && r.wordsIn(from, i, "nothing", "no", "nada")
	}
	if !r.among(i, confirmMends) || !r.wordAt(i-1, "to", "would", "wouldnt", "que") &&
		!r.wordsIn(from, i, "nothing", "nada", "would", "wouldnt") {
		return false
	}
	return r.anyOf(from, i, nothingWords) &&
		(r.wordsIn(from, i, "nothing", "nada", "thing", "anything") || r.wordsIn(i+1, to, "thing", "anything", "nada"))
}

// agreesAt: "they match", "matches my notes".
func (r *reader) agreesAt(i int) bool {
	return r.among(i, agreeVerbs) && (r.among(i-1, agreeSubjects) || r.among(i+1, agreesWith))
}

// allAsTold: "you have it just the way I told you", "all of that is true".
func (r *reader) allAsTold(from, i int) bool {
	return r.toldThus(i) && r.anyOf(from, i, allInList) ||
		r.wordAt(i, "true", "accurate") && r.wordsIn(from, i, "all", "everything", "list", "it", "that")
}

// pleasedWith: "I'm happy with the list".
func (r *reader) pleasedWith(i, to int) bool {
	return r.wordAt(i, "happy", "satisfied", "pleased", "comfortable", "conforme") && r.wordAt(i+1, "with", "con") &&
		r.anyOf(i+1, min(i+5, to), confirmListWords)
}

// saysOtherwise: "I don't agree with that", "that isn't the color I asked for", "somebody else's order",
// "you mixed up width and length".
func (r *reader) saysOtherwise(from, to int) bool {
	for i := from; i < to; i++ {
		if r.saysUnlike(i) || r.mixedUp(from, i) || r.somebodyElses(i, to) || r.notAsAsked(i, to) {
			return true
		}
	}
	return false
}

// saysUnlike: "I don't agree", "that's inaccurate".
func (r *reader) saysUnlike(i int) bool {
	return r.wordAt(i, "agree", "match") && r.negated(i) || r.wordAt(i, "incorrect", "inaccurate") && !r.negated(i)
}

// mixedUp: "you mixed up width and length".
func (r *reader) mixedUp(from, i int) bool {
	return r.wordAt(i, "mixed", "switched", "swapped", "reversed", "flipped") &&
		r.wordAt(i-1, "you", "u", "got", "have", "its") && (r.wordAt(i+1, "up", "the", "my") || r.wordsIn(from, i, "you", "u"))
}

// somebodyElses: "somebody else's order".
func (r *reader) somebodyElses(i, to int) bool {
	return r.wordAt(i, "else", "elses") && r.wordAt(i-1, "somebody", "someone", "somebodys", "someones") &&
		r.anyOf(i+1, min(i+3, to), confirmOrderNouns)
}

// notAsAsked: "that isn't the color I asked for".
func (r *reader) notAsAsked(i, to int) bool {
	end := min(i+6, to)
	return r.wordAt(i, "isnt", "arent", "wasnt", "not", "no") && r.anyOf(i+1, end, askedBefore) &&
		r.wordsIn(i+1, end, "i", "we", "que")
}

// toldThus: "the way I told you", "as we said", "como se lo dije" begin at the token.
func (r *reader) toldThus(i int) bool {
	switch {
	case r.wordAt(i, "way", "as", "like", "how", "what"):
		return r.wordAt(i+1, "i", "we") && r.among(i+2, toldYouVerbs)
	case r.wordAt(i, "como"):
		next := i + 1
		for r.among(next, toldParticles) {
			next++
		}
		return r.among(next, toldByMe)
	}
	return false
}
