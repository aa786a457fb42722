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
	personNouns   = wordsOf(`guy wife husband man woman friend son daughter roofer contractor neighbor brother dad mom
		handyman owner boss one partner tenant landlord inspector deacon pastor janitor custodian carpenter super
		nephew niece cousin law uncle aunt father mother sister grandson builder`)
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
	r.asksForAnother()
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
	r.out.WhomToCall = r.whomToCall()
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
	if Request(what) == RequestPerson && (r.callPromised(h) || r.callsMe(h) && r.whomToCall()) {
		return false
	}
	if Request(what) == RequestPrice && r.whenQuoted(h) {
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

// personAt: the word tells of somebody, or is a name.
func (r *reader) personAt(i int) bool {
	return i >= 0 && (r.toks[i].named || r.givenAt(i) || r.among(i, personNouns))
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
