package reading

import "example.com/intake-bot/internal/fitcheck"

// Whether a color that nobody asked for is the plastic's.

var (
	lookingWords   = wordsOf(`looks look see just ya se ve parece old one`)
	confirmFillers = wordsOf(`i we in and if en se puede puedo possible can could you u pero que sea sean domo ordered
		asked requested chose picked for said too also as well likewise tambien should not no it thats meant mean change
		switch swap to sorry be digo dije me needs forgot forget mention say thing olvido olvide decir decirle cosa una
		falto oh quise el la de del los las por favor`)
	ofPlasticWords = wordsOf(`want like need prefer color make go lets please tint over plastic dome domes acrylic cambie
		cambien cambiele cambielo cambiela cambia cambiar ponga pongale ponle prefiero polycarbonate skylight version
		option layer layers double single triple lens bubble colour quiero domo plastico acrilico policarbonato meant
		mejor sea sean should instead wants one ones choose order capa doble sencillo for glazing sheet plexiglass`)
)

// ofPlastic: a color that nobody asked for is the plastic's where its clause speaks of
// plastic, of what is wanted, or of nothing else.
func (r *reader) ofPlastic(n int) bool {
	h := &r.choices[n]
	if r.besidePlasticChoice(n) || r.besideLayer(n) || r.changeAsked(fitcheck.TopicColor, h.first, h.last) || r.choseColor(h) {
		return true
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	other := false
	for i := from; i <= to && (i <= h.last || !r.politeIf(i)); i++ { // "en blanco si se puede"
		switch {
		case r.wordAt(i, "like") && r.wordAt(i-1, "id", "wed", "would"):
			return true // "I'd like it in white"
		case i >= h.first && i <= h.last || r.tellsNoOwner(i, from) || r.fillerWhereAsked(i):
		case r.wishedHere(i) || r.among(i, ofPlasticWords):
			return true
		default:
			w := r.toks[i].word
			other = other || (w == nil || !w.filler) && !r.colorAt(i)
		}
	}
	return !other
}

// besidePlasticChoice: a material, layers or another color stands right beside: "double white acrylic".
func (r *reader) besidePlasticChoice(n int) bool {
	h := &r.choices[n]
	if h.has1("layers") {
		return true
	}
	if n > 0 {
		before := &r.choices[n-1]
		if before.has1("material") || before.has1("layers") || before.has1("color") && r.markAt(h.first-1, '/') {
			return true
		}
	}
	if n+1 == len(r.choices) {
		return false
	}
	next := &r.choices[n+1]
	return next.has1("material") || next.has1("layers") && r.toks[next.first].kind == wordToken
}

// besideLayer: one of the layers stands right beside: "clear outside".
func (r *reader) besideLayer(n int) bool {
	if n > 0 && r.choices[n-1].has1("layer") || n+1 < len(r.choices) && r.choices[n+1].has1("layer") {
		return true
	}
	v, _ := r.choices[n].has("color")
	return n > 1 && r.saidTwice(n-1, v) && r.isLayer(n-2) // "outer white, inner see-through clear"
}

// tellsNoOwner: the word of a clause does not tell what the color is of.
func (r *reader) tellsNoOwner(i, from int) bool {
	t := &r.toks[i]
	switch {
	case t.kind != wordToken, i < r.afterNote(from), r.roughAt(i), r.inRef(i), r.deniedColor(i):
		return true
	case t.used && r.Units > 1 && r.wholeSaid(i) > 0: // how many
		return true
	case t.is("though", "tho", "aunque", "thought", "thoughts"), t.is("second") && r.wordAt(i+1, "thought", "thoughts"):
		return true
	case t.is("after") && r.wordAt(i+1, "all"), t.is("all") && (r.wordAt(i+1, "all") || r.wordAt(i-1, "after")):
		return true
	}
	return false
}

// fillerWhereAsked: small words of an answer to another question: "can't tell, looks white tho".
func (r *reader) fillerWhereAsked(i int) bool {
	if r.among(i, lookingWords) && (r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicMaterial)) {
		return true
	}
	return r.among(i, confirmFillers) && r.asked(fitcheck.TopicConfirm)
}

// wishedHere: "the color is wrong, I wanted clear over clear", "poly carb, n do white".
func (r *reader) wishedHere(i int) bool {
	switch {
	case r.wordAt(i, "rather"):
		return true
	case r.wordAt(i, "wanted", "queria", "pedi"):
		return r.asked(fitcheck.TopicConfirm)
	case r.wordAt(i, "do", "use"):
		return r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicFinish) ||
			r.asked(fitcheck.TopicWant)
	}
	return false
}

// choiceOver is the phrase that covers a token, nil for none.
func (r *reader) choiceOver(i int) *hit {
	for n := range r.choices {
		if h := &r.choices[n]; h.first <= i && i <= h.last {
			return h
		}
	}
	return nil
}

// deniedColor: the word is part of "not clear".
func (r *reader) deniedColor(i int) bool {
	h := r.choiceOver(i)
	return h != nil && h.has1("colorof") && r.wordAt(h.first, "not", "no")
}

// colorAt: the word is part of a color's name.
func (r *reader) colorAt(i int) bool {
	h := r.choiceOver(i)
	return h != nil && h.has1("color")
}

// over: one color lies over another, by the words between them.
func (r *reader) over(from, to int) bool {
	return to == from+1 && r.wordAt(from, "on") || r.wordsIn(from, to, "over", "sobre", "top", "encima", "outside")
}
