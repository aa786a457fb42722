package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// Names that stand where a message begins or ends, and names that are told of a note.

var (
	beforeClosingName = wordsOf(`bueno pues ok okay well lol sure fine anyway oh ah bien`)
	noteLinks         = wordsOf(`was is its note message text came mail email`)
)

// closingName: who was asked for a name ends with it, after a sentence of something else: "Who's
// asking? Lol. Brandy McNutt", "¿Para qué quiere mi nombre? Bueno, Esperanza Luna".
func (r *reader) closingName() bool {
	first, end := r.lastWords()
	if first < 2 || end-first != 2 && end-first != 3 || !r.closingBreak(first) || r.markAt(end, '?') {
		return false
	}
	if !r.givenAt(first) && r.toks[first].word != nil || r.addressed(first) || r.toldOf(first) || r.verbAt(first+1) {
		return false
	}
	for i := first + 1; i < end; i++ {
		if !r.surname(i) {
			return false
		}
	}
	var buf [8]string
	if !r.givenAt(first) && place.Scan(r.wordsFrom(first, 4, buf[:]), "") > 0 {
		return false
	}
	r.nameFact(first, end-1)
	return true
}

// lastWords are the words with which the message ends, that nothing was told by yet: the first, and the
// token after the last.
func (r *reader) lastWords() (first, end int) {
	end = len(r.toks)
	for end > 0 && r.toks[end-1].kind == markToken {
		end--
	}
	first = end
	for first > 0 && r.toks[first-1].kind == wordToken && !r.toks[first-1].used {
		first--
	}
	return first, end
}

// closingBreak: a sentence ends before the token, or a word like "ok," does.
func (r *reader) closingBreak(i int) bool {
	return r.sentenceEnd(i-1) || r.markAt(i-1, ':') || r.markAt(i-1, ',') && r.among(i-2, beforeClosingName)
}

// openingName: "May Rainey, Jackson Mississippi, and I want one", "Dottie Crane from the front
// office": a given name and a family's before all else, and then whence.
func (r *reader) openingName() bool {
	if len(r.toks) < 5 || r.toks[0].kind != wordToken || r.toks[0].used || !r.surname(1) {
		return false
	}
	family := &r.toks[1]
	forename := forenames.has(r.toks[0].text) && (family.word == nil || family.word.given)
	whence := r.markAt(2, ',') && r.toks[3].used ||
		r.wordAt(2, "from", "with") && r.wordAt(3, "the", "over", "at") && family.word == nil
	if !whence || !forename && !r.givenAt(0) || r.toldOf(0) || r.known(fitcheck.TopicName) {
		return false
	}
	r.nameFact(0, 1)
	return true
}

// noteName: "it was from Marjorie Eakin", "you've got my name wrong, it should be Joanne Vance": of a
// note, or what stands in a name's place.
func (r *reader) noteName() bool {
	for i := 1; i+2 < len(r.toks); i++ {
		if !r.beforeNoteName(i) || !r.givenAt(i+1) || !r.surname(i+2) {
			continue
		}
		if r.stopAt(i+3) || r.toks[i+3].kind != wordToken || r.wordAt(i+3, "and", "not", "in", "at") {
			r.nameFact(i+1, i+2)
			return true
		}
	}
	return false
}

// beforeNoteName: "the note was from", "my name should be".
func (r *reader) beforeNoteName(i int) bool {
	if r.wordAt(i, "from") {
		return r.among(i-1, noteLinks)
	}
	return r.wordAt(i, "be", "read", "say") && r.wordAt(i-1, "should", "must", "to") && r.wordsIn(0, i, "name", "misspelled")
}
