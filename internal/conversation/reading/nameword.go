package reading

// What may be a word of a name, and what surely is none.

var (
	titles = wordsOf(`mr mrs ms dr jr sr st sra sgt pastor rev reverend father fr sister rabbi hno hna bishop msgt
		tsgt ssgt maj major cpl pvt pfc cmdr capt captain col lt officer chief judge prof professor coach deacon don
		dona senor senora padre`)
	particles      = wordsOf(`van der von la de del st mc mac jr sr sra le el los`)
	afterNameWords = wordsOf(`sorry perdon from in at with and here down up calling texting i we my of again im on
		over de y en desde para pa you returning about regarding checking following everybody everyone will who
		writing looking the out asking but btw tengo vivo con would`)
)

// nameWord says whether a token can be a word of a name.
func (r *reader) nameWord(i int, strict bool) bool {
	if i >= len(r.toks) {
		return false
	}
	t := &r.toks[i]
	if t.is("btw", "lol", "haha", "jaja", "lmao", "everybody", "everyone") ||
		t.kind != wordToken || t.used || len(t.text) == 1 && r.markAt(i+1, '/') {
		return false
	}
	if t.word == nil || t.word.given || r.titleOrInitial(i) && len(t.text) > 1 || t.among(particles) {
		return true
	}
	if t.word.common || t.word.unit != noUnit {
		return false
	}
	if t.word.filler || t.word.number.kind != notNumber {
		return false
	}
	return !strict || r.properBefore(i)
}

// properBefore: the word before is a given name, so this is likely the family's.
func (r *reader) properBefore(i int) bool {
	return i > 0 && r.toks[i-1].kind == wordToken && (r.toks[i-1].word == nil || r.toks[i-1].word.given)
}

func (r *reader) properName(i int) bool {
	if i >= len(r.toks) {
		return false
	}
	t := &r.toks[i]
	return t.word == nil || t.word.given
}

// likelyName: at least one word of it is a given name or none that a list knows.
func (r *reader) likelyName(first, last int, strict bool) bool {
	for i := first; i <= last; i++ {
		t := &r.toks[i]
		if t.kind == wordToken && (t.word == nil || t.word.given) {
			return true
		}
	}
	return !strict
}

// nameEnds: after "I'm …" a name is followed by the end, a sign, or words like "from".
func (r *reader) nameEnds(i int) bool {
	if i >= len(r.toks) || r.toks[i].kind != wordToken {
		return true
	}
	if r.wordAt(i, "la", "el", "los") && r.wordAt(i+1, "de", "del", "que") {
		return true // "soy Vero la del salón"
	}
	if r.wordAt(i, "de", "del") && (r.saysUse(i+1) || r.saysUse(i+2)) {
		return true // "habla Refugio Armendáriz de la iglesia"
	}
	return r.toks[i].used || r.wordAt(i, "a") && r.wordAt(i+1, "la", "sus", "su", "tus") || r.among(i, afterNameWords)
}

func (r *reader) titleOrInitial(i int) bool {
	if i < 0 || i >= len(r.toks) {
		return false
	}
	return len(r.toks[i].text) == 1 || r.among(i, titles)
}

// GivenName says whether the first word of a text is a given name that is no everyday word.
func GivenName(text string) bool {
	toks := lex(text)
	return len(toks) > 0 && toks[0].kind == wordToken && toks[0].word != nil && toks[0].word.given && !toks[0].word.common
}
