package reading

import "example.com/intake-bot/internal/fitcheck"

// What covers the roof is never asked. It is a fact only where it is said of the roof
// itself and no word around it says otherwise; all else is left alone, and no doubt is
// made of it.

var (
	otherRoofWords = wordsOf(`porch patio carport awning neighbors neighbor other next previous under beneath
		underneath below bajo debajo vecino`)
	beforeRoofing = wordsOf(`a an the my our new old to with of un el la mi de nuevo on`)
	roofPlans     = wordsOf(`getting get want wants wanting considering planning installing install had was were putting
		put adding add switching switch changing change going replace replaced replacing removed removing like not
		bajo debajo under poner poniendo cambiar cambiamos quitar quitamos era tenia instalar`)
)

// roofing reads the roof's covering: "asphalt shingle roof", "the roof is standing seam".
func (r *reader) roofing() {
	if r.out.Language != "en" && r.out.Language != "es" {
		return
	}
	var all []saying
	hits := words().scan(r.toks, roofLayer, nil)
	for n := range hits {
		h := &hits[n]
		first, last, ok := r.onRoof(h)
		if !ok || r.oneOf(hits, n) || r.otherRoof(first, last) || r.roofDenied(first, last) {
			continue
		}
		units := r.unitsAt(first, last)
		if len(units) == 0 {
			units = []int{0}
		}
		for _, u := range units {
			all = append(all, saying{topic: fitcheck.TopicRoofCovering, value: r.raisedSeams(h), first: first, last: last, unit: u})
		}
	}
	r.settleRoofing(all)
}

// settleRoofing: two coverings of one roof are none, since one can't tell which is meant.
func (r *reader) settleRoofing(all []saying) {
	for _, s := range all {
		alone := true
		for _, o := range all {
			alone = alone && (o.unit != s.unit || o.value == s.value)
		}
		if alone {
			r.fact(s.topic, s.unit, fitcheck.Choice(s.value), s.first, s.last)
		}
	}
}

// onRoof says whether a covering's words are said of the roof, and from where to where.
func (r *reader) onRoof(h *hit) (first, last int, ok bool) {
	if r.toks[h.first].used || h.senses[0].topic != fitcheck.TopicRoofCovering {
		return 0, 0, false
	}
	first, last = h.first, h.last
	after := r.roofAfter(h.last)
	before := r.roofBefore(h)
	switch {
	case after > 0:
		last = after
	case before >= 0:
		first = before
	case r.besideSlope(h) || r.askedRoofing(h) || r.besideAnswer(h):
	case h.senses[0].asked:
		return 0, 0, false
	}
	return first, last, r.roofEnds(last + 1)
}

var (
	// roofLinks may stand between "roof" and what it is of: "roof is an old asphalt shingle".
	roofLinks = wordsOf(`is s its it are a an made of out the covering covered type kind material surface style all
		just old older new newer brand flat low slope sloped pitch pitched steep standard regular plain typical brown
		black gray red white green dark light house home building casa es son de la el mi hecho cubierto tipo puro
		viejo nuevo`)
	// roofHas are links only to what covers a roof and nothing else: "roof has shingles",
	// not "roof has metal around the edge".
	roofHas   = wordsOf(`has have with w got had con tiene`)
	roofOnly  = wordsOf(`shingles shingle shingled shakes tab tile tiles slate roofing tejas teja pizarra laminas epdm tpo`)
	roofStyle = wordsOf(`flat low slope sloped pitched pitch steep style type covered and`)
	// roofNext are words that may follow without making the roof a part of something
	// else: "metal roof on the house", not "metal roof vent".
	roofNext = wordsOf(`with w on at in over and so but here there that which because since not built installed
		from pitched sloped slope flat low steep about around if house home building barn garage shed cabin shop too
		also is was were has have im thanks please need needs con en y pero sobre porque desde plano inclinado gracias
		de`)
)

// roofAfter is the "roof" that follows, 0 where none does.
func (r *reader) roofAfter(i int) int {
	if r.among(i, roofWords) && r.out.Language == "en" {
		return i // the phrase has it
	}
	for n := 0; n < 3; n++ {
		i++
		if i < len(r.toks) && r.toks[i].mark('-') && r.toks[i].glued {
			i++
		}
		if i >= len(r.toks) || r.toks[i].kind != wordToken {
			return 0
		}
		if roofWords.has(r.toks[i].text) && r.out.Language == "en" {
			return i
		}
		if !roofStyle.has(r.toks[i].text) {
			return 0
		}
	}
	return 0
}

// roofBefore is the "roof" of which it is said, -1 where there is none.
func (r *reader) roofBefore(h *hit) int {
	for i, n := h.first-1, 0; i >= 0 && n < 7; i, n = i-1, n+1 {
		t := &r.toks[i]
		switch {
		case t.mark(':') || t.mark('-') || t.mark('='):
		case t.kind != wordToken:
			return -1
		case roofWords.has(t.text):
			return i
		case roofHas.has(t.text) && r.coversRoofs(h):
		case !roofLinks.has(t.text):
			return -1
		}
	}
	return -1
}

func (r *reader) coversRoofs(h *hit) bool {
	return !h.senses[0].asked || roofOnly.has(r.toks[h.first].text) || roofOnly.has(r.toks[h.last].text)
}

// roofTiles: "tejas" of a roof, not the state: "techo de tejas".
func (r *reader) roofTiles(i int) bool {
	if r.wordAt(i, "tejas") && r.wordAt(i-1, "las", "unas") {
		return true // "debajo de las tejas"
	}
	return r.wordAt(i, "tejas") && r.wordAt(i-1, "de", "las", "con") &&
		r.wordAt(i-2, "techo", "techos", "tejado", "azotea", "bajo", "es", "son")
}

// roofEnds: nothing follows that the roof's name is only part of.
func (r *reader) roofEnds(i int) bool {
	if i >= len(r.toks) || r.toks[i].kind != wordToken {
		return true
	}
	t := &r.toks[i]
	if t.used || t.named || r.givenAt(i) ||
		r.wordAt(i, "zip", "n", "skylight", "skylights", "leaks", "leaking", "drips", "leaky") ||
		r.wordAt(i, "frame", "frames") && r.choiceIs(i+1, fitcheck.TopicFrameCondition) ||
		r.choiceIs(i, fitcheck.TopicProblem) || r.saysUse(i) {
		return true // "rubber roof zip 80631", "metal roof frame caulked a dozen times"
	}
	return t.word != nil && (t.word.filler || t.word.number.kind != notNumber) || neutral.has(t.text) || roofNext.has(t.text)
}

// oneOf: "metal or shingle roof", "shingle and metal roof".
func (r *reader) oneOf(hits []hit, n int) bool {
	h := &hits[n]
	for _, o := range []int{n - 1, n + 1} {
		if o < 0 || o >= len(hits) || hits[o].senses[0].topic == "" || hits[o].senses[0].value == h.senses[0].value {
			continue
		}
		a, b := &hits[min(n, o)], &hits[max(n, o)]
		if b.first == a.last+2 && (r.wordAt(a.last+1, "or", "and", "o", "y", "vs") || r.markAt(a.last+1, '/')) {
			return true
		}
	}
	return r.wordAt(h.first-1, "or", "o") || r.wordAt(h.last+1, "or", "o")
}

// otherRoof: one that is elsewhere, that was, or that is to come: "getting a metal roof",
// "the porch roof is metal".
func (r *reader) otherRoof(first, last int) bool {
	if r.among(first-1, otherRoofWords) ||
		r.wordAt(first-1, "brothers", "sisters", "cousins", "friends", "buddys", "uncles") &&
			!r.wordsIn(0, len(r.toks), "skylight", "skylights", "dome", "domes") {
		return true // "my brother's tin roof is rusting"
	}
	i := first - 1
	for r.among(i, beforeRoofing) && !(r.wordAt(i, "on") && !r.wordAt(i-1, "put", "putting")) {
		i--
	}
	if r.wordAt(i, "had", "got", "have", "has", "getting") && r.wordAt(last+1, "put", "installed", "done", "laid") &&
		r.wordAt(i-1, "just", "we", "i", "they", "recently", "weve") && !r.wordAt(i, "getting", "have") {
		return false // "we had a new metal roof put on in June": it lies there now
	}
	if r.among(i, roofPlans) {
		return true
	}
	return r.wordsIn(last+1, r.clauseEnd(last)+1, "soon", "later", "someday", "eventually", "proximo", "pronto", "instead") ||
		r.wordAt(last+1, "is", "are") && r.wordAt(last+2, "going", "coming", "planned", "next")
}

// roofDenied: a "not", a doubt, a question, or a way of telling how the skylight is set.
func (r *reader) roofDenied(first, last int) bool {
	for i := first; i <= last; i++ {
		if r.negated(i) {
			return true
		}
	}
	if r.deniedAfter(last) || r.doubted(first, last) || r.questioned(first) ||
		r.yesNoQuestion(first) || r.astray(fitcheck.TopicRoofCovering, first, last) {
		return true
	}
	for n := range r.styles {
		if h := &r.styles[n]; h.first < first && h.last >= first && !h.senses[0].asked {
			return true // "a flange that slips under the shingle roof"
		}
	}
	return false
}
