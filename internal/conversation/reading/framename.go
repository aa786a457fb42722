package reading

import (
	"strings"
	"sync"

	"example.com/intake-bot/internal/fitcheck"
)

// "Marco" is a man's name, and the Spanish word for the frame.

var (
	beforeMarco    = wordsOf(`el un del al su mi sin con`)
	frameMaterials = wordsOf(`metal aluminio madera fibra lamina fierro acero plastico`)
)

// frameWord is the word as the frame's alone: no part of a name.
var frameWord = sync.OnceValue(func() *word {
	w := *words().word("marco")
	w.given, w.common = false, true
	return &w
})

// frameNotName lets "marco" be no name where it is the frame: "unidad completa, marco doblado,
// uno".
func (r *reader) frameNotName() {
	for i := range r.toks {
		if r.wordAt(i, "marco") && !r.marcoIsName(i) {
			r.toks[i].word = frameWord()
		}
	}
}

// marcoIsName: the word is a person's where an introduction stands before it, where both it
// and the family's name are written with a capital, or where it may answer who somebody is.
// A frame that is good, bent or of metal is one in any other place.
func (r *reader) marcoIsName(i int) bool {
	if r.marcoOfMetal(i) || r.among(i-1, beforeMarco) && !r.introEnds(i-2) {
		return false
	}
	if r.introEnds(i-1) || r.givenAt(i-1) || r.bothCapital(i) {
		return true
	}
	frameAsked := r.asked(fitcheck.TopicFrameCondition) || r.asked(fitcheck.TopicStyle) || r.asked(fitcheck.TopicWant)
	if r.asked(fitcheck.TopicName) && !frameAsked {
		return r.clauseStart(i) == i
	}
	if i+1 >= len(r.toks) || r.toks[i+1].kind != wordToken {
		return !frameAsked
	}
	for _, h := range within(r.choices, i, i) {
		if h.last > i {
			return false // what it is like
		}
	}
	return !frameAsked && r.marcoOpens(i) &&
		(r.surname(i+1) || r.nameOver(i+1) || r.wordAt(i+1, "from", "with", "at", "here", "de"))
}

// marcoOfMetal: "marco de aluminio", "marco está".
func (r *reader) marcoOfMetal(i int) bool {
	return r.wordAt(i+1, "de", "del") && r.materialAt(i+2) || r.wordAt(i+1, "esta", "es", "sobre")
}

// marcoOpens: the word opens the message or a sentence, or stands among English ones.
func (r *reader) marcoOpens(i int) bool {
	before := i - 1
	for before >= 0 && r.toks[before].kind == markToken {
		before--
	}
	return before < 0 || r.talkEnds(before) || r.wordAt(before, "hola") || r.out.Language == "en"
}

// materialAt: what a frame is of.
func (r *reader) materialAt(i int) bool {
	return r.among(i, frameMaterials)
}

// bothCapital: the word and the one after it are written with a capital, in a message that has
// small letters too.
func (r *reader) bothCapital(i int) bool {
	return i+1 < len(r.toks) && r.toks[i+1].kind == wordToken && r.capital(i) && r.capital(i+1) &&
		strings.ToUpper(r.Text) != r.Text
}
