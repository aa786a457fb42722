package reading

// A word that answers in plain sight, though words that nobody understands go on after it:
// "three please were in northern minnesota", "same as whats there now which is two".

var (
	plainLeads  = wordsOf(`the a an just only please por favor un una el la de plain good old`)
	answerLeads = wordsOf(`want do get go going with its is prefer say make it lets like take be use order choose
		pick so then yes yeah ok okay hi well um uh are mine has have had got counted count see saw found at get
		quiero queremos tiene veo conte prefiero mejor sea pongale ponle pongame es son con entonces pues si deme jsut
		jus`)
	answerEnds       = wordsOf(`one ones kind layer layers already now again too right nomas nada mas also today`)
	answerConditions = wordsOf(`like as when on if that which with per unless also not over solamente cuando pa para
		por si que to`)
	answerThanks = wordsOf(`please pls plz thanks thx thank you por favor gracias then sir maam ma'am definitely for
		sure entonces`)
	answerReasons = wordsOf(`its because cause bc cuz since but so porque pues pero im were`)
	afterAnswer   = wordsOf(`i im ive id ill we were weve its it theres thats they theyre this my our the he she but
		so since because cause bc cuz same when already now cuando nomas nada porque pues ya aqui aca hace es esta
		como pero el la mi nos`)
)

// plainAnswer: the answer opens its clause or is led up to, and what follows it is another
// statement.
func (r *reader) plainAnswer(h *hit) bool {
	one := h.first == h.last && r.wordAt(h.first, "one", "uno", "una", "1")
	return r.leadsTo(h.first-1) && r.endsAnswer(h.last+1, one)
}

// leadsTo: the words up to the token lead to an answer, or none stand there.
func (r *reader) leadsTo(i int) bool {
	for n := 0; n < 3 && r.among(i, plainLeads); n++ {
		i--
	}
	return i < 0 || r.toks[i].kind == markToken || r.among(i, answerLeads)
}

// endsAnswer: the message ends at the token, or a sign or a statement of its own follows.
func (r *reader) endsAnswer(i int, one bool) bool {
	if r.wordAt(i-1, "double", "single", "triple", "doble", "sencillo", "sencilla", "doubles", "singles") {
		for r.among(i, answerEnds) {
			i++
		}
		if r.among(i, answerConditions) {
			return true // "a double one like you'd put on a house"
		}
	}
	asked := false
	for r.among(i, answerThanks) {
		i, asked = i+1, true
	}
	if i >= len(r.toks) || r.toks[i].kind == markToken {
		return true
	}
	if one && !asked {
		return r.among(i, answerReasons)
	}
	return r.among(i, afterAnswer)
}
