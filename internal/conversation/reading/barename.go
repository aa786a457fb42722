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
	ownerNouns     = wordsOf(`duena dueno owner encargada encargado manager`)
	nameBreakers   = wordsOf(`with w will wants can here said in is from and y on at en needs again or o`)
	neverTurned    = wordsOf(`thx ty hi hello hey ok okay sure yes yeah yep thanks no well hola si`)
	nameHums       = wordsOf(`pues bueno este mire mira oiga aja alright uh ah so`)
	beforeBareName = wordsOf(`its it is thats names sure yes yeah ok okay well um es si claro oh sorry oops
		perdon disculpe disculpa hi hello hey name just solo nomas con`)
)

// bareName reads the answer to "what's your name?" without an introduction.
func (r *reader) bareName() {
	if r.refuses() || r.firstTalk("dontknow") != nil || r.foreignTalk() {
		return
	}
	i := 0
	for i < len(r.toks) && (r.toks[i].kind == markToken || r.smallTalkAt(i) > i || r.addressed(i) || r.leadWord(i) || r.wordAt(i, "the") || r.wordAt(i, "first") && r.wordAt(i+1, "name")) {
		if end := r.smallTalkAt(i); end > i {
			i = end
			continue
		}
		i++
	}
	if r.wordAt(i, "el", "la", "the", "mi", "my") && r.among(i+1, zipOrTown) {
		return
	}
	first, last, ok := r.answerName(i)
	if ok && first == last && (r.among(first, spanishArticles) || r.wordAt(first, "del", "de") && r.room(first+1)) {
		return // "el de ahora deja entrar agua"
	}
	if r.wordAt(first, "will") && r.among(first+1, willSubjects) {
		return // "will you spam me"
	}
	if !ok || r.townTold(first, last) || r.putOff(first) || r.answeredWith(first, last) || first == last && r.saysUse(first) || i > 0 && r.wordAt(i-1, "its", "is", "it") && !r.surelyName(&hit{}, first, last) {
		return
	}
	r.nameFact(first, last)
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

func (r *reader) smallTalkAt(i int) int {
	for n := range r.talk {
		h := &r.talk[n]
		if h.first == i {
			if _, ok := h.has("small"); ok {
				return h.last + 1
			}
			if v, _ := h.has("say"); v == "yes" && !(r.toks[i].word != nil && r.toks[i].word.given) {
				return h.last + 1
			}
		}
	}
	return i
}

// answerName takes the name at the start of an answer and checks that what follows is
// no sentence of which it is a part.
func (r *reader) answerName(i int) (first, last int, ok bool) {
	first, last, ok = r.nameFrom(i, false)
	if !ok || last-first+1 > maxNameWords+2 {
		return 0, 0, false
	}
	if r.wordAt(first, "marco") && last > first && afterName.has(r.toks[first+1].text) {
		return 0, 0, false // "marco antiguo": the frame
	}
	next := last + 1
	if next < len(r.toks) && r.toks[next].kind == wordToken && !r.toks[next].used && !r.nameEnds(next) && !r.wordAt(next, "wants", "and", "last", "zip") {
		return 0, 0, false
	}
	if next < len(r.toks) && r.markAt(next, '?') {
		return 0, 0, false
	}
	return first, last, true
}

// wholeName reads the bare answer to "what's your name?" before its words are looked
// at otherwise: Hal White is no color.
func (r *reader) wholeName() {
	if r.known(fitcheck.TopicName) || !r.asked(fitcheck.TopicName) || r.foreignTalk() || r.turnedAtStart() || r.refuses() || r.firstTalk("dontknow") != nil {
		return
	}
	start := 0
	for start < len(r.toks) && r.leadWord(start) {
		start++
	}
	if r.companyName() || r.spelledName(start) {
		return
	}
	a := bareAnswer{first: -1, last: -1}
	for i := range r.toks {
		switch r.nameStep(&a, i) {
		case nameEnd:
			r.nameFact(a.first, a.last)
			return
		case noName:
			return
		case nameGoesOn:
			if a.first < 0 {
				a.first = i
			}
			a.last = i
			a.words++
		}
	}
	if a.words == 0 || r.townTold(a.first, a.last) || a.words > maxNameWords || a.words == 1 && len(r.toks[a.first].text) < 2 {
		return
	}
	r.nameFact(a.first, a.last)
}

// companyName: a firm's name is an answer too, unless a person's stands beside it.
func (r *reader) companyName() bool {
	for i := range r.toks {
		if !r.among(i, companyNouns) || i == 0 {
			continue
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
type bareAnswer struct{ first, last, words int }

type nameStep uint8

const (
	nameSkip   nameStep = iota // says nothing of a name
	nameGoesOn                 // a word of the name
	nameEnd                    // the name ends before it
	noName                     // the answer is no bare name
)

// asking are words that begin a question after a name.
var asking = []string{"how", "what", "when", "where", "why", "cuanto", "cuando"}

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
	case a.words == 0 && (r.smallTalkAt(i) > i || r.leadWord(i)):
		return nameSkip
	case a.words > 0 && r.spelledFrom(i) && r.markAt(i-1, ','):
		return nameEnd
	case t.is("in", "from") && r.onlyUsedAfter(i), a.words > 0 && t.is("lol", "haha", "jaja", "lmao"):
		return nameSkip
	case a.words > 0 && len(t.text) == 1 && i+2 < len(r.toks) && len(r.toks[i+1].text) == 1 && r.toks[i+1].kind == wordToken && len(r.toks[i+2].text) == 1 && r.toks[i+2].kind == wordToken:
		return nameEnd // "Tiffany Raske R A S K E"
	case a.words > 0 && (t.is(asking...) && (!t.is("how") || i+1 < len(r.toks) && (r.toks[i+1].kind == wordToken || r.markAt(i+1, '?'))) || t.is("but", "and", "pero", "y") && r.wordAt(i+1, asking...)):
		return nameEnd // "roland white how much"
	case a.words > 0 && t.is("la", "el", "the") && r.among(i+1, ownerNouns):
		return nameEnd
	case a.words == 0 && (t.word != nil && !t.word.given && !r.titleWord(i) || negWords.has(t.text)):
		return noName
	case a.words > 0 && r.breaksName(t):
		return noName
	}
	return nameGoesOn
}

// nameMark looks at a sign: a dash or a full stop may end a name, a question none is.
func (r *reader) nameMark(a *bareAnswer, i int) nameStep {
	t := &r.toks[i]
	switch {
	case a.words > 0 && (t.mark('-') && !t.glued || t.mark('(')):
		if a.words < maxNameWords {
			return nameEnd
		}
		return noName
	case a.words > 0 && r.sentenceEnd(i) && !r.initialDot(i) && !r.onlyUsedAfter(i):
		if a.words < maxNameWords && r.smallAfter(i+1) {
			return nameEnd
		}
		return noName
	case t.mark('?'), a.words > 0 && (t.mark(',') && !r.spelledFrom(i+1) || t.mark('.') && i > a.last+1) && !r.onlyUsedAfter(i):
		return noName
	}
	return nameSkip
}

// initialDot: the dot belongs to an initial or a title: "Dana W. Ostby", "Mr. Pell".
func (r *reader) initialDot(i int) bool {
	return r.markAt(i, '.') && (len(r.toks[i-1].text) == 1 || r.titleOrInitial(i-1))
}

func (r *reader) titleWord(i int) bool {
	return r.titleOrInitial(i) && len(r.toks[i].text) > 1 || r.wordAt(i, "j", "x")
}

// breaksName: a word that does not stand within a name.
func (r *reader) breaksName(t *token) bool {
	return t.word != nil && (t.word.filler && !t.is("la", "del", "las", "los", "el") || negWords.has(t.text)) ||
		nameBreakers.has(t.text)
}

// turned reads "Morrow, Tess".
func (r *reader) turned(first, comma int) bool {
	if r.among(first, neverTurned) || comma+2 != len(r.toks) || r.toks[comma+1].kind != wordToken || r.toks[comma+1].used ||
		r.toks[comma+1].word != nil && !r.toks[comma+1].word.given || r.toks[comma+1].word == nil && comma < first+3 || r.toks[first].word != nil && r.toks[first].word.given {
		return false
	}
	name := properCase(r.said(comma+1, comma+1)) + " " + properCase(r.said(first, comma-1))
	r.name(first, comma+1)
	r.fact(fitcheck.TopicName, 0, fitcheck.Text(name), first, comma+1)
	return true
}

// smallAfter: nothing but small talk and places follow.
func (r *reader) smallAfter(i int) bool {
	for i < len(r.toks) {
		if end := r.smallTalkAt(i); end > i {
			i = end
			continue
		}
		if r.toks[i].kind != markToken && !r.toks[i].used && !r.wordAt(i, "you", "u", "too") {
			return false
		}
		i++
	}
	return true
}

// spelledFrom: "K-R-Z-Y": a word spelled out.
func (r *reader) spelledFrom(i int) bool {
	for k := 0; k < 3; k++ {
		if i+2*k >= len(r.toks) || r.toks[i+2*k].kind != wordToken || len(r.toks[i+2*k].text) != 1 || k < 2 && !r.markAt(i+2*k+1, '-') {
			return false
		}
	}
	return true
}

// leadWord: small words before a bare name: "it's Dana", "sure, Dana".
func (r *reader) leadWord(i int) bool {
	if r.wordAt(i, "me") && i == 0 && (r.wordAt(i+1, "its", "this") || r.markAt(i+1, ',')) {
		return true // "me its dottie again"
	}
	if r.among(i, nameHums) && i+1 < len(r.toks) && (r.givenAt(i+1) || r.toks[i+1].kind == markToken || r.toks[i+1].kind == wordToken && r.toks[i+1].word == nil) {
		return true // "Pues Lalo, así me conocen"
	}
	if r.wordAt(i, "for", "under") && r.wordAt(i-1, "its", "is", "put", "thats", "it") {
		return true // "it's for Grace and Bill"
	}
	return r.among(i, beforeBareName)
}

func (r *reader) onlyUsedAfter(i int) bool {
	for i++; i < len(r.toks); i++ {
		if !r.toks[i].used && r.toks[i].kind != markToken {
			return false
		}
	}
	return true
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
		if h.first != h.last || !r.toks[h.first].word.given || next >= len(r.toks) || r.toks[next].kind != wordToken || !r.properName(next) {
			return true
		}
	}
	return false
}
