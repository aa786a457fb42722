package reading

import (
	"slices"

	"example.com/intake-bot/internal/place"
)

// nameBesideZIP: "dome cracked 55805 joe park house", "leaking skylight jen park 80301": in a hurried line
// without signs, a given name and one more word right beside the ZIP code, between what tells something
// else. The other word may be an ordinary one there.
func (r *reader) nameBesideZIP() bool {
	for i := range r.toks {
		if t := &r.toks[i]; t.kind != numToken || !t.used || len(t.text) != 5 {
			continue
		}
		if r.hurriedName(i+1) && (i+3 == len(r.toks) || r.markAt(i+3, ',') || r.markAt(i+3, '.') || r.tellsElse(i+3)) {
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

// nameAtEdge: "fiberglass frame n it leaks renee babcock tulsa", "grant hughes dbl wide carson city
// dome cracked": in a line without signs, a given name and one more word that open the message, or
// that close it but for a place or a number, next to what tells something else.
func (r *reader) nameAtEdge() bool {
	if slices.ContainsFunc(r.toks, func(t token) bool { return t.kind == markToken && t.ends() && !t.mark('.') }) {
		return false
	}
	if r.hurriedName(0) && r.tellsElse(2) && !r.wordAt(1, "is", "has", "said", "here") {
		r.nameFact(0, 1)
		return true
	}
	end := len(r.toks)
	for end > 0 && (r.toks[end-1].named || r.toks[end-1].kind == phoneToken || r.toks[end-1].kind == mailToken || r.toks[end-1].kind == numToken && r.toks[end-1].used && len(r.toks[end-1].text) == 5 || r.wordAt(end-1, "in", "from", "at", "ph", "cell", "en", "de", "tel")) {
		end--
	}
	switch {
	case r.hurriedName(end-2) && (r.edgeOf(end-3) || r.toks[end-1].word == nil && r.wordAt(end-3, "now", "asap", "already", "again", "too", "bad", "please", "pls", "ya")):
		r.nameFact(end-2, end-1)
	case end > 3 && r.givenAt(end-1) && len(r.toks[end-1].text) > 2 && !r.toks[end-1].word.common && !r.alsoState(end-1) && !r.addressed(end-1) && !r.toldOf(end-1) && r.edgeOf(end-2) && r.toks[end-2].kind != numToken && !r.wordAt(end-2, "good", "bad", "fine", "great", "ok", "okay", "in") && !r.townsToo(end-1):
		r.nameFact(end-1, end-1)
	default:
		return false
	}
	return true
}

// townsToo: the name is a town's as well: "leaking skylight jackson".
func (r *reader) townsToo(i int) bool {
	return place.Scan([]string{r.toks[i].text}, "") == 1
}

// edgeOf: what tells something else ends at the token.
func (r *reader) edgeOf(i int) bool {
	return r.tellsElse(i) && !(i+1 < len(r.toks) && covers(r.choices, i+1)) || i >= 0 && r.toks[i].named
}

// hurriedName: a given name that is no other word, and a word that can be a family's.
func (r *reader) hurriedName(i int) bool {
	if i < 0 || i+1 >= len(r.toks) || !r.givenAt(i) || r.toks[i].word.common || r.alsoState(i) || r.addressed(i) || r.toldOf(i) || r.artPlace(i) {
		return false
	}
	next := &r.toks[i+1]
	return next.kind == wordToken && !next.used && len(next.text) > 2 && !afterName[next.text] && !r.verbAt(i+1) && !r.tellsElse(i+1) &&
		(next.word == nil || !next.word.filler && next.word.number.kind == notNumber && next.word.unit == noUnit) && !negWords[next.text]
}

// tellsElse: the token is of a phrase that tells of the skylight or its building, or a number.
func (r *reader) tellsElse(i int) bool {
	return i >= 0 && i < len(r.toks) && (r.toks[i].kind == numToken || covers(r.choices, i) || covers(r.styles, i) || covers(r.wants, i) || r.toks[i].kind == wordToken && countNouns[r.toks[i].text])
}
