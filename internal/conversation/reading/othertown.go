package reading

import "example.com/intake-bot/internal/place"

// A town that is named for something else than where the skylight is: where it was bought, where the writer
// came from or is today, where the man who put it in is from, what they live near.

var (
	movedVerbs  = wordsOf(`moved relocated came come coming moving mudamos mude vinimos vine`)
	tradePeople = wordsOf(`guy guys man crew company roofer roofers outfit contractor builder fella fellow store
		dealer installer tipo techero compania muchachos`)
	beforeTrade = wordsOf(`the a some that this el un unos los una la`)
	tradeVerbs  = wordsOf(`installed put did sold built made said told came measured fixed replaced who that quoted
		wanted instalo puso hizo pusieron vino dijo vendio`)
	passingTimes  = wordsOf(`today tonight week now weekend hoy ahorita month till until visiting hasta semana moment`)
	directionsOf  = wordsOf(`north south east west northeast northwest southeast southwest suburb n s e w`)
	distanceUnits = wordsOf(`minutes mins minutos miles millas hour hours hora horas mi`)
)

// anotherThings: the town at the token is where something was bought, somebody was born or moved from, or
// whoever worked on it is from.
func (r *reader) anotherThings(i, last int) bool {
	from := r.clauseStart(i)
	for k := from; k < i; k++ {
		switch {
		case r.wordAt(k, "bought", "ordered", "purchased", "compre", "compramos", "compraron") && !r.buildingIn(k, i) &&
			!r.wordsIn(from, i, "place", "property", "land", "here", "terreno", "for", "para", "need", "wide"):
			return r.wordAt(i-1, "in", "from", "at", "en", "of", "de")
		case r.among(k, movedVerbs) && r.wordAt(i-1, "from", "de", "desde", "of") && !r.wordAt(i-2, "just", "part", "side"):
			return true
		case r.wordAt(k, "grew", "raised", "born", "crecimos", "creci", "naci") && r.wordAt(i-1, "in", "en", "near", "from"):
			return true
		}
	}
	if r.wordAt(i-1, "from", "de", "in", "out") && r.among(i-2, tradePeople) && r.among(i-3, beforeTrade) {
		return r.among(last+1, tradeVerbs)
	}
	return false
}

// buildingIn: a building is named between the tokens.
func (r *reader) buildingIn(from, to int) bool {
	hits := within(r.choices, from, to)
	for n := range hits {
		if hits[n].has1("use") {
			return true
		}
	}
	return false
}

// passingTown: the writer is there for now only: "I'm in Denver today", "working in Reno this week".
func (r *reader) passingTown(i, last int) bool {
	return r.anyOf(last+1, min(last+4, len(r.toks)), passingTimes) ||
		r.wordsIn(max(r.clauseStart(i), i-4), i, "visiting", "traveling", "travelling", "vacation", "working", "hotel", "staying",
			"trabajando", "visitando")
}

// nearTown: what is known is only what town they live near: "near Austin", "an hour north of Dallas", "20
// minutes from Boise". With a state the mail comes there, see the corpus.
func (r *reader) nearTown(i int) bool {
	switch {
	case r.wordAt(i-1, "near", "nearby"), r.wordAt(i-1, "to") &&
		r.wordAt(i-2, "close", "closer", "next", "closest"), r.wordAt(i-1, "by") && r.wordAt(i-2, "over", "out"),
		r.wordAt(i-1, "de") && r.wordAt(i-2, "cerca", "afueras", "norte", "sur", "este", "oeste", "lado"):
		return true
	case r.wordAt(i-1, "of") && r.among(i-2, directionsOf):
		return true
	}
	return r.wordAt(i-1, "from", "of", "de", "outside", "to", "out") &&
		(r.anyOf(max(r.clauseStart(i), i-5), i, distanceUnits) || r.wordAt(i-2, "min"))
}

// townSomewhere: a town's name that needs no state stands at the token, known well or not.
func (r *reader) townSomewhere(i int) bool {
	var buf [8]string
	return i < len(r.toks) && place.Scan(r.wordsFrom(i, 4, buf[:]), "") > 0 && r.townWord(i)
}
