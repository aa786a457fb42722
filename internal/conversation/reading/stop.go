package reading

// Where words like "stop texting me" ask for the end of all messages, and where they only ask
// for something else, at another time or in another way.

var (
	typedVerbs = wordsOf(`typed gave put wrote sent entered said told di puse`)
	notAStop   = wordsOf(`in the a tonight so before until till while during about with when after antes en la el los
		las hasta cuando tan size question por price prices de`)
	messageNouns = wordsOf(`text texts texting email mail mensaje mensajes texto textos correo`)
)

// stopStands: what follows does not narrow the words, and no other way is asked for in their
// place: "don't text me at night", "don't call me, texting is fine" ask for less.
func (r *reader) stopStands(h *hit) bool {
	next := h.last + 1
	if r.out.Dropped > 0 && r.wordAt(h.last, "quiero") {
		return false // "los del pasillo ya no los quiero"
	}
	if r.wordsIn(h.first, h.last+1, "wrong", "equivocado", "equivoque") {
		return !r.wordAt(next, "of", "on", "for", "in", "is", "de", "en") &&
			(!r.anyOf(max(0, h.first-4), h.first, typedVerbs) && !r.wordAt(h.first-1, "the", "a") ||
				r.wordsIn(max(0, h.first-4), h.first, "got", "you", "have", "tiene", "tienen"))
	}
	switch {
	case r.wordAt(next, "a", "en") && r.wordAt(next+1, "este", "mi", "ese") && r.wordAt(next+2, "numero", "telefono", "celular") &&
		!r.wordsIn(next+3, len(r.toks), "escribame", "mejor", "llame", "llameme", "marqueme", "correo", "al"):
		return true // "no me escriban a este número"
	case r.wordAt(next, "por") && r.wordAt(next+1, "favor"):
	case r.wordAt(next, "with") &&
		r.wordsIn(next+1, min(next+5, len(r.toks)), "texts", "text", "txts", "messages", "msgs", "texting", "spam", "crap", "nonsense"):
		return true // "quit bugging me with these texts"
	case r.wordAt(next, "at"):
		return r.wordAt(next+1, "all", "once")
	case r.among(next, notAStop):
		return false
	case r.wordAt(next, "this") && next+1 < len(r.toks) && r.toks[next+1].kind == wordToken:
		return r.wordAt(next+1, "number", "list", "please", "anymore", "is", "its", "again", "phone")
	}
	oneWay := r.wordsIn(h.first, h.last+1, "call", "email", "llamen", "llame", "llamar") &&
		!r.wordsIn(h.first, h.last+1, "text", "message", "contact", "write")
	for i := range r.toks {
		t := &r.toks[i]
		switch {
		case i >= h.first && i <= h.last:
		case t.kind == phoneToken && r.wordsIn(0, len(r.toks), "use", "try", "usen", "instead"), r.wordAt(i, "email") &&
			r.wordAt(i+1, "me", "instead"):
			return false // another way is asked for
		case oneWay && r.among(i, messageNouns):
			return false
		}
	}
	return true
}
