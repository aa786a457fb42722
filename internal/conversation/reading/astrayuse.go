package reading

import "example.com/intake-bot/internal/fitcheck"

// A word for a use that names some other place: whose telephone it is, where the writer is now.

var (
	bankLeads          = wordsOf(`call ask tell with from snow`)
	phonePlaces        = wordsOf(`mobile home house office shop store casa oficina`)
	beforeCoffeeColor  = wordsOf(`como esta color puso muy bien medio y mas puro`)
	artSchoolWords     = wordsOf(`teacher class classes room school department dept supplies`)
	parkedThings       = wordsOf(`rv rvs boat boats camper trailer motorhome bote lancha traila`)
	parkVerbs          = wordsOf(`park store stores stored keep guardo guardamos`)
	jobsAtPlace        = wordsOf(`skylight skylights dome domes one ones leak job roof`)
	vanOwners          = wordsOf(`my a our the camper for`)
	installInfinitives = wordsOf(`ponerle poner agregarle agregar hacerle instalarle meterle abrirle`)
	otherPlaceWords    = wordsOf(`different other another wrong neighbors next`)
	placeActs          = wordsOf(`has had have said says told quoted sells sold wants closes opens called carries
		charges does lady roofer contractor owner manager phone number address key keys sale work wife guy paint
		insurance hours secretary people`)
	wouldLikers  = wordsOf(`id wed would d i we theyd shed hed`)
	phoneTellers = wordsOf(`the my is thats its a la es de mi number at`)
	skylightsHad = wordsOf(`skylight skylights dome domes bubble bubbles skylite skylites hatch hatches leaks em
		them those`)
	barnOwners    = wordsOf(`our my the grandmas moms mothers dads parents`)
	coveringNouns = wordsOf(`roof shingles shingle shakes tile tiles slate`)
)

// useAstray says whether the words for a use tell of no building that a skylight is in.
func (r *reader) useAstray(first, last int) bool {
	if r.noPlaceWord(first, last) || r.behindHouse(first, last) || r.besideNumber(first, last) {
		return true
	}
	if !r.asked(fitcheck.TopicUse) && (r.writerArt(first) || r.writersPlace(first, last)) {
		return true
	}
	return r.whereParked(first, last) || r.atDoctors(first, last) || r.flatAbove(first) || r.placeNearby(first, last) ||
		r.comesToPlace(first) || r.actsForShop(first, last)
}

// noPlaceWord: the word is a verb, a color or a subject taught.
func (r *reader) noPlaceWord(first, last int) bool {
	switch {
	case r.wordAt(first, "store"): // "I store hay in it"
		return r.wordAt(first-1, "i", "we", "they", "to", "you")
	case r.wordAt(first, "bank"): // "call the bank first"
		return r.anyOf(first-3, first, bankLeads)
	case r.wordAt(first, "cafe"): // "está como café": a color
		return r.among(first-1, beforeCoffeeColor)
	case r.wordAt(first, "art"):
		return r.artTaught(first, last)
	}
	return false
}

// artTaught: "I teach art".
func (r *reader) artTaught(first, last int) bool {
	if r.wordsIn(r.sentenceFirst(first), first, "where", "store") || r.wordAt(last+1, "in", "there", "here") {
		return false
	}
	return r.wordAt(first-1, "teach", "teaches", "taught") || r.among(last+1, artSchoolWords)
}

// writerArt: "… Anchorage AK. Art": who writes.
func (r *reader) writerArt(first int) bool {
	return r.wordAt(first, "art") && first > 0 && first+1 == len(r.toks) && r.sentenceEnd(first-1)
}

// writersPlace: "I'm at the hospital right now".
func (r *reader) writersPlace(first, last int) bool {
	return r.wordAt(first-1, "the", "a") && r.wordAt(first-2, "at") && r.wordAt(first-3, "im", "am", "be", "still", "was") &&
		!r.wordsIn(last+1, last+4, "and", "with", "where")
}

// besideNumber: the word says whose telephone it is: "505-555-0149 mobile", "218-555-0166 is the house".
func (r *reader) besideNumber(first, last int) bool {
	if first != last || !r.among(first, phonePlaces) {
		return false
	}
	return r.numberedAt(first-1) ||
		r.asked(fitcheck.TopicPhone) && !r.asked(fitcheck.TopicUse) && r.besidePhone(first)
}

// whereParked: "detached garage, where I park the RV".
func (r *reader) whereParked(first, last int) bool {
	return r.anyOf(first, last+1, parkedThings) && r.anyOf(max(r.sentenceFirst(first), first-7), first, parkVerbs)
}

// atDoctors: "I'm at my doctors office".
func (r *reader) atDoctors(first, last int) bool {
	return r.wordsIn(first, last+1, "doctors", "dentist", "dentists") && r.wordAt(first-1, "my", "the") &&
		r.wordAt(first-2, "at", "in", "from", "leaving") && !r.wordsIn(0, first, "skylight", "skylights")
}

// flatAbove: "our apartment is over a convenience store".
func (r *reader) flatAbove(first int) bool {
	return r.wordsIn(first-3, first, "over", "above") && r.wordsIn(0, first, "apartment", "condo", "loft")
}

// placeNearby: the place is another one, or only near.
func (r *reader) placeNearby(first, last int) bool {
	switch {
	case r.wordAt(last+1, "next") && r.wordAt(last+2, "door"),
		r.wordAt(first-1, "the", "my", "our") && r.wordsIn(first-5, first, "between"),
		r.among(first-1, otherPlaceWords),
		r.likened(first):
		return true
	case r.wordAt(first, "casa"): // part of a name, in English
		return r.out.Language == "en" && len(r.toks) > 1
	case r.wordAt(first, "van"): // a part of a name; not "my van"
		return !r.asked(fitcheck.TopicUse) && !r.among(first-1, vanOwners)
	}
	return false
}

// comesToPlace: somebody comes or goes to the place; not "the leak at the office".
func (r *reader) comesToPlace(first int) bool {
	switch {
	case r.wordAt(first-1, "to", "at"):
		return !r.wordAt(first, "our", "my") && len(r.toks) > 2 && !r.among(first-2, jobsAtPlace)
	case r.wordAt(first-1, "la", "casa"): // "voy a la casa"; not "ponerle un domo a la casa"
		return r.wordAt(first-2, "a") && !r.anyOf(r.clauseStart(first), first, installInfinitives)
	case r.wordAt(first-1, "a"):
		return r.wordAt(first-2, "llego", "voy", "llegue")
	case r.wordAt(first-1, "the") && r.wordAt(first-2, "from", "to"):
		return true
	}
	return false
}

// actsForShop: the place does or has something, or is where the writer got the shop's number.
func (r *reader) actsForShop(first, last int) bool {
	if r.ofShop(first) || r.ofPhone(last) || r.among(last+1, placeActs) && !r.under(first, last) {
		return true
	}
	return r.wordAt(first-1, "the", "feed", "hardware", "grocery") && r.wordsIn(first-4, first, "at") &&
		r.wordsIn(first-8, first, "number", "flyer", "card", "ad", "name")
}

// likened: "it's like a barn"; not "we'd like a skylight in our garage".
func (r *reader) likened(first int) bool {
	for i := max(r.clauseStart(first), first-5); i < first; i++ {
		if r.wordAt(i, "like") && !r.among(i-1, wouldLikers) {
			return true
		}
	}
	return false
}

// besidePhone: the word tells whose number it is: "218-555-0166 is the house".
func (r *reader) besidePhone(i int) bool {
	if r.wordAt(i+1, "is", "phone", "number", "line", "es") || r.numberedAt(i+1) || r.markAt(i+1, ':') && r.numberedAt(i+2) {
		return true
	}
	i--
	for r.among(i, phoneTellers) || r.markAt(i, '(') || r.markAt(i, '-') {
		i--
	}
	return r.numberedAt(i)
}

func (r *reader) numberedAt(i int) bool {
	return i >= 0 && i < len(r.toks) && r.toks[i].kind == phoneToken
}

// under: "the skylight in our church has cracked", "the coop has a real skylight".
func (r *reader) under(first, last int) bool {
	i := first
	if r.wordAt(i-1, "our", "my") {
		i--
	}
	if r.wordAt(i-1, "his", "her", "their") {
		return false
	}
	return r.skylightBefore(first, i) || r.wordAt(i, "our", "my") && r.wordAt(i-1, "in", "on", "at", "over") ||
		r.hasSkylight(first, last)
}

// skylightBefore: a skylight of the place is named before it, whose own words begin at i.
func (r *reader) skylightBefore(first, i int) bool {
	if r.wordAt(first-1, "the", "our", "my") && r.wordAt(first-2, "on", "over", "in", "above") {
		return r.wordAt(first-3, "skylight", "dome", "one", "bubble") // "the skylight on the garage has a hole"
	}
	// "the hallway skylight of our house has gotten cloudy"
	return r.wordAt(i, "our", "my") && r.wordAt(i-1, "of") && r.wordAt(i-2, "skylight", "skylights", "dome", "domes")
}

// hasSkylight: the place has skylights, or a roof that they are on.
func (r *reader) hasSkylight(first, last int) bool {
	if !r.wordAt(last+1, "has", "had", "have") {
		return false
	}
	if r.wordAt(last+1, "have") && r.wordAt(last+2, "a") || r.anyOf(last+2, last+8, skylightsHad) {
		return true
	}
	// "my barn has a steel panel roof"
	return r.among(first-1, barnOwners) && r.wordAt(last+1, "has", "have") && r.anyOf(last+2, last+8, coveringNouns)
}
