package reading

import "strings"

// How a room is named: "the kitchen one", "bath 2".

var (
	noKindWords = wordsOf(`new other same next last only just right wrong good bad broken cracked leaking that this
		which each every another complete whole replacement`)
)

func (r *reader) room(i int) bool {
	if i < 0 || i >= len(r.toks) || r.toks[i].kind != wordToken {
		return false
	}
	return r.toks[i].roomJoined() || r.roomOfWords(i) > 1 || r.kindsWord(i) > 0 ||
		roomWords.has(r.toks[i].text) ||
		len(r.toks[i].text) > 4 && roomWords.has(strings.TrimSuffix(r.toks[i].text, "s"))
}

// otherNumbered: the same room stands in the message with another number: "bedroom 1 …
// bedroom 2".
func (r *reader) otherNumbered(i int) bool {
	for k := range r.toks {
		if k != i && r.toks[k].kind == wordToken && r.toks[k].text == r.toks[i].text && k+1 < len(r.toks) &&
			r.toks[k+1].kind == numToken && r.toks[k+1].text != r.toks[i+1].text {
			return true
		}
	}
	return false
}

// roomAfter is the room of "a skylight in the hallway", "one over the den"; 0 for none.
func (r *reader) roomAfter(i int) int {
	if r.toks[i].kind != wordToken ||
		!r.wordAt(i, "one", "skylight", "dome", "uno", "otro", "tragaluz", "domo") ||
		r.wordAt(i-1, "the", "my", "our", "this", "that", "other", "el") ||
		!r.wordAt(i+1, "in", "over", "above", "on", "for", "en", "sobre", "para") {
		return 0
	}
	n := i + 2
	if r.wordAt(n, "the", "my", "our", "la", "el") {
		n++
	}
	if !r.room(n) || sizeWords.has(r.toks[n].text) || !r.wordAt(i, "one", "uno", "otro") && !r.oneMoreRoom(n+1) {
		return 0
	}
	return n
}

// oneMoreRoom: "… and one in the den" follows.
func (r *reader) oneMoreRoom(i int) bool {
	for ; i < len(r.toks); i++ {
		if r.wordAt(i, "one", "uno", "otro") && !r.wordAt(i-2, "the", "my") && r.roomAfter(i) > 0 {
			return true // not "the big one in the den"
		}
	}
	return false
}

// kindWord: before "one" and a size, any word of its own tells one kind from another:
// "the breakroom ones are 25 x 25".
func (r *reader) kindWord(i int) bool {
	t := &r.toks[i]
	return t.kind == wordToken && r.numberAt(i).kind == notNumber && !negWords.has(t.text) && (t.word == nil || !t.word.filler) &&
		r.unitAt(i) == noUnit && !covers(r.intros, i) &&
		!r.among(i, noKindWords)
}

// pairSoon: a size follows after a few words that say what it is of.
func (r *reader) pairSoon(i int) bool {
	for end := i + 6; i < end && i < len(r.toks) && !r.sentenceEnd(i); i++ {
		if r.pairAt(i) {
			return true
		}
	}
	return false
}

// roomIn is the one room that is named between two tokens, "" where none or several are.
func (r *reader) roomIn(from, to int) string {
	found := ""
	for i := from; i < to; i++ {
		if !r.room(i) || r.wordAt(i, "round", "square") || r.room(i-1) {
			continue
		}
		if found != "" && found != r.toks[i].text {
			return ""
		}
		found = r.toks[i].text
	}
	return found
}
