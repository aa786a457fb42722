package reading

import "example.com/intake-bot/internal/fitcheck"

// Words of a request in a sentence that only tells something: "it costs more, I know", "the two
// diagonals que me pidió", "I'm coming down now".

var (
	costAskWords = wordsOf(`how what whats know tell send need if whether wondering idea cuanto que si`)
	besideCost   = wordsOf(`so too very really pretty quite is are was were looks seems will would does did even also
		has been got that a bit little`)
	costSubjects = wordsOf(`it they its theyre these those which ones one polycarbonate acrylic frame frames`)
	sayVerbsThen = wordsOf(`dijo dice dices dijiste dijeron pidio pidieron pide pregunto preguntaron mando`)
	noticedVerbs = wordsOf(`vi see seen saw get got recibi leido lei read missed notice`)
	whoeverWords = wordsOf(`whoever whatever whichever somebody everybody nobody everyone everything quien quienes`)
	askVerbForms = wordsOf(`did does do is are has was can could would will puede pueden hacen venden instalan
		tienen`)
	shopVerbs      = wordsOf(`mandan envian hacen tienen venden aceptan instalan pueden puede manejan ofrecen dan`)
	askInfinitives = wordsOf(`saber sabe sabes decir dime diga digame avise aviseme ver pregunta preguntar duda
		confirmar`)
	othersWish = wordsOf(`you u yall need want like love someone somebody anyone anybody able`)
	othersKin  = wordsOf(`he she has my our grandson son daughter wife husband nephew niece`)
)

// saidSo: the words that look like a request stand in a statement.
func (r *reader) saidSo(h *hit, what Request) bool {
	first, last := r.sentence(h.first)
	if r.markAt(last, '?') {
		return what == RequestHowTo && r.shownToOther(h)
	}
	switch what {
	case RequestUrgent:
		return r.wordAt(h.first, "coming", "running", "going", "heading", "climbing") &&
			(r.wordAt(h.first-1, "im", "hes", "shes") ||
				r.wordAt(h.first-1, "am", "were", "is", "are") && r.wordAt(h.first-2, "i", "we", "he", "she") ||
				r.wordAt(h.first-1, "be") && r.wordsIn(first, h.first, "ill", "i", "we", "he", "she"))
	case RequestPrice:
		return r.costTold(h, first) || r.familyPrice(h)
	case RequestAgain:
		return r.toldEarlier(h, first) || r.excused(h)
	case RequestQuestion:
		return r.clauseTold(h, first, last)
	case RequestHowTo:
		return r.shownToOther(h)
	}
	return false
}

// costTold: "it costs more, I know", "it was expensive": said of a thing, and nobody asks how much.
func (r *reader) costTold(h *hit, first int) bool {
	if !r.wordsIn(h.first, h.last+1, "cost", "costs", "expensive", "pricey", "costoso") || r.anyOf(first, h.last+1, costAskWords) {
		return false
	}
	i := h.first - 1
	for i > first && r.among(i, besideCost) {
		i--
	}
	if r.wordsIn(h.first, h.last+1, "expensive", "pricey") && !r.wordsIn(i, h.first, "was", "were") {
		return false // "it's too expensive" asks for a better price
	}
	return i >= first && r.among(i, costSubjects) && !r.wordAt(i-1, "is", "are", "was", "does", "do", "will", "would")
}

// familyPrice: "Thanks, Lou Ellen Price": a family's name behind a given one, the last word of all.
func (r *reader) familyPrice(h *hit) bool {
	if h.first != h.last || !r.wordAt(h.first, "price", "cost") || !r.givenAt(h.first-1) {
		return false
	}
	return h.last+1 >= len(r.toks) || r.sentenceEnd(h.last+1) || r.markAt(h.last+1, ',')
}

// toldEarlier: "las diagonales que me pidió", "me subí a la escalera, como me dijo usted": what was
// said goes before, and a question about it would begin with the words.
func (r *reader) toldEarlier(h *hit, first int) bool {
	return r.wordAt(h.first, "que", "como", "lo") && h.first < h.last && h.first > first && !r.whole(h) &&
		r.anyOf(h.first, h.last+1, sayVerbsThen) &&
		!r.talkEnds(h.first-1) && !r.softBreakBefore(h) &&
		!r.wordsIn(first, h.first, "no", "repita", "repitame", "repite", "perdon", "digame", "mandeme", "recuerdo")
}

// softBreakBefore: a sign or a joining word goes before, other than the comma of "…, como me dijo".
func (r *reader) softBreakBefore(h *hit) bool {
	return r.softBreak(h.first-1) && !(r.wordAt(h.first, "como") && r.markAt(h.first-1, ','))
}

// excused: "no vi su mensaje. Estamos en El Paso": what was missed is answered all the same.
func (r *reader) excused(h *hit) bool {
	if !r.wordAt(h.first, "no", "didnt", "dont", "did", "havent", "hadnt", "never", "missed") ||
		!r.anyOf(h.first, h.last+1, noticedVerbs) {
		return false
	}
	for _, t := range r.Asked {
		if r.known(t) {
			return true
		}
	}
	return false
}

// clauseTold: the words of a question belong to a clause that tells of something.
func (r *reader) clauseTold(h *hit, first, last int) bool {
	switch {
	case r.among(h.first-1, whoeverWords):
		return r.among(h.first, askVerbForms) && !r.wordAt(h.first-2, "is", "does", "can", "wants")
	case r.wordAt(h.first-1, "right", "left") && r.wordAt(h.first-2, "the", "to", "upper", "lower", "top", "bottom", "far"):
		return r.wordAt(h.first, "is", "are", "has", "was", "does", "did") // "the wood on the right is a bit bowed"
	case r.wordAt(h.first, "when") && r.wordAt(h.first+1, "you", "we", "i", "they", "he", "she", "it"):
		// "when you write this up, put …"
		return r.markAt(r.clauseEnd(h.first)+1, ',') ||
			r.wordsIn(h.last+1, last, "let", "please", "put", "text", "call") ||
			h.first > first && r.toks[h.first-1].kind == wordToken && !r.wordAt(h.first-1, "know", "tell", "and", "ask", "so", "to")
	case r.wordAt(h.first, "que") && h.first > first && r.markAt(h.first-1, ','):
		return !r.opensSpanish(h.first) // "a mi correo, que es …"
	case r.wordAt(h.first, "puedo", "podemos"):
		return r.wordAt(h.first-1, "yo", "nosotros", "ya", "aqui", "asi", "tambien", "solo", "cuando") &&
			!r.wordAt(h.first-2, "como", "donde", "que", "cuando")
	case r.among(h.first, shopVerbs):
		si := r.wordAt(h.first-1, "si") || r.wordAt(h.first-1, "no", "me", "nos", "lo", "los", "ya") && r.wordAt(h.first-2, "si")
		return si && h.first-2 >= first && !r.anyOf(first, h.first, askInfinitives) && last > h.last
	}
	return false
}

// shownToOther: "my grandson has to show me how to get them off the camera": another shows it, and
// it is no measure.
func (r *reader) shownToOther(h *hit) bool {
	return r.wordAt(h.first, "show", "tell", "teach", "explain", "walk", "help") &&
		r.wordAt(h.first-1, "to", "will", "can", "could", "must", "ll", "gotta", "should") &&
		!r.anyOf(r.clauseStart(h.first), h.first, othersWish) && r.anyOf(r.clauseStart(h.first), h.first, othersKin) ||
		r.asked(fitcheck.TopicPhotos) && r.wordAt(h.first, "how") && r.wordAt(h.first-1, "me", "know", "learn", "figure", "out") &&
			!r.wordsIn(r.clauseStart(h.first), h.first, "you", "u", "dont", "not", "cant")
}

// opensSpanish: the sign that opens a Spanish question stands right before the word.
func (r *reader) opensSpanish(i int) bool {
	const sign = "¿"
	from := r.toks[i].from
	for from > 0 && (r.Text[from-1] == ' ' || r.Text[from-1] == '\n') {
		from--
	}
	return from >= len(sign) && r.Text[from-len(sign):from] == sign
}
