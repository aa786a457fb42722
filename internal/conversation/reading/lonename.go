package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

var (
	loneNameLeads = wordsOf(`hi hey hello hola yo morning howdy its it is this`)
	personsBefore = wordsOf(`hi hey hello hola neighbor tenant roofer landlord friend sister brother`)
	toldVerbs     = wordsOf(`wants says said is has had thinks likes needs was will did told quiere dice dijo es`)
	namedPersons  = wordsOf(`wife husband son daughter mother mom dad sister brother assistant secretary`)
	afterLoneName = wordsOf(`btw lol haha thx ty dear hon sweetie sir maam`)
)

// loneName finds a name that stands alone between signs, or beside a place or a way
// to reach somebody: "… whole unit replaced. June Mills 801-555-0150".
func (r *reader) loneName() bool {
	for i := 0; i < len(r.toks); {
		first := i
		for i < len(r.toks) && r.toks[i].kind == wordToken && (!r.toks[i].used || i == first+1 && r.givenAt(first) && r.familyNotTown(first, i)) ||
			i > first && i+1 < len(r.toks) && (r.markAt(i, '&') || r.markAt(i, '-') && r.toks[i].glued || r.saintDot(i)) {
			i++
		}
		for first < i-1 && r.among(first, loneNameLeads) && r.givenAt(first+1) ||
			first < i-2 && r.wordAt(first, "hi", "hey", "hello", "hola") && r.wordAt(first+1, "its", "this", "im") {
			first++ // "hey its kim doyle 98225"
		}
		if last := i - 1; last >= first && r.standsAlone(first, last) {
			if r.wordAt(last, "again", "here") {
				last--
			}
			r.nameFact(first, last)
			return true
		}
		i++
	}
	return false
}

// saintDot: the dot within "Miguel St. Clair".
func (r *reader) saintDot(i int) bool {
	return r.markAt(i, '.') && r.wordAt(i-1, "st", "mr", "mrs", "ms", "dr", "rev", "sr", "sra") &&
		(r.wordAt(i-1, "st") || i < 2 || r.toks[i-2].kind == markToken) && i+1 < len(r.toks) && r.toks[i+1].kind == wordToken
}

// standsAlone says whether the words from first to last, all between two signs, are a name.
func (r *reader) standsAlone(first, last int) bool {
	again := last > first && r.wordAt(last, "again", "here")
	end := last
	if again {
		end--
	}
	if t := first; r.titleOrInitial(t) && len(r.toks[t].text) > 1 && end == t+1 &&
		(r.toks[end].word == nil || r.givenAt(end) && r.markAt(end+1, ',')) && (t == 0 || r.sentenceEnd(t-1)) &&
		(end+1 >= len(r.toks) || r.toks[end+1].kind == markToken) {
		return true // "Ms Petrakis, Oshkosh WI"
	}
	if r.nameBeforeNumber(first, end) || r.titledName(first, end) || r.signedAfterZIP(first, end) {
		return true
	}
	if r.markAt(end+1, '?') && end == first ||
		(end == first || r.verbAt(end)) && r.toldOf(first) || r.artPlace(first) ||
		r.addressed(first) || end-first > 3 || r.toks[first].word == nil ||
		!r.toks[first].word.given || len(r.toks) < 4 {
		return false
	}
	for i := first + 1; i <= end; i++ {
		if r.markAt(i, '&') || r.markAt(i, '-') || r.saintDot(i) || r.wordAt(i, "and") && i < end {
			continue
		}
		if i == end && r.verbAt(i) {
			return false // "Carol wins"
		}
		if !r.surname(i) &&
			!(i == first+1 && i == end && r.toks[i].kind == wordToken && !r.churchWord(i) && r.markAt(end+1, ',') && end+2 < len(r.toks) &&
				r.toks[end+2].used) {
			return false
		}
	}
	if again {
		return true
	}
	if end > first {
		return first > 0 || end+1 < len(r.toks)
	}
	dash := first > 1 && r.markAt(first-1, '-')
	sentenceAlone := (first == 0 || r.sentenceEnd(first-1)) && (end+1 == len(r.toks) || r.sentenceEnd(end+1))
	afterPlace := first > 1 && r.markAt(first-1, ',') && r.toks[first-2].used && (end+1 == len(r.toks) || r.sentenceEnd(end+1))
	if first == 0 && r.markAt(end+1, '-') && !r.toks[end+1].glued && !r.toks[first].word.common {
		return true // "Greg - Mesa roofing - need 12 domes"
	}
	afterPhone := first > 0 && (r.toks[first-1].kind == phoneToken || r.toks[first-1].kind == mailToken) &&
		(end+1 == len(r.toks) || r.sentenceEnd(end+1))
	beforePhone := first > 1 && r.markAt(first-1, ',') && r.markAt(end+1, ',') && end+2 < len(r.toks) &&
		r.toks[end+2].kind == phoneToken && !r.among(first-2, personsBefore) // "his contractor, Vince, 912-555-0144"
	// "… who do I talk to. Ben 530-555-0118"
	beforePhone = beforePhone || sentenceStart(r, first) && end+1 < len(r.toks) && r.toks[end+1].kind == phoneToken
	return (dash || sentenceAlone || afterPlace || afterPhone || beforePhone) && !r.toks[first].word.common
}

// nameBeforeNumber: "Ed, 55805. house", "Tina Bell 98101", "Clem Hostetler, 330-555-0197": a
// name at the start of a sentence or a clause, and right after it a ZIP code or a way to reach
// the person; also "Tina Bell" as all that a first message says.
func (r *reader) nameBeforeNumber(first, end int) bool {
	if first > 0 && r.toks[first-1].kind != markToken && !r.wordAt(first-1, "hi", "hey", "hello", "hola", "its", "is", "this") ||
		end-first > 1 || r.addressed(first) || r.toldOf(first) || r.artPlace(first) {
		return false
	}
	given := r.givenAt(first) && !r.toks[first].word.common && !r.alsoState(first)
	next := end + 1
	for r.markAt(next, ',') || r.markAt(next, '-') {
		next++
	}
	reach := next < len(r.toks) && (r.toks[next].kind == phoneToken || r.toks[next].kind == mailToken)
	zip := next < len(r.toks) && r.toks[next].kind == numToken && r.toks[next].used && len(r.toks[next].text) == 5
	switch {
	case zip && given && r.familyNotTown(first, end):
		return true
	case end > first && !r.surname(end):
		return false
	case zip && end > first && r.wordAt(end, "aqui", "here"):
		return false
	case zip:
		return given && !(end > first && r.toks[end].used)
	case reach:
		return end > first && (given || r.toks[first].word == nil && r.toks[end].word == nil && r.capital(first) && r.capital(end))
	}
	return given && first == 0 && end == 1 && end == len(r.toks)-1 && len(r.Asked) == 0
}

// capital: the word is written with a capital letter.
func (r *reader) capital(i int) bool {
	c := r.Text[r.toks[i].from]
	return c >= 'A' && c <= 'Z'
}

func sentenceStart(r *reader, i int) bool { return i > 0 && r.sentenceEnd(i-1) }

// toldOf: the same name is told of elsewhere: "Carol wants clear. … Carol wins."
func (r *reader) toldOf(i int) bool {
	for k := range r.toks {
		if k != i && r.toks[k].kind == wordToken && r.toks[k].text == r.toks[i].text && r.among(k+1, toldVerbs) {
			return true
		}
	}
	return false
}

// surname: a word that may follow a given name: unknown, another given name, or one
// that is written like a name and no small word.
func (r *reader) surname(i int) bool {
	t := &r.toks[i]
	if t.kind != wordToken || t.used || t.is("island", "islands", "county", "township") {
		return false
	}
	if t.word == nil || t.word.given || t.is("van", "der", "de", "la", "jr", "sr") {
		return !afterName.has(t.text) || t.is("de")
	}
	return !t.word.common && !t.word.filler && t.word.number.kind == notNumber && t.word.unit == noUnit && !t.word.trade
}

// signedName: a last line or last words that are a name after thanks: "Thanks, Hal".
func (r *reader) signedName() bool {
	if r.dashName() {
		return true
	}
	n := len(r.toks)
	for n > 0 && (r.toks[n-1].mark('.') || r.toks[n-1].mark('!') || r.toks[n-1].mark('\n')) {
		n--
	}
	for k := range r.talk {
		h := &r.talk[k]
		if !h.is("small", "thanks") ||
			!(r.markAt(h.last+1, ',') || r.markAt(h.last+1, '\n') || r.markAt(h.last+1, '-') ||
				r.markAt(h.last+2, '-') || r.markAt(h.last+2, '\n')) {
			continue
		}
		i := h.last + 2
		for r.markAt(i, '\n') || r.markAt(i, '-') || r.markAt(i, '!') || r.markAt(i, '.') {
			i++
		}
		first, last, ok := r.nameFrom(i, true)
		if ok && last == n-1 && first > 0 {
			r.nameFact(first, last)
			return true
		}
	}
	return false
}

// dashName: the last line is a dash and a name.
func (r *reader) dashName() bool {
	if len(r.toks) == 0 {
		return false
	}
	from, to := r.lineOf(len(r.toks) - 1)
	if !r.markAt(from, '-') {
		return false
	}
	for r.markAt(from, '-') {
		from++
	}
	first, last, ok := r.nameFrom(from, true)
	if !ok || last != to-1 && !r.onlyUsedAfter(last) || r.toks[first].word == nil || !r.toks[first].word.given {
		return false
	}
	r.nameFact(first, last)
	return true
}

// nameFact records a name as it was written; one in all small or all capital letters
// gets the usual capitals.
func (r *reader) nameFact(first, last int) {
	first, last = r.withoutFirm(first, last)
	if end := r.townInName(first, last); end < last {
		if !r.known(fitcheck.TopicPlace) && !r.doubtful(fitcheck.TopicPlace) {
			r.name(end+1, last)
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, end+1, last)
		}
		last = end
	}
	for last+1 < len(r.toks) && !r.toks[last+1].used && r.firmGoesOn(last+1) {
		last++
	}
	for first < last && r.wordAt(first, "el", "la", "the") && r.titleOrInitial(first+1) {
		first++
	}
	for k := last - 1; k > first; k-- {
		if r.givenAt(first) && r.toks[k].text == r.toks[first].text {
			first = k // "steve um steve kowalski", as it is dictated
		}
	}
	for k := first; k < last; k++ {
		if r.among(k, namedPersons) && k > first && r.toks[k+1].kind == wordToken {
			first = k + 1 // "Bob's wife Noreen"
		}
	}
	for last > first && r.wordAt(last, "de", "del", "la", "y", "and", "e") {
		last-- // "el padre Anselmo de" San José
	}
	for last > first && r.among(last, afterLoneName) {
		last--
	}
	first, last = r.fullerName(first, last)
	first, last = r.withTitle(first, last)
	said := r.said(first, last)
	r.notOfName(first, last)
	r.name(first, last)
	r.fact(fitcheck.TopicName, 0, fitcheck.Text(properCase(said)), first, last)
}

// fullerName: "its Carla, Carla Whitfield", "Lucky. Thats my name lol, Lucky Pruitt": the
// name said again with more of it.
func (r *reader) fullerName(first, last int) (int, int) {
	if first != last || r.toks[first].word != nil && !r.toks[first].word.given && !r.asked(fitcheck.TopicName) {
		return first, last
	}
	for i := 1; i+1 < first; i++ {
		if r.toks[i].text == r.toks[first].text && r.introEnds(i-1) && r.surname(i+1) {
			return i, i + 1 // "my name is Carol Dunn and I live in Boise. Thanks, Carol"
		}
	}
	for i := last + 2; i+1 < len(r.toks) && i < last+12; i++ {
		if r.toks[i].text == r.toks[first].text && r.toks[i-1].kind == markToken && r.wordAt(i+1, "and", "y") && r.givenAt(i+2) {
			if from, to, ok := r.nameFrom(i, true); ok {
				return from, to // "Earl here. Earl and Wilma Fritsch"
			}
		}
		if r.toks[i].text == r.toks[first].text && r.toks[i-1].kind == markToken && r.surname(i+1) {
			return i, i + 1
		}
	}
	for i := last + 2; i+1 < len(r.toks) && i < last+12; i++ {
		if r.toks[i+1].text == r.toks[first].text && (r.givenAt(i) || r.toks[i].kind == wordToken && r.toks[i].word == nil) &&
			r.toks[i-1].kind == markToken {
			return i, i + 1 // "my name is Hutchins with an s, Dale Hutchins"
		}
	}
	return first, last
}

// townInName: a town may follow a whole name without any sign between: "Pilar Blanco
// Columbus". It gives the name's last token without it.
func (r *reader) townInName(first, last int) int {
	for first < last && len(r.toks[first].text) > 1 && r.titleOrInitial(first) {
		first++ // "pastor Delroy Hutchins"
	}
	if last-first < 2 {
		return last
	}
	var buf [8]string
	for i := first; i <= last; i++ {
		if r.toks[i].kind != wordToken || r.wordAt(i, "and", "y", "mc") ||
			len(r.toks[i].text) == 1 ||
			r.wordAt(i, "st", "de", "del", "la", "van", "von") && i > last-2 {
			return last
		}
	}
	for i := first + 1; i <= last; i++ {
		if w := r.toks[i-1].word; i > first+1 && w != nil && w.given {
			continue
		}
		ahead := r.wordsFrom(i, 4, buf[:])
		if len(ahead) > last-i+1 {
			ahead = ahead[:last-i+1]
		}
		if n := place.Scan(ahead, ""); n == last-i+1 && !(n == 1 && familyTowns.has(ahead[0]) && !r.asked(fitcheck.TopicPlace)) &&
			(i > first+1 || n > 1 && r.toks[i].word != nil && r.toks[i].word.common) {
			return i - 1
		}
	}
	return last
}

// familyTowns are families' names that towns bear too: "Luis Rivera Ponce" has two of them.
var familyTowns = wordsOf(`colon ponce leon vega salinas salas valencia cordova cordoba medina toledo luna
	santiago zamora trujillo mora lara seguin avila cruz nogales robles coronado palacios rosales rojas granada
	aguilar cardenas`)

func properCase(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if s != strings.ToLower(s) && (s != strings.ToUpper(s) || len(s) < 4) {
		return s
	}
	b := []rune(strings.ToLower(s))
	start := true
	for i, c := range b {
		if start {
			b[i] = []rune(strings.ToUpper(string(c)))[0]
		}
		start = c == ' ' || c == '-' || c == '.' || (c == '\'' || c == '’') && i == 1
	}
	out := strings.ReplaceAll(string(b), " And ", " and ")
	return strings.ReplaceAll(out, " Y ", " y ")
}

// signedAfterZIP: "Estoy en Hialeah 33012. Yanet Pérez": two words of no other meaning, written as names
// are, end a message after the ZIP code.
func (r *reader) signedAfterZIP(first, end int) bool {
	if end != first+1 || first < 3 || !r.sentenceEnd(first-1) ||
		r.toks[first-2].kind != numToken || !r.toks[first-2].used ||
		len(r.toks[first-2].text) != 5 {
		return false
	}
	for i := first; i <= end; i++ {
		t := &r.toks[i]
		if c := r.Text[t.from]; c < 'A' || c > 'Z' || t.word != nil && !t.word.given {
			return false
		}
	}
	return end+1 == len(r.toks) || end+2 == len(r.toks) && r.toks[end+1].kind == markToken && !r.markAt(end+1, '?')
}
