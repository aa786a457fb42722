package reading

var (
	afterItsName  = wordsOf(`the from with at over down here again calling w`)
	greetedPeople = wordsOf(`there again bud buddy guys folks man sir maam friend yall morning afternoon evening`)
)

// itsName: "hey its Manny the handyman": after a greeting, "it's" and a given name, with
// who that is.
func (r *reader) itsName() bool {
	for i := range r.toks {
		if !r.wordAt(i, "its", "it") {
			continue
		}
		at := i + 1
		if r.wordAt(at, "is") {
			at++
		}
		if !r.greetedBefore(i) && !r.wholeNameFrom(i, at) {
			continue
		}
		if at >= len(r.toks) || r.toks[at].kind != wordToken || r.toks[at].word == nil || !r.toks[at].word.given || r.soft(at) {
			continue
		}
		first, last, ok := r.nameFrom(at, true)
		if ok &&
			(i > 0 && r.addressed(i-1) || r.among(last+1, afterItsName) ||
				r.wordAt(last+1, "in") && last > first && r.stateBefore(last+3) == "" ||
				last+1 < len(r.toks) && r.toks[last+1].kind == markToken && (i > 0 || last > first && r.markAt(last+1, ','))) {
			r.nameFact(first, last)
			return true
		}
	}
	return false
}

// greetedBefore: nothing but a greeting stands before the token.
func (r *reader) greetedBefore(i int) bool {
	for k := range i {
		if r.toks[k].kind == markToken || r.smallTalkAt(k) > k || r.talkBefore(k) || r.addressed(k) || r.among(k, greetedPeople) {
			continue
		}
		return false
	}
	return true
}

// wholeNameFrom: "I need a dome. It's Carol Dunn in Spokane": a sentence that begins with a
// given name and a family's, and says where.
func (r *reader) wholeNameFrom(i, at int) bool {
	return at+1 < len(r.toks) && r.sentenceFirst(i) == i && r.givenAt(at) && r.surname(at+1) &&
		(at+2 == len(r.toks) || r.wordAt(at+2, "in", "from", "at", "with", "here", "again") || r.sentenceEnd(at+2))
}
