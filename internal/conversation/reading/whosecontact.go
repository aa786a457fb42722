package reading

// Of several mail addresses or phone numbers, the one that is the writer's and holds: "my old one was
// joe@…, new one is joe2@…", "my wife's is linda@…, mine is joe@…", "rosa@…, no wait, rosa.m@…".

var (
	formerWords  = wordsOf(`old former formerly previous previously was viejo vieja anterior era antes`)
	presentWords = wordsOf(`mine mio mia new nuevo nueva now ahora instead use changed actually sorry perdon digo
		wait oops whoops meant correction current actual better best mejor scratch should`)
	contactVerbs = wordsOf(`is was thats isnt wont doesnt es era esta ya no got belongs`)
	deadContact  = wordsOf(`old dead wrong former gone closed disconnected hacked anymore bounces isnt doesnt wont
		viejo anterior sirve funciona existe equivocado`)
	bestContact = wordsOf(`mine mio mia new nuevo best better right current mejor`)
)

// contactOf is the token of the address or number that counts, -1 where there is none.
func (r *reader) contactOf(k kind) int {
	best, weight, before := -1, 0, 0
	for i := range r.toks {
		if r.toks[i].kind != k {
			continue
		}
		w := r.weighContact(i, before)
		before = i + 1
		if k == phoneToken && r.phoneRefused(i) || w <= formerContact {
			continue
		}
		if best < 0 || w > weight {
			best, weight = i, w
		}
	}
	return best
}

const formerContact = -2

// weighContact weighs what leads from a token to the address and what is said after it.
func (r *reader) weighContact(i, from int) int {
	w := 0
	from = max(from, r.sentenceFirst(i), i-8)
	if r.wordAt(i-1, "not", "no") && !r.wordAt(i-2, "why") ||
		r.wordAt(i-2, "instead", "than") ||
		r.anyOf(from, i, formerWords) && !r.wordsIn(from, i, "now", "new", "ahora", "nuevo") ||
		r.wordAt(i-3, "used") && r.wordAt(i-2, "to") {
		w = formerContact
	}
	if r.anyOf(from, i, presentWords) {
		w++
	}
	if r.personsOwn(from, i) || r.wordAt(i-1, "cc") || r.wordAt(i-2, "cc") {
		w--
	}
	to := i
	for to+1 < len(r.toks) && r.toks[to+1].kind == wordToken && to < i+7 && !r.softBreak(to+1) {
		to++
	}
	switch {
	case !r.among(i+1, contactVerbs):
	case r.anyOf(i+1, to+1, deadContact):
		return formerContact
	case r.anyOf(i+1, to+1, bestContact):
		w++
	case r.personsOwn(i+1, to+1):
		w--
	}
	return w
}

// personsOwn: somebody else's is spoken of between the tokens: "my wife's", "hers", "el de mi esposa".
func (r *reader) personsOwn(from, to int) bool {
	for i := from; i < to; i++ {
		t := &r.toks[i]
		if t.is("his", "hers", "her", "theirs") ||
			t.kind == wordToken && r.otherPerson(i) && (r.wordAt(i-1, "my", "our", "the", "mi") || r.wordAt(i-1, "for", "de")) {
			return true
		}
		if t.kind == wordToken && len(t.text) > 3 && t.text[len(t.text)-1] == 's' && r.wordAt(i-1, "my", "our", "the") &&
			(kin.has(t.text[:len(t.text)-1]) || otherPersons.has(t.text[:len(t.text)-1])) {
			return true
		}
	}
	return false
}
