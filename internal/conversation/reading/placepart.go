package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

var (
	eachTownLinks          = wordsOf(`in from near to en desde de around of outside by cerca`)
	stateCodesThatAreWords = wordsOf(`ok hi me oh or in so no id ma pa al la de`)
	afterLoneTown          = wordsOf(`so and but which if where because cause about pero asi y`)
	signOffWords           = wordsOf(`thanks thank thx ty sincerely best regards gracias saludos cheers
		respectfully name mr mrs ms from signed there`)
	placeFillers = wordsOf(`in mins mi hours its it is im i am from to we are were live located ship the city of
		around near area downtown outside just minutes min miles mile hour half an a about suburb suburbs out side
		metro greater right on east west northeast northwest southeast southwest north south yes en vivo de soy estoy
		estamos es esta queda aqui pues por cerca afuera ok town be should actually closest nearest called little
		small tiny burg village named basically technically currently now lol haha put say use lives rural ahorita
		please thanks hi usa us not sorry no metro`)
	townOpeners = wordsOf(`new fort san santa los las el saint st north south east west mount lake`)
)

// partOfPlace finds a state or a town alone, a state first: "Marquette, in Michigan".
func (r *reader) partOfPlace() {
	asked := r.asked(fitcheck.TopicPlace)
	if asked && r.wordAt(0, "la") && r.aloneBetween(0, 0) { // a city or a state
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, 0, 0)
		return
	}
	if r.eachPlaceWord(asked, r.stateFrom) || r.region(asked) ||
		r.eachPlaceWord(asked, r.townAlone) || r.lastTown() || r.clauseTown() || r.lineTown() ||
		!asked {
		return
	}
	if !r.townAmong() && !r.misspelt() {
		r.vaguePlace()
	}
}

// lastTown: an opening message ends with a town that is a sentence of its own.
func (r *reader) lastTown() bool {
	i := len(r.toks) - 1
	for i > 2 && !r.sentenceEnd(i-1) {
		i--
	}
	var buf [8]string
	return i > 2 && r.toks[i].kind == wordToken && !r.toks[i].used && r.townAlone(i, r.wordsFrom(i, 5, buf[:]), false)
}

// eachPlaceWord tries every word from which a place may be named, until one is.
func (r *reader) eachPlaceWord(asked bool, try func(i int, ahead []string, asked bool) bool) bool {
	var buf [8]string
	for i := range r.toks {
		if r.toks[i].kind != wordToken || r.toks[i].used {
			continue
		}
		// "I go by Bernie"
		named := r.among(i-1, eachTownLinks) && !r.negated(i) && !(r.wordAt(i-1, "by") && r.wordAt(i-2, "go", "goes", "went"))
		named = named || r.shipsTo(i) || r.correctsTown(i)
		named = named || r.asked(fitcheck.TopicName) && r.givenAt(i-1) && place.Scan(r.wordsFrom(i, 5, buf[:]), "") > 1
		named = named || r.sentThere(i)
		if !asked && !named {
			continue
		}
		if r.overtaken(i) || r.whereKinIs(i) || r.wordAt(i-1, "in") && r.wordAt(i-2, "as") && i > 2 && len(r.toks[i-3].text) == 1 {
			continue // "V as in Victor"
		}
		if try(i, r.wordsFrom(i, 5, buf[:]), asked) {
			return true
		}
	}
	return false
}

// stateFrom takes the state that token i names, unless a town's name goes further or an
// unknown town stands before it.
func (r *reader) stateFrom(i int, ahead []string, asked bool) bool {
	n, code := place.ScanState(ahead)
	if n == 1 && r.asked(fitcheck.TopicName) && r.givenAt(i) && r.opensClause(i) &&
		r.wordAt(i+1, "in", "from", "at", "here", "over", "out") {
		return false // "Virginia in Roanoke"
	}
	if n == 0 || n > 1 && (r.wordAt(i, "a") || r.strayLetters(i, ahead)) || r.negated(i) ||
		r.aboutShop(i) || place.Scan(ahead, "") > n || !r.stateAlone(i, n, ahead, asked) ||
		asked && r.strangeBefore(i) {
		return false
	}
	if last, ok := r.otherState(r.tokenOf(i, n)+1, code); ok { // "moved from Ohio to Nevada"
		r.use(i, last)
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, i, last)
		return true
	}
	r.stateFact(i, r.tokenOf(i, n), code, ahead[:n])
	return true
}

// otherState finds another state's whole name from token i on.
func (r *reader) otherState(i int, code string) (last int, ok bool) {
	var buf [8]string
	for ; i < len(r.toks); i++ {
		if r.toks[i].kind != wordToken || r.toks[i].used || len(r.toks[i].text) < 4 || r.wordsIn(max(0, i-2), i, "not", "no") {
			continue
		}
		if n, other := place.ScanState(r.wordsFrom(i, 3, buf[:])); n > 0 && other != code && len(r.toks[i].text) > 3 {
			return r.tokenOf(i, n), true
		}
	}
	return 0, false
}

// stateAlone: a state's whole name, or its code as the whole answer.
func (r *reader) stateAlone(i, n int, ahead []string, asked bool) bool {
	if n == 1 && len(ahead[0]) <= 3 {
		return asked && r.aloneBetween(i, i) && !r.among(i, stateCodesThatAreWords) ||
			asked && r.wordAt(i-1, "in") && !r.wordAt(i, "me", "or", "ok", "oh", "la", "de", "al") && r.nameEnds(i+1)
	}
	if r.questioned(i) && !asked || r.roofTiles(i) {
		return false
	}
	return !r.wordAt(r.tokenOf(i, n)+1, "street", "ave", "avenue", "road", "st")
}

func (r *reader) stateFact(first, last int, code string, name []string) {
	r.use(first, last)
	if _, city := r.townAtStart(first, code); city == "" && joined(name) == "washington" && r.asked(fitcheck.TopicPlace) &&
		!r.wordsIn(first, min(last+5, len(r.toks)), "state", "estado") {
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, fitcheck.Place{State: code}, first, last)
		return
	}
	p := fitcheck.Place{State: code, City: r.townCalled(code)}
	if end, city := r.townAfter(last, code); city != "" {
		last, p.City = end, city
	}
	if from, city := r.townAtStart(first, code); city != "" {
		first, p.City = from, city
	}
	r.name(first, last)
	r.fact(fitcheck.TopicPlace, 0, p, first, last)
}

// townAfter: "we're in South Dakota, Rapid City".
func (r *reader) townAfter(i int, state string) (int, string) {
	from := i
	if r.wordAt(i+1, "state", "side") {
		i++ // "Wash. state, Omak"
	}
	if !r.markAt(i+1, ',') {
		return from, ""
	}
	if r.wordAt(i+2, "in", "near", "by", "en") {
		i++ // "I'm on Maui, in Kihei"
	}
	if r.wordAt(i+2, "the", "el") {
		i++
	}
	if r.wordAt(i+2, "town", "city", "village", "pueblo", "ciudad") && r.wordAt(i+3, "of", "de") {
		i += 2 // "Arizona, town of Prescott"
	}
	var buf [8]string
	name := r.wordsFrom(i+2, 4, buf[:])
	n := place.Scan(name, state)
	if n == 0 {
		return from, ""
	}
	end := r.tokenOf(i+2, n)
	if end+1 < len(r.toks) && r.toks[end+1].kind != markToken && !r.wordAt(end+1, "side", "area") ||
		n == 1 && r.toks[i+2].word != nil {
		return from, ""
	}
	return end, place.Towns(joined(name[:n]), state)[0].City
}

// townAtStart: "Marquette, in the upper part of Michigan": a town of the state opens
// the sentence.
func (r *reader) townAtStart(i int, state string) (int, string) {
	from, _ := r.sentence(i)
	for from < i && r.wordAt(from, "en", "in", "its", "im", "estoy", "vivo", "es", "aqui", "were") {
		from++ // "en Pahrump, es Nevada"
	}
	var buf [8]string
	name := r.wordsFrom(from, 4, buf[:])
	n := place.Scan(name, state)
	if n == 0 && r.asked(fitcheck.TopicPlace) && from > 1 && from <= 4 { // "Portland. the Maine one"
		from, name = 0, r.wordsFrom(0, 4, buf[:])
		n = place.Scan(name, state)
	}
	if n == 0 || from+n > i || r.toks[from].word != nil && (r.toks[from].word.common || r.toks[from].word.filler) ||
		!r.markAt(r.tokenOf(from, n)+1, ',') && !r.markAt(r.tokenOf(from, n)+1, '.') && !r.markAt(r.tokenOf(from, n)+1, '!') &&
			!r.markAt(r.tokenOf(from, n)+1, '-') && !r.wordAt(r.tokenOf(from, n)+1, "on", "in", "over", "but", "pero", "the", "el", "la") {
		return i, ""
	}
	return from, place.Towns(joined(name[:n]), state)[0].City
}

// townAlone: a town without its state is a fact where one well-known town has the name.
func (r *reader) townAlone(i int, ahead []string, asked bool) bool {
	n := place.Scan(ahead, "")
	if n == 0 ||
		r.wordAt(i, "the") && r.wordAt(i+1, "hills", "plains", "rock", "lakes", "village", "colony", "valley") && !asked ||
		r.numberAt(i).kind != notNumber && !asked ||
		(r.wordAt(i, "po") || r.wordAt(i, "a")) && r.wordsIn(i+1, min(i+3, len(r.toks)), "box") ||
		!asked && monthWords.has(r.toks[i].text) ||
		r.wordAt(i-1, "of") && !asked && !((r.wordAt(i-2, "out") || r.afterWholeName(i)) && r.surelyTown(i)) ||
		r.aboutShop(i) && !r.shipsTo(i) || n == 1 && r.nameBeforeTown(i) ||
		r.surnameOfSaint(i) || asked && r.wholeNameBeforeTown(i, r.tokenOf(i, n)) {
		return false
	}
	last := r.tokenOf(i, n)
	if r.wordAt(last+1, "county", "area", "metro") && !asked ||
		r.ofFirm(last+1) && !(asked && r.wordAt(i-1, "in", "en")) ||
		n == 1 && !asked && r.verbAfterTo(i) {
		return false
	}
	name := joined(ahead[:n])
	clear := r.correctsTown(i) ||
		asked && (r.fillsClause(i, last) || r.wordAt(i-1, "in", "to", "from", "en", "por", "near")) ||
		r.asked(fitcheck.TopicName) && r.wordAt(i-1, "from", "in", "de", "en") && r.fillsRest(last)
	clear = clear || r.asked(fitcheck.TopicName) && r.afterWholeName(i) && !r.givenAt(last) && r.fillsRest(last)
	// "carol baton rouge"
	clear = clear || n > 1 && r.asked(fitcheck.TopicName) && r.givenAt(i-1) && (i == 1 || r.introEnds(i-2)) && r.fillsRest(last)
	// "It's Sitka so you'll have to barge it"
	clear = clear || asked && r.wordAt(i-1, "its", "is", "es") && r.among(last+1, afterLoneTown)
	ends := r.lastAlone(i, last)
	if !clear && !r.livesBefore(i) && !ends && !r.shipsTo(i) {
		return false
	}
	if w := r.toks[i].word; w != nil && (w.common || w.filler || w.trade && !asked && !r.correctsTown(i)) && n == 1 &&
		!(r.out.Language == "en" && w.langEs && !w.langEn &&
			(r.wordAt(i-1, "in") || r.wordAt(i-1, "from", "near") && r.surelyTown(i) || r.wordAt(i-1, "of") && r.wordAt(i-2, "out"))) &&
		!(r.wordAt(last+1, "not") && r.surelyTown(last+2)) { // but "I'm in Chico not Fresno"
		return false
	}
	if r.toldBy(last+1) || r.betterTown(i, last) || r.billsThere(i) || !asked && r.awayThere(i, last) {
		return false
	}
	if r.anotherThings(i, last) {
		return false
	}
	if asked && r.nearTown(i) {
		return r.townUnclear(i, last)
	}
	if e, ok := r.surelyMeant(i, last, name); ok && !r.wordsIn(max(0, i-5), i, "between", "entre", "halfway") {
		return r.townFact(i, last, e)
	}
	if ends && !clear {
		return false
	}
	if e, ok := r.inNamedState(i, last, name); ok {
		return r.townFact(i, last, e)
	}
	return r.townUnclear(i, last)
}

func (r *reader) townFact(first, last int, e place.Entry) bool {
	r.name(first, last)
	r.fact(fitcheck.TopicPlace, 0, fitcheck.Place{City: e.City, State: e.State}, first, last)
	return true
}

func (r *reader) townUnclear(first, last int) bool {
	r.use(first, last)
	r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, first, last)
	return true
}

// lastAlone: a town's name, and no given name or other word, is all of an opening
// message's last sentence: "cracked dome, need a new one. Fargo".
func (r *reader) lastAlone(first, last int) bool {
	if len(r.Asked) > 0 || first < 3 || !r.sentenceEnd(first-1) || r.toks[first].word != nil && first == last {
		return false
	}
	if r.anyOf(max(0, first-6), first, signOffWords) {
		return false // more likely who signs
	}
	for i := last + 1; i < len(r.toks); i++ {
		if !r.markAt(i, '.') && !r.markAt(i, '!') && !r.markAt(i, '\n') {
			return false
		}
	}
	return true
}

// townWord: the word is none that people mean otherwise when they write it.
func (r *reader) townWord(i int) bool {
	w := r.toks[i].word
	return w == nil || !w.common && !w.filler && !w.trade
}

// introEnds: words before a name end at the token: "I'm", "my name is".
func (r *reader) introEnds(i int) bool {
	for n := range r.intros {
		if h := &r.intros[n]; h.last == i {
			if v, ok := h.has("intro"); ok && (v == "im" || v == "name" || v == "ask") {
				return true
			}
		}
	}
	return false
}

// fillsClause: nothing but small words stands beside the name in its clause.
func (r *reader) fillsClause(first, last int) bool {
	from, to := r.clauseStart(first), r.clauseEnd(last)
	for i := from; i <= to; i++ {
		if i >= first && i <= last || r.toks[i].kind == markToken ||
			r.toks[i].kind == numToken && r.wordAt(i+1, "min", "mins", "minutes", "miles", "mi", "hours", "hour") {
			continue
		}
		if !r.among(i, placeFillers) {
			return false
		}
	}
	return true
}

// fillsRest: the message ends with the place: "Jill from Boise".
func (r *reader) fillsRest(last int) bool {
	for i := last + 1; i < len(r.toks); i++ {
		if r.toks[i].kind != markToken && !r.toks[i].used {
			return false
		}
	}
	return true
}

// townAmong: the answer is a state's code that is also a small word, or names a
// town among other words: which place it is has to be asked.
func (r *reader) townAmong() bool {
	if len(r.toks) == 1 && r.toks[0].kind == wordToken && len(r.toks[0].text) == 2 &&
		!r.wordAt(0, "ok", "no", "hi", "yo", "si", "oh", "me", "so", "or") {
		if _, ok := place.State(r.toks[0].text); ok {
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, 0, 0)
			return true
		}
	}
	var buf [8]string
	for i := range r.toks {
		t := &r.toks[i]
		if r.among(i, townOpeners) && !t.used && len(r.toks) <= maxPlaceAnswer && !r.questioned(i) && !r.surnameOfSaint(i) {
			if n := place.Scan(r.wordsFrom(i, 4, buf[:]), ""); n > 1 { // "june whitcomb new haven"
				last := r.tokenOf(i, n)
				r.use(i, last)
				r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, i, last)
				return true
			}
		}
		if t.kind != wordToken || t.used || len(t.text) < 4 ||
			t.word != nil && (t.word.common || t.word.filler || t.word.given && r.asked(fitcheck.TopicName) || t.word.trade) ||
			r.negated(i) || len(r.toks) > maxPlaceAnswer {
			continue
		}
		if n := place.Scan(r.wordsFrom(i, 4, buf[:]), ""); n > 0 && !r.questioned(i) {
			last := r.tokenOf(i, n)
			r.use(i, last)
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, i, last)
			return true
		}
	}
	return false
}
