package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// Typing errors are mended in words of the trade only, a letter left out, put in,
// changed, or two swapped, and only where no name is expected: a name or a town that
// looks like such a word must stay what it is.

var nameIntros = wordsOf(`im am name names me mr mrs ms dr soy llamo`)

const (
	minMend  = 6 // letters of a word that may be mended anywhere
	minShort = 4 // and of one in the answer to a question about choices or sizes
)

// mendTypos tells unknown words that look like a word of the trade what it knows.
func (r *reader) mendTypos() {
	for _, a := range r.Asked {
		if a == fitcheck.TopicName || a == fitcheck.TopicPlace {
			return
		}
	}
	v := words()
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind != wordToken || t.word != nil || len(t.text) < minShort {
			continue
		}
		if len(t.text) < minMend && len(r.Asked) == 0 || r.introBefore(i) {
			continue
		}
		if w := v.mended(t.text); w != "" && !r.townWithState(i) {
			t.word, t.text = v.known[w], w
		}
	}
}

// townWithState: the word is a town before its state: Casper WY is no camper.
func (r *reader) townWithState(i int) bool {
	next := i + 1
	if r.markAt(next, ',') {
		next++
	}
	if next >= len(r.toks) || r.toks[next].kind != wordToken {
		return false
	}
	state, ok := place.State(r.toks[next].text)
	return ok && len(place.Towns(r.toks[i].text, state)) > 0
}

// introBefore: the word stands where a name does.
func (r *reader) introBefore(i int) bool {
	if r.wordAt(i-1, "is") {
		return r.wordAt(i-2, "name", "this", "it", "he", "she") || i < 2
	}
	return r.among(i-1, nameIntros) ||
		i > 0 && r.toks[i-1].kind == wordToken && r.toks[i-1].word != nil && r.toks[i-1].word.given
}

// mended is the word of the trade that a misspelt one must mean, "" where none or
// several are as near.
func (v *vocabulary) mended(text string) string {
	if v.real[text] {
		return ""
	}
	found := ""
	try := func(key string) bool {
		for _, w := range v.typos[key] {
			if !oneEdit(text, w) || len(w) < minMend && len(text) > len(w) && !doubled(text, w) {
				continue
			}
			if found != "" && found != w {
				return false
			}
			found = w
		}
		return true
	}
	if !try(text) {
		return ""
	}
	var buf [40]byte
	if len(text) > len(buf) {
		return ""
	}
	for i := range text {
		key := append(append(buf[:0], text[:i]...), text[i+1:]...)
		if !try(string(key)) {
			return ""
		}
	}
	return found
}

// doubled: the misspelt word has one letter twice: "leeaks".
func doubled(text, w string) bool {
	for i := 1; i < len(text); i++ {
		if text[i] == text[i-1] && text[:i]+text[i+1:] == w {
			return true
		}
	}
	return false
}

// addTypo files a word under itself and under all forms with one letter left out, so
// that words one edit apart meet.
func (v *vocabulary) addTypo(w string) {
	v.typos[w] = append(v.typos[w], w)
	for i := range w {
		key := w[:i] + w[i+1:]
		v.typos[key] = append(v.typos[key], w)
	}
}

// oneEdit says whether one letter left out, put in or changed, or two neighbours
// swapped, make b of a.
func oneEdit(a, b string) bool {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	ra, rb := a[i:], b[i:]
	switch {
	case len(ra) == len(rb)+1:
		return ra[1:] == rb
	case len(rb) == len(ra)+1:
		return rb[1:] == ra
	case len(ra) != len(rb) || len(ra) == 0:
		return false
	}
	return ra[1:] == rb[1:] || len(ra) > 1 && ra[0] == rb[1] && ra[1] == rb[0] && ra[2:] == rb[2:]
}

// reaction finds what phones send for a thumb on a message: "Liked “…”". It says
// nothing of itself.
func (r *reader) reaction() bool {
	return len(r.toks) > 2 && r.wordAt(0, "liked", "loved", "disliked", "emphasized", "questioned", "laughed", "reacted") &&
		(r.markAt(1, '"') || r.markAt(2, '"') && r.wordAt(1, "at", "to"))
}
