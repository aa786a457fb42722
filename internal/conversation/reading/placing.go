package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// found is a place that the message names.
type found struct {
	fitcheck.Place
	first, last int
}

// places finds where the part goes: town and state, ZIP code, a state or a well-known
// town alone.
func (r *reader) places() {
	zips := r.zips()
	towns := r.townsWithState()
	switch {
	case len(towns) > 1 && !sameTown(towns):
		r.severalTowns(towns)
	case len(towns) > 0:
		r.placeFact(towns[len(towns)-1], zips)
	case len(zips) > 1 && zips[0].code != zips[len(zips)-1].code && r.wordsIn(zips[0].last+1, zips[len(zips)-1].first, "or", "o", "and"):
		r.use(zips[0].first, zips[len(zips)-1].last)
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, zips[0].first, zips[len(zips)-1].last)
	case len(zips) > 0:
		r.zipFact(zips[len(zips)-1])
	case r.foreign():
	default:
		r.partOfPlace()
	}
}

func sameTown(all []found) bool {
	for _, f := range all[1:] {
		if f.Place != all[0].Place {
			return false
		}
	}
	return true
}

// severalTowns: two towns: the one after "ship to" or in a correction, else a question.
func (r *reader) severalTowns(all []found) {
	for k := len(all) - 1; k > 0; k-- {
		if r.wordsIn(all[k-1].last+1, all[k].first, "not", "sorry", "actually") && !r.negated(all[k].first) {
			r.placeFact(all[k], nil)
			return
		}
		if r.wordsIn(all[k-1].last+1, all[k].first, "but", "pero") {
			r.placeFact(all[k], nil)
			return
		}
	}
	for _, f := range all {
		r.use(f.first, f.last)
	}
	r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, all[0].first, all[len(all)-1].last)
}

// zipAt is a five-digit token that may be a ZIP code.
type zipAt struct {
	code        string
	first, last int
	entry       place.Entry
	known       bool
}

func (r *reader) zips() []zipAt {
	var out []zipAt
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind != numToken || len(t.text) != 5 || t.dec > 0 || t.code || t.comma || t.used {
			continue
		}
		if r.markAt(i-1, '#') || r.markAt(i-1, '$') || r.by(i-1) || r.by(i+1) || r.unitAt(i+1) != noUnit || r.wordAt(i-1, "not", "no") || r.afterCode(i) {
			continue
		}
		z := zipAt{code: t.text, first: i, last: i}
		if r.markAt(i+1, '-') && r.toks[i+1].glued && i+2 < len(r.toks) && r.toks[i+2].kind == numToken && len(r.toks[i+2].text) == 4 {
			z.last = i + 2
		}
		z.entry, z.known = place.ByZIP(z.code)
		if !z.known && !r.asked(fitcheck.TopicPlace) && !r.wordAt(i-1, "zip", "code", "zipcode", "is", "postal") && !place.Military(r.stateBefore(i)) {
			continue
		}
		out = append(out, z)
	}
	return out
}

func (r *reader) afterCode(i int) bool {
	j := i - 1
	for r.markAt(j, '#') || r.markAt(j, '.') || r.wordAt(j, "number", "no") {
		j--
	}
	return j >= 0 && r.toks[j].kind == wordToken && beforeCode[r.toks[j].text] && !r.wordAt(j, "road", "st", "ave")
}

func (r *reader) stateBefore(i int) string {
	if i < 1 || r.toks[i-1].kind != wordToken {
		return ""
	}
	code, _ := place.State(r.toks[i-1].text)
	return code
}

func (r *reader) zipFact(z zipAt) {
	first := z.first
	if !z.known {
		r.militaryOrUnknown(z)
		return
	}
	r.use(first, z.last)
	p := fitcheck.Place{City: z.entry.City, State: z.entry.State, ZIP: z.code}
	r.fact(fitcheck.TopicPlace, 0, p, first, z.last)
}

// militaryOrUnknown: a ZIP code that the table lacks.
func (r *reader) militaryOrUnknown(z zipAt) {
	r.use(z.first, z.last)
	if code := r.stateBefore(z.first); place.Military(code) {
		p := fitcheck.Place{State: code, ZIP: z.code}
		first := z.first - 1
		if r.wordAt(first-1, "apo", "fpo", "dpo") {
			first--
			p.City = map[string]string{"apo": "APO", "fpo": "FPO", "dpo": "DPO"}[r.toks[first].text]
		}
		r.use(first, z.last)
		r.fact(fitcheck.TopicPlace, 0, p, first, z.last)
		return
	}
	r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, z.first, z.last)
}

// run is a stretch of words without a sign between, for looking names up.
func (r *reader) wordsFrom(i, most int, buf []string) []string {
	buf = buf[:0]
	for i < len(r.toks) && len(buf) < most && r.toks[i].kind == wordToken && !r.toks[i].used {
		buf = append(buf, r.toks[i].text)
		i++
		for r.markAt(i, '.') && r.toks[i].glued || r.markAt(i, '-') && r.toks[i].glued {
			i++
		}
	}
	return buf
}

// townsWithState finds every "Town, ST".
func (r *reader) townsWithState() []found {
	var out []found
	var buf [8]string
	for i := 0; i < len(r.toks); i++ {
		if r.toks[i].kind != wordToken || r.toks[i].used {
			continue
		}
		ahead := r.wordsFrom(i, 4, buf[:])
		n, code := place.ScanState(ahead)
		if n == 0 {
			continue
		}
		last := r.tokenOf(i, n)
		if f, ok := r.townBefore(i, code); ok && r.stateHolds(i, last) {
			f.last = last
			out = append(out, f)
			i = last
		}
	}
	return out
}

// tokenOf is the token of the n-th word from token i on.
func (r *reader) tokenOf(i, n int) int {
	for n > 1 {
		i++
		if r.toks[i].kind == wordToken {
			n--
		}
	}
	return i
}

// townBefore finds the town of a state whose name ends right before token i.
func (r *reader) townBefore(i int, state string) (found, bool) {
	end := i
	for end > 0 && (r.markAt(end-1, ',') || r.markAt(end-1, '.') || r.markAt(end-1, '-')) {
		end--
	}
	var starts [5]int
	n := 0
	for j := end - 1; j >= 0 && n < len(starts); j-- {
		if r.markAt(j, '.') && r.toks[j].glued || r.markAt(j, '-') && r.toks[j].glued {
			continue
		}
		if r.toks[j].kind != wordToken || r.toks[j].used {
			break
		}
		starts[n] = j
		n++
	}
	var buf [8]string
	for k := n - 1; k >= 0; k-- {
		name := r.wordsFrom(starts[k], k+1, buf[:])
		if len(name) != k+1 || place.Scan(name, state) != k+1 {
			continue
		}
		towns := place.Towns(joined(name), state)
		if len(towns) > 0 && !r.wordAt(starts[k]-1, "not") {
			return found{Place: fitcheck.Place{City: towns[0].City, State: state}, first: starts[k]}, true
		}
	}
	return found{}, false
}

func joined(words []string) string {
	s := words[0]
	for _, w := range words[1:] {
		s += " " + w
	}
	return s
}

// stateHolds: many codes are words: "or", "in", "me". They are states at the end of a
// clause or before a ZIP code only.
func (r *reader) stateHolds(first, last int) bool {
	if first != last || len(r.toks[first].text) != 2 {
		return true
	}
	if last+1 >= len(r.toks) || r.toks[last+1].kind != wordToken {
		return true
	}
	switch r.toks[first].text {
	case "or", "in", "me", "hi", "oh", "ok", "id", "la", "de", "al", "so", "pa", "ma", "mo", "as":
		return r.wordAt(last+1, "and", "but", "its", "zip", "here", "with", "i", "we", "usa", "my", "for")
	}
	return true
}

func (r *reader) placeFact(f found, zips []zipAt) {
	p, first, last := f.Place, f.first, f.last
	for _, z := range zips {
		if z.first-last > 3 || z.first < first {
			continue
		}
		if z.known {
			entries := place.Towns(p.City, p.State)
			if len(entries) > 0 && !place.Agree(entries[0], z.entry) {
				r.use(first, z.last)
				r.unclear(fitcheck.TopicPlace, 0, WhyPlace, p, first, z.last)
				return
			}
		}
		p.ZIP, last = z.code, z.last
	}
	if r.toks[first].used {
		return
	}
	r.name(first, last)
	r.fact(fitcheck.TopicPlace, 0, p, first, last)
}

// nearby: "20 minutes north of Rapid City": the town is not where it goes.
func (r *reader) nearby(i int) bool {
	return r.wordAt(i-1, "of") && r.wordAt(i-2, "outside", "north", "south", "east", "west", "hour", "hours", "minutes")
}

// partOfPlace finds a state or a town alone, a state first: "Marquette, in Michigan".
func (r *reader) partOfPlace() {
	asked := r.asked(fitcheck.TopicPlace)
	if asked && r.wordAt(0, "la") && r.aloneBetween(0, 0) { // a city or a state
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, 0, 0)
		return
	}
	if r.eachPlaceWord(asked, r.stateFrom) || r.eachPlaceWord(asked, r.townAlone) {
		return
	}
	if asked {
		r.misspelt()
	}
}

// eachPlaceWord tries every word from which a place may be named, until one is.
func (r *reader) eachPlaceWord(asked bool, try func(i int, ahead []string, asked bool) bool) bool {
	var buf [8]string
	for i := range r.toks {
		if r.toks[i].kind != wordToken || r.toks[i].used {
			continue
		}
		named := r.wordAt(i-1, "in", "from", "near", "to", "en", "desde", "de", "around", "of") && !r.negated(i)
		if (asked || named) && try(i, r.wordsFrom(i, 5, buf[:]), asked) {
			return true
		}
	}
	return false
}

// stateFrom takes the state that token i names, unless a town's name goes further or an
// unknown town stands before it.
func (r *reader) stateFrom(i int, ahead []string, asked bool) bool {
	n, code := place.ScanState(ahead)
	if n == 0 || r.negated(i) || place.Scan(ahead, "") > n || !r.stateAlone(i, n, ahead, asked) || asked && r.strangeBefore(i) {
		return false
	}
	r.stateFact(i, r.tokenOf(i, n), code, ahead[:n])
	return true
}

// strangeBefore: an unknown word before a state is a town that the table lacks.
func (r *reader) strangeBefore(i int) bool {
	for r.markAt(i-1, ',') || r.markAt(i-1, '.') {
		i--
	}
	return i > 0 && r.toks[i-1].kind == wordToken && r.toks[i-1].word == nil && !r.toks[i-1].used && len(r.toks[i-1].text) > 3 && !r.wordAt(i-1, "northern", "southern", "eastern", "western", "central", "rural", "upstate")
}

// stateAlone: a state's whole name, or its code as the whole answer.
func (r *reader) stateAlone(i, n int, ahead []string, asked bool) bool {
	if n == 1 && len(ahead[0]) <= 3 {
		return asked && r.aloneBetween(i, i) && !r.wordAt(i, "ok", "hi", "me", "oh", "or", "in", "so", "no", "id", "ma", "pa", "al", "la", "de") || asked && r.wordAt(i-1, "in") && !r.wordAt(i, "me", "or", "ok", "oh", "la", "de", "al") && r.nameEnds(i+1)
	}
	if r.questioned(i) && !asked {
		return false
	}
	return !r.wordAt(r.tokenOf(i, n)+1, "street", "ave", "avenue", "road", "st")
}

func (r *reader) stateFact(first, last int, code string, name []string) {
	r.use(first, last)
	if joined(name) == "washington" && r.asked(fitcheck.TopicPlace) {
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, fitcheck.Place{State: code}, first, last)
		return
	}
	p := fitcheck.Place{State: code}
	if from, city := r.townAtStart(first, code); city != "" {
		first, p.City = from, city
	}
	r.name(first, last)
	r.fact(fitcheck.TopicPlace, 0, p, first, last)
}

// townAtStart: "Marquette, in the upper part of Michigan": a town of the state opens
// the sentence.
func (r *reader) townAtStart(i int, state string) (int, string) {
	from, _ := r.sentence(i)
	var buf [8]string
	name := r.wordsFrom(from, 4, buf[:])
	n := place.Scan(name, state)
	if n == 0 || from+n > i || r.toks[from].word != nil && (r.toks[from].word.common || r.toks[from].word.filler) ||
		!r.markAt(r.tokenOf(from, n)+1, ',') && !r.wordAt(r.tokenOf(from, n)+1, "on", "in", "over") {
		return i, ""
	}
	return from, place.Towns(joined(name[:n]), state)[0].City
}

// townAlone: a town without its state is a fact where one well-known town has the name.
func (r *reader) townAlone(i int, ahead []string, asked bool) bool {
	n := place.Scan(ahead, "")
	if n == 0 || r.wordAt(i-1, "of") && !asked {
		return false
	}
	last := r.tokenOf(i, n)
	name := joined(ahead[:n])
	clear := asked && (r.fillsClause(i, last) || r.wordAt(i-1, "in", "to", "from", "en")) || r.asked(fitcheck.TopicName) && r.wordAt(i-1, "from", "in", "de", "en") && r.fillsRest(last)
	if !clear && !r.livesBefore(i) {
		return false
	}
	if r.toks[i].word != nil && (r.toks[i].word.common || r.toks[i].word.filler) && n == 1 {
		return false
	}
	if e, ok := place.WellKnown(name); ok && !r.nearby(i) {
		r.name(i, last)
		r.fact(fitcheck.TopicPlace, 0, fitcheck.Place{City: e.City, State: e.State}, i, last)
		return true
	}
	r.use(i, last)
	r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, i, last)
	return true
}

// fillsClause: nothing but small words stands beside the name in its clause.
func (r *reader) fillsClause(first, last int) bool {
	from, to := r.clauseStart(first), r.clauseEnd(last)
	for i := from; i <= to; i++ {
		if i >= first && i <= last || r.toks[i].kind == markToken {
			continue
		}
		if !r.wordAt(i, "in", "its", "it", "is", "im", "i", "am", "from", "to", "we", "are", "were", "live", "located", "ship", "the", "city", "of", "around", "near", "area", "downtown", "outside", "just", "minutes", "min", "miles", "mile", "hour", "half", "an", "a", "about", "suburb", "suburbs", "out", "side", "metro", "greater", "right", "east", "west", "northeast", "northwest", "southeast", "southwest", "north", "south", "yes", "en", "vivo", "de", "soy", "estoy", "estamos", "ok", "please", "thanks", "hi", "usa", "us", "not", "sorry", "no", "metro") {
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

func (r *reader) livesBefore(i int) bool {
	if !r.wordAt(i-1, "in", "from", "to", "near", "en", "de", "desde", "around") {
		return false
	}
	from, _ := r.sentence(i)
	return r.wordsIn(from, i, "im", "were", "live", "located", "ship", "shipping", "am", "are", "we", "i", "going", "vivo", "estoy", "estamos", "soy", "vivimos", "house", "home", "deliver", "delivered")
}

// foreign finds places outside the country.
func (r *reader) foreign() bool {
	for i := range r.toks {
		if r.canadianCode(i) {
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, i, min(i+5, len(r.toks)-1))
			return true
		}
		if !r.wordAt(i, "canada", "ontario", "alberta", "quebec", "manitoba", "saskatchewan", "toronto", "montreal", "calgary", "edmonton", "winnipeg", "ottawa", "mexico", "tijuana", "england", "uk", "bc", "australia", "bahamas", "jamaica", "ireland", "scotland", "germany", "france", "monterrey", "guadalajara", "bermuda", "scotia", "columbia") {
			continue
		}
		if r.wordAt(i, "mexico") && r.wordAt(i-1, "new", "nuevo", "gulf") || r.wordAt(i, "columbia") && !r.wordAt(i-1, "british") || r.wordAt(i, "scotia") && !r.wordAt(i-1, "nova") {
			continue
		}
		if r.asked(fitcheck.TopicPlace) || r.wordAt(i-1, "in", "from", "to", "en", "de") {
			first, last := r.sentence(i)
			for last > first && r.toks[last].kind == markToken {
				last--
			}
			r.use(first, last)
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, first, last)
			return true
		}
	}
	return false
}

// canadianCode: "M5V 2T6".
func (r *reader) canadianCode(i int) bool {
	if i+5 >= len(r.toks) {
		return false
	}
	for k := range 6 {
		t := &r.toks[i+k]
		if k%2 == 0 && (t.kind != wordToken || len(t.text) != 1) || k%2 == 1 && (t.kind != numToken || len(t.text) != 1) || k > 0 && k != 3 && !t.glued {
			return false
		}
	}
	return true
}

// misspelt: a bare answer near the name of a town is asked about.
func (r *reader) misspelt() {
	if len(r.toks) == 0 || len(r.toks) > 6 {
		return
	}
	var buf [8]string
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind == numToken && !t.used && (len(t.text) == 4 || len(t.text) == 5) {
			t.used = true
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, i, i)
			return
		}
		if t.kind != wordToken || t.used || t.word != nil && (t.word.common || t.word.filler || t.word.given) || len(t.text) < 4 {
			continue
		}
		ahead := r.wordsFrom(i, 3, buf[:])
		state, end := "", i
		for n := 1; n < len(ahead); n++ {
			if k, code := place.ScanState(ahead[n:]); k > 0 {
				state, end = code, r.tokenOf(i, n+k)
				ahead = ahead[:n]
				break
			}
		}
		if end == i {
			end = r.tokenOf(i, len(ahead))
			if r.markAt(end+1, ',') {
				after := r.wordsFrom(end+2, 3, make([]string, 0, 3))
				if k, code := place.ScanState(after); k > 0 {
					state, end = code, r.tokenOf(end+2, k)
				}
			}
		}
		near := place.Near(joined(ahead), state)
		var guess fitcheck.Value
		if len(near) > 0 {
			guess = fitcheck.Place{City: near[0].Entry.City, State: near[0].Entry.State}
		}
		if len(near) > 0 || state != "" {
			r.use(i, end)
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, guess, i, end)
		}
		return
	}
}
