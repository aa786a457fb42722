package reading

// The words of an answer that may be nothing but a name, and those that come before one.

var (
	nameBreakers   = wordsOf(`with w will wants can here said in is from and y on at en needs again or o`)
	nameHums       = wordsOf(`pues bueno este mire mira oiga aja alright uh ah so`)
	beforeBareName = wordsOf(`its it is thats names sure yes yeah ok okay well um es si claro oh sorry oops
		perdon disculpe disculpa hi hello hey name just solo nomas con`)
)

// nameBegins: a word may be the first of a name.
func (r *reader) nameBegins(i int) nameStep {
	t := &r.toks[i]
	switch {
	case r.smallTalkAt(i) > i, r.leadWord(i):
		return nameSkip
	case t.word != nil && !t.word.given && !r.titleWord(i), negWords.has(t.text):
		return noName
	}
	return nameGoesOn
}

// lettersApart: "Tiffany Raske R A S K E": the name is spelled out behind it.
func (r *reader) lettersApart(i int) bool {
	if i+2 >= len(r.toks) {
		return false
	}
	for k := i; k < i+3; k++ {
		if r.toks[k].kind != wordToken || len(r.toks[k].text) != 1 {
			return false
		}
	}
	return true
}

// asksAfterName: "roland white how much", "pedro pero cuanto cuesta".
func (r *reader) asksAfterName(i int) bool {
	if r.wordAt(i, "but", "and", "pero", "y") {
		return r.among(i+1, asking)
	}
	if r.wordAt(i, "how") { // also a family's name
		return i+1 < len(r.toks) && (r.toks[i+1].kind == wordToken || r.markAt(i+1, '?'))
	}
	return r.among(i, asking)
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
	if nameBreakers.has(t.text) {
		return true
	}
	return t.word != nil && (t.word.filler && !t.is("la", "del", "las", "los", "el") || negWords.has(t.text))
}

// spelledFrom: "K-R-Z-Y": a word spelled out.
func (r *reader) spelledFrom(i int) bool {
	for k := range 3 {
		at := i + 2*k
		if at >= len(r.toks) || r.toks[at].kind != wordToken || len(r.toks[at].text) != 1 {
			return false
		}
		if k < 2 && !r.markAt(at+1, '-') {
			return false
		}
	}
	return true
}

// leadWord: small words before a bare name: "it's Dana", "sure, Dana".
func (r *reader) leadWord(i int) bool {
	switch {
	case r.among(i, beforeBareName):
		return true
	case r.wordAt(i, "me"): // "me its dottie again"
		return i == 0 && (r.wordAt(i+1, "its", "this") || r.markAt(i+1, ','))
	case r.among(i, nameHums): // "Pues Lalo, así me conocen"
		return i+1 < len(r.toks) && (r.givenAt(i+1) || r.toks[i+1].kind == markToken || r.unknownWord(i+1))
	case r.wordAt(i, "for", "under"): // "it's for Grace and Bill"
		return r.wordAt(i-1, "its", "is", "put", "thats", "it")
	}
	return false
}

// unknownWord: a word that no list has.
func (r *reader) unknownWord(i int) bool {
	return i < len(r.toks) && r.toks[i].kind == wordToken && r.toks[i].word == nil
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

func (r *reader) onlyUsedAfter(i int) bool {
	for i++; i < len(r.toks); i++ {
		if !r.toks[i].used && r.toks[i].kind != markToken {
			return false
		}
	}
	return true
}

func (r *reader) smallTalkAt(i int) int {
	for n := range r.talk {
		h := &r.talk[n]
		if h.first != i {
			continue
		}
		if h.has1("small") || h.is("say", "yes") && !r.givenAt(i) {
			return h.last + 1
		}
	}
	return i
}
