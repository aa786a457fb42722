package reading

// nameBesideZIP: "dome cracked 55805 joe park house", "leaking skylight jen park 80301": in a hurried line
// without signs, a given name and one more word right beside the ZIP code, between what tells something
// else. The other word may be an ordinary one there.
func (r *reader) nameBesideZIP() bool {
	for i := range r.toks {
		if t := &r.toks[i]; t.kind != numToken || !t.used || len(t.text) != 5 {
			continue
		}
		ends := i+3 == len(r.toks) || r.markAt(i+3, ',') || r.markAt(i+3, '.') || r.tellsElse(i+3)
		if ends && r.hurriedName(i+1) {
			r.nameFact(i+1, i+2)
			return true
		}
		if r.hurriedName(i-2) && (i == 2 || r.toks[i-3].kind == markToken || r.tellsElse(i-3)) {
			r.nameFact(i-2, i-1)
			return true
		}
	}
	return false
}

// hurriedName: a given name that is no other word, and a word that can be a family's.
func (r *reader) hurriedName(i int) bool {
	if i < 0 || i+1 >= len(r.toks) || !r.givenAt(i) || r.toks[i].word.common {
		return false
	}
	return r.hurriedFamily(i+1) && !r.alsoState(i) && !r.addressed(i) && !r.toldOf(i) && !r.artPlace(i)
}

// hurriedFamily: the word can be a family's name, though it may be an ordinary one: "park".
func (r *reader) hurriedFamily(i int) bool {
	t := &r.toks[i]
	if t.kind != wordToken || t.used || len(t.text) <= 2 || afterName.has(t.text) || negWords.has(t.text) {
		return false
	}
	known := t.word != nil && (t.word.filler || t.word.number.kind != notNumber || t.word.unit != noUnit)
	return !known && !r.verbAt(i) && !r.tellsElse(i)
}

// tellsElse: the token is of a phrase that tells of the skylight or its building, or a number.
func (r *reader) tellsElse(i int) bool {
	if i < 0 || i >= len(r.toks) {
		return false
	}
	return r.toks[i].kind == numToken || r.among(i, countNouns) ||
		covers(r.choices, i) || covers(r.styles, i) || covers(r.wants, i)
}
