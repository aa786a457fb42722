package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// signedLine: a mail's last line, after whole sentences, is a name that no closing goes before:
// "Is it in stock?\n\nLane Becker\n402-555-0188".
func (r *reader) signedLine() bool {
	end := len(r.toks)
	for end > 0 && (r.toks[end-1].kind != wordToken || r.toks[end-1].used) {
		end--
	}
	if end == 0 {
		return false
	}
	first, last := end-1, end-1
	for first > 0 && !r.toks[first-1].mark('\n') {
		first--
	}
	if first < 6 || last-first > 3 || !r.sentenceEnd(first-2) && !r.markAt(first-2, '\n') ||
		r.markAt(last+1, '?') || r.markAt(last+1, ':') {
		return false
	}
	for i := last + 1; i < len(r.toks); i++ { // a phone number, a mail address or the town may follow
		if t := &r.toks[i]; t.kind == wordToken && !t.used {
			return false
		}
	}
	words := 0
	for i := first; i <= last; i++ {
		switch t := &r.toks[i]; {
		case t.kind == wordToken && r.signs(i, first):
			words++
		case t.mark('.') && len(r.toks[i-1].text) <= 2, t.mark('-') && t.glued:
		default:
			return false
		}
	}
	if !r.givenAt(first) && r.townLine(first, words) {
		return false
	}
	unknown := words == 1 && r.toks[first].word == nil
	if unknown &&
		(len(r.toks[first].text) < 4 || oneEdit(r.toks[first].text, "thanks") ||
			oneEdit(r.toks[first].text, "regards") || oneEdit(r.toks[first].text, "gracias") ||
			oneEdit(r.toks[first].text, "saludos")) {
		return false // "lmk", "thansk"
	}
	if words == 1 && !unknown && !r.givenAt(first) && !(forenames.has(r.toks[first].text) && !r.toks[first].word.common) {
		return false
	}
	r.nameFact(first, last)
	return true
}

// signs: the word may be part of a signature: unknown or a name, after a given name an ordinary one
// as well ("August Rhine", "Carolyn Best").
func (r *reader) signs(i, first int) bool {
	t := &r.toks[i]
	if len(t.text) == 1 && r.markAt(i+1, '.') {
		return true // "R. Olsen"
	}
	if t.used || covers(r.choices, i) || covers(r.styles, i) || covers(r.wants, i) ||
		t.word != nil && (t.word.filler || t.word.number.kind != notNumber || t.word.unit != noUnit) {
		return false
	}
	if t.word == nil || t.word.given {
		return true
	}
	if i == first && r.forename(i) {
		return true
	}
	if i == first {
		return !t.word.common && !t.word.trade && !r.talkBefore(i)
	}
	return r.givenAt(first) || !t.word.common && !t.word.trade
}

// townLine: the last line is a town's name, and none that many families bear: "Lake City", "Reno",
// "Tulsa Oklahoma", but not "Lane Becker" or "Colby".
func (r *reader) townLine(first, words int) bool {
	var buf [8]string
	line := r.wordsFrom(first, 4, buf[:])
	n := place.Scan(line, "")
	if n == 0 {
		return false
	}
	if n < words {
		state, _ := place.ScanState(line[n:])
		return state > 0
	}
	if words > 1 || r.asked(fitcheck.TopicPlace) {
		return true
	}
	_, known := place.WellKnown(line[0])
	return known
}

// forename: an ordinary word that is a first name too, before a family's: "August Rhine".
func (r *reader) forename(i int) bool {
	return forenames.has(r.toks[i].text) &&
		(i+1 >= len(r.toks) || r.toks[i+1].kind != wordToken || r.toks[i+1].word == nil ||
			r.toks[i+1].word.given || !r.toks[i+1].word.common)
}

// forenames are ordinary words that people are called by.
var forenames = wordsOf(`junior august buddy sonny bud butch skip rusty dusty sunny april may june summer autumn
	dawn faith hope grace joy rose lily ivy olive pearl ruby amber crystal ginger holly heather misty sandy penny
	art bill cliff dale drew frank gene grant jack mark miles nick pat pierce ray rich rob rod stone victor wade
	ward will woody lane forest forrest glen heath hunter chase chance dean earl duke major prince royal sterling
	star sky storm rain winter mercy patience charity constance buck bear ace king lance mack melody harmony merry
	opal rocky reed rex sage silver tiny tex trinity violet sister brother cash clay cole colt daisy fern flora
	gale guy hank happy hazel jay jewel jasmine josh laurel lee mason max norm peg pepper red robin roman rowdy
	rush sandy scout slim sparky sport stormy tanner taylor trace trip tucker val vernon wiley wren`)
