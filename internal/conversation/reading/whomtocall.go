package reading

// Whom the shop should call when the time comes, and whom not: "don't call my dad, text me", "please call me
// at 218-555-0143, not him". That asks for nobody now.

var (
	reachVerbs = wordsOf(`call calling phone ring text texting contact reach email message bother disturb llame llamen
		llamar llamarle llamarme llamenle llamele marque marquen marcar marcarle mande manden escriba escriban hable hablen
		moleste molesten contacte contacten`)
	reachMe = wordsOf(`llameme llamenme llamame marqueme marquenme escribame escribanme mandeme mandenme contacteme
		contactenme textme`)
	notMe     = wordsOf(`him her them he she el ella ellos`)
	atOnce    = wordsOf(`now asap today immediately tonight ahora hoy ahorita urgent urgente`)
	anyoneFor = wordsOf(`someone somebody anyone anybody person human rep manager alguien persona`)
)

// whomToCall says whether the message names whom not to call.
func (r *reader) whomToCall() bool {
	if !r.anyOf(0, len(r.toks), reachVerbs) && !r.anyOf(0, len(r.toks), reachMe) || r.anyOf(0, len(r.toks), atOnce) {
		return false
	}
	for i := range r.toks {
		other := r.among(i, notMe) || r.otherPerson(i) && r.among(i-1, ownWords)
		if other && (r.notThatOne(i) || r.notToCall(i)) {
			return true
		}
	}
	return false
}

// notThatOne: "call me, not my dad", "instead of him", "y no a mi esposo".
func (r *reader) notThatOne(i int) bool {
	k := i - 1
	for r.among(k, ownWords) || r.wordAt(k, "a", "to", "with", "call", "calling") {
		k--
	}
	ends := i+1 >= len(r.toks) ||
		r.toks[i+1].kind == markToken ||
		r.among(i+1, andOrWords) ||
		r.wordAt(i+1, "please", "because", "porque", "por")
	return ends && (r.wordAt(k, "not", "no") || r.wordAt(k, "of", "de") && r.wordAt(k-1, "instead", "vez") || r.wordAt(k, "than"))
}

// notToCall: "don't have anyone call him", "no le llamen a mi papá".
func (r *reader) notToCall(i int) bool {
	k := i - 1
	for r.among(k, ownWords) || r.wordAt(k, "a", "al", "to") {
		k--
	}
	from := r.clauseStart(i)
	return r.among(k, reachVerbs) && r.anyOf(from, k, negWords) && !r.wordsIn(from, k, "i", "we", "cant", "cannot", "couldnt")
}

// callsMe: the request is that the writer be called, by nobody in particular.
func (r *reader) callsMe(h *hit) bool {
	me := r.wordsIn(h.first, h.last+2, "me", "us") || r.anyOf(h.first, h.last+1, reachMe)
	return me && !r.anyOf(h.first, h.last+1, anyoneFor)
}
