package reading

import "example.com/intake-bot/internal/fitcheck"

// A dome or a whole unit that is named and not wished for now: it was bought before, it is for next year,
// somebody else quoted it, it hangs on an "unless", or it is what shall stay.

var (
	beforeBought = wordsOf(`be get gets being is are need needs want wants to gotta should`)
	buyers       = wordsOf(`i we he she they ive weve theyd wed owner owners guy roofer contractor husband dad brother
		somebody someone`)
	timeGoneNouns = wordsOf(`time year summer spring fall winter month week vez round go`)
	planVerbs     = wordsOf(`thinking planning gonna going hoping leaning looking about set ready considering`)
	quoters       = wordsOf(`guy guys roofer contractor company place they he she someone somebody handyman outfit store`)
	wantHangsOn   = wordsOf(`frame frames metal marco you theres price cheaper costs usted ustedes`)
	domeHarmed    = wordsOf(`problem issue broken cracked damaged bad problema roto quebrado rajado danado`)
	staysVerbs    = wordsOf(`is s are looks seems was still esta sigue quedo salio se`)
	alreadyHave   = wordsOf(`bought have got ordered replaced own compre tengo compramos tenemos cambie cambiamos`)
)

var (
	boughtWords = wordsOf(`replaced changed swapped bought purchased ordered installed redid reinstalled`)
	boughtThen  = wordsOf(`did put got had cambiamos cambie cambio cambiaron compramos compre compro pusimos puse
		pusieron instalamos instale`)
	laterWords = wordsOf(`later someday eventually afterwards despues adelante`)
	stayWords  = wordsOf(`good fine ok okay great perfect sound solid new intact clear excellent bueno buena
		buenos bien perfecto nuevo nueva sano intacto entero`)
)

// wantElsewhen: the phrase tells of another time or of another's offer.
func (r *reader) wantElsewhen(s sense, h *hit) bool {
	return r.measuredAlone(h) || r.boughtBefore(h) || r.plannedOnce(h) || r.forLater(h) ||
		r.quotedElse(h) || r.totalAsked(s, h) || r.harmedOnly(s, h)
}

// measuredAlone: "Plastic by itself, edge to edge, 32.5 x 56.5" says what was measured.
func (r *reader) measuredAlone(h *hit) bool {
	if !r.wordAt(h.last, "itself", "sola", "solo") || r.asked(fitcheck.TopicWant) {
		return false
	}
	to := r.sentenceLast(h.last)
	return r.wordAt(h.last+1, "is", "measures", "mide") || r.labelled(h.last+1, to) && r.numberIn(h.last+1, to+1)
}

// boughtBefore: "last time we replaced the whole unit", "we put in a whole unit two years ago".
func (r *reader) boughtBefore(h *hit) bool {
	if r.domeStays(h) && r.frameHeld() {
		return false // what is up there stays, and it is asked
	}
	from := r.clauseStart(h.first)
	for i := from; i < h.first; i++ {
		w := r.wordText(i)
		if !boughtWords.has(w) && !boughtThen.has(w) || r.negated(i) || r.among(i-1, beforeBought) {
			continue
		}
		someone := r.anyOf(max(from, i-3), i, buyers) || boughtThen.has(w) && r.out.Language == "es"
		if someone && (boughtWords.has(w) && !r.wordsIn(i+1, h.first, "and", "so", "but") || r.timeGone(h.first)) {
			return !r.wordsIn(i, h.first, "want", "need", "now", "mind", "wish", "quiero", "necesito", "ahora")
		}
	}
	return false
}

// timeGone: the sentence names a time that is over: "last summer", "in 2010", "hace tres años".
func (r *reader) timeGone(i int) bool {
	from, to := r.sentence(i)
	for k := from; k <= to; k++ {
		switch {
		case r.wordAt(k, "ago", "previously", "originally", "hace", "already", "ya", "antes", "before"):
			return true
		case r.wordAt(k, "last", "ultima", "previous") && r.among(k+1, timeGoneNouns):
			return true
		case r.wordAt(k, "pasado", "pasada") && r.wordAt(k-1, "ano", "verano", "mes", "vez", "semana", "invierno"):
			return true
		case r.wordAt(k, "in", "en", "back") && k+1 <= to && r.toks[k+1].kind == numToken && len(r.toks[k+1].text) == 4:
			return true
		}
	}
	return false
}

// plannedOnce: "I was thinking the whole unit until I saw your prices", "iba a pedir todo hasta que vi el precio".
func (r *reader) plannedOnce(h *hit) bool {
	from := r.sentenceFirst(h.first)
	for i := from; i < h.first; i++ {
		if (r.wordAt(i, "was", "were") && r.among(i+1, planVerbs) ||
			r.wordAt(i, "wanted", "planned", "iba", "ibamos", "queria", "queriamos", "pensaba", "pensabamos")) &&
			!r.newClause(i+2, h.first) {
			return r.wordsIn(h.last+1, r.sentenceLast(h.first)+1, "until", "till", "til", "hasta")
		}
	}
	return false
}

// forLater: "the dome first, maybe the unit next year": the other one is for now.
func (r *reader) forLater(h *hit) bool {
	if !r.otherWantBeside(h) {
		return false
	}
	for i := r.clauseStart(h.first); i <= r.clauseEnd(h.last); i++ {
		if (laterWords.has(r.wordText(i)) && !r.wordAt(i-1, "no", "see", "talk", "you") ||
			r.wordAt(i, "next", "another", "other", "proximo", "otro") &&
				r.wordAt(i+1, "year", "summer", "spring", "time", "winter", "fall", "ano", "verano") ||
			r.wordAt(i, "road") && r.wordAt(i-1, "the")) &&
			!r.wordsIn(i+1, r.clauseEnd(h.last)+1, "now", "ahora") {
			return true
		}
	}
	return false
}

// otherWantBeside: another phrase names the other of dome and whole unit.
func (r *reader) otherWantBeside(h *hit) bool {
	mine, _ := h.has(string(fitcheck.TopicWant))
	for n := range r.wants {
		o := &r.wants[n]
		if v, ok := o.has(string(fitcheck.TopicWant)); ok && o.first != h.first && v != mine && v != fitcheck.WantUnsure &&
			!r.negated(o.first) {
			return true
		}
	}
	return false
}

// quotedElse: "a guy quoted me for a complete unit": what somebody else offered is no wish.
func (r *reader) quotedElse(h *hit) bool {
	for i := r.clauseStart(h.first); i < h.first; i++ {
		if r.wordAt(i, "quoted", "quote", "quotes", "bid", "cotizo", "cotizaron") &&
			(r.wordAt(i, "quoted", "bid") || r.wordAt(i+1, "me", "us") || r.wordAt(i, "cotizo", "cotizaron")) &&
			(r.anyOf(max(r.clauseStart(h.first), i-6), i, quoters) || r.wordAt(i, "cotizo", "cotizaron")) &&
			!r.wordsIn(i, h.first, "but", "want", "need", "so") && !r.wordsIn(r.clauseStart(h.first), i, "you", "can") {
			return true
		}
	}
	return false
}

// totalAsked: "how much is the whole thing?", "price for both?": what all of it costs is asked, and
// nothing chosen.
func (r *reader) totalAsked(s sense, h *hit) bool {
	if s.value != fitcheck.WantCompleteUnit || !r.priced(h.first) ||
		r.wordsIn(h.first, h.last+1, "unit", "units", "skylight", "skylights", "frame", "complete", "assembly", "kit") {
		return false
	}
	from, to := r.sentence(h.first)
	return r.wordAt(h.last, "thing", "both", "everything", "ambos", "ambas", "todo") && (r.markAt(to, '?') || to-from < 6) &&
		!r.wordsIn(from, to+1, "want", "need", "like", "get", "replace", "order", "quiero", "necesito", "cambiar")
}

// harmedOnly: "just the dome is broken, but the frame is old so all of it": what alone is harmed is told,
// and another wish follows.
func (r *reader) harmedOnly(s sense, h *hit) bool {
	if s.value != fitcheck.WantDomeOnly ||
		!r.wordAt(h.first, "just", "only", "solo", "nomas", "solamente") ||
		!r.wordAt(h.last+1, "is", "s", "got", "has", "was", "esta", "are") ||
		!r.otherWantBeside(h) {
		return false
	}
	harm := within(r.choices, h.last+2, h.last+4)
	for n := range harm {
		if v, ok := harm[n].has(string(fitcheck.TopicProblem)); ok && v != "none" {
			return true
		}
	}
	return false
}

// wantHangs: the wish hangs on something, or what is named shall stay, so that it is asked: "the dome,
// unless the frame is bad", "whatever is cheaper, just the dome I guess", "the dome is fine, it's the frame".
func (r *reader) wantHangs(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicWant || s.value == fitcheck.WantUnsure {
		return false
	}
	from, to := r.sentence(h.first)
	for i := from; i <= to; i++ {
		if (r.wordAt(i, "unless") || r.wordAt(i, "menos") && r.wordAt(i-1, "a") && r.wordAt(i+1, "que")) &&
			r.anyOf(i+1, min(i+6, to+1), wantHangsOn) {
			return true
		}
	}
	if r.wordsIn(from, to+1, "whatever", "whichever") && r.wordsIn(from, to+1, "cheaper", "cheapest", "cheap", "less") &&
		r.wordsIn(from, to+1, "guess", "maybe", "probably", "suppose", "think") {
		return true
	}
	return s.value == fitcheck.WantDomeOnly && r.domeStays(h) && r.frameHeld()
}

// domeStays: "the dome is fine", "I already bought a dome", "nothing wrong with the plastic".
func (r *reader) domeStays(h *hit) bool {
	if r.wordsIn(h.first, h.last+1, "just", "only", "solo", "nomas", "frame", "frames", "marco") ||
		r.wordsIn(max(r.clauseStart(h.first), h.first-3), h.first, "just", "only", "solo", "nomas", "without") {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := h.last + 1; i <= min(h.last+6, to); i++ {
		switch w := r.wordText(i); {
		case frameNouns.has(w) || r.wordAt(i, "and", "but", "y", "pero"):
			i = to
		case r.wordAt(i, "isnt", "not", "no", "aint"):
			return r.anyOf(i+1, min(i+4, to+1), domeHarmed)
		case r.wordAt(i, "doesnt", "dont") && r.wordAt(i+1, "need"), r.wordAt(i, "stays", "survived"):
			return true
		case stayWords.has(w) && r.anyOf(h.last+1, i, staysVerbs):
			return !r.wordAt(i+1, "enough", "for")
		}
	}
	for i := max(from, h.first-6); i < h.first; i++ {
		switch {
		case r.wordAt(i, "already", "ya") && r.anyOf(i+1, h.first, alreadyHave),
			r.wordAt(i, "bought", "replaced", "compre", "cambie") && r.timeGone(i),
			r.wordAt(i, "nothing", "nada") && r.wordsIn(i+1, h.first, "wrong", "malo"):
			return true
		}
	}
	return false
}

// frameHeld: the message names the frame, and not as one that is sound.
func (r *reader) frameHeld() bool {
	for i := range r.toks {
		if !frameNouns.has(r.wordText(i)) {
			continue
		}
		if state, _ := r.conditionAfter(i); state != fitcheck.ConditionGood {
			return true
		}
	}
	return false
}
