package reading

import "example.com/intake-bot/internal/fitcheck"

// Weather that is to come: it broke nothing yet, and makes an open hole urgent.

var (
	aboutToCome = wordsOf(`fixing fixin about supposed going set bound its va is`)
	comingWords = wordsOf(`coming moving rolling headed heading forecast forecasted predicted expected due tonight
		tomorrow brewing viene vienen`)
	stormNouns   = wordsOf(`storm storms hail hurricane tormenta tormentas granizo huracan wind winds`)
	weatherNouns = wordsOf(`rain storm storms snow hurricane pour lluvia llover tormenta aguacero huracan`)
)

// comes: the storm or rain at the token is to come: "fixing to storm", "storms coming
// tonight", "before the next storm", "viene otra tormenta".
func (r *reader) comes(i int) bool {
	if r.wordAt(i-1, "to", "gonna", "a") && r.among(i-2, aboutToCome) {
		return true
	}
	for j := i - 1; j >= 0 && j >= i-5 && r.toks[j].kind == wordToken; j-- {
		if r.wordAt(j, "before", "antes", "viene", "vienen", "vendra", "calling", "forecast", "expecting") &&
			!r.wordsIn(j, i, "came", "started") {
			return true
		}
	}
	for j := i + 1; j < len(r.toks) && j <= i+4 && !r.sentenceEnd(j) && !r.markAt(j, ','); j++ {
		if r.among(j, comingWords) && !r.wordsIn(i+1, j, "was", "were", "came", "kept") {
			return true
		}
	}
	return false
}

// stormComes: what is said of a storm is that it is to come.
func (r *reader) stormComes(s *saying) bool {
	if s.value != fitcheck.ProblemStorm {
		return false
	}
	for i := s.first; i <= s.last; i++ {
		if r.among(i, stormNouns) && r.comes(i) {
			return true
		}
	}
	return false
}

// weatherAhead: the message speaks of rain or a storm that is to come.
func (r *reader) weatherAhead() bool {
	for i := range r.toks {
		if r.wordAt(i, "raining", "lloviendo") ||
			r.wordAt(i, "llover") && r.wordAt(i-2, "empezo", "empieza", "comenzo") ||
			r.among(i, weatherNouns) && r.comes(i) {
			return true
		}
	}
	return false
}
