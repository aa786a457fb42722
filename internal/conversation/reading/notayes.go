package reading

import "example.com/intake-bot/internal/fitcheck"

// Words like a yes or a no that are none where they stand at the summary.

var (
	saidVerbs      = wordsOf(`said told answered replied typed hit pressed texted sent dije puse conteste`)
	yesRegretted   = wordsOf(`wrong mistake accident soon early fast before without equivocado error equivoque`)
	beforeRoofPart = wordsOf(`the my our this that old current existing actual el la mi viejo itself glass metal
		plastic wood`)
	roofParts   = wordsOf(`skylight skylights dome domes frame frames curb roof bubble tragaluz domo marco techo`)
	tiedTo      = wordsOf(`says say said to thinks wants should que dice we better lets quiere you`)
	thanksOrNow = wordsOf(`thanks thank you gracias sir maam now then here to me senor really`)
	moreThings  = wordsOf(`else here that needs need i would id mas hay more`)
	changeVerbs = wordsOf(`fix change correct add changing fixing correcting wrong off changed edit adjust cambiar
		corregir agregar arreglar`)
	anothersThings = wordsOf(`order orders list numbers skylight skylights info information job measurements sizes
		summary stuff house request details quote`)
)

// notAYes: the yes is told of earlier, asked back, tied to something, or said of the skylight.
func (r *reader) notAYes(h *hit) bool {
	switch {
	case h.first == h.last && r.markAt(h.last+1, '?') && h.last+2 < len(r.toks): // "yes? I think so"
		return true
	case h.first == h.last && r.among(h.first-1, saidVerbs) && r.anyOf(h.last+1, len(r.toks), yesRegretted):
		return true // "I said yes already to the wrong thing"
	case h.first == h.last && h.last+1 < len(r.toks) && r.toks[h.last+1].kind == wordToken &&
		(negWords.has(r.toks[h.last+1].text) || r.wordAt(h.last+1, "isnt", "arent", "wasnt", "wont", "aint")):
		return true // "it certainly isn't", "definitely not"
	case r.wordsIn(h.first, h.last+1, "nothing", "anything", "no", "nada", "problem", "problems") && r.aboutRoofPart(h.last+1):
		return true // "nothing wrong with the skylight"
	}
	return r.tied(h)
}

// aboutRoofPart: "with the dome", "on our old skylight", "con el marco" begin at the token.
func (r *reader) aboutRoofPart(i int) bool {
	if !r.wordAt(i, "with", "on", "about", "to", "con", "en", "de", "del", "al") {
		return false
	}
	for i++; r.among(i, beforeRoofPart); i++ {
	}
	return r.among(i, roofParts)
}

// tied: what follows the yes makes it depend on something: "looks right unless you see something",
// "yes, as long as it ships this week", "sí, siempre y cuando llegue el viernes", "all good, my roofer
// says wait though".
func (r *reader) tied(h *hit) bool {
	for i := h.last + 1; i < len(r.toks); i++ {
		switch {
		case r.wordAt(i, "unless", "provided", "assuming", "depending", "pending"), r.wordAt(i, "salvo") && r.wordAt(i+1, "que"):
			return true
		case r.wordAt(i, "long") && r.wordAt(i-1, "as") && r.wordAt(i+1, "as") && !r.wordAt(i-2, "is", "are", "just", "twice", "times"):
			return true
		case r.wordAt(i, "siempre") && (r.wordAt(i+1, "que") || r.wordAt(i+1, "y") && r.wordAt(i+2, "cuando")):
			return true
		case r.wordAt(i, "wait", "hold", "esperar", "espere", "esperemos") && r.among(i-1, tiedTo) && r.personBetween(h.last+1, i):
			return true
		}
	}
	return false
}

// personBetween: somebody else is spoken of between the tokens.
func (r *reader) personBetween(from, to int) bool {
	for i := from; i < to; i++ {
		if r.personAt(i) || r.otherPerson(i) || r.wordAt(i, "he", "she", "they") {
			return true
		}
	}
	return false
}

// notANo: a no that leads to an assent, or that only denies what the summary does not ask.
func (r *reader) notANo(h *hit) bool {
	if h.first != h.last || !r.wordAt(h.first, "no", "nope", "nah") || h.first != r.sentenceFirst(h.first) {
		return false
	}
	// "no está quebrado, lo que pasa es que gotea"
	if next := h.last + 1; r.wordAt(next, "esta", "es", "hay", "tiene", "gotea", "se") {
		hits := within(r.choices, next, r.clauseEnd(next))
		for n := range hits {
			if v, ok := hits[n].has(string(fitcheck.TopicProblem)); ok && v != "?" && v != "none" {
				return true
			}
		}
	}
	return false
}

// assentAfterNo finds what agrees after a "no", where that is all that is said: "no, that's right", "nope,
// nothing to fix", "no está mal".
func (r *reader) assentAfterNo() (first, last int, ok bool) {
	if !r.wordAt(0, "no", "nope", "nah", "naw") {
		return 0, 0, false
	}
	last = len(r.toks) - 1
	for last > 0 && (r.toks[last].kind == markToken || r.among(last, thanksOrNow)) {
		last--
	}
	i := 1
	for r.markAt(i, ',') || r.markAt(i, '.') || r.markAt(i, '!') || r.markAt(i, '-') ||
		r.wordAt(i, "i", "think", "really", "sir", "maam") {
		i++
	}
	if i == 1 &&
		(r.wordAt(1, "esta", "estan") && (last == 2 || last == 3 && r.wordAt(2, "nada")) && r.wordAt(last, "mal") ||
			r.wordAt(1, "bad") && last == 1) {
		return 0, last, true
	}
	if i > last || r.markAt(len(r.toks)-1, '?') {
		return 0, 0, false
	}
	if r.wordAt(i, "nothing", "nada") {
		k := i + 1
		for r.among(k, moreThings) {
			k++
		}
		if r.wordAt(k, "to", "que") {
			k++
		}
		return i, last, k == last && r.among(k, changeVerbs)
	}
	for n := range r.talk {
		if h := &r.talk[n]; h.first == i && h.last == last && h.last > h.first && h.is("say", "yes") {
			return i, last, true
		}
	}
	return 0, 0, false
}

// anothersList: what is shown is not this customer's: "this is somebody else's order", "that isn't the one I
// gave you", "you sent me the wrong person's numbers".
func (r *reader) anothersList() (first, last int, ok bool) {
	for i := range r.toks {
		k := i
		switch {
		case r.wordAt(i, "somebody", "someone", "anyone", "anybody", "people", "other", "another", "different", "neighbors") &&
			(r.wordAt(i+1, "elses", "else", "persons", "customers", "guys", "person", "customer") || r.wordAt(i+1, "s")):
			k = i + 2
		case r.wordAt(i, "wrong") && r.wordAt(i+1, "persons", "person", "customers", "customer", "guy", "guys"):
			k = i + 2
		case r.wordAt(i, "isnt", "arent", "not", "wasnt", "werent", "aint") &&
			r.wordAt(i+1, "mine", "ours", "my", "our", "the", "what") &&
			r.wordsIn(i+1, min(i+7, len(r.toks)), "mine", "ours", "order", "orders") && !r.wordsIn(i+1, min(i+4, len(r.toks)), "only"):
			return i, min(i+1, len(r.toks)-1), true
		case r.wordAt(i, "isnt", "arent", "not", "wasnt", "werent", "aint") && r.wordAt(i+1, "the", "what") &&
			r.wordsIn(i+2, min(i+7, len(r.toks)), "gave", "sent", "told", "wrote", "texted", "ordered") &&
			r.wordsIn(i+1, min(i+5, len(r.toks)), "i", "we"):
			return i, min(i+1, len(r.toks)-1), true
		default:
			continue
		}
		for r.wordAt(k, "s") {
			k++
		}
		if r.among(k, anothersThings) {
			return i, k, true
		}
	}
	return 0, 0, false
}

// confirmedAsWhole: what the whole message says of the summary, which its first word does not.
func (r *reader) confirmedAsWhole() bool {
	if first, last, ok := r.assentAfterNo(); ok {
		r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(fitcheck.ConfirmYes), first, last)
		return true
	}
	if first, last, ok := r.anothersList(); ok {
		r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(fitcheck.ConfirmNo), first, last)
		return true
	}
	return false
}
