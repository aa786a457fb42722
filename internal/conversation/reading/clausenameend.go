package reading

import "example.com/intake-bot/internal/fitcheck"

// Where a name goes on and where it ends.

var (
	// afterName are words that people put after a name, and that are none.
	afterName = wordsOf(`como aunque porque because like since lol haha jaja lmao honestly para pa everybody
		everyone people most folks returning soy tengo necesito necesitamos ocupo quiero busco llamo escribo hablo
		vivimos somos pero le decimos but here again speaking writing calling texting looking from in at with wants want
		needs need is was are am will can said says who zip zipcode codigo postal cp area and or the a for to on my we i
		it its itd im this that thanks thank please de y en con desde let duena dueno encargada encargado owner manager
		town city state phone cell number email address same now today tomorrow yes no ok okay sir maam if so then when
		how what where why cuanto cuanta sorry perdon ships ship estoy vivo estamos antiguo antigua viejo vieja metalico
		do does did has have had would could should got get about of by not just only also over under out up down fine`)
	nameParticles    = wordsOf(`de la del los van der von st`)
	afterAskedName   = wordsOf(`itd itll estoy vivo ships estamos`)
	afterOwnName     = wordsOf(`here speaking zip zipcode codigo cp again`)
	spellingArticles = wordsOf(`a an the una two one`)
	afterOutOver     = wordsOf(`here in at near by of`)
)

// nameFills reads a name from a given name on, and says whether its clause ends there.
func (r *reader) nameFills(i int) (last int, ok bool) {
	if !r.givenAt(i) || r.toks[i].used || r.artPlace(i) {
		return 0, false
	}
	words := 1
	for last = i; words <= maxNameWords; words++ {
		next := r.namePart(last)
		if next == last {
			break
		}
		last = next
	}
	alsoWord := r.wordAt(i, "will") || r.wordAt(i, "van", "art") && r.asked(fitcheck.TopicUse)
	if alsoWord && last == i && !r.nameOver(i+1) {
		return 0, false
	}
	return last, words <= maxNameWords && r.nameOver(last+1)
}

// namePart is where a name goes on after token i, i where it does not.
func (r *reader) namePart(i int) int {
	j := i + 1
	switch {
	case r.markAt(j, '.') && r.toks[j].glued && (len(r.toks[i].text) == 1 || r.wordAt(i, "st")) && r.surnameAt(j+1):
		return j + 1
	case r.markAt(j, '-') && r.toks[j].glued && r.surnameAt(j+1) && r.toks[j+1].glued:
		return j + 1
	case (r.wordAt(j, "and", "y", "e", "n") || r.markAt(j, '&')) && r.secondPerson(j+1):
		return j + 1
	case r.among(j, nameParticles) && r.surnameAt(j+1):
		return j + 1
	case r.surnameAt(j):
		return j
	}
	return i
}

// secondPerson: "Grace and Bill": a second given name after an "and".
func (r *reader) secondPerson(i int) bool {
	return r.givenAt(i) || r.asked(fitcheck.TopicName) && r.strangeName(i)
}

// strangeName: "Ángel y Milagros Tovar": a word that no list has, and one after it that may
// be the family's, or nothing.
func (r *reader) strangeName(i int) bool {
	if !r.unknownWord(i) || r.toks[i].used || len(r.toks[i].text) < 3 {
		return false
	}
	return r.stopAt(i+1) || r.surname(i+1) && r.nameOver(i+2)
}

// surnameAt: the token may be a family's name: any word but the small ones and those
// that people put after a name.
func (r *reader) surnameAt(i int) bool {
	if i >= len(r.toks) || r.toks[i].kind != wordToken || r.toks[i].used || r.churchWord(i) {
		return false
	}
	t := &r.toks[i]
	if len(t.text) == 1 && (r.markAt(i+1, '/') || t.is("w") && r.wordAt(i+1, "the", "my", "our", "a", "your")) {
		return false // "c/o", "Toya w the HOA"
	}
	if afterName.has(t.text) {
		return false
	}
	if t.word == nil || t.word.given || t.is("st") {
		return true
	}
	if t.word.filler || negWords.has(t.text) || t.word.number.kind != notNumber && !t.is("price") {
		return false
	}
	return r.smallTalkAt(i) == i || t.is("good") && r.smallTalkAt(i) == i+1
}

// nameOver: what stands at the token is no more of the name or of its sentence.
func (r *reader) nameOver(i int) bool {
	if i >= len(r.toks) || r.toks[i].used {
		return true
	}
	if r.toks[i].kind == markToken {
		return !r.markAt(i, '?') && !r.markAt(i, '\'') && !(r.markAt(i, '-') && r.toks[i].glued)
	}
	if r.asked(fitcheck.TopicName) && r.nextAnswer(i) {
		return true
	}
	if len(r.toks[i].text) == 1 && r.markAt(i+1, '/') {
		return true // "c/o"
	}
	if r.among(i, afterOwnName) || r.smallTalkAt(i) > i || r.asideAt(i) {
		return true
	}
	return r.among(i, namePlaceLinks) && i+1 < len(r.toks) && r.toks[i+1].used
}

// nextAnswer: "tom it'd ship to 94601": the name is told, and another answer begins.
func (r *reader) nextAnswer(i int) bool {
	return r.among(i, afterAskedName) || i > 0 && r.wordAt(i, "its", "were", "im", "it", "ill") ||
		r.wordAt(i, "el", "mi", "my", "the") && r.wordAt(i+1, "zip", "codigo", "cp", "town")
}

// asideAt: words with which people go on after their name: "out here in Burlington",
// "let me know".
func (r *reader) asideAt(i int) bool {
	switch {
	case r.wordAt(i, "if"): // "Walter Zielinski if its for the invoice"
		return true
	case r.wordAt(i, "a"): // "a sus órdenes"
		return r.wordAt(i+1, "sus", "tus")
	case r.wordAt(i, "para"):
		return r.wordAt(i+1, "servirle", "servirles", "servir")
	case r.wordAt(i, "w"):
		return r.wordAt(i+1, "the", "my", "our")
	case r.wordAt(i, "out", "over", "down", "up"):
		return r.among(i+1, afterOutOver)
	case r.wordAt(i, "let"):
		return r.wordAt(i+1, "me", "us")
	}
	return r.saysHowSpelled(i)
}

// saysHowSpelled: words that tell how a name is written: "Gene like the jeans", "Katherine with a K".
func (r *reader) saysHowSpelled(i int) bool {
	switch {
	case r.wordAt(i, "like"):
		return r.wordAt(i+1, "the", "in")
	case r.wordAt(i, "as"):
		return r.wordAt(i+1, "in")
	case r.wordAt(i, "como"): // "Pedro Infante como el cantante"
		return r.wordAt(i+1, "el", "la")
	case r.wordAt(i, "short"):
		return r.wordAt(i+1, "for")
	case r.wordAt(i, "not"): // "Stuart not Stewart"
		return r.asked(fitcheck.TopicName) && i+2 == len(r.toks)
	case r.wordAt(i, "with", "con") && r.among(i+1, spellingArticles) && i+2 < len(r.toks):
		return len(r.toks[i+2].text) == 1 || r.wordAt(i+2, "letter", "silent")
	}
	return false
}
