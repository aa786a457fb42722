package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// Numbers beside the number of skylights: of people, taken back, of skylights that are fine. They are marked
// as used before anything is counted.

func (r *reader) numbersBeside() {
	meant := r.meantOnes()
	for i := range r.toks {
		if r.toks[i].used {
			continue
		}
		n, next := r.countNumber(i)
		if next == i || n < 1 {
			continue
		}
		if r.ofPeople(i, next) ||
			r.withdrawn(i, next) ||
			r.partHarmed(i, n, next) ||
			meant > i && r.fineOnes(i, meant) ||
			r.domesOfOne(n, next) ||
			r.everyOne(i) ||
			r.tilesOf(next) {
			r.use(i, next-1)
		}
	}
}

// ofPeople: "two artists", "three of us", "a family of 5", "one person", "my two sisters".
func (r *reader) ofPeople(i, next int) bool {
	if r.wordAt(i-1, "of", "de") && r.wordAt(i-2, "family", "household", "party", "crew", "team", "group", "familia", "grupo", "equipo") && (next >= len(r.toks) || r.toks[next].kind == markToken || !countNouns.has(r.toks[next].text)) {
		return true
	}
	if r.wordAt(next, "of") && r.wordAt(next+1, "us", "you") || r.wordAt(next, "de") && r.wordAt(next+1, "nosotros") {
		return true
	}
	for k := next; k < next+3 && k < len(r.toks) && r.toks[k].kind == wordToken; k++ {
		t := r.toks[k].text
		if r.wordAt(k, "person", "persons", "adults", "people", "us", "siblings", "cents", "men", "women", "ladies", "painters", "artists", "retirees", "seniors", "adultos", "centavos", "personas", "persona") {
			return true
		}
		if len(t) > 4 && strings.HasSuffix(t, "s") && (kin.has(t) || kin.has(t[:len(t)-1]) || otherPersons.has(t[:len(t)-1])) {
			return true
		}
		if w := r.toks[k].word; r.wordAt(k, "of", "for", "in", "on", "from", "and", "is", "are") || w == nil || !r.countAdjective(k) {
			return false
		}
	}
	return false
}

// withdrawn: "scratch what I said about two of them, it's three", "forget the two, it's four", "olvide lo de
// dos, son tres": another number follows.
func (r *reader) withdrawn(i, next int) bool {
	if !r.wordsIn(max(r.sentenceFirst(i), i-7), i, "scratch", "forget", "ignore", "disregard", "olvide", "olvida", "olvidese", "ignore") &&
		!(r.wordAt(i-1, "you") && r.wordAt(i-2, "told") || r.wordAt(i-1, "said", "dije", "wrote", "texted") && r.wordAt(i-2, "i", "yo", "le", "we", "id")) {
		return false
	}
	return r.countLater(next) && r.asked(fitcheck.TopicCount)
}

// meantOnes is the number that follows "this is for", "these are for the", -1 where none does: what is said of
// the others is beside the point.
func (r *reader) meantOnes() int {
	for i := range r.toks {
		if !(r.wordAt(i, "for") && r.wordAt(i-1, "is", "are", "its", "asking") && (r.wordAt(i-1, "its", "asking") || r.wordAt(i-2, "this", "these", "order", "it", "that"))) && !(r.wordAt(i, "para") && r.wordAt(i-1, "es", "son")) {
			continue
		}
		k := i + 1
		for r.wordAt(k, "the", "just", "only", "my", "our", "los", "las", "solo") {
			k++
		}
		if n, next := r.countNumber(k); next > k && n > 0 {
			return k
		}
	}
	return -1
}

// fineOnes: the number before "this is for …" is of skylights that are sound or others.
func (r *reader) fineOnes(i, meant int) bool {
	return r.wordsIn(max(0, i-3), i+3, "other", "others", "another") || r.wordsIn(i, meant, "fine", "ok", "okay", "good", "alright", "new", "newer", "bien", "buenos", "bueno")
}

// domesOfOne: "need 2 domes for a skylight, inner and outer": the sheets of one.
func (r *reader) domesOfOne(n, next int) bool {
	if n < 2 || !r.wordAt(next, "domes", "domos", "bubbles", "panels", "sheets", "lenses") || !r.wordAt(next+1, "for", "on", "in", "para", "per") {
		return false
	}
	return r.wordAt(next+2, "a", "one", "1", "each", "every", "un", "una", "cada", "skylight") && (r.wordAt(next+3, "skylight", "unit", "tragaluz", "single", "curb", "frame") || r.wordAt(next+2, "skylight"))
}

// everyOne: "with each one circled", and "one" after "none of them".
func (r *reader) everyOne(i int) bool {
	if !r.wordAt(i, "one", "uno", "una") {
		return false
	}
	return r.asked(fitcheck.TopicCount) && r.wordAt(i-1, "each", "cada") || r.wordsIn(r.sentenceFirst(i), i, "none", "ninguno", "ninguna") && r.wordAt(i+1, "is", "has", "looks", "got", "leaks", "esta", "tiene")
}
