package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

var (
	shortTitles    = wordsOf(`dr mr mrs ms rev prof`)
	listNameLeads  = wordsOf(`its this im it is soy habla`)
	namesLikeVerbs = wordsOf(`creed speed freed sneed tweed steed ahmed saeed waleed majeed fareed mohamed
		mohammed hamed`)
	tellingVerbs = wordsOf(`did got has had took went told came made said says can sent put cut thinks knows
		up out too calls helps paid pays wins won wants needs likes loves hates agrees decides votes lives owns
		works bought built saw found swears insists asks lied coming going working`)
	givenAsState = wordsOf(`dusty stormy misty clay art may june april summer autumn crystal jade amber van
		rocky ruby marco`)
	greetedBy        = wordsOf(`hi hey hello thanks thx dear hola gracias ok morning afternoon evening you`)
	nameParticles    = wordsOf(`de la del los van der von st`)
	afterAskedName   = wordsOf(`itd itll estoy vivo ships estamos`)
	afterOwnName     = wordsOf(`here speaking zip zipcode codigo cp again`)
	namePlaceLinks   = wordsOf(`from in at of de en near by around`)
	spellingArticles = wordsOf(`a an the una two one`)
	afterOutOver     = wordsOf(`here in at near by of`)
	fromPlaceLinks   = wordsOf(`in from de en near of`)
	recommendVerbs   = wordsOf(`told said says recommended referred suggested mentioned gave sent dijo
		recomendo conto`)
	toldObjects     = wordsOf(`me us you your to that que`)
	townLinks       = wordsOf(`in from near of out over down up here`)
	townDirections  = wordsOf(`out over down up here right back just outside`)
	notGivenByPlace = wordsOf(`will van may june april guy hope chase grant skip art houston dallas austin
		jackson lincoln madison augusta savannah charlotte`)
)

// clauseName reads a given name that fills its clause, with whatever follows it there:
// after words of introduction, before "here", or where the name was asked for. Such a
// name is looked for before its words are looked at otherwise: Mark Glass is no glass.
func (r *reader) clauseName() {
	asked := r.asked(fitcheck.TopicName)
	if asked && (r.turnedAtStart() || r.nameIsFine()) {
		return
	}
	for n := range r.intros {
		h := &r.intros[n]
		v, _ := h.has("intro")
		if v != "name" && v != "im" && (v != "ask" || !asked && !r.toBePut(h)) {
			continue
		}
		if r.deniedName(h) {
			continue
		}
		if v == "name" && r.ofThing(h) {
			return // "why do you need my name austin"
		}
		if v == "name" && r.lastNext(n) && r.firstAndLast(n) {
			return // "name is Duane, last name Fitzhugh"
		}
		if first, last, ok := r.surnameFirst(h.last + 1); ok && v == "name" {
			r.name(h.last+1, h.last+1)
			r.nameFact(first, last)
			return
		}
		if i := r.afterIntro(h.last + 1); v == "name" && r.markAt(i+1, ',') && i < len(r.toks) && r.turned(i, i+1) {
			return
		}
		if last, ok := r.nameFills(r.afterIntro(h.last + 1)); ok && (v != "im" || !r.soft(h.last+1)) {
			r.nameFact(r.afterIntro(h.last+1), last)
			return
		}
	}
	for i := range r.toks {
		last, ok := 0, false
		if r.opensClause(i) && !r.addressed(i) {
			last, ok = r.nameFills(i)
		}
		if ok && (asked && !r.talkCovers(i) || r.placeAfterName(i, last) || last > i && r.doctorBefore(i) || r.wordAt(last+1, "again") && r.wordAt(i-1, "its", "me") || r.wordAt(last+1, "here") && (last+2 >= len(r.toks) || r.toks[last+2].kind == markToken)) {
			r.nameFact(i, last)
			return
		}
	}
	r.listName()
}

// doctorBefore: "Dr. Alan Weiss, Evanston 60201": a short title before first and last name.
func (r *reader) doctorBefore(i int) bool {
	if r.markAt(i-1, '.') {
		i--
	}
	return r.among(i-1, shortTitles)
}

// toBePut: "you can put Pat Hale", also where nobody asked for a name yet.
func (r *reader) toBePut(h *hit) bool {
	return h.last > h.first && r.wordAt(h.last, "put") && (r.sentenceEnd(h.first-1) || r.markAt(h.first-1, ',')) && r.givenAt(h.last+1)
}

// listName: a list of answers ends with a name: "… zip: 02906, it's faith".
func (r *reader) listName() {
	end := len(r.toks) - 1
	for end > 0 && r.toks[end].kind == markToken && !r.markAt(end, '?') {
		end--
	}
	from, breaks := 0, 0
	for i := end; i > 0; i-- {
		if r.sentenceEnd(i-1) || r.markAt(i-1, ',') {
			if breaks == 0 {
				from = i
			}
			breaks++
		}
	}
	said := false
	for r.among(from, listNameLeads) && from < end {
		from, said = from+1, true
	}
	if !r.givenAt(from) || !said && breaks < 3 || from == end && (breaks < 2 || r.alsoPlace(from)) {
		return
	}
	last, ok := r.nameFills(from)
	if !said && (last != from+1 || r.verbAt(last)) {
		return // "Bob measured twice", "Carol wins"
	}
	if !ok || last != end || from == end && (!said || r.alsoState(from)) || r.alsoState(from) && !r.familyName(last) {
		return
	}
	r.nameFact(from, last)
}

// verbAt: the word tells what somebody did or does. Few family names end as such words do:
// they are listed.
func (r *reader) verbAt(i int) bool {
	if text := r.toks[i].text; len(text) > 4 && strings.HasSuffix(text, "ed") && !r.among(i, namesLikeVerbs) {
		return true
	}
	return r.among(i, tellingVerbs)
}

// alsoPlace: "its georgia", where no place was told yet.
func (r *reader) alsoPlace(i int) bool {
	_, state := place.State(r.toks[i].text)
	_, town := place.WellKnown(r.toks[i].text)
	return (state || town) && !r.known(fitcheck.TopicPlace)
}

// alsoState: a given name that also tells how something is, or when: "it's rusty".
func (r *reader) alsoState(i int) bool {
	return r.soft(i) && !r.wordAt(i, "sandy") || r.among(i, givenAsState)
}

// familyName: the word is no other that tells something of a skylight.
func (r *reader) familyName(i int) bool {
	w := r.toks[i].word
	return w == nil || w.given
}

// addressed: "Thanks Mike! its Dana", "hey Tom its Greg": a name after a greeting is whom
// the writer speaks to, where another follows that is the writer's.
func (r *reader) addressed(i int) bool {
	if !r.among(i-1, greetedBy) {
		return false
	}
	for k := i + 2; k < len(r.toks); k++ {
		if r.wordAt(k, "here", "speaking", "from", "aqui") {
			return false // "good morning Linda Park here, …"
		}
		if r.givenAt(k) && (r.wordAt(k-1, "its", "im", "soy", "llamo", "habla") || r.wordAt(k-1, "is", "am", "me") && r.wordAt(k-2, "this", "it", "i", "names") || r.wordAt(k-1, "is") && r.wordAt(k-2, "name") && r.wordAt(k-3, "my")) {
			return true
		}
	}
	return false
}

// surnameFirst: "my name is Glass, Peter Glass": the word is said again after a given name.
func (r *reader) surnameFirst(i int) (first, last int, ok bool) {
	if i+3 >= len(r.toks) || r.toks[i].kind != wordToken || !r.markAt(i+1, ',') && !r.markAt(i+1, '.') {
		return 0, 0, false
	}
	for last = i + 3; last < len(r.toks) && last < i+6 && r.toks[last].kind == wordToken; last++ {
		if r.toks[last].text == r.toks[i].text && r.toks[i+2].word != nil && r.toks[i+2].word.given {
			return i + 2, last, true
		}
	}
	return 0, 0, false
}

// soft: after "I'm" a given name that is also a state of mind: "I'm rusty".
func (r *reader) soft(i int) bool {
	return r.wordAt(i, "rusty", "sunny", "sandy", "will", "frank") && !r.asked(fitcheck.TopicName)
}

func (r *reader) afterIntro(i int) int {
	for r.markAt(i, ':') || r.markAt(i, '-') || r.markAt(i, ',') || r.wordAt(i, "is", "es", "its", "um", "uh") {
		i++
	}
	return i
}

// opensClause: nothing but greetings and small words stand before the token in its clause.
func (r *reader) opensClause(i int) bool {
	if i < 0 || i >= len(r.toks) || r.toks[i].kind != wordToken || r.toks[i].word == nil || !r.toks[i].word.given {
		return false
	}
	for k := i - 1; k >= 0; k-- {
		switch {
		case r.toks[k].mark('&'):
			return false // "Hollis & June Tackett"
		case r.titleOrInitial(k) && len(r.toks[k].text) > 1, r.toks[k].mark('.') && k > 0 && r.titleOrInitial(k-1): // "Pastor Ray Hinkle"
		case r.wordAt(k, "el", "la", "the") && r.titleOrInitial(k+1) && len(r.toks[k+1].text) > 1:
		case r.toks[k].kind == markToken && !r.toks[k].mark('-') && !r.toks[k].mark('/') && !r.toks[k].mark('\''), r.talkEnds(k), r.toks[k].used:
			return true
		case !r.leadWord(k) && !r.toks[k].mark('-') && !r.toks[k].mark('/'):
			return false
		}
	}
	return true
}

// talkCovers: the word is part of a refusal or a yes of more words: "skip it", "will do".
func (r *reader) talkCovers(i int) bool {
	for n := range r.talk {
		h := &r.talk[n]
		if h.first <= i && i <= h.last && (h.last > h.first || h.is("say", "refuse")) {
			return true
		}
	}
	return false
}

// nameFills reads a name from a given name on, and says whether its clause ends there.
func (r *reader) nameFills(i int) (last int, ok bool) {
	if i >= len(r.toks) || r.toks[i].kind != wordToken || r.toks[i].used || r.toks[i].word == nil || !r.toks[i].word.given || r.artPlace(i) {
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
	if r.wordAt(i, "van", "will", "art") && last == i && (r.asked(fitcheck.TopicUse) || r.wordAt(i, "will")) && !r.nameOver(i+1) {
		return 0, false
	}
	return last, words <= maxNameWords && r.nameOver(last+1) && !(last == i && r.known(fitcheck.TopicPlace) && r.toks[i].used)
}

// namePart is where a name goes on after token i, i where it does not.
func (r *reader) namePart(i int) int {
	j := i + 1
	switch {
	case r.markAt(j, '.') && r.toks[j].glued && (len(r.toks[i].text) == 1 || r.wordAt(i, "st")) && r.surnameAt(j+1):
		return j + 1
	case r.markAt(j, '-') && r.toks[j].glued && r.surnameAt(j+1) && r.toks[j+1].glued:
		return j + 1
	case (r.wordAt(j, "and", "y", "e", "n") || r.markAt(j, '&')) && (r.givenAt(j+1) || r.asked(fitcheck.TopicName) && r.strangeName(j+1)):
		return j + 1
	case r.among(j, nameParticles) && r.surnameAt(j+1):
		return j + 1
	case r.surnameAt(j):
		return j
	}
	return i
}

// strangeName: "Ángel y Milagros Tovar": a word that no list has, and one after it that may
// be the family's, or nothing.
func (r *reader) strangeName(i int) bool {
	return i < len(r.toks) && r.toks[i].kind == wordToken && !r.toks[i].used && r.toks[i].word == nil && len(r.toks[i].text) > 2 &&
		(i+1 >= len(r.toks) || r.toks[i+1].kind == markToken || r.surname(i+1) && r.nameOver(i+2))
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
	if t.word == nil || t.word.given || t.is("st") {
		return !afterName.has(t.text)
	}
	return !afterName.has(t.text) && !t.word.filler && !negWords.has(t.text) && (t.word.number.kind == notNumber || t.is("price")) && (r.smallTalkAt(i) == i || t.is("good") && r.smallTalkAt(i) == i+1)
}

// nameOver: what stands at the token is no more of the name or of its sentence.
func (r *reader) nameOver(i int) bool {
	if i >= len(r.toks) || r.toks[i].used {
		return true
	}
	if r.toks[i].kind == markToken {
		return !r.markAt(i, '?') && !r.markAt(i, '\'') && !(r.markAt(i, '-') && r.toks[i].glued)
	}
	if r.asked(fitcheck.TopicName) && (r.among(i, afterAskedName) || r.wordAt(i, "its", "were", "im", "it", "ill") && i > 0 || r.wordAt(i, "el", "mi", "my", "the") && r.wordAt(i+1, "zip", "codigo", "cp", "town")) {
		return true // "tom it'd ship to 94601"
	}
	if len(r.toks[i].text) == 1 && r.markAt(i+1, '/') {
		return true // "c/o"
	}
	if r.among(i, afterOwnName) || r.smallTalkAt(i) > i || r.asideAt(i) {
		return true
	}
	return r.among(i, namePlaceLinks) && i+1 < len(r.toks) && r.toks[i+1].used
}

// asideAt: words with which people go on after their name: "out here in Burlington",
// "let me know".
func (r *reader) asideAt(i int) bool {
	if r.wordAt(i, "if") || r.wordAt(i, "a") && r.wordAt(i+1, "sus", "tus") || r.wordAt(i, "para") && r.wordAt(i+1, "servirle", "servirles", "servir") {
		return true // "Walter Zielinski if its for the invoice", "a sus órdenes"
	}
	if r.wordAt(i, "not") && r.asked(fitcheck.TopicName) && i+2 == len(r.toks) || r.wordAt(i, "w") && r.wordAt(i+1, "the", "my", "our") || r.wordAt(i, "como") && r.wordAt(i+1, "el", "la") {
		return true // "Stuart not Stewart", "Pedro Infante como el cantante"
	}
	if r.wordAt(i, "like") && r.wordAt(i+1, "the", "in") || r.wordAt(i, "as") && r.wordAt(i+1, "in") || r.wordAt(i, "with", "con") && r.among(i+1, spellingArticles) && i+2 < len(r.toks) && (len(r.toks[i+2].text) == 1 || r.wordAt(i+2, "letter", "silent")) || r.wordAt(i, "short") && r.wordAt(i+1, "for") {
		return true // "Gene like the jeans", "Katherine with a K"
	}
	return r.wordAt(i, "out", "over", "down", "up") && r.among(i+1, afterOutOver) || r.wordAt(i, "let") && r.wordAt(i+1, "me", "us")
}

var afterName = wordsOf(`como aunque porque because like since lol haha jaja lmao honestly para pa everybody everyone people most folks returning soy tengo necesito necesitamos ocupo quiero busco llamo escribo hablo vivimos somos pero le decimos but here again speaking writing calling texting looking from in at with wants want needs need is was are am will can said says who
	zip zipcode codigo postal cp area and or but the a for to on my we i it its itd im this that thanks thank please de y en con desde
	let duena dueno encargada encargado owner manager town city state phone cell number email address same now today tomorrow yes no ok okay lol sir maam if because so then when how what where why cuanto cuanta
	sorry perdon ships ship estoy vivo estamos antiguo antigua viejo vieja metalico do does did has have had would could should got get about on of by not just only also over under out up down fine`)

// answeredWith: the words told something else already: "duplex" is no name.
func (r *reader) answeredWith(first, last int) bool {
	for _, w := range r.where {
		if w.first >= first && w.first <= last {
			return true
		}
	}
	return false
}

// placeAfterName: "ann in Dayton", "Mike, Salem OR, dome is cracked": a given name that
// opens the message with a place behind it.
func (r *reader) placeAfterName(i, last int) bool {
	if r.notByPlace(i) || r.toldBy(r.afterUsed(last+1)) || r.among(last, countNouns) {
		return false // also "wanda tuttle leaking skylight in boise"
	}
	if at := r.townLead(last + 1); at > last+1 {
		last = at - 2
	}
	if r.among(last+1, fromPlaceLinks) {
		return last+2 < len(r.toks) && (r.toks[last+2].named || r.toks[last+2].used && (r.doubtful(fitcheck.TopicPlace) || r.known(fitcheck.TopicPlace)))
	}
	return (r.markAt(last+1, ',') || r.markAt(last+1, '.') || r.markAt(last+1, '-')) && last+2 < len(r.toks) && r.toks[last+2].named && (i == 0 || r.sentenceEnd(i-1))
}

// toldBy: what stands before the token is who told the writer something: "Sam Weller over in Boise
// told me about you".
func (r *reader) toldBy(i int) bool {
	return r.among(i, recommendVerbs) && r.among(i+1, toldObjects)
}

// afterUsed is the first token from i on that is not told of yet, past what leads to it.
func (r *reader) afterUsed(i int) int {
	for i < len(r.toks) && (r.toks[i].used || r.among(i, townLinks)) {
		i++
	}
	return i
}

// townLead skips what people say of the way to their town: "out of Tulsa", "over here in Boise", "down
// in Savannah", "up by Duluth". It gives the token after the last such word, i where there is none.
func (r *reader) townLead(i int) int {
	k := i
	for r.among(k, townDirections) || r.wordAt(k, "aca", "aqui", "alla") {
		k++
	}
	if r.among(k, namePlaceLinks) {
		return k + 1
	}
	return i
}

// notByPlace: a given name that is likelier another word, also beside a place.
func (r *reader) notByPlace(i int) bool {
	return r.among(i, notGivenByPlace)
}
