package reading

// Kinds that a message called by a word of its own, which later messages know them by: "the chimney
// one is clear", "ladder: 2 layers", after "the one by the chimney is 25 x 25, the one by the ladder …".

// callOwn notes the word that tells a kind apart in a place where the message names it by no room
// and no look.
func (r *reader) callOwn(ref *unitRef) {
	unit := ref.units[0]
	if r.out.Rooms[unit] != "" || r.Input.Rooms[unit] != "" {
		return
	}
	for i := ref.first; i <= ref.last; i++ {
		letter := r.letter(i) && ref.last-ref.first < 2 && (i > ref.first || i == ref.last)
		if !letter &&
			(!r.tellsApart(i) || r.by(i) || covers(r.intros, i) || covers(r.choices, i) ||
				whereWords.has(r.toks[i].text) || r.wordAt(i, "side", "roof", "de", "del")) {
			continue
		}
		if r.out.Rooms == nil {
			r.out.Rooms = map[int]string{}
		}
		r.out.Rooms[unit] = r.toks[i].text
		return
	}
}

// kindsWord is the one kind that an earlier message called by the word at a token, which is no room
// and no look; 0 for none.
func (r *reader) kindsWord(i int) int {
	if i < 0 || i >= len(r.toks) || r.toks[i].kind != wordToken || lookOf[r.toks[i].text] != "" {
		return 0
	}
	found := 0
	for unit, name := range r.Input.Rooms {
		if name != r.toks[i].text {
			continue
		}
		if found > 0 {
			return 0 // of several
		}
		found = unit
	}
	if found > 0 && r.letter(i) && !r.letterNames(i) {
		return 0
	}
	return found
}

// letter: one of the letters by which people number skylights.
func (r *reader) letter(i int) bool {
	return r.wordAt(i, "a", "b", "c", "d")
}

// letterNames: a letter stands for a kind, and is no article: "A: clear", "B white",
// "clear on A".
func (r *reader) letterNames(i int) bool {
	next := i + 1
	switch {
	case r.wordAt(i-1, "skylight", "dome", "unit", "tragaluz", "domo"):
		return true
	case next >= len(r.toks) || r.toks[next].kind == markToken && !r.markAt(next, '\''):
		return true
	case r.wordAt(next, "is", "are", "es", "gets", "has", "wants", "should", "and", "y"):
		return true
	}
	opens := r.clauseStart(i) == i || r.wordAt(i-1, "and", "y", "but")
	return opens &&
		(r.choiceBegins(next) || r.pairAt(next) || r.wholeSaid(next) > 0 && r.wordAt(next+1, "layer", "layers", "capa", "capas"))
}

// kindAfterIn: "1 layer in the flat one, 2 in the pyramid", "2 in A": no inches.
func (r *reader) kindAfterIn(in int) bool {
	i := in + 1
	if r.wordAt(i, "the", "my", "our") {
		i++
	}
	return r.Units > 1 && i < len(r.toks) && r.toks[i].kind == wordToken &&
		(r.unitOfRoom(i) > 0 || r.kindsWord(i) > 0 || r.lookKnown(i) > 0 || i > in+1 && r.Names[r.toks[i].text] > 0)
}
