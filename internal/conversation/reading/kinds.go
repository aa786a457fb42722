package reading

import "example.com/intake-bot/internal/fitcheck"

// Where a message speaks of several kinds of unit, each fact belongs to one of them:
// "first one is 25 x 49, second one is 30 x 30".

var (
	namingLinks = wordsOf(`for of on para del de the el la los las`)
	noKindNouns = wordsOf(`time thought thoughts floor story hand side name things thing let off opinion try attempt
		pass shot reading house please pls measurement way vez party number diag diagonal answer message text`)
	tellVerbs         = wordsOf(`said listed mentioned named gave described wrote asked the your you u`)
	layerOrSide       = wordsOf(`layer layers capas capa inside outside inner outer adentro afuera`)
	sideNounsOrColors = wordsOf(`ways sides directions diagonals layers layer clear white bronze same ends frame
		lados capas diagonales`)
	ordinalNouns = wordsOf(`green hole fairway tee grade street st ave avenue base generation winter summer hoyo
		correo mensaje texto email mail message text`)
	buildingNouns = wordsOf(`buildings building houses house homes properties property schools school churches
		church sites site locations roofs roof stores store places barns rentals edificios edificio casas casa locales
		iglesias escuelas`)
)

// unitRef is a place where the message names a kind of unit.
type unitRef struct {
	first, last int
	units       []int
}

// units finds the kinds of unit that the message names.
func (r *reader) units() {
	for n := range r.intros {
		h := &r.intros[n]
		v, ok := h.has("nth")
		if !ok || v == "none" {
			continue
		}
		if r.markAt(h.last-1, ':') && r.wordAt(h.last, "one") {
			h.last -= 2 // "the second: one skylight"
		}
		if r.noKind(h) ||
			r.wordAt(h.first, "no") && r.Count > 0 && r.Units < 2 &&
				(h.last+1 >= len(r.toks) || r.toks[h.last+1].kind == markToken || r.wordAt(h.last+1, "not", "total", "skylights", "domes")) {
			continue // also "no its 3 not 2"
		}
		if r.wordAt(h.first, "no") && (r.countsKindAt(h.last) || r.afterNumber(h.first)) {
			continue // "no it's 2 round ones", "son 3, no 1"
		}
		ref := unitRef{first: h.first, last: h.last}
		switch v {
		case "1", "2", "3", "4":
			if r.wordAt(h.last, "first", "primero") && h.first == h.last && r.endsClauseAfter(h.last) &&
				!r.wordAt(h.last-1, "the", "my", "our") {
				continue // "I did corner to corner first. 55 5/8"
			}
			ref.units = []int{int(v[0] - '0')}
		case "other":
			if r.otherSide(h) || r.otherToCome(h) || r.otherOfKnown(h) || r.notOther(h) {
				if r.wordAt(h.last+1, "are", "were", "son") {
					r.use(h.last, h.last) // "the other two are pyramids"
				}
				continue
			}
			ref.units = []int{2}
		case "rest", "last":
			ref.units = r.restUnits(h, v)
		case "all":
			ref.units = r.allUnits(h)
		case "same":
			r.sameAs(h)
			continue
		}
		if v == "all" && ref.units == nil && r.otherCounted(h) {
			continue
		}
		if ref.units == nil && (v == "rest" || v == "last") {
			continue
		}
		if ref.units != nil {
			r.refs = append(r.refs, ref)
		} else if v == "all" && r.Units < 2 &&
			r.wordAt(h.last+1, "skylights", "domes", "units", "bubbles", "tragaluces", "domos", "claraboyas") {
			continue // "hay que cambiar los dos tragaluces": how many there are
		} else if r.asked(fitcheck.TopicCount) && !r.wordAt(h.first-1, "of", "de") {
			continue // "let's do all three"
		}
		for i := h.first; i <= h.last; i++ {
			if r.toks[i].kind == numToken || r.numberAt(i).kind != notNumber {
				r.toks[i].used = true
			}
		}
	}
	r.numberedUnits()
	r.calledByNumber()
	r.countedGroups()
	r.oneAndOther()
	r.lookUnits()
	r.countedAndLook()
	r.shapesAfterSizes()
	r.roomUnits()
	r.roomsBeforeSizes()
	if r.asked(fitcheck.TopicCurbDiagonals) && r.Units < 2 && !r.pairBetween(-1, len(r.toks)) {
		r.twoDiagonals()
		return
	}
	r.contrast()
	r.namedAgain()
	r.namedBySizes()
	r.choiceShares()
	r.sortRefs()
	r.joinRefs()
	r.afterCounted()
	r.nextUnits()
	r.bothNamed()
	r.bothOfOne()
	r.bothOfItsLayers()
	r.restOfKnown()
	r.plainAll()
	r.trailing = r.trailing || r.namedAfter(r.refs, 0, len(r.toks))
	r.callRooms()
	r.callGroups()
	r.listedKinds()
	r.likeAnother()
	r.listedRooms()
	r.addedKind()
	r.sameKind()
	r.firstAlone()
}

// twoDiagonals: "#1 71 1/4 #2 71 3/8", "one is 55 1/4, the other one 55 1/2" are of one skylight.
func (r *reader) twoDiagonals() {
	r.refs = nil
	for i := range r.toks {
		if r.wordAt(i, "one", "uno", "una") &&
			(r.wordAt(i+1, "is", "was", "es", "mide", "measures") || r.wordAt(i-1, "other", "otra")) {
			r.use(i, i)
		}
	}
}

// nextUnits: a talk that knows so many kinds of unit can get one more at a time: no
// "third" where only the first is known.
func (r *reader) nextUnits() {
	known := r.Units
	if known > 0 {
		known = max(known, r.roomsListed())
	}
	for k := range r.refs {
		units := r.refs[k].units
		if known == 0 || len(units) != 1 {
			continue
		}
		if units[0] > known+1 {
			r.refs[k].units = []int{known + 1}
		}
		known = max(known, r.refs[k].units[0])
	}
}

// namedAfter: kinds are named after what is said of them: "clear for the first and
// bronze for the second".
func (r *reader) namedAfter(refs []unitRef, from, to int) bool {
	if len(refs) == 0 {
		return false
	}
	first, last := refs[0], refs[len(refs)-1]
	return (r.wordAt(first.first, "on", "in", "for", "over") ||
		r.among(r.wordBefore(first), namingLinks) || r.shapedRef(first) ||
		r.onlyChosen(r.clauseStart(first.first), first.first)) &&
		r.content(from, first.first) &&
		(r.markAt(last.last+1, ',') && !r.pairBetween(last.last+1, len(r.toks)) ||
			!r.content(last.last+1, min(to, r.sentenceLast(last.last)+1)))
}

// wordBefore is the token before what a kind is called by, how many there are of it left out: "white for
// the 3 big ones".
func (r *reader) wordBefore(ref unitRef) int {
	return ref.first - 1 - number(r.wholeSaid(ref.first-1) > 0)
}

func isWhole(k numberKind) bool {
	return k == digitWord || k == teenWord || k == tensWord || k == wholeWord
}

// content: a number or a choice stands between two tokens.
func (r *reader) content(from, to int) bool {
	for i := from; i < to; i++ {
		if r.toks[i].kind == numToken && !r.toks[i].used || !r.wordAt(i, "one", "two") && isWhole(r.numberAt(i).kind) {
			return true
		}
	}
	for n := range r.choices {
		h := &r.choices[n]
		if h.first >= from && h.last < to && h.senses[0].topic != "" {
			return true
		}
	}
	for n := range r.wants {
		if h := &r.wants[n]; h.first >= from && h.last < to && h.senses[0].topic != "" && h.last > h.first {
			return true
		}
	}
	return from == 0 && r.asked("count") && r.wholeAt(0) > 0
}

// noKind: "first time", "one second", "second floor", "both ways": no kind of unit.
func (r *reader) noKind(h *hit) bool {
	if r.asked(fitcheck.TopicStyle) && r.wordAt(h.last+1, "you", "u", "on", "in", "de", "que", "listed") &&
		(r.wordAt(h.last, "kind", "one", "type", "first", "second", "third", "fourth")) && r.kindOfList(h.last+1) {
		return true
	}
	if r.wordAt(h.first, "dome") && r.wordAt(h.last, "one") && (r.Names["dome"] > 0 || r.wordAt(h.first-1, "the", "a", "my")) {
		return true // "2 pyramids and a dome one"
	}
	if r.wordsIn(r.sentenceFirst(h.first), h.first, "number", "numbers", "measurement", "diagonal", "diagonals", "diag",
		"diagonales") &&
		r.wordAt(h.last, "one", "first", "second", "1st", "2nd", "other", "segunda", "segundo", "otra") {
		return true // "first diagonal 55 1/2, second one 55 5/8"
	}
	if r.ofMeasuring(h) || r.wordAt(h.first-1, "in") && h.last > h.first && r.markAt(h.first+1, ':') {
		return true // also "6 in all: 4 small ones"
	}
	if r.among(h.last+1, noKindNouns) {
		return true
	}
	if r.wordAt(h.last+1, "you", "u", "on", "that", "in") &&
		(r.wordAt(h.last, "kind", "type", "one", "option", "choice") && r.among(h.last+2, tellVerbs) &&
			(r.wordAt(h.last+1, "you", "u") ||
				r.wordsIn(h.last+2, min(h.last+5, len(r.toks)), "list", "said", "listed", "mentioned", "message", "text"))) ||
		r.wordAt(h.last+1, "option", "choice", "kind", "type") && r.asked(fitcheck.TopicStyle) {
		return true // "the third kind you said"
	}
	if h.is("nth", "other") && r.Units < 2 && r.wordAt(h.last, "kind", "type", "stuff", "sort") {
		return true // "polycarbonate, we've been through two of the other kind"
	}
	if h.first == h.last && h.is("nth", "4") && r.Units < 4 && r.wordAt(h.first-1, "the", "by", "until", "before") &&
		r.wordsIn(max(0, h.first-3), h.first, "for", "by", "until", "before", "after") &&
		(h.last+1 >= len(r.toks) || r.wordAt(h.last+1, "of") || r.toks[h.last+1].kind == markToken && !r.markAt(h.last+1, ':')) {
		return true // "before the grandkids come for the 4th"
	}
	if _, to := r.sentence(h.last); r.wordsIn(r.sentenceFirst(h.first), h.first, "this", "thats", "thatll", "its", "were") &&
		r.wordsIn(h.last+1, to+1, "in", "since") &&
		r.wordsIn(h.last+1, to+1, "years", "yrs", "year", "yr", "months", "decade", "decades", "summers") {
		return true // "this is the third dome in 8 yrs"
	}
	if r.Units < 2 && r.onTheDay(h) {
		return true // "a hailstorm on the 3rd"
	}
	if r.wordAt(h.last, "one", "uno") && r.wordAt(h.last-1, "is", "es") && r.wordAt(h.last+1, "of", "de") &&
		r.wordAt(h.last+2, "those", "these", "them", "esos", "esas") {
		return true // "my skylight is one of those tube ones"
	}
	if r.wholeAt(h.last) > 0 && r.wordAt(h.first, "dome", "skylight", "skylite", "unit") && r.layersAfter(h.last) {
		return true // "a bronze dome 2 layers"
	}
	if r.wholeAt(h.last) > 0 &&
		(r.unitAt(h.last+1) != noUnit || r.by(h.last+1) && !r.faceAfterPor(h.last+1) || r.markAt(h.last+1, '/')) {
		return true // "skylight 4 feet by 20 feet"
	}
	if h.is("nth", "all") && r.countsKnown(h) {
		return true
	}
	if h.is("nth", "all") && r.Units > 1 && r.colorAt(h.last+1) && !r.anyOf(0, len(r.toks), layerOrSide) {
		return false // "no, both white"
	}
	if h.is("nth", "all") && r.among(h.last+1, sideNounsOrColors) {
		return true
	}
	if h.is("nth", "other") && r.Units < 2 && r.wordsIn(max(0, h.first-4), h.first, "for") &&
		r.wordsIn(max(0, h.first-5), h.first, "hang", "hold", "wait") ||
		h.is("nth", "other") && r.wordAt(h.last+1, "dia", "vez", "semana", "mes", "ano", "noche") {
		return true // "soy la del otro día"
	}
	if h.first == h.last && r.wordAt(h.last+1, "measured", "got", "took", "tried") && h.last+2 < len(r.toks) &&
		r.toks[h.last+2].kind == wordToken {
		return true // "first measured the curb outside at 25 x 49"
	}
	if from, to := r.sentence(h.first); h.is("nth", "other") && h.last > h.first && r.wholeAt(h.last) > 1 &&
		(r.wordsIn(from, to+1, "side", "sides", "lado", "lados") ||
			r.asked(fitcheck.TopicCount) ||
			r.wordAt(h.last+1, "are", "match", "son", "were") &&
				r.wordsIn(h.last+1, min(h.last+4, len(r.toks)), "same", "match", "identical", "iguales")) {
		return true // "25 on one side and the other three are 25 1/8"
	}
	if h.is("nth", "other") && r.otherOfSides(h.first) {
		return true
	}
	if r.wordAt(h.first, "no") && r.wordAt(h.last, "one") && h.last+1 < len(r.toks) && r.toks[h.last+1].kind == wordToken {
		return true // "no one sees it"
	}
	if r.among(h.last+1, ordinalNouns) {
		return true // "on the 3rd green"
	}
	if h.is("nth", "other") &&
		(r.wordAt(h.first-1, "or", "o") || r.wordAt(h.first-1, "the", "el", "la") && r.wordAt(h.first-2, "or", "o")) &&
		len(r.Asked) > 0 && !r.Asked[0].OfLength() {
		return true // "whichever is cheaper, acrylic or the other one"
	}
	if h.is("nth", "other") && r.among(h.last+1, buildingNouns) {
		return true // "we've had polycarbonate on the other four buildings"
	}
	if h.first == h.last && r.wordAt(h.first, "fourth", "third") && r.wordAt(h.first-1, "one", "a", "1") ||
		h.first == h.last &&
			(h.is("nth", "2") && r.tryBefore(h.first) || r.wordAt(h.last+1, "go", "try", "attempt", "pass", "intento")) {
		return true // "first try I got 25 1/2, second 25 5/8"
	}
	if r.asked(fitcheck.TopicStyle) && r.Units < 2 && h.first <= 1 && r.markAt(h.last+1, ',') {
		return true // "the second one, plastic goes down over the frame": of what was listed
	}
	if (h.is("nth", "other") || h.is("nth", "2")) && r.stillToDo(h) ||
		h.is("nth", "other") && (r.notHad(h) || r.goesForIt(h) || r.soundOthers(h.first, h.last)) {
		return true // "haven't got to the other one yet"
	}
	if h.is("nth", "other") && r.wordsIn(max(0, h.first-4), h.first, "get", "send", "measure", "give", "tell", "text", "have") &&
		r.wordsIn(h.last+1, min(h.last+4, len(r.toks)), "tomorrow", "later", "tonight", "soon", "when", "next", "after") {
		return true // "the length is 49, will get you the other one tomorrow"
	}
	if r.wordAt(h.first, "first") && h.first == h.last && r.wordAt(h.last+1, "but", "though", "lol") &&
		!r.wordAt(h.first-1, "the", "my") {
		return true // "had to deal with a wasp nest first but here you go"
	}
	return r.wordAt(h.first, "second") && h.first == h.last && r.wordAt(h.first-1, "one", "a", "on", "every", "per") &&
		!r.wordAt(h.first-2, "of") ||
		r.wordAt(h.first, "first") && h.first == h.last && r.wordAt(h.first-1, "at", "run") ||
		r.wordAt(h.last, "first") && h.first == h.last && h.last == len(r.toks)-1 && h.first > 0 && !r.wordAt(h.first-1, "the")
}

// choiceAt: a value of a topic starts at the token or after a small word.
func (r *reader) choiceAt(i int) bool {
	for r.wordAt(i, "is", "are", "in", "has") {
		i++
	}
	hits := within(r.choices, i, i)
	return len(hits) > 0 && hits[0].senses[0].topic != ""
}
