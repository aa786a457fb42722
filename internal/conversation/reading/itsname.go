package reading

// itsName: "hey its Manny the handyman": after a greeting, "it's" and a given name, with
// who that is.
func (r *reader) itsName() bool {
	for i := range r.toks {
		if !r.wordAt(i, "its", "it") || !r.greetedBefore(i) {
			continue
		}
		at := i + 1
		if r.wordAt(at, "is") {
			at++
		}
		if at >= len(r.toks) || r.toks[at].kind != wordToken || r.toks[at].word == nil || !r.toks[at].word.given || r.soft(at) {
			continue
		}
		first, last, ok := r.nameFrom(at, true)
		if ok && (i > 0 && r.addressed(i-1) || r.wordAt(last+1, "the", "from", "with", "at", "over", "down", "here", "again", "calling", "w") || last+1 < len(r.toks) && r.toks[last+1].kind == markToken && (i > 0 || last > first && r.markAt(last+1, ','))) {
			r.nameFact(first, last)
			return true
		}
	}
	return false
}

// greetedBefore: nothing but a greeting stands before the token.
func (r *reader) greetedBefore(i int) bool {
	for k := range i {
		if r.toks[k].kind == markToken || r.smallTalkAt(k) > k || r.talkBefore(k) || r.addressed(k) || r.wordAt(k, "there", "again", "bud", "buddy", "guys", "folks", "man", "sir", "maam", "friend", "yall", "morning", "afternoon", "evening") {
			continue
		}
		return false
	}
	return true
}
