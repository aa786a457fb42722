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
	greetedBy = wordsOf(`hi hey hello thanks thx dear hola gracias ok morning afternoon evening you`)
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
		if r.afterIntroName(n, asked) {
			return
		}
	}
	for i := range r.toks {
		if !r.opensClause(i) || r.addressed(i) {
			continue
		}
		if last, ok := r.nameFills(i); ok && r.namesWriter(i, last, asked) {
			r.nameFact(i, last)
			return
		}
	}
	r.listName()
}

// afterIntroName reads the name behind words of introduction; true where no other name is to be looked for.
func (r *reader) afterIntroName(n int, asked bool) bool {
	h := &r.intros[n]
	v, _ := h.has("intro")
	if v != "name" && v != "im" && (v != "ask" || !asked && !r.toBePut(h)) || r.deniedName(h) {
		return false
	}
	if v == "name" && (r.ofThing(h) || r.nameByParts(n)) {
		return true // "why do you need my name austin"
	}
	i := r.afterIntro(h.last + 1)
	last, ok := r.nameFills(i)
	if !ok || v == "im" && r.soft(h.last+1) {
		return false
	}
	r.nameFact(i, last)
	return true
}

// nameByParts: "name is Duane, last name Fitzhugh", "my name is Glass, Peter Glass", "name: Morrow, Tess".
func (r *reader) nameByParts(n int) bool {
	next := r.intros[n].last + 1
	if r.lastNext(n) && r.firstAndLast(n) {
		return true
	}
	if first, last, ok := r.surnameFirst(next); ok {
		r.name(next, next)
		r.nameFact(first, last)
		return true
	}
	i := r.afterIntro(next)
	return i < len(r.toks) && r.markAt(i+1, ',') && r.turned(i, i+1)
}

// namesWriter: a name that fills its clause is the writer's: asked for, or with "here", a place or a
// title beside it.
func (r *reader) namesWriter(i, last int, asked bool) bool {
	switch {
	case asked && !r.talkCovers(i), r.placeAfterName(i, last), last > i && r.doctorBefore(i):
		return true
	case r.wordAt(last+1, "again"):
		return r.wordAt(i-1, "its", "me")
	}
	return r.wordAt(last+1, "here") && r.stopAt(last+2)
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
	return h.last > h.first && r.wordAt(h.last, "put") && r.givenAt(h.last+1) &&
		(r.sentenceEnd(h.first-1) || r.markAt(h.first-1, ','))
}

// listName: a list of answers ends with a name: "… zip: 02906, it's faith".
func (r *reader) listName() {
	from, end, breaks := r.lastPart()
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

// lastPart is from where to where the last part of a list goes, and how many breaks the message has.
func (r *reader) lastPart() (from, end, breaks int) {
	end = len(r.toks) - 1
	for end > 0 && r.toks[end].kind == markToken && !r.markAt(end, '?') {
		end--
	}
	for i := end; i > 0; i-- {
		if r.sentenceEnd(i-1) || r.markAt(i-1, ',') {
			if breaks == 0 {
				from = i
			}
			breaks++
		}
	}
	return from, end, breaks
}

// verbAt: the word tells what somebody did or does. Few family names end as such words do:
// they are listed.
func (r *reader) verbAt(i int) bool {
	text := r.toks[i].text
	if len(text) > 4 && strings.HasSuffix(text, "ed") && !r.among(i, namesLikeVerbs) {
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
		if r.givenAt(k) && r.introducedAt(k) {
			return true
		}
	}
	return false
}

// introducedAt: "its Dana", "this is Dana", "my name is Dana".
func (r *reader) introducedAt(i int) bool {
	if r.wordAt(i-1, "its", "im", "soy", "llamo", "habla") {
		return true
	}
	return r.wordAt(i-1, "is", "am", "me") && r.wordAt(i-2, "this", "it", "i", "names") ||
		r.wordAt(i-1, "is") && r.wordAt(i-2, "name") && r.wordAt(i-3, "my")
}

// surnameFirst: "my name is Glass, Peter Glass": the word is said again after a given name.
func (r *reader) surnameFirst(i int) (first, last int, ok bool) {
	if i+3 >= len(r.toks) || r.toks[i].kind != wordToken || !r.givenAt(i+2) || !r.markAt(i+1, ',') && !r.markAt(i+1, '.') {
		return 0, 0, false
	}
	for last = i + 3; last < len(r.toks) && last < i+6 && r.toks[last].kind == wordToken; last++ {
		if r.toks[last].text == r.toks[i].text {
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
	if !r.givenAt(i) {
		return false
	}
	for k := i - 1; k >= 0; k-- {
		t := &r.toks[k]
		switch {
		case t.mark('&'):
			return false // "Hollis & June Tackett"
		case r.titleAt(k), t.mark('.') && r.titleOrInitial(k-1): // "Pastor Ray Hinkle"
		case t.is("el", "la", "the") && r.titleAt(k+1):
		case r.partsName(k), r.talkEnds(k), t.used:
			return true
		case !t.mark('-') && !t.mark('/') && !r.leadWord(k):
			return false
		}
	}
	return true
}

// titleAt: "pastor", "sister"; no initial.
func (r *reader) titleAt(i int) bool { return r.titleOrInitial(i) && len(r.toks[i].text) > 1 }

// partsName: the sign parts a name from what stands before it.
func (r *reader) partsName(i int) bool {
	t := &r.toks[i]
	return t.kind == markToken && !t.mark('-') && !t.mark('/') && !t.mark('\'')
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

// answeredWith: the words told something else already: "duplex" is no name.
func (r *reader) answeredWith(first, last int) bool {
	for _, w := range r.where {
		if w.first >= first && w.first <= last {
			return true
		}
	}
	return false
}
