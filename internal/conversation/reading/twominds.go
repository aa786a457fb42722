package reading

import "example.com/intake-bot/internal/fitcheck"

// What names a dome or a whole unit and is no wish of the writer's own: two people want two things, the one
// is wanted instead of the other, what it costs is asked before anything is chosen.

var (
	costQuestions = wordsOf(`is are would does do will wouldnt isnt es sale seria`)
	afterAll      = wordsOf(`i im id ill we were wed he she hes shes that thats it my lo`)
	agreeWords    = wordsOf(`so decided settled agree agreed agrees want prefer quiero prefiero asi`)
	opinionVerbs  = wordsOf(`says thinks said told wants figures swears insists reckons votes dice piensa cree opina
		prefiere`)
	ownOpinion  = wordsOf(`i im id ill we were wed well yo nosotros lets just only solo please its`)
	othersOfTwo = wordsOf(`neighbor neighbors neighbour cousin uncle aunt brother sister friend friends buddy
		coworker nephew niece inlaws vecino vecina primo prima tio tia amigo amiga cunado hermano hermana`)
	boughtVerbs = wordsOf(`ordered bought got went chose picked purchased had replaced compro pidio puso encargo
		cambio`)
	adviceVerbs = wordsOf(`recommends recommended says said suggests suggested thinks wants leaning recomienda dice
		dijo`)
	decideVerbs = wordsOf(`decide decided deciding decision decido decidido decidimos decidir mind minds choose
		settle settled`)
	notDecided = wordsOf(`not cant cannot havent hasnt couldnt still yet no sin hard trouble tough todavia two
		difficult`)
	insistVerbs = wordsOf(`says said thinks told swears insists claims recommends wants dice dijo cree opina quiere
		piensa`)
	opinionPersons = wordsOf(`he she they esposo esposa techero hermano hijo cunado vecino albanil senor`)
)

// noOwnWish says whether a phrase for what is wanted stands where it is not wished for.
func (r *reader) noOwnWish(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicWant || s.value == fitcheck.WantUnsure {
		return false
	}
	if s.value == fitcheck.WantCompleteUnit && r.wordAt(h.last, "frame", "marco") &&
		r.wordAt(h.last+1, "is", "isnt", "looks", "esta") {
		return true // "dome, and the frame is fine"
	}
	return r.wantElsewhen(s, h) || r.othersBought(h) || r.leftOpen(h) ||
		r.insteadWished(h) || r.costAsked(h) || r.allThatIs(h) || r.opinionsDiffer() >= 0 ||
		r.domeAndFrame(s, h)
}

// insteadWished: "make that the whole unit instead of only the dome", "rather than just the dome".
func (r *reader) insteadWished(h *hit) bool {
	for i := max(r.clauseStart(h.first), h.first-3); i < h.first; i++ {
		if r.wordAt(i, "of", "than", "de") && r.insteadOf(i) {
			return true
		}
	}
	return false
}

// costAsked: "is the dome by itself a lot less money?", "¿sale más barato el domo solo?".
func (r *reader) costAsked(h *hit) bool {
	from, to := r.sentence(h.first)
	return r.markAt(to, '?') &&
		r.wordsIn(from, to, "less", "cheaper", "cheapest", "expensive", "barato", "caro", "economico", "costs", "save") &&
		r.among(from, costQuestions)
}

// allThatIs: "the top piece is all I'm looking for" wants no more than that.
func (r *reader) allThatIs(h *hit) bool {
	return h.first == h.last && r.wordAt(h.first, "all", "todo") && r.wordAt(h.first-1, "is", "be", "thats", "its", "was", "es") &&
		(r.among(h.last+1, afterAll) || r.wordAt(h.last+1, "needed", "wanted"))
}

// domeAndFrame: "dome n frame": the plastic is named along with the frame.
func (r *reader) domeAndFrame(s sense, h *hit) bool {
	if s.value != fitcheck.WantDomeOnly || !s.asked {
		return false
	}
	k := h.last + 1
	if !r.wordAt(k, "and", "n", "plus", "y", "nd") && !r.markAt(k, '&') && !r.markAt(k, '+') {
		return false
	}
	for k++; r.wordAt(k, "the", "a", "new", "metal", "el"); k++ {
	}
	return r.wordAt(k, "frame", "frames", "marco", "marcos") && !r.frameIs(k)
}

// opinionsDiffer is the token at which the second of two people is told to think otherwise, "my brother says
// replace it all and my wife says save the money", -1 where they don't, or where the writer has chosen.
func (r *reader) opinionsDiffer() int {
	if r.anyOf(0, len(r.toks), agreeWords) && !r.wordsIn(0, len(r.toks), "otherwise", "different", "opposite") || r.butOwn() {
		return -1
	}
	said := 0
	for i := range r.toks {
		if !r.among(i, opinionVerbs) {
			continue
		}
		someone := false
		for k := max(r.sentenceFirst(i), i-3); k < i; k++ {
			someone = someone || r.personAt(k) || said == 0 && r.wordAt(k, "he", "she") ||
				r.wordAt(k, "other", "otro", "otra", "esposo", "esposa", "hermano", "hijo", "cunado")
		}
		if !someone {
			continue
		}
		if said++; said == 2 {
			return i
		}
	}
	return -1
}

// butOwn: after a "but" the writer speaks for themselves: "he says the whole thing but I think the dome".
func (r *reader) butOwn() bool {
	for i := range r.toks {
		if r.wordAt(i, "but", "pero") && r.anyOf(i+1, min(i+4, len(r.toks)), ownOpinion) &&
			!r.wordsIn(i+1, r.clauseEnd(i+1)+1, "says", "said", "thinks", "dice") {
			return true
		}
	}
	return false
}

// othersBought: "my cousin ordered the whole unit", "a friend went with just the dome": what somebody of
// another house did.
func (r *reader) othersBought(h *hit) bool {
	from := r.clauseStart(h.first)
	for i := from; i < h.first; i++ {
		if r.among(i, othersOfTwo) &&
			r.anyOf(i+1, min(i+6, h.first), boughtVerbs) {
			return !r.wordsIn(i, h.last+1, "i", "we", "us", "me", "nos", "same", "told", "said")
		}
	}
	return false
}

// leftOpen: "contractor recommends the complete unit, but we haven't decided".
func (r *reader) leftOpen(h *hit) bool {
	at := r.undecided()
	return at > h.last && r.anyOf(r.clauseStart(h.first), h.first, adviceVerbs) &&
		!r.wordsIn(at, len(r.toks), "so", "color", "layers", "white", "bronze", "material")
}

// undecided: asked what is wanted, "todavía no me decido", "can't make up my mind": where such words begin, -1
// without them.
func (r *reader) undecided() int {
	for i := range r.toks {
		if r.among(i, decideVerbs) &&
			r.anyOf(max(r.clauseStart(i), i-5), i, notDecided) &&
			!r.wordsIn(max(0, i-4), i, "dont", "never", "you", "changed", "keep", "bear") {
			return max(r.clauseStart(i), i-5)
		}
	}
	return -1
}

// othersAdvice: "I think all of it needs replacing but my roofer says just the dome": between two wishes a
// "but" begins what somebody else thinks.
func (r *reader) othersAdvice(from, to int) bool {
	for i := from; i < to; i++ {
		if !r.wordAt(i, "but", "pero", "though", "while", "and", "y") {
			continue
		}
		for k := i + 1; k < min(i+6, to); k++ {
			if r.among(k, insistVerbs) {
				return r.someoneIn(i+1, k) && r.wordsIn(r.sentenceFirst(from-1), from, "i", "im", "id", "we", "yo") &&
					!r.wordsIn(i+1, k, "i", "we", "you", "yo")
			}
		}
	}
	return false
}

// someoneIn: a person other than the writer stands between two tokens.
func (r *reader) someoneIn(from, to int) bool {
	for k := from; k < to; k++ {
		if r.personAt(k) || r.among(k, opinionPersons) {
			return true
		}
	}
	return false
}
