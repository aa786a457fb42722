package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// A name in a hurried line without signs, told by its parts: a run of one to three words of which
// nothing else was made, the first one a usual given name, at the end of the line ("metal frame caulked
// a dozen times and still leaks lonnie"), at its start before what is wrong ("tom brill leaking
// skylight"), or beside a place or a way to reach somebody ("ph 360-555-0177 oleg vashchenko cracked
// bubble"). Words that lead to somebody else ("ask my son ted") are none of the writer's.

var possessives = wordsOf(`my our his her their the mi su nuestro nuestra el la`)

// lineName takes such a name, the one at the end before the others.
func (r *reader) lineName() bool {
	if r.asked(fitcheck.TopicConfirm) || len(r.toks) < 3 ||
		r.wordsIn(0, len(r.toks), "last", "apellido") && r.wordsIn(0, len(r.toks), "name", "apellido") ||
		r.out.Language != "en" && r.out.Language != "es" {
		return false
	}
	found, sure := [2]int{-1, -1}, 0
	for i := 0; i < len(r.toks); i++ {
		last := r.nameRun(i)
		if last < i {
			continue
		}
		if s := r.lineSpot(i, last); s > sure {
			found, sure = [2]int{i, last}, s
		}
		i = last
	}
	if sure == 0 {
		return false
	}
	r.nameFact(found[0], found[1])
	return true
}

// lineSpot says how well the run stands for a name where it is, 0 where it does not.
func (r *reader) lineSpot(first, last int) int {
	lone := first == last
	t := &r.toks[first]
	if lone && len(t.text) < 3 {
		return 0 // "ok ty"
	}
	if r.addressed(first) || r.toldOf(first) || r.artPlace(first) ||
		r.alsoState(first) && lone ||
		lone && ((t.word.common || forenames.has(t.text)) && !r.fromBuilding(first) || lightNames.has(t.text) || r.notByPlace(first)) ||
		r.wordAt(first, "will") || r.wordAt(first, "al") && r.out.Language == "es" ||
		negWords.has(r.toks[max(first-1, 0)].text) || r.townRun(first, last) {
		return 0
	}
	atEnd := r.lineEnds(last + 1)
	beside := r.reachAt(first-1) || r.reachAt(last+1) || !lone && last+1 < len(r.toks) && r.toks[last+1].named
	switch {
	case first == 0 || first == 1 && r.wordAt(0, "hi", "hey", "hello", "hola", "yo"):
		if atEnd || lone && first > 0 || !r.opensLine(last+1, lone) {
			return 0
		}
		return 1
	case !r.mayEndBefore(first, lone):
		return 0
	case atEnd:
		return 3
	case beside && (r.reachAt(last+1) || r.tellsElse(last+1) || r.toks[last+1].named):
		return 2
	}
	return 0
}

// nameRun is the last word of the name that may begin at the token, a lower number where none does.
func (r *reader) nameRun(i int) int {
	if !r.givenAt(i) || r.toks[i].used || covers(r.talk, i) && r.talkCovers(i) || r.tellsElse(i) {
		return i - 1
	}
	last := i
	for last+1 < len(r.toks) && last < i+2 && r.lineSurname(last+1) {
		last++
	}
	return last
}

// lineSurname: the word may be a family's name, or its first letter.
func (r *reader) lineSurname(i int) bool {
	t := &r.toks[i]
	if t.kind != wordToken || t.used || r.tellsElse(i) || r.labelAt[i] >= 0 ||
		covers(r.talk, i) || negWords.has(t.text) || neutral.has(t.text) || r.verbAt(i) ||
		r.churchWord(i) {
		return false
	}
	if len(t.text) == 1 {
		return i+1 == len(r.toks) && !r.wordAt(i, "u", "n", "y", "o", "a", "i")
	}
	return len(t.text) > 1 && (t.word == nil || !t.word.thing) && r.surname(i)
}

// mayEndBefore: what stands before the name is told for itself, and leads to no other person or thing.
func (r *reader) mayEndBefore(first int, lone bool) bool {
	p := first - 1
	if r.wordAt(p, "mr", "mrs", "ms", "miss", "pastor") && p > 0 {
		p, lone = p-1, false
	}
	if r.toks[p].kind != wordToken {
		return true
	}
	if !lone && r.wordAt(p, "it", "its") && r.properName(first+1) {
		return true // "wind did it earl tsosie", "yall its mary jo pruitt"
	}
	if lone && (r.wordAt(p, "thanks", "thx", "ty", "gracias") || p == 0 && r.wordAt(p, "hi", "hey", "hello", "hola", "ok")) ||
		nameLeads.has(r.toks[p].text) || jobWords.has(r.toks[p].text) || r.possessed(p) {
		return false
	}
	return r.explained(p) ||
		!lone && !r.toks[first].word.common && !forenames.has(r.toks[first].text) && r.toks[first+1].word == nil &&
			r.toks[p].word != nil
}

// possessed: "my aunt", "his boss": somebody who is another's.
func (r *reader) possessed(i int) bool {
	return r.among(i-1, possessives) && !r.saysUse(i) && !r.tellsElse(i) && r.labelAt[i] < 0
}

// nameLeads are words after which a name is somebody's or something's else.
var nameLeads = wordsOf(`for to from by with w of at in on near and or n y o e the a an my our your his her
	their this that is was are be am it its me us him them you as than like ask call text tell told see meet
	contact email about per via around since last next until till before after every each under over named called
	said says says thank dr st san santa fort ft mt port lake camp new old north south east west if de del con para
	por en a al el la los las un una mi su es era que como segun`)

// lightNames are given names that are everyday words at the end of a Spanish line: "que entre más luz".
var lightNames = wordsOf(`luz sol mar paz cruz rosa blanca linda alba aurora angel domingo pilar reyes santos
	consuelo perla jade gala clara nieves lluvia dolores mercedes socorro remedios milagros rocio victoria
	concepcion jesus`)

// opensLine: after a name at the start stands what is wrong, how many, where, or the job.
func (r *reader) opensLine(i int, lone bool) bool {
	if i >= len(r.toks) || r.verbAt(i) {
		return false
	}
	t := &r.toks[i]
	switch {
	case r.wordAt(i, "w", "with") && i+1 < len(r.toks) && (r.wholeAt(i+1) > 0 || r.tellsElse(i+1) || r.wordAt(i+1, "a")):
		return true // "ted w/ two hazy domes"
	case r.markAt(i, '/'):
		return false
	case r.fromBuilding(i - 1):
		return true
	case t.named && t.used:
		return !lone
	}
	return r.tellsElse(i) && (!lone || t.kind == numToken && !r.toks[i].used) ||
		r.wholeAt(i) > 0 && i+1 < len(r.toks) && r.tellsElse(i+1)
}

// fromBuilding: "rob at the feed store", "emil for the parish church": behind the name stands where it is.
func (r *reader) fromBuilding(i int) bool {
	return r.wordAt(i+1, "at", "from", "over", "for", "de", "del", "en", "para") && i+3 < len(r.toks) &&
		r.toks[i+2].kind == wordToken && (r.saysUse(i+3) || r.saysUse(i+4) || r.toks[i+2].named)
}

// lineEnds: nothing but signs, thanks, or what has been read as a place or a number follows.
func (r *reader) lineEnds(i int) bool {
	for ; i < len(r.toks); i++ {
		t := &r.toks[i]
		if r.markAt(i, '?') || r.markAt(i, '\'') {
			return false
		}
		if t.kind != markToken && !t.named && !r.reachAt(i) && !r.wordAt(i, "thanks", "thx", "ty", "gracias", "pls", "please", "lol") {
			return false
		}
	}
	return true
}

// reachAt: a phone number, an address, or a ZIP code that was read.
func (r *reader) reachAt(i int) bool {
	if i < 0 || i >= len(r.toks) {
		return false
	}
	t := &r.toks[i]
	return t.kind == phoneToken || t.kind == mailToken || t.kind == numToken && t.used && len(t.text) == 5
}

// townRun: the words are a town's name, or the name alone may be one.
func (r *reader) townRun(first, last int) bool {
	var buf [8]string
	n := place.Scan(r.wordsFrom(first, 4, buf[:]), "")
	return n > last-first && (last > first || r.alsoPlace(first))
}
