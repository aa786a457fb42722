package reading

import "example.com/intake-bot/internal/place"

// lineTown: a well-known town without its state that a hurried line begins or ends with: "honolulu
// townhouse, salt air ate up the frame", "skylight cracked home wichita". Only in an opening message, and
// only where the words beside it are told for themselves.
func (r *reader) lineTown() bool {
	if len(r.Asked) > 0 || len(r.toks) < 3 ||
		r.wordsIn(0, len(r.toks), "ship", "shipping", "deliver", "or", "envian", "mandan", "entregan") {
		return false
	}
	end := len(r.toks)
	for end > 0 && r.toks[end-1].kind == markToken && !r.markAt(end-1, '?') {
		end--
	}
	for i := max(end-3, 1); i < end; i++ {
		if last, ok := r.townWords(i); ok && last == end-1 && r.mayEndWith(i) {
			return r.townAtEdge(i, last)
		}
	}
	if last, ok := r.townWords(0); ok && last+1 < end && r.tellsElse(last+1) && r.toks[last+1].kind == wordToken &&
		!r.wordAt(last+1, "glass", "skylight", "skylights") {
		return r.townAtEdge(0, last)
	}
	return false
}

func (r *reader) townAtEdge(first, last int) bool {
	var buf [8]string
	e, ok := place.WellKnown(joined(r.wordsFrom(first, last-first+1, buf[:])))
	return ok && r.townFact(first, last, e)
}

// townWords is where a town's name that begins at the token ends; none where its only word has another
// meaning or is a given name.
func (r *reader) townWords(i int) (last int, ok bool) {
	var buf [8]string
	if r.toks[i].kind != wordToken || r.toks[i].used {
		return 0, false
	}
	n := place.Scan(r.wordsFrom(i, 4, buf[:]), "")
	if n == 0 {
		return 0, false
	}
	last = r.tokenOf(i, n)
	w := r.toks[i].word
	return last, n > 1 && (w == nil || !w.filler && !r.wordAt(i, "we", "i")) ||
		len(r.toks[i].text) > 3 && (w == nil || !w.given && !w.common && !w.filler && !w.trade && !w.thing) && !r.verbAt(i)
}

// mayEndWith: before the town stands what is told for itself, or a whole name: "… leaks renee babcock tulsa".
func (r *reader) mayEndWith(i int) bool {
	p := i - 1
	if r.toks[p].kind != wordToken {
		return r.toks[p].kind != markToken && r.toks[p].kind != numToken
	}
	if r.churchWord(p) || r.wordAt(p, "iglesia", "church", "parroquia", "capilla", "chapel", "escuela", "school", "rancho") {
		return false // "la iglesia Santa Cruz"
	}
	if r.givenAt(p-1) && r.surname(p) {
		return true
	}
	return !r.givenAt(p) && !nameLeads.has(r.toks[p].text) && !jobWords.has(r.toks[p].text) && !negWords.has(r.toks[p].text) &&
		r.explained(p)
}
