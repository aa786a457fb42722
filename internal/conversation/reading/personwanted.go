package reading

import "slices"

// A wish for a person, told by its parts: somebody of the shop, and talk with the customer.

var (
	salesPersons = wordsOf(`rep reps representative salesman saleswoman salesperson salesrep associate specialist
		supervisor`)
	anyPersons = wordsOf(`someone somebody anyone anybody person human manager alguien vendedor asesor humano
		encargado gerente`)
	talkNotWanted = wordsOf(`my mi our roofer told said measure if when will already did helped si cuando was dijo`)
	talkVerbs     = wordsOf(`talk speak call phone ring contact reach touch chat hablar platicar llame llamar hable
		marque atienda`)
	askToTalk = wordsOf(`have get let ask need want send please like can could tell que quiero necesito puede podria
		pueden`)
)

// personWanted: "have a sales rep get in touch with me", "is there any body there I can speak to",
// "customer service". It speaks only where no phrase has told of such a wish.
func (r *reader) personWanted() {
	if slices.Contains(r.out.Requests, RequestPerson) {
		return
	}
	for i := range r.toks {
		if !r.shopPerson(i) || r.negated(i) {
			continue
		}
		from, to := r.clauseStart(i), r.clauseEnd(i)
		if r.wordAt(i, "service", "servicio", "atencion") {
			if to-from > 5 || r.wordsIn(from, to+1, "is", "was", "great", "good", "bad", "terrible", "your", "es", "thanks") {
				continue
			}
		} else if !r.talkMeant(i, from, to) {
			continue
		}
		r.request(RequestPerson)
		r.out.Requests = slices.DeleteFunc(r.out.Requests, func(q Request) bool { return q == RequestQuestion && r.oneSentence() })
		return
	}
}

// shopPerson: the word is somebody who would answer for the shop.
func (r *reader) shopPerson(i int) bool {
	switch {
	case r.among(i, salesPersons):
		return true
	case r.among(i, anyPersons):
		return true
	case r.wordAt(i, "body") && r.wordAt(i-1, "any", "some"):
		return true
	case r.wordAt(i, "service") && r.wordAt(i-1, "customer", "costumer"), r.wordAt(i, "servicio", "atencion") &&
		(r.wordAt(i+1, "al") || r.wordAt(i+1, "a")) && r.wordsIn(i+1, i+4, "cliente", "clientes"):
		return true
	}
	return false
}

// talkMeant: the clause bids that somebody speak with the customer: "have … get in touch with me",
// "is there … I can speak to", "¿hay alguien con quien pueda hablar?".
func (r *reader) talkMeant(i, from, to int) bool {
	if r.anyOf(from, to+1, talkNotWanted) {
		return false
	}
	reach := r.anyOf(i+1, to+1, talkVerbs)
	if !reach {
		return false
	}
	bids := r.anyOf(from, i, askToTalk) && r.wordsIn(i+1, to+1, "me", "us", "hable", "llame", "llamar", "marque", "atienda")
	there := r.wordsIn(from, i, "there", "hay") && r.wordsIn(i+1, to+1, "i", "we", "to", "pueda", "puedo", "podamos", "hablar")
	return bids || there
}

// oneSentence: the message is one sentence, of one question.
func (r *reader) oneSentence() bool {
	marks := 0
	for i := range r.toks {
		marks += number(r.markAt(i, '?'))
	}
	return marks < 2
}

// callPromised: "my roofer said a person from your shop would call": told of, not asked for.
func (r *reader) callPromised(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := from; i < h.first; i++ {
		if r.wordAt(i, "said", "says", "told", "promised", "dijo") && !r.wordAt(i-1, "i", "we", "you") {
			return r.wordsIn(i+1, to+1, "would", "will", "wouldnt", "iba", "llamaria", "going", "gonna") &&
				!r.wordsIn(i+1, to+1, "i", "me", "please", "should")
		}
	}
	return false
}
