package reading

// Numbers of a date, a clock or a year.

var (
	timeLinks = wordsOf(`free since on by before until till after from around day monday tuesday wednesday thursday
		friday saturday sunday el desde date dated antes`)
	dayWords = wordsOf(`off home work call saturday sunday monday tuesday wednesday thursday friday today tomorrow
		tonight done meet leave back`)
	datedVerbs = wordsOf(`built made put installed done bought moved replaced redone hammered roofed since up came`)
	yearLinks  = wordsOf(`in since from before after around circa year en desde del de of a the about until early
		late mid`)
	nearATime = wordsOf(`tomorrow today tonight later morning afternoon evening noon monday tuesday wednesday
		thursday friday saturday sunday home free available oclock call give work manana tarde lunes martes miercoles
		jueves viernes sabado domingo photos pictures pics`)
	timePlans = wordsOf(`ill be there back will go going get coming i`)
)

// date: 6/12/2004, june 12, 12 june; a day and month with words that speak of time.
func (r *reader) date(i int) bool {
	if r.among(i-1, monthWords) && i > 0 && r.toks[i].whole <= 31 ||
		r.among(i+1, monthWords) && !r.wordAt(i+1, "may", "mar", "march") {
		r.use(i, i)
		return true
	}
	if r.wordAt(i+1, "de") && r.among(i+2, monthWords) && r.toks[i].whole <= 31 {
		r.use(i, i+2) // "para el 15 de marzo"
		return true
	}
	if !(r.markAt(i+1, '/') || r.markAt(i+1, '-')) || i+2 >= len(r.toks) || r.toks[i+2].kind != numToken || !r.toks[i+2].glued {
		return false
	}
	sep := r.toks[i+1].text[0]
	if r.markAt(i+3, sep) && i+4 < len(r.toks) && r.toks[i+4].kind == numToken && r.toks[i+4].glued && r.toks[i].whole <= 31 &&
		r.toks[i+2].whole <= 31 {
		r.use(i, i+4)
		return true
	}
	if sep == '/' && r.toks[i].whole <= 12 && r.toks[i+2].whole <= 31 && r.timeWord(i-1) &&
		(!tapePart(r.toks[i+2].whole) || r.wordAt(i-1, "on", "since", "before", "until") && r.unitAt(i+3) == noUnit) {
		r.use(i, i+2)
		return true
	}
	if sep == '/' && r.toks[i].whole <= 12 && r.toks[i+2].whole <= 31 && !tapePart(r.toks[i+2].whole) && r.toks[i+2].whole != 12 &&
		r.wordAt(i+3, "before", "after", "or", "at", "by", "when") && !r.wordAt(i-1, "and") {
		r.use(i, i+2)
		return true
	}
	if sep == '/' && (r.toks[i].whole == 24 && r.toks[i+2].whole == 7 || r.toks[i].whole == 50 && r.toks[i+2].whole == 50) {
		r.use(i, i+2)
		return true
	}
	return false
}

// timeWord: a word before a number that makes it a day.
func (r *reader) timeWord(i int) bool {
	return r.among(i, timeLinks)
}

func (r *reader) clock(i int) bool {
	if r.wordAt(i-1, "las", "la") && r.wordAt(i-2, "a", "son", "es", "hasta", "desde", "tipo") { // "son las 4 y media"
		last := i
		if r.wordAt(i+1, "y") {
			last = i + 2
		}
		r.use(i, min(last, len(r.toks)-1))
		return true
	}
	if r.markAt(i+1, ':') && r.toks[i+1].glued && i+2 < len(r.toks) && r.toks[i+2].kind == numToken && r.toks[i+2].glued &&
		len(r.toks[i+2].text) == 2 && r.toks[i].whole <= 24 && r.toks[i+2].whole != 12 {
		r.use(i, i+2)
		return true
	}
	if (r.wordAt(i-1, "til", "till", "until") || r.wordAt(i-1, "at") && r.dayNamed(i)) && r.toks[i].whole <= 12 &&
		i+1 < len(r.toks) && r.toks[i+1].kind == numToken && len(r.toks[i+1].text) == 2 && r.toks[i+1].whole%15 == 0 &&
		r.toks[i+1].whole < 60 &&
		!r.by(i+2) && !r.markAt(i+2, '/') && r.unitAt(i+2) == noUnit {
		r.use(i, i+1) // "off at 2 30"
		return true
	}
	return false
}

// dayNamed: the sentence tells when somebody comes or goes.
func (r *reader) dayNamed(i int) bool {
	from, to := r.sentence(i)
	return r.anyOf(from, to+1, dayWords)
}

// year: four digits after words that speak of time.
func (r *reader) year(i int) bool {
	t := &r.toks[i]
	if t.dec == 0 && len(t.text) == 2 && t.whole >= 50 && r.wordAt(i-1, "in", "since") && i > 1 &&
		r.anyOf(r.sentenceFirst(i), i, datedVerbs) && r.toks[i-2].kind == wordToken && r.unitAt(i-2) == noUnit &&
		r.numberAt(i-2).kind == notNumber &&
		(i+1 >= len(r.toks) || r.toks[i+1].kind == markToken && !r.markAt(i+1, '"') && !r.markAt(i+1, '/') && !r.markAt(i+1, '-')) {
		r.use(i, i) // "hammered it together myself in 94"
		return true
	}
	if t.dec > 0 || len(t.text) != 4 || t.whole < 1900 || t.whole > 2099 || r.unitAt(i+1) != noUnit || r.by(i+1) || r.by(i-1) {
		return false
	}
	if r.among(i-1, yearLinks) || !r.asked(r.askedSize()) {
		r.use(i, i)
		return true
	}
	return false
}

// timeNear: the clause speaks of time, so a bare number in it is an hour: "I'll be up
// there at 12", "be there in 10", "tomorrow between 8 and 10".
func (r *reader) timeNear(m *measure) bool {
	first, last := r.sentence(m.first)
	for i := first; i <= last; i++ {
		if r.among(i, nearATime) {
			return true
		}
	}
	at := r.wordAt(m.first-1, "at", "in", "till", "until", "after", "before")
	return at && r.anyOf(first, m.first, timePlans)
}
