package reading

// Where words like "stop texting me" ask for the end of all messages, and where they only ask
// for something else, at another time or in another way.

// stopStands: nothing after the words narrows them, and no other way is named: "don't text me
// at night", "no me manden la cotización por correo, por texto está bien" ask for less.
func (r *reader) stopStands(h *hit) bool {
	next := r.afterWhom(h.last + 1)
	if next > h.last+1 && r.wordAt(next, "she", "he", "they", "shes", "hes", "thats", "who", "its", "or", "we", "did", "for") {
		return true
	}
	if next < len(r.toks) && r.toks[next].kind == wordToken && !r.wordAt(next, "anymore", "any", "again", "ever", "please", "pls", "now", "and", "i", "im", "you", "thanks", "thank", "mas", "ya", "por", "gracias", "at", "all", "stop", "this", "god", "y", "or", "thx", "never", "we", "sorry", "bot", "man", "already") {
		return false
	}
	if r.wordAt(next, "at") && !r.wordAt(next+1, "all", "once") || r.wordAt(next, "por") && !r.wordAt(next+1, "favor") || r.wordAt(next, "this") && next+1 < len(r.toks) && r.toks[next+1].kind == wordToken && !r.wordAt(next+1, "number", "please", "list", "anymore") {
		return false
	}
	for i := range r.toks {
		switch t := &r.toks[i]; {
		case t.kind == phoneToken || t.kind == mailToken:
			return false
		case i >= h.first && i <= h.last:
		case r.wordAt(i, "instead", "night", "tonight", "early", "before", "noon", "until", "rather", "texting") && !r.wordAt(i-1, "stop", "quit", "me"):
			return false
		case r.wordAt(i, "text", "email", "texts") && r.wordsIn(h.first, h.last+1, "call", "email", "llamen", "llame"):
			return false
		}
	}
	if r.wordsIn(h.first, h.last+1, "call", "email", "llamen", "llame") && !r.wordsIn(h.first, h.last+1, "text", "message", "contact", "write", "texting") {
		return false // of one way only
	}
	return !r.wordsIn(h.first, h.last+1, "wrong", "equivocado") || !r.wordsIn(max(0, h.first-4), h.first, "the", "typed", "gave", "put", "wrote", "sent", "entered", "said", "have", "un", "el", "di", "puse") || r.wordsIn(max(0, h.first-3), h.first, "got", "you", "tiene")
}

// afterWhom skips who or what is no more to be texted: "stop texting my mother she is 91",
// "stop texting this number im not interested".
func (r *reader) afterWhom(i int) int {
	k := i
	for r.wordAt(k, "texting", "messaging", "contacting") || r.wordAt(k, "this", "my", "our") && r.wordAt(k+1, "number", "phone", "cell", "line", "mother", "mom", "mama", "wife", "husband", "dad", "father", "grandma", "grandmother", "grandpa", "son", "daughter", "sister", "brother", "parents", "family") ||
		k > 0 && r.wordAt(k, "number", "phone", "cell", "line", "mother", "mom", "mama", "wife", "husband", "dad", "father", "grandma", "grandmother", "grandpa", "son", "daughter", "sister", "brother", "parents", "family") && r.wordAt(k-1, "this", "my", "our") {
		k++
	}
	return k
}
