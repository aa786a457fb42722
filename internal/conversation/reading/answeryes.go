package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"slices"
)

// Yes and no to "is this right?".

var (
	yesGoesOn    = wordsOf(`con puesto puestos el la lo los cuanto que si a no es se`)
	lackedThings = wordsOf(`photo photos pic pics picture pictures foto fotos camera camara email mail
		correo rush hurry`)
	exceptWords     = wordsOf(`except excepting besides excepto menos apart aside`)
	correctionNouns = wordsOf(`thing change correction fix mistake problem`)
	wrongLinks      = wordsOf(`is are was looks esta estan`)
	halfYesWords    = wordsOf(`not most but unless until has pero creo error menos guess`)
	politeLeads     = wordsOf(`but and pero y please just por favor`)
	atHomeWords     = wordsOf(`home here around free good up available`)
	notYetWords     = wordsOf(`im not no wait let ill hold`)
)

// confirm reads yes or no; a correction beside it stands for itself.
func (r *reader) confirm() {
	if r.correctsOrAdds() || r.confirmedAsWhole() || r.confirmSaid() {
		return
	}
	yes, no := r.yesAndNo()
	switch {
	case no >= 0:
		if h := &r.talk[no]; yes < 0 || yes > no || h.last > h.first {
			r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(fitcheck.ConfirmNo), h.first, h.last)
		}
	case yes >= 0:
		r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(fitcheck.ConfirmYes), r.talk[yes].first, r.talk[yes].last)
	case len(r.toks) >= 3 && r.toks[0].text == "10" && r.markAt(1, '-') && r.toks[2].text == "4": // "10-4"
		r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(fitcheck.ConfirmYes), 0, 2)
	default:
		m := r.firstTalk("maybe")
		if m != nil && !r.wordAt(m.first, "let", "wait", "hold") && r.firstTalk("later") == nil { // not "hmm let me go check"
			r.unclear(fitcheck.TopicConfirm, 0, WhyChoice, nil, m.first, m.last)
		}
	}
}

// correctsOrAdds: the message tells something else than who writes, and than a count that fits:
// "yes, and it's just the one".
func (r *reader) correctsOrAdds() bool {
	return len(r.out.Unclear) > 0 || slices.ContainsFunc(r.out.Facts, func(f Fact) bool {
		switch f.Topic {
		case fitcheck.TopicCount:
			return !r.asked(f.Topic) && f.Value != fitcheck.Value(fitcheck.Whole(1))
		case fitcheck.TopicName, fitcheck.TopicPhone, fitcheck.TopicEmail:
			return false
		}
		return true
	})
}

// yesAndNo are the first yes and the first no of the talk, -1 for none.
func (r *reader) yesAndNo() (yes, no int) {
	yes, no = -1, -1
	for n := range r.talk {
		h := &r.talk[n]
		v, _ := h.has("say")
		switch {
		case v == "yes" && yes < 0 && !r.yesElse(h) && !r.negated(h.first) && !r.questioned(h.first) && r.clauseIs(h):
			yes = n
		case v == "no" && no < 0 && !r.noElse(h) && (r.clauseIs(h) || n == 0 && h.first == 0):
			no = n
		}
	}
	return yes, no
}

// yesElse: the words of a yes tell something else, or the rest of the message takes it back.
func (r *reader) yesElse(h *hit) bool {
	if r.notAYes(h) || r.excepted(h.last+1) || r.notYet(h) || r.wordAt(h.last+1, "me", "if") {
		return true
	}
	if h.last > h.first {
		return r.yesNoQuestion(h.first) || r.halfYes(h) // "is everything correct on your end?"
	}
	return r.copyOfThing(h) || r.spanishLead(h) && r.among(h.last+1, yesGoesOn)
}

// copyOfThing: "copy the size", "exactamente igual": the word goes on to what it is of.
func (r *reader) copyOfThing(h *hit) bool {
	next := h.last + 1
	return r.wordAt(h.first, "copy", "exactamente", "efectivamente", "roger") &&
		next < len(r.toks) && r.toks[next].kind == wordToken && !r.wordAt(next, "that", "si", "todo")
}

// spanishLead: "y con el envío, ¿cuánto?": a small word that only leads on.
func (r *reader) spanishLead(h *hit) bool {
	return r.wordAt(h.first, "y") || r.wordAt(h.first, "va", "si", "ya") && r.markAt(r.sentenceLast(h.first), '?')
}

// noElse: the words of a no deny something else than what was asked.
func (r *reader) noElse(h *hit) bool {
	if h.first > 0 && r.wordAt(h.first-1, "yes") && r.negated(h.first) || r.notANo(h) {
		return true
	}
	return h.last == h.first &&
		(r.among(h.last+1, lackedThings) || r.wordAt(h.last+1, "wait", "hold", "let", "not") || r.whatIfNot(h))
}

// whatIfNot: "¿y si no queda me lo cambian?"
func (r *reader) whatIfNot(h *hit) bool {
	if !r.wordAt(h.first-1, "si") || h.last+1 >= len(r.toks) || r.toks[h.last+1].kind != wordToken {
		return false
	}
	return r.wordAt(h.first-2, "y") || r.markAt(r.sentenceLast(h.first), '?')
}

// excepted: what follows takes something out of a yes: "all good except my name".
func (r *reader) excepted(i int) bool {
	for ; i < len(r.toks); i++ {
		if r.among(i, exceptWords) || r.wordAt(i, "other") && r.wordAt(i+1, "than") ||
			r.wordAt(i, "only", "one", "just") && r.among(i+1, correctionNouns) {
			return true
		}
	}
	return false
}

// halfYes: a longer yes that the rest of its words takes back: "not sure all the numbers are
// right", "measurements are right, color isn't".
func (r *reader) halfYes(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := range r.toks {
		switch {
		case i >= h.first && i <= h.last:
		case r.wordAt(i, "isnt", "arent", "wasnt"), r.wordAt(i, "wrong", "mal", "off") && r.among(i-1, wrongLinks):
			return true
		case i >= from && i <= to && r.among(i, halfYesWords):
			return !r.wordAt(i, "not") || !r.wordsIn(i+1, i+4, "giving", "bad")
		case r.wordAt(i, "make") && r.wordAt(i+1, "sure"):
			return true
		}
	}
	return r.wordAt(h.last, "agree") && r.wordAt(h.last+1, "on", "with") ||
		r.wordAt(h.last, "right") && r.wordAt(h.last+1, "handed", "side", "away")
}

// notYet: a word like "right" that leads on to something else than a yes: "yes I have
// a question", "ok but when does it ship".
func (r *reader) notYet(h *hit) bool {
	i, ended := h.last+1, false
	for r.markAt(i, ',') || r.markAt(i, '.') || r.markAt(i, '!') {
		ended = ended || !r.markAt(i, ',')
		i++
	}
	if r.callMe(i) || r.letKnow(i, ended) || r.wordAt(i, "so") && r.requestAt(i+1) {
		return false // also "correct. so how much is it"
	}
	if r.wordAt(i, "no") {
		return !r.wordAt(i+1, "changes", "problem", "problems", "issues")
	}
	return r.wordAt(i, "but", "so", "pero") || r.among(i, notYetWords) ||
		r.wordAt(i, "i") && r.wordAt(i+1, "have", "still", "need", "want", "got")
}

// callMe: "yes, but call me when you have it".
func (r *reader) callMe(i int) bool {
	k := i
	for r.among(k, politeLeads) {
		k++
	}
	if k == i {
		return false
	}
	return r.wordAt(k, "call", "text", "email", "phone", "ring") && r.wordAt(k+1, "me", "us") ||
		r.wordAt(k, "llameme", "llamenme", "llamen", "marqueme", "marquenme")
}

// letKnow: "correct. let me know if you need anything else", "yes. I'm home today".
func (r *reader) letKnow(i int, ended bool) bool {
	return r.wordAt(i, "let") && r.wordAt(i+2, "know") ||
		ended && r.wordAt(i, "im", "ill") && r.anyOf(i+1, i+3, atHomeWords)
}

// requestAt: what the token begins is asked, or is no statement.
func (r *reader) requestAt(i int) bool {
	for n := range r.talk {
		if h := &r.talk[n]; h.first >= i && h.first <= i+1 {
			return h.has1("req") && !h.is("req", "none")
		}
	}
	return false
}

// clauseIs says whether the phrase starts its clause or fills it, as an answer does.
func (r *reader) clauseIs(h *hit) bool {
	before := h.first - 1
	if h.first < h.last && r.wordAt(before, "i", "we") && (before == 0 || r.softBreak(before-1) || r.sentenceEnd(before-1)) {
		return true // "I looked it over and I can't find anything wrong"
	}
	return h.first == 0 || r.wordAt(before, "says", "said", "wife", "husband", "dice") || r.softBreak(before) ||
		r.sentenceEnd(before) || r.talkBefore(before) || r.only(r.clauseStart(h.first), before)
}

func (r *reader) talkBefore(i int) bool {
	for n := range r.talk {
		if r.talk[n].first <= i && i <= r.talk[n].last {
			return true
		}
	}
	return false
}

// inLongYes: the words are part of a longer yes.
func (r *reader) inLongYes(h *hit) bool {
	for n := range r.talk {
		if o := &r.talk[n]; o.first < o.last && o.first <= h.first && h.last <= o.last && o.is("say", "yes") {
			return true
		}
	}
	return false
}
