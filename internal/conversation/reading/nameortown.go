package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// Words that are a person's name and a town's too: Dale, Austin, June Park.

var (
	nearWords     = wordsOf(`not near close outside just north south east west about by`)
	afterTownName = wordsOf(`im i am in from out over here its it is were we are live and to of ships ship the zip
		code town city y en de soy estoy vivo`)
)

// nameBeforeTown: "Dawn", "sandy, fayetteville", "I'm Roland, Springfield": a given name that
// is a little town's too is the person's, where both were asked for; one that is a large
// town's only where another place follows.
func (r *reader) nameBeforeTown(i int) bool {
	if !r.asked(fitcheck.TopicName) || !r.givenAt(i) ||
		!r.opensClause(i) && !r.introEnds(i-1) && !(r.wordAt(i-1, "and", "y") && r.givenAt(i-2)) {
		return false
	}
	if _, known := place.WellKnown(r.toks[i].text); !known && !r.anotherNamed(i) && !r.among(i+2, nearWords) {
		return true
	}
	return r.placeFollows(i)
}

// anotherNamed: a given name stands before the token already.
func (r *reader) anotherNamed(i int) bool {
	for k := range i {
		if r.givenAt(k) {
			return true
		}
	}
	return false
}

// wholeNameBeforeTown: "June Park. out here in Dover", "tom hale chicago": a given name with
// a family's name that is a town's too, before a place of its own.
func (r *reader) wholeNameBeforeTown(i, last int) bool {
	if !r.asked(fitcheck.TopicName) {
		return false
	}
	given := i
	if last == i {
		given = i - 1
	}
	return last-given == 1 && r.givenAt(given) && (given == 0 || r.opensClause(given) || r.introEnds(given-1)) &&
		r.placeFollows(last)
}

// surnameOfSaint: "hope st clair", "Pilar del Valle": after a given name a saint or a "del"
// begins a family's name, unless only the town was asked for.
func (r *reader) surnameOfSaint(i int) bool {
	if r.asked(fitcheck.TopicName) && !r.asked(fitcheck.TopicPlace) && r.wordAt(i-1, "de", "del") && r.givenAt(i-2) &&
		r.opensClause(i-2) {
		return true // "Marco de Leon"
	}
	return r.asked(fitcheck.TopicName) && r.wordAt(i, "st", "del", "de", "la", "san", "santa") && r.givenAt(i-1) &&
		(!r.asked(fitcheck.TopicPlace) || r.placeFollows(i+1))
}

// afterWholeName: "Carol Dunn, Spokane", "it's Carol Dunn in Spokane": a person's whole name
// and nothing more stands before the town.
func (r *reader) afterWholeName(i int) bool {
	given := r.beforeTown(i) - 1
	if !r.markAt(i-1, ',') && !r.markAt(i-1, '-') && !r.wordAt(i-1, "in", "from", "near", "of", "en", "de") ||
		!r.givenAt(given) || r.toks[given+1].kind != wordToken {
		return false
	}
	return given == 0 || r.sentenceEnd(given-1) ||
		r.markAt(given-1, ',') && r.fillsRest(i) || r.introEnds(given-1) ||
		r.wordAt(given-1, "its", "is", "am", "soy")
}

// beforeTown is the token before what leads to a town: "Sam Weller over in Boise", "Ann down near
// Savannah".
func (r *reader) beforeTown(i int) int {
	k := i - 2
	if !r.wordAt(i-1, "in", "from", "near", "of", "by", "en", "de") {
		return k
	}
	for k > 0 && r.wordAt(k, "out", "over", "down", "up", "here", "right", "aca", "aqui", "alla") {
		k--
	}
	return k
}

// placeFollows: a place of its own follows the token, with nothing between but the rest of
// a name and small words that lead to a place.
func (r *reader) placeFollows(i int) bool {
	var buf [8]string
	named := false
	for k := i + 1; k < len(r.toks); k++ {
		t := &r.toks[k]
		switch {
		case t.used || t.kind == numToken && len(t.text) == 5:
			return true
		case t.kind == markToken:
			named = true
			continue
		case t.kind != wordToken:
			return false
		}
		if n := place.Scan(r.wordsFrom(k, 4, buf[:]), ""); n > 1 || n > 0 && r.townWord(k) {
			return true
		}
		switch {
		case r.among(k, afterTownName):
		case !named && (r.surname(k) || r.givenAt(k)): // the rest of the name
		case named && r.givenAt(k) && r.wordAt(k-1, "and", "y"):
		default:
			return false
		}
	}
	return false
}

// givenAt: the word is a given name.
func (r *reader) givenAt(i int) bool {
	return i >= 0 && i < len(r.toks) && r.toks[i].kind == wordToken && r.toks[i].word != nil && r.toks[i].word.given
}

// townTold: the words are the town of the ZIP code beside them: "55805 duluth".
func (r *reader) townTold(first, last int) bool {
	for _, f := range r.out.Facts {
		if p, ok := f.Value.(fitcheck.Place); ok && p.City != "" && strings.EqualFold(p.City, r.said(first, last)) {
			return true
		}
	}
	return false
}
