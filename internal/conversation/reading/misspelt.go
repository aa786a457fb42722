package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// maxPlaceAnswer is how many tokens an answer may have that is looked at as a
// misspelt place.
const maxPlaceAnswer = 6

// misspelt: a bare answer near the name of a town, or a number of four or five digits
// that is no ZIP code, is asked about. It says whether there was one.
func (r *reader) misspelt() bool {
	if len(r.toks) == 0 || len(r.toks) > maxPlaceAnswer || r.firstTalk("refuse") != nil {
		return false
	}
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind == numToken && !t.used && (len(t.text) == 4 || len(t.text) == 5) {
			t.used = true
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, i, i)
			return true
		}
		if r.oddPlaceWord(i) {
			r.misspeltFrom(i)
			return r.doubtful(fitcheck.TopicPlace)
		}
	}
	return false
}

// oddPlaceWord: a word of four letters or more that is no ordinary one.
func (r *reader) oddPlaceWord(i int) bool {
	t := &r.toks[i]
	return t.kind == wordToken && !t.used && len(t.text) >= 4 &&
		(t.word == nil || !t.word.common && !t.word.filler && !t.word.given && !negWords.has(t.text))
}

// misspeltFrom takes the words from token i on for a town, perhaps with a state.
func (r *reader) misspeltFrom(i int) {
	var buf [8]string
	ahead := r.wordsFrom(i, 3, buf[:])
	for k := 1; k < len(ahead); k++ { // "Teresa Montes lawrence": a family's name before a town
		if place.Scan(ahead[k:], "") == len(ahead)-k && len(ahead[k]) >= 3 && (r.townWord(r.tokenOf(i, k+1)) || len(ahead) > k+1) {
			from, to := r.tokenOf(i, k+1), r.tokenOf(i, len(ahead))
			r.use(from, to)
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, from, to)
			return
		}
	}
	town, state, end := r.splitState(i, ahead)
	near := place.Near(joined(town), state)
	var guess fitcheck.Value
	if len(near) > 0 {
		guess = fitcheck.Place{City: near[0].Entry.City, State: near[0].Entry.State}
	}
	unknown := r.toks[i].word == nil && i+len(ahead) >= len(r.toks)
	if len(near) > 0 || state != "" || unknown {
		r.use(i, end)
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, guess, i, end)
	}
}

// splitState parts a town's words from a state's, which may be misspelt too.
func (r *reader) splitState(i int, ahead []string) (town []string, state string, end int) {
	for n := 1; n < len(ahead); n++ {
		if k, code := place.ScanState(ahead[n:]); k > 0 {
			return ahead[:n], code, r.tokenOf(i, n+k)
		}
		if code, ok := place.NearState(ahead[n]); ok && len(ahead[n]) > 5 {
			return ahead[:n], code, r.tokenOf(i, n+1)
		}
	}
	end = r.tokenOf(i, len(ahead))
	if r.markAt(end+1, ',') {
		after := r.wordsFrom(end+2, 3, make([]string, 0, 3))
		if k, code := place.ScanState(after); k > 0 {
			return ahead, code, r.tokenOf(end+2, k)
		}
	}
	return ahead, "", end
}
