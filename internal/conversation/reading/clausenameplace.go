package reading

import "example.com/intake-bot/internal/fitcheck"

// Names that a place stands behind.

var (
	namePlaceLinks = wordsOf(`from in at of de en near by around`)
	fromPlaceLinks = wordsOf(`in from de en near of`)
	recommendVerbs = wordsOf(`told said says recommended referred suggested mentioned gave sent dijo
		recomendo conto`)
	toldObjects     = wordsOf(`me us you your to that que`)
	townLinks       = wordsOf(`in from near of out over down up here`)
	townDirections  = wordsOf(`out over down up here right back just outside`)
	notGivenByPlace = wordsOf(`will van may june april guy hope chase grant skip art houston dallas austin
		jackson lincoln madison augusta savannah charlotte`)
)

// placeAfterName: "ann in Dayton", "Mike, Salem OR, dome is cracked": a given name that
// opens the message with a place behind it.
func (r *reader) placeAfterName(i, last int) bool {
	if r.notByPlace(i) || r.toldBy(r.afterUsed(last+1)) || r.noun(last) {
		return false // also "wanda tuttle leaking skylight in boise"
	}
	if at := r.townLead(last + 1); at > last+1 {
		last = at - 2
	}
	next, at := last+1, last+2
	if at >= len(r.toks) {
		return false
	}
	if r.among(next, fromPlaceLinks) {
		placed := r.doubtful(fitcheck.TopicPlace) || r.known(fitcheck.TopicPlace)
		return r.toks[at].named || r.toks[at].used && placed
	}
	sign := r.markAt(next, ',') || r.markAt(next, '.') || r.markAt(next, '-')
	return sign && r.toks[at].named && (i == 0 || r.sentenceEnd(i-1))
}

// toldBy: what stands before the token is who told the writer something: "Sam Weller over in Boise
// told me about you".
func (r *reader) toldBy(i int) bool { return r.among(i, recommendVerbs) && r.among(i+1, toldObjects) }

// afterUsed is the first token from i on that is not told of yet, past what leads to it.
func (r *reader) afterUsed(i int) int {
	for i < len(r.toks) && (r.toks[i].used || r.among(i, townLinks)) {
		i++
	}
	return i
}

// townLead skips what people say of the way to their town: "out of Tulsa", "over here in Boise", "down
// in Savannah", "up by Duluth". It gives the token after the last such word, i where there is none.
func (r *reader) townLead(i int) int {
	k := i
	for r.among(k, townDirections) || r.wordAt(k, "aca", "aqui", "alla") {
		k++
	}
	if r.among(k, namePlaceLinks) {
		return k + 1
	}
	return i
}

// notByPlace: a given name that is likelier another word, also beside a place.
func (r *reader) notByPlace(i int) bool {
	return r.among(i, notGivenByPlace)
}
