package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	zipOrTown       = wordsOf(`zip codigo cp town ciudad pueblo`)
	spanishArticles = wordsOf(`el la los las lo un una`)
	willSubjects    = wordsOf(`you i it this that they u we the a yall my`)
	companyNouns    = wordsOf(`roofing construction properties management llc inc builders contracting
		contractors exteriors remodeling homes company realty rentals church school preschool daycare apartments
		farms dairy ministries academy clinic enterprises corp`)
	notOfCompany = wordsOf(`i im we our this at here there hi hello hey yes no ok it its is for my the a
		with from was call work own by did`)
	ownerNouns  = wordsOf(`duena dueno owner encargada encargado manager`)
	neverTurned = wordsOf(`thx ty hi hello hey ok okay sure yes yeah yep thanks no well hola si`)
)

// bareName reads the answer to "what's your name?" without an introduction.
func (r *reader) bareName() {
	if r.refuses() || r.firstTalk("dontknow") != nil || r.foreignTalk() {
		return
	}
	i := r.bareNameStart()
	if r.wordAt(i, "el", "la", "the", "mi", "my") && r.among(i+1, zipOrTown) {
		return
	}
	first, last, ok := r.answerName(i)
	if !ok || r.beginsSentence(first, last) || r.townTold(first, last) || r.putOff(first) || r.answeredWith(first, last) {
		return
	}
	if first == last && r.saysUse(first) {
		return
	}
	if i > 0 && r.wordAt(i-1, "its", "is", "it") && !r.surelyName(&hit{}, first, last) {
		return
	}
	r.nameFact(first, last)
}

// bareNameStart is the first token of an answer that is no greeting and no small word before a name.
func (r *reader) bareNameStart() int {
	i := 0
	for i < len(r.toks) {
		end := r.smallTalkAt(i)
		if end == i && !r.beforeNameAt(i) {
			return i
		}
		i = max(end, i+1)
	}
	return i
}

func (r *reader) beforeNameAt(i int) bool {
	return r.toks[i].kind == markToken || r.addressed(i) || r.leadWord(i) || r.wordAt(i, "the") ||
		r.wordAt(i, "first") && r.wordAt(i+1, "name")
}

// beginsSentence: "el de ahora deja entrar agua", "will you spam me": the words are no name.
func (r *reader) beginsSentence(first, last int) bool {
	if first == last && (r.among(first, spanishArticles) || r.wordAt(first, "del", "de") && r.room(first+1)) {
		return true
	}
	return r.wordAt(first, "will") && r.among(first+1, willSubjects)
}

// putOff: the word begins a "hang on" or a "let me check".
func (r *reader) putOff(i int) bool {
	talk := within(r.talk, i, i)
	return len(talk) > 0 && talk[0].is("say", "later") && talk[0].last > i
}

// foreignTalk: a sentence in another language is no name.
func (r *reader) foreignTalk() bool {
	return r.out.Language != "en" && r.out.Language != "es" && len(r.toks) > 4
}

// answerName takes the name at the start of an answer and checks that what follows is
// no sentence of which it is a part.
func (r *reader) answerName(i int) (first, last int, ok bool) {
	first, last, ok = r.nameFrom(i, false)
	if !ok || last-first+1 > maxNameWords+2 || r.markAt(last+1, '?') {
		return 0, 0, false
	}
	if r.wordAt(first, "marco") && last > first && afterName.has(r.toks[first+1].text) {
		return 0, 0, false // "marco antiguo": the frame
	}
	next := last + 1
	goesOn := next < len(r.toks) && r.toks[next].kind == wordToken && !r.toks[next].used
	if goesOn && !r.nameEnds(next) && !r.wordAt(next, "wants", "and", "last", "zip") {
		return 0, 0, false
	}
	return first, last, true
}

// wholeName reads the bare answer to "what's your name?" before its words are looked
// at otherwise: Hal White is no color.
func (r *reader) wholeName() {
	if r.known(fitcheck.TopicName) || !r.asked(fitcheck.TopicName) || r.foreignTalk() || r.turnedAtStart() {
		return
	}
	if r.refuses() || r.firstTalk("dontknow") != nil {
		return
	}
	start := 0
	for start < len(r.toks) && r.leadWord(start) {
		start++
	}
	if r.companyName() || r.spelledName(start) {
		return
	}
	a := r.onlyAName()
	if a.words == 0 {
		return
	}
	initial := a.words == 1 && len(r.toks[a.first].text) < 2
	if a.ended || a.words <= maxNameWords && !initial && !r.townTold(a.first, a.last) {
		r.nameFact(a.first, a.last)
	}
}

// onlyAName is the name of an answer that may be nothing else; without words where it is no bare name.
func (r *reader) onlyAName() bareAnswer {
	var a bareAnswer
	for i := range r.toks {
		switch r.nameStep(&a, i) {
		case nameEnd:
			a.ended = true
			return a
		case noName:
			return bareAnswer{}
		case nameGoesOn:
			if a.words == 0 {
				a.first = i
			}
			a.last = i
			a.words++
		}
	}
	return a
}

// companyName: a firm's name is an answer too, unless a person's stands beside it.
func (r *reader) companyName() bool {
	i := 1
	for i < len(r.toks) && !r.among(i, companyNouns) {
		i++
	}
	if i >= len(r.toks) {
		return false
	}
	if r.markAt(i+1, ',') || r.markAt(i+1, '-') {
		if first, last, ok := r.nameFrom(i+2, true); ok {
			r.nameFact(first, last)
			return true
		}
	}
	if i < maxNameWords && r.onlyUsedAfter(i) && r.wordsOnly(0, i) {
		r.nameFact(0, i)
		return true
	}
	return false
}

// wordsOnly: no sign, number or small word of a sentence stands between two tokens.
func (r *reader) wordsOnly(from, to int) bool {
	for i := from; i <= to; i++ {
		t := &r.toks[i]
		if t.kind != wordToken || t.used || negWords.has(t.text) || r.among(i, notOfCompany) {
			return false
		}
	}
	return true
}

// bareAnswer is the name found so far in an answer that may be nothing else.
type bareAnswer struct {
	first, last, words int
	ended              bool // something else follows it
}

type nameStep uint8

const (
	nameSkip   nameStep = iota // says nothing of a name
	nameGoesOn                 // a word of the name
	nameEnd                    // the name ends before it
	noName                     // the answer is no bare name
)

// asking are words that begin a question after a name.
var asking = wordsOf(`how what when where why cuanto cuando`)

func (r *reader) turnedAtStart() bool {
	return r.markAt(1, ',') && r.turned(0, 1) || r.markAt(1, '-') && r.markAt(3, ',') && r.turned(0, 3)
}

// nameStep looks at one token of the answer.
func (r *reader) nameStep(a *bareAnswer, i int) nameStep {
	t := &r.toks[i]
	switch {
	case t.used: // a place or a number beside the name
		if a.words > 0 && a.last < i-1 && r.toks[i-1].kind == wordToken && !r.toks[i-1].used {
			return noName
		}
		return nameSkip
	case t.kind == markToken:
		return r.nameMark(a, i)
	case t.kind != wordToken:
		return noName
	case t.is("in", "from") && r.onlyUsedAfter(i):
		return nameSkip
	case a.words == 0:
		return r.nameBegins(i)
	}
	switch {
	case r.spelledFrom(i) && r.markAt(i-1, ','), r.lettersApart(i), r.asksAfterName(i):
		return nameEnd
	case t.is("la", "el", "the") && r.among(i+1, ownerNouns):
		return nameEnd
	case t.is("lol", "haha", "jaja", "lmao"):
		return nameSkip
	case r.breaksName(t):
		return noName
	}
	return nameGoesOn
}

// turned reads "Morrow, Tess".
func (r *reader) turned(first, comma int) bool {
	if comma+2 != len(r.toks) || r.among(first, neverTurned) || r.givenAt(first) || !r.forenameLast(first, comma) {
		return false
	}
	name := properCase(r.said(comma+1, comma+1)) + " " + properCase(r.said(first, comma-1))
	r.name(first, comma+1)
	r.fact(fitcheck.TopicName, 0, fitcheck.Text(name), first, comma+1)
	return true
}

// forenameLast: the word after the comma is a given name, or may be one after a longer family's name.
func (r *reader) forenameLast(first, comma int) bool {
	t := &r.toks[comma+1]
	if t.kind != wordToken || t.used {
		return false
	}
	return t.word != nil && t.word.given || t.word == nil && comma >= first+3
}

// refuses: the name is refused; "Skip" beside another name is one.
func (r *reader) refuses() bool {
	for n := range r.talk {
		h := &r.talk[n]
		if !h.is("say", "refuse") {
			continue
		}
		next := h.last + 1
		if r.wordAt(next, "and", "y") || r.markAt(next, '&') {
			next++
		}
		skip := h.first == h.last && r.toks[h.first].word.given
		if !skip || next >= len(r.toks) || r.toks[next].kind != wordToken || !r.properName(next) {
			return true
		}
	}
	return false
}
