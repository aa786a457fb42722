package reading

import "example.com/intake-bot/internal/fitcheck"

// A further skylight told beside those that were spoken of: "one more for the garage".

var (
	addedVerbs  = wordsOf(`need want have got found forgot add order is theres necesito ocupo quiero tengo hay falta`)
	oneMoreElse = wordsOf(`time thing question measurement number photo picture side try layer`)
)

// addedKind: "also need one more for the garage, that one is 37 x 37": a further kind, where
// one was spoken of before.
func (r *reader) addedKind() {
	if len(r.refs) > 0 || r.Units < 1 {
		return
	}
	for i := range r.toks {
		end := r.oneMoreAt(i)
		if end == 0 || !r.addedHere(i, end) {
			continue
		}
		r.refs = append(r.refs, unitRef{i, end - 1, []int{r.Units + 1}})
		r.fact(fitcheck.TopicCount, r.Units+1, fitcheck.Whole(1), i, end-1)
		r.use(i, end-1)
		if r.roomAdded(i) {
			r.callRoom(r.Units+1, i+1)
		}
		return
	}
}

// addedHere: one more is there or wanted, and its size or room is told after it and no size in its
// sentence before it.
func (r *reader) addedHere(i, end int) bool {
	if !r.anyOf(r.clauseStart(i), i, addedVerbs) || !r.pairBetween(end, len(r.toks)) && !r.roomAdded(i) {
		return false
	}
	return !r.pairBetween(0, i) || r.sentenceEnd(r.sentenceFirst(i)-1)
}

// oneMoreAt is where words for one more skylight end that begin at the token, 0 where none do.
func (r *reader) oneMoreAt(i int) int {
	switch {
	case r.wordAt(i, "one") && r.wordAt(i+1, "more", "other") && !r.among(i+2, oneMoreElse):
		return i + 2
	case r.wordAt(i, "another") && (r.wordAt(i+1, "one") || r.among(i+1, countNouns)):
		return i + 2
	case r.wordAt(i, "uno", "una", "otro", "otra") && r.wordAt(i+1, "mas"):
		return i + 2
	case r.roomAdded(i):
		return i + 3
	}
	return 0
}

// roomAdded: "oh and there's a bath one too": a skylight of a room that none of those known has.
func (r *reader) roomAdded(i int) bool {
	if !r.wordAt(i, "a", "an") || !r.room(i+1) || sizeWords.has(r.toks[i+1].text) ||
		!r.wordAt(i+2, "one") && !r.noun(i+2) || r.unitOfRoom(i+1) > 0 {
		return false
	}
	return r.wordsIn(r.clauseStart(i), i, "also") || r.wordAt(i+3, "too", "also") ||
		r.wordAt(i+3, "as") && r.wordAt(i+4, "well")
}
