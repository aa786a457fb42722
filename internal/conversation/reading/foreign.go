package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	foreignPlaces = wordsOf(`canada ontario alberta quebec manitoba saskatchewan toronto montreal calgary edmonton
		winnipeg ottawa mexico tijuana mexicali juarez hermosillo chihuahua england uk bc australia bahamas jamaica
		ireland scotland germany france monterrey guadalajara acuna reynosa matamoros ensenada tecate culiacan torreon
		saltillo obregon guaymas sinaloa jalisco michoacan oaxaca zacatecas guatemala honduras newfoundland saskatoon
		kelowna kamloops moncton philippines japan spain italy bermuda scotia columbia`)
	bornOrMade = wordsOf(`grew born made bought back trip vacation naci hecho`)
	asksNext   = wordsOf(`can do could will is how does would`)
)

// foreign finds places outside the country.
func (r *reader) foreign() bool {
	for i := range r.toks {
		if r.canadianCode(i) {
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, i, min(i+5, len(r.toks)-1))
			return true
		}
		if !r.among(i, foreignPlaces) || r.homeNamesake(i) || !r.skylightThere(i) {
			continue
		}
		first, last := r.foreignSpan(i)
		r.use(first, last)
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, first, last)
		return true
	}
	return false
}

// homeNamesake: "New Mexico", "Ontario, California", or a place that is denied.
func (r *reader) homeNamesake(i int) bool {
	switch {
	case r.wordAt(i-1, "not", "no"):
		return true // "Vancouver, Washington, not Canada"
	case r.wordAt(i, "ontario"):
		return r.wordsIn(i+1, len(r.toks), "california", "calif", "oregon", "ca")
	case r.wordAt(i, "mexico"):
		return r.wordAt(i-1, "new", "nuevo", "gulf")
	case r.wordAt(i, "columbia"):
		return !r.wordAt(i-1, "british")
	case r.wordAt(i, "scotia"):
		return !r.wordAt(i-1, "nova")
	}
	return false
}

// skylightThere: the place is the answer, or "in" leads to it; not "I grew up in Mexico".
func (r *reader) skylightThere(i int) bool {
	if r.asked(fitcheck.TopicPlace) {
		return true
	}
	return r.wordAt(i-1, "in", "from", "to", "en", "de") && !r.anyOf(max(0, i-5), i, bornOrMade) &&
		(len(r.Asked) == 0 || r.askedSize() == "none")
}

// foreignSpan is what names the place, short clauses after a comma included: "Calgary, Alberta".
func (r *reader) foreignSpan(i int) (first, last int) {
	first, last = r.clauseStart(i), r.clauseEnd(i)
	for last+2 < len(r.toks) && (r.markAt(last+1, ',') || r.markAt(last, ',')) &&
		r.clauseEnd(last+2)-last < 5 && !r.among(last+2, asksNext) {
		last = r.clauseEnd(last + 2)
	}
	for last > first && r.toks[last].kind == markToken {
		last--
	}
	return first, last
}

// canadianCode: "M5V 2T6".
func (r *reader) canadianCode(i int) bool {
	if i+5 >= len(r.toks) {
		return false
	}
	for k := range 6 {
		t, kind := &r.toks[i+k], wordToken
		if k%2 == 1 {
			kind = numToken
		}
		if t.kind != kind || len(t.text) != 1 || k > 0 && k != 3 && !t.glued {
			return false
		}
	}
	return true
}
