package reading

import "example.com/intake-bot/internal/place"

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
	if first < 6 || last-first > 3 || !r.sentenceEnd(first-2) && !r.markAt(first-2, '\n') || r.markAt(last+1, '?') || r.markAt(last+1, ':') {
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
	var buf [8]string
	if town := r.wordsFrom(first, 4, buf[:]); place.Scan(town, "") > 0 && !r.givenAt(first) {
		return false
	}
	unknown := words == 1 && r.toks[first].word == nil
	if unknown && (len(r.toks[first].text) < 4 || oneEdit(r.toks[first].text, "thanks") || oneEdit(r.toks[first].text, "regards") || oneEdit(r.toks[first].text, "gracias") || oneEdit(r.toks[first].text, "saludos")) {
		return false // "lmk", "thansk"
	}
	if words == 1 && !unknown && !r.givenAt(first) {
		return false
	}
	r.nameFact(first, last)
	return true
}

// signs: the word may be part of a signature: unknown or a name, after a given name an ordinary one
// as well ("August Rhine", "Carolyn Best").
func (r *reader) signs(i, first int) bool {
	t := &r.toks[i]
	if t.used || covers(r.choices, i) || covers(r.styles, i) || covers(r.wants, i) || t.word != nil && (t.word.filler || t.word.number.kind != notNumber || t.word.unit != noUnit) {
		return false
	}
	if t.word == nil || t.word.given {
		return true
	}
	if i == first {
		return !t.word.common && !t.word.trade && !r.talkBefore(i)
	}
	return r.givenAt(first) || !t.word.common && !t.word.trade
}
