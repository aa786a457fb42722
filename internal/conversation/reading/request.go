package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	beforeMoney  = wordsOf(`under over than around about like cost run menos mas`)
	afterRequest = wordsOf(`at on back please pls when later now asap instead tomorrow today if and i to about so
		for`)
	verbParticles = wordsOf(`off out up open loose down apart to all measured clean`)
	phoneReasons  = wordsOf(`easier better needed need questions rather prefer want facil mejor necesita hace`)
	askedSubject  = wordsOf(`one ones guy guys person wife husband man woman people somebody someone anybody friend
		son roofer`)
	tellingVerbs = wordsOf(`see can could have got get said told sent call called would wrote put asked described`)
	compareVerbs = wordsOf(`trae traen viene vienen incluye incluyen aguanta aguantan dura duran sirve lleva resiste`)
	personNouns  = wordsOf(`guy wife husband man woman friend son daughter roofer contractor neighbor brother dad mom
		handyman owner boss one partner tenant landlord inspector deacon pastor janitor custodian carpenter super
		nephew niece cousin law uncle aunt father mother sister grandson builder`)
	notInverted     = wordsOf(`know see on about from for with like of is exactly up than tell said`)
	wellEnough      = wordsOf(`ok okay right enough normal fine correct possible good bad alright`)
	helpedVerbs     = wordsOf(`had have having let made make got help helped watched saw`)
	beforeNoRequest = wordsOf(`will can ill could would lets gonna cant dont didnt wont must should please i we he
		she they you just what how where when why which who so as all that than if like to and not neither nor or
		whatever because usually always never really normally still`)
)

// requests finds what is asked for outside a topic.
func (r *reader) requests() {
	question := -1
	for n := range r.talk {
		h := &r.talk[n]
		if h.is("req", "none") {
			continue
		}
		for _, s := range h.senses {
			if s.kind != "req" || s.value == "none" {
				continue
			}
			if r.requestStands(h, s.value) {
				if s.value == "question" {
					question = n
					continue
				}
				r.request(Request(s.value))
			}
		}
	}
	if i := r.moneyAsked(); i >= 0 {
		r.request(RequestPrice)
		if question >= 0 && r.sentenceFirst(i) == r.sentenceFirst(r.talk[question].first) {
			question = -1
		}
	}
	if question >= 0 && !r.answeredByOther(question) {
		r.request(RequestQuestion)
		r.out.Trade = r.ofTrade(&r.talk[question])
	}
	r.personWanted()
	r.howAsked()
	r.bareQuestion()
	r.askedBeside()
	r.out.UsualAsked = r.asksForUsual()
	r.openHole()
	if r.known(fitcheck.TopicProblem) && r.struck() {
		r.request(RequestUrgent)
	}
	if slices.Contains(r.out.Requests, RequestUrgent) && r.known(fitcheck.TopicProblem) {
		// a cry, no wish to be told what this is
		r.out.Requests = slices.DeleteFunc(r.out.Requests, func(q Request) bool { return q == RequestHelp })
	}
	if r.neverMind() {
		r.request(RequestUndo)
	}
	r.meantBy()
	if slices.Contains(r.out.Requests, RequestHowTo) { // "what do you mean, how do I measure it?"
		r.out.Requests = slices.DeleteFunc(r.out.Requests, func(q Request) bool { return q == RequestAgain })
	}
}

// moneyAsked is where a sum is asked for, -1 where none is: "36 x 36 plastic, $?", "is it under 200 bucks", "are they like $300".
func (r *reader) moneyAsked() int {
	for i := range r.toks {
		if r.markAt(i, '$') && r.markAt(i+1, '?') ||
			r.markAt(i, '$') && r.markAt(i+1, '$') && r.wordAt(i-1, "the", "lmk", "what", "whats", "how", "many", "much", "your", "me") {
			return i // "lmk the $$"
		}
		if r.wordAt(i, "money") && r.wordAt(i-1, "less", "more") && r.markAt(r.sentenceLast(i), '?') {
			return i // "is the dome by itself a lot less money?"
		}
		if r.wordAt(i, "bucks", "dollars", "dolares", "grand") && i > 0 && r.toks[i-1].kind == numToken ||
			r.markAt(i, '$') && i+1 < len(r.toks) && r.toks[i+1].kind == numToken {
			first, last := r.sentence(i)
			if r.wordAt(first, "is", "are", "does", "do", "will", "would", "could") &&
				r.wordsIn(first+1, first+2, "it", "they", "this", "that", "these", "those", "one", "a") ||
				r.yesNoQuestion(i) && r.anyOf(first, i, beforeMoney) ||
				r.markAt(last, '?') && i-first < 5 {
				return i
			}
		}
	}
	return -1
}

// requestStands weeds out words that look like a request.
func (r *reader) requestStands(h *hit, what string) bool {
	if r.toks[h.first].used || h.first == h.last && r.inName(h.first) || r.saidSo(h, Request(what)) {
		return false
	}
	if h.first == h.last && r.wordAt(h.first-1, "mr", "mrs", "ms", "miss", "senor", "senora") ||
		h.first == h.last && r.markAt(h.first-1, '.') && r.wordAt(h.first-2, "mr", "mrs", "ms") {
		return false // "Mr. Price told me to text"
	}
	if i := r.sentenceFirst(h.first); Request(what) == RequestUrgent &&
		(r.wordAt(i, "is") && r.wordAt(i+1, "it", "this", "that") && i+1 < h.first ||
			r.wordAt(i, "es") && r.markAt(r.sentenceLast(h.first), '?')) {
		return false // "is it urgent to replace it?"
	}
	if Request(what) == RequestPerson && r.callPromised(h) {
		return false
	}
	switch Request(what) {
	case RequestHelp:
		if r.wordAt(h.first, "info") {
			return r.whole(h)
		}
		return !r.negated(h.first) && (r.whole(h) || h.first == 0 || r.softBreak(h.first-1) || r.sentenceEnd(h.first-1)) &&
			(h.last+1 >= len(r.toks) || r.toks[h.last+1].kind == markToken)
	case RequestUndo:
		return r.undoStands(h)
	case RequestPerson:
		if r.wordAt(h.last, "me") &&
			r.wordAt(h.first-1, "they", "people", "folks", "friends", "everybody", "everyone", "guys", "kids") {
			return false // "they call me Big Jim"
		}
		if r.known("name") && h.last+1 < len(r.toks) && r.toks[h.last+1].used && r.toks[h.last+1].kind != phoneToken &&
			r.wordAt(h.last, "me") {
			return false // "call me Sal"
		}
		if next := h.last + 1; r.asked(fitcheck.TopicName) && r.wordAt(h.last, "me") && next < len(r.toks) &&
			r.toks[next].kind == wordToken && !r.among(next, afterRequest) {
			return false // "call me whatever"
		}
		if from, to := r.sentence(h.first); r.wordAt(h.last, "owner", "boss", "manager") &&
			r.wordsIn(from, h.first, "have", "need", "got", "gotta", "let", "must") && r.wordsIn(h.last, to+1, "first", "before") {
			return false // "I have to talk to the owner first"
		}
		return !r.negated(h.first) && !r.offersPhone(h)
	case RequestStop:
		// "wrong number I typed, 25 1/2"; who is sorry wrote here by mistake
		return r.stopStands(h) &&
			!(r.wordsIn(h.first, h.last+1, "wrong", "equivocado", "equivoque") &&
				(len(r.out.Facts)+len(r.out.Unclear) > 0 || r.wordsIn(0, len(r.toks), "sorry", "perdon", "disculpe", "oops")))
	case RequestUrgent:
		return !r.negated(h.first)
	case RequestAgain:
		if r.asTold(h) {
			return false
		}
		if r.wordAt(h.last, "it", "that") && r.among(h.last+1, verbParticles) {
			return false // "can't get it off"
		}
		if r.wordsIn(h.first, h.last+1, "send", "resend", "text") &&
			r.wordAt(h.first-1, "ill", "will", "i", "me", "we", "gonna", "to", "well") {
			return false // "I'll resend that"
		}
		if r.wordAt(h.first, "otra", "de") && r.wordAt(h.last, "vez", "nuevo") {
			return r.whole(h) || r.markAt(h.last+1, '?') ||
				h.first == 0 && (r.markAt(h.last+1, ',') || r.wordAt(h.last+1, "por", "porfa", "porfavor")) ||
				r.wordsIn(max(0, h.first-3), h.first, "repite", "repita", "repitame", "dime", "digame", "explica", "explique", "mande",
					"manda") // not "para que no se quiebre otra vez"
		}
		return (h.first != h.last || r.whole(h)) &&
			!(r.wordAt(h.first, "read") && r.wordAt(h.first-1, "have", "ive", "i", "we", "weve")) // "I have read it over"
	case RequestPrice:
		if h.first == h.last && r.wordAt(h.first, "cost", "costs", "estimate", "price", "prices", "expensive", "quote") {
			if from, to := r.sentence(h.first); r.wordAt(h.first, "quote", "estimate") &&
				r.wordAt(h.first-1, "the", "your", "that", "this") && r.wordsIn(from, to+1, "sent", "cancel", "got", "received", "emailed") {
				return false // "you sent the quote to the wrong email"
			}
			if r.wordAt(h.last+1, "a") && r.wordAt(h.last+2, "fortune", "lot", "bundle", "arm", "ton", "pile", "mint") &&
				!r.markAt(r.sentenceLast(h.last), '?') {
				return false // "electric heat costs a fortune here"
			}
			return !r.wordAt(h.first-1, "my", "best", "full", "low") && !r.negated(h.first) &&
				!(r.wordAt(h.first, "price") && r.givenAt(h.first-1))
		}
	case RequestQuestion:
		if r.wordAt(h.first, "cant", "cannot", "wont", "couldnt") && !r.markAt(r.sentenceLast(h.last), '?') {
			return false // "can't do that"
		}
		if r.asked(fitcheck.TopicConfirm) && r.wordAt(h.first, "assume", "hope", "guess", "suppose", "believe") {
			return false // "I guess that's right"
		}
		if r.changeBehind(r.sentenceFirst(h.first), r.sentenceLast(h.last)) {
			return false // "could I get it in white though?": done, with the list shown again
		}
		if r.known("want") && r.wordsIn(h.first, min(h.last+3, len(r.toks)), "buy", "order", "get", "purchase", "comprar") &&
			r.wordAt(h.first, "can", "could", "may") {
			return false // "can I buy the dome by itself?"
		}
		if len(r.out.Facts) > 0 && r.wordAt(h.first, "can", "could", "may") &&
			r.wordsIn(h.last+1, min(h.last+5, len(r.toks)), "change", "switch", "back") && r.wishesOf(r.sentenceLast(h.last)+1) {
			return false // "can we go back and change the color? I'd like white"
		}
		if r.wordAt(h.first, "who") && r.wordAt(h.last, "is") && h.first > 0 && !r.sentenceEnd(h.first-1) &&
			!r.markAt(r.sentenceLast(h.last), '?') {
			return false // "my mother, who is 91"
		}
		return r.asks(h)
	}
	return true
}

// wishesOf: the sentence from the token on says what is wanted.
func (r *reader) wishesOf(i int) bool {
	return i < len(r.toks) && r.wordsIn(i, min(i+4, len(r.toks)), "id", "like", "want", "make", "need", "prefer", "quiero", "should")
}

// offersPhone: "call me at 218-555-0133 if that's easier": a way to be reached, and no wish
// to leave the talk.
func (r *reader) offersPhone(h *hit) bool {
	_, to := r.sentence(h.first)
	for i := h.last + 1; i <= to; i++ {
		if r.toks[i].kind == phoneToken {
			return r.wordsIn(i+1, to+1, "if", "si") && r.anyOf(i+1, to+1, phoneReasons)
		}
	}
	return false
}

// inName: the word is one of the name that the message tells: "It's Price. Janet Price."
func (r *reader) inName(i int) bool {
	for k := range r.toks {
		if k != i && r.toks[k].named && r.toks[k].text == r.toks[i].text && r.known(fitcheck.TopicName) {
			return true
		}
	}
	return false
}

// whole says whether the phrase is all that the message says, but for signs and small talk.
func (r *reader) whole(h *hit) bool {
	for i := range r.toks {
		if i >= h.first && i <= h.last || r.toks[i].kind == markToken ||
			r.wordAt(i, "please", "sorry", "pls", "um", "uh", "ok", "wait", "por", "favor") {
			continue
		}
		return false
	}
	return true
}

// asks: the words open a clause, or the sentence ends with a question mark.
func (r *reader) asks(h *hit) bool {
	first, last := r.sentence(h.first)
	if r.wordAt(h.first, "is", "are") && r.wordAt(h.first+1, "my", "mine", "our", "ours") && !r.markAt(last, '?') {
		return false // "is my house, only one", as some leave out the "it"
	}
	if !r.markAt(last, '?') && (r.toldWhere(h) || r.didOnly(h)) {
		return false
	}
	if r.wordAt(h.first, "did") && r.wordAt(h.first-1, "whoever", "who", "they", "he", "she") && !r.markAt(last, '?') {
		return false // "whoever did it used a whole tube"
	}
	if r.wordAt(h.first, "did") && r.wordAt(h.last+1, "off", "from", "with", "by", "at", "myself", "twice", "inside") &&
		!r.markAt(last, '?') {
		return false // "did it off the step ladder"
	}
	if r.markAt(last, '?') {
		return true
	}
	if r.wordAt(h.first, "dont", "not", "never", "no") && r.wordsIn(h.first, h.last, "what") &&
		r.wordAt(h.first-1, "i", "im", "we", "have", "ive", "still", "really") {
		return true // "I don't know what a retaining frame is"
	}
	if r.wordAt(first, "what") && r.wordAt(first+1, "i", "we", "you", "he", "she") && h.first > first+2 &&
		r.wordAt(h.first, "is", "are") ||
		r.wordAt(h.first, "does") && r.wordAt(h.first+1, "i", "you", "we", "they") {
		return false // "what I see is plastic in the middle", "the plastic does I mean"
	}
	if r.compares(h) {
		return false // "el policarbonato es más fuerte": said, not asked
	}
	if r.wordAt(h.first, "which", "where", "when", "who") && h.first > first && r.markAt(h.first-1, ',') &&
		!(r.wordAt(h.first, "who") && !r.personAt(h.first-2)) &&
		!(r.wordAt(h.first+1, "do", "does", "did", "can", "should", "would") &&
			r.wordAt(h.first+2, "i", "we", "it", "you", "they", "u")) {
		return false // "the old one, which was clear"
	}
	if r.wordAt(h.last, "where", "when", "donde", "cuando") && h.last > 0 &&
		r.wordAt(h.last+1, "the", "it", "they", "el", "la", "los", "las") {
		return false // "and where the bubble starts to rise it's 23 by 47"
	}
	if r.wordAt(h.first, "donde") && r.wordAt(h.last+1, "empieza", "comienza", "termina", "arranca", "nace", "inicia") ||
		r.wordAt(h.first, "donde") && r.wordsIn(h.first, h.last+1, "empieza", "comienza", "termina", "arranca", "nace", "inicia") {
		return false // "donde empieza la bolita son 21 por 45"
	}
	if i := r.whereOf(h); i > first+1 && !r.softBreak(i-1) && r.toks[i-1].kind == wordToken &&
		!r.wordAt(i-1, "de", "a", "por", "hasta", "desde", "se", "y", "pero", "pues") {
		return false // "el salón donde dan clases a los niños"
	}
	if r.wordAt(h.first, "who", "whos") && h.first > first && r.among(h.first-1, askedSubject) {
		return false // "my wife is the one who will be home"
	}
	if r.wordAt(h.first, "would") && r.wordAt(h.first+1, "like", "love", "prefer", "appreciate", "need") ||
		r.wordAt(h.first, "did", "do", "does") && r.wordAt(h.first-1, "also", "then") && h.first-2 >= first &&
			r.toks[h.first-2].kind == wordToken {
		return false // "I make sculptures and would like a round dome", "he also did the diagonals"
	}
	if r.wordAt(h.first, "is", "are") && r.markAt(h.first-1, ')') {
		return false // "30 x 46 (inches) is the wood to wood"
	}
	if r.wordAt(h.first, "that", "thats") {
		return false // "yes that all looks right"
	}
	if r.wordAt(h.first, "what") && r.wordAt(h.last, "you", "u") && r.among(h.last+1, tellingVerbs) {
		return false // "what u can see between the strips is 21 by 45"
	}
	if r.wordAt(h.first, "viene", "vienen", "hay", "tiene", "tienen") && r.wordAt(h.first-1, "ya", "que") {
		return false // "ya viene la lluvia"
	}
	if r.wordAt(h.first, "para") && r.wordAt(h.last, "que") &&
		!(h.first == first &&
			r.wordAt(h.last+1, "sirve", "es", "quiere", "quieren", "necesita", "necesitan", "ocupa", "ocupan", "piden")) {
		return false // "bronce, para que no entre tanto sol"
	}
	if r.wordAt(h.first, "sirve") && r.wordAt(h.first-1, "si", "le", "les") && r.wordsIn(max(0, h.first-3), h.first, "por", "si") {
		return false // "es de un remolque, por si sirve el dato"
	}
	if r.wordAt(h.first, "sirve", "puedo", "puede", "pueden", "sirven", "podemos") && r.wordAt(h.first-1, "no") {
		return false
	}
	if r.wordAt(h.first, "viene", "vienen", "sirve", "sirven", "trae", "traen") && h.first-1 > first &&
		(r.markAt(h.first-1, ',') && !r.talkEnds(h.first-2) || r.wordAt(h.first-1, "y", "que")) ||
		r.wordAt(h.first, "venden") && h.first-1 > first && r.wordAt(h.first-1, "que") {
		return false // "es de fibra de vidrio y viene pegado", "el que venden en todos lados"
	}
	if r.wordAt(h.first, "how") && r.wordAt(h.first+1, "would", "do", "can", "could") && r.wordAt(h.first+2, "i", "we", "you") &&
		r.wordAt(h.first-1, "idea", "clue") {
		return true // "no clue how would I tell"
	}
	if r.wordAt(h.first-1, "sure", "know", "idea", "clue", "tell", "decide", "remember", "se") &&
		r.wordsIn(max(first, h.first-4), h.first, "not", "dont", "no", "cant", "couldnt", "didnt") {
		return false // "not sure what's best"
	}
	if r.inverted(h.first) || r.wantsToKnow(h.first) {
		return true
	}
	return h.first == 0 || r.softBreak(h.first-1) || r.sentenceEnd(h.first-1) || r.talkEnds(h.first-1) ||
		r.wordAt(h.first-1, "so", "but", "and", "ok", "well", "um", "question", "ask", "wait") ||
		r.wordAt(h.first-1, "to") && !r.wordAt(h.first, "do", "does", "did", "be", "have")
}

// compares: the words say what one thing is like, which only a question mark makes a
// question: "el policarbonato es más fuerte", "el domo trae tornillos".
func (r *reader) compares(h *hit) bool {
	return r.among(h.last, compareVerbs) && h.last > h.first && !r.wordAt(h.first, "cuanto") ||
		r.wordAt(h.last, "mas", "mejor", "menos", "mejores") || r.wordAt(h.last-1, "mas", "menos")
}

// whereOf is the token of a "donde" at the words or right before them, -1 without one.
func (r *reader) whereOf(h *hit) int {
	switch {
	case r.wordAt(h.first, "donde"):
		return h.first
	case r.wordAt(h.first-1, "donde"):
		return h.first - 1
	}
	return -1
}

// personAt: the word tells of somebody, or is a name.
func (r *reader) personAt(i int) bool {
	return i >= 0 && (r.toks[i].named || r.givenAt(i) || r.among(i, personNouns))
}

// inverted: a verb before its subject asks wherever it stands: "the tag says 2852 does
// that help".
func (r *reader) inverted(i int) bool {
	if i > 0 && r.wordAt(i, "whats", "wheres", "whens", "hows", "whos") && !r.among(i-1, notInverted) {
		return true // "I'm on the roof what's the measurement you need"
	}
	if i > 1 && r.wordAt(i, "is") && r.wordAt(i+1, "that", "this", "it") && r.among(i+2, wellEnough) && i+3 >= len(r.toks) {
		return true
	}
	if r.wordAt(i, "do") && r.anyOf(max(0, i-5), i, helpedVerbs) {
		return false // "I had my grandson do it"
	}
	return i > 1 && r.wordAt(i, "do", "does", "did", "can", "could", "should") &&
		r.wordAt(i+1, "i", "we", "you", "u", "they", "it", "that", "this", "yall") &&
		!r.among(i-1, beforeNoRequest)
}

// talkEnds: a greeting, a yes or another request ends at the token.
func (r *reader) talkEnds(i int) bool {
	for n := range r.talk {
		h := &r.talk[n]
		if h.last == i && (h.has1("small") || h.is("say", "yes") || h.is("say", "no") || h.has1("req")) {
			return true
		}
	}
	return false
}

// answeredByOther: the question is the same as a request that has a name of its own.
func (r *reader) answeredByOther(n int) bool {
	h := &r.talk[n]
	if r.softBreak(h.first) {
		return false // "what's your price and how long does it take"
	}
	first, last := r.sentence(h.first)
	talk := within(r.talk, first, last)
	for k := range talk {
		o := &talk[k]
		if o.first == h.first {
			continue
		}
		for _, s := range o.senses {
			if s.kind == "req" && s.value != "none" && s.value != "question" && slices.Contains(r.out.Requests, Request(s.value)) &&
				!r.softBetween(min(h.last, o.last), max(h.first, o.first)) {
				return true
			}
		}
	}
	return false
}
