package reading

// Four sides under a letter each: "N 30 1/2, S 30 5/8, E 48 1/4, W 48 1/8".

var (
	compassRooms = wordsOf(`skylight skylights tragaluz tragaluces domes units room kitchen bath hall bedroom`)
	sideOrder    = wordsOf(`one first un left right top bottom front back`)
)

// fourLetters are the sets of which each side has one.
var fourLetters = []map[string]int{
	{"n": 1, "s": 2, "e": 3, "w": 4, "o": 4},
	{"norte": 1, "sur": 2, "este": 3, "oeste": 4},
	{"t": 1, "b": 2, "l": 3, "r": 4},
}

// compassSides calls four lengths sides where each has another letter of one set right before it, or
// each right after it.
func (r *reader) compassSides(qs []quantity) {
	for _, letters := range fourLetters {
		for k := 0; k+4 <= len(qs); k++ {
			if r.lettered(qs[k:k+4], letters, true) || r.lettered(qs[k:k+4], letters, false) {
				return
			}
		}
	}
}

// lettered does so for four lengths, and leaves them as they are where a letter lacks.
func (r *reader) lettered(qs []quantity, letters map[string]int, before bool) bool {
	var at [4]int
	seen := map[int]bool{}
	for k := range qs {
		i := qs[k].last + 1
		if before {
			i = qs[k].first - 1
			for r.markAt(i, ':') || r.markAt(i, '=') || r.markAt(i, '-') || r.wordAt(i, "is", "side", "es", "lado") {
				i--
			}
		}
		if in := r.letterWithin(&qs[k], letters, before); in >= 0 {
			i = in // it was taken for "W" as in width
		}
		if i < 0 || i >= len(r.toks) || letters[r.toks[i].text] == 0 {
			return false
		}
		at[k] = i
		seen[letters[r.toks[i].text]] = true
	}
	if len(seen) < 4 {
		return false
	}
	for k := range qs {
		qs[k].side = someSide
		qs[k].first, qs[k].last = min(qs[k].first, at[k]), max(qs[k].last, at[k])
		if before && r.toks[qs[k].last].kind == wordToken && letters[r.toks[qs[k].last].text] > 0 {
			qs[k].last-- // the letter of the next
		}
	}
	return true
}

// letterWithin is where the letter stands that was taken for another name of the side.
func (r *reader) letterWithin(q *quantity, letters map[string]int, before bool) int {
	if before && letters[r.toks[q.first].text] > 0 {
		return q.first
	}
	if !before && letters[r.toks[q.last].text] > 0 {
		return q.last
	}
	return -1
}

// otherOfSides: "one side only measures 25 1/4. The other one is 25 1/2": what is other is a side, too.
func (r *reader) otherOfSides(i int) bool {
	if r.Units > 1 || r.anyOf(0, len(r.toks), compassRooms) {
		return false
	}
	from := r.sentenceFirst(i)
	if from > 0 {
		from = r.sentenceFirst(from - 1)
	}
	for k := from; k < i; k++ {
		if r.wordAt(k, "side", "end", "edge", "lado") && (r.among(k-1, sideOrder) || r.wordAt(k+1, "one")) {
			return true
		}
	}
	return false
}
