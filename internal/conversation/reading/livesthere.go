package reading

import "example.com/intake-bot/internal/fitcheck"

// Whether a word for a place says where the speaker lives or where a thing goes.

var (
	shippedThings     = wordsOf(`one it them this these two some uno una dos los algo esto`)
	shipVerbsEs       = wordsOf(`pedido enviar envio envios envian mandar mandan llegar entregan entregar`)
	beforeStrangeTown = wordsOf(`county parish borough township condado nowhere boonies boondocks sticks rurales
		northern southern eastern western central rural upstate`)
	awayPersons = wordsOf(`he hes she shes husband husbands wife wifes son daughter esposo esposa hijo
		hija ella`)
	awayTimes = wordsOf(`till until til this for right hasta today tonight visiting hoy`)
	notLiving = wordsOf(`need needs want wants have got like try trying supposed able how where what ought easier
		better`)
	placeLinks  = wordsOf(`in from to near en de desde around outside by`)
	talkedVerbs = wordsOf(`talked talk spoke speak spoken talking texted wrote sent gave`)
	ownRoles    = wordsOf(`handyman roofer contractor builder carpenter owner manager landlord customer client
		homeowner roofing techero contratista soy somos techos techador`)
	livesWords = wordsOf(`im were live located ship shipping am are we i going vivo estoy estamos soy vivimos house
		home deliver delivered`)
)

// aboutShop: the question is where the shop is, or where it ships: "are you in Ohio".
func (r *reader) aboutShop(i int) bool {
	if r.asked(fitcheck.TopicPlace) || r.seeksHands(i) {
		return false
	}
	if k := r.clauseStart(i); r.wordAt(k, "im", "were", "i", "we", "vivo", "estoy", "estamos") ||
		r.wordAt(k, "my", "our") && r.wordsIn(k, i, "is") {
		return false // "do you ship to Alaska, we are in Homer"
	}
	from, _ := r.sentence(i)
	for k := from; k+2 < i; k++ { // "idk, do you ship to Hawaii"
		if r.wordAt(k, "do", "can", "will", "would", "could", "if", "whether") && r.wordAt(k+1, "you", "u", "yall", "ya") &&
			r.wordAt(k+2, "ship", "deliver", "send", "mail", "sell", "even", "guys") {
			return true
		}
	}
	return r.wordAt(from, "are", "is", "do", "where", "r") && r.wordsIn(from, i, "you", "u", "yall", "your", "guys") &&
		!r.wordsIn(from, i, "i", "im", "my", "me", "we")
}

// shipsTo: the town is where it is to be sent: "do you guys ship to Fresno".
func (r *reader) shipsTo(i int) bool {
	if _, to := r.sentence(i); r.wordsIn(i, to+1, "or", "o") {
		return false // "do you ship to Tampa or just Miami"
	}
	if r.wordAt(i-1, "to", "a") && r.among(i-2, shippedThings) {
		i-- // "ship one to Elko", "mandar uno a Calexico"
	}
	if r.wordAt(i-1, "to") && r.wordAt(i-2, "out", "over", "down", "up") && r.wordAt(i-3, "come", "drive", "travel", "go") {
		return true // "do you come out to Barstow"
	}
	return r.wordAt(i-1, "to", "one", "it", "them", "this", "these", "two", "some") &&
		r.wordAt(i-2, "ship", "shipping", "deliver", "delivery", "send", "sent", "mail") ||
		r.wordAt(i-1, "a", "uno", "una", "dos", "los", "algo", "esto") && r.among(i-2, shipVerbsEs)
}

// strangeBefore: an unknown word before a state is a town that the table lacks.
func (r *reader) strangeBefore(i int) bool {
	for r.markAt(i-1, ',') || r.markAt(i-1, '.') {
		i--
	}
	return i > 0 && r.toks[i-1].kind == wordToken && r.toks[i-1].word == nil && !r.toks[i-1].used && len(r.toks[i-1].text) > 3 &&
		!r.among(i-1, beforeStrangeTown)
}

// awayThere: "he's in Boise till Friday": where somebody else is for now.
func (r *reader) awayThere(i, last int) bool {
	return r.wordAt(i-1, "in", "en") && r.anyOf(max(0, i-4), i-1, awayPersons) &&
		r.anyOf(last+1, min(last+5, len(r.toks)), awayTimes)
}

func (r *reader) livesBefore(i int) bool {
	if r.sentThere(i) {
		return true
	}
	if r.wordAt(i-1, "to") && r.among(i-2, notLiving) {
		return false // "do I need to hunt up a roofer"
	}
	if r.learntFrom(i) ||
		!r.among(i-1, placeLinks) && !(r.wordAt(i-1, "of") && r.wordAt(i-2, "out")) ||
		r.among(i-2, talkedVerbs) ||
		r.wordAt(i-2, "to", "with") && r.wordAt(i-3, "talk", "speak", "talked", "spoke") {
		return false
	}
	if r.wordAt(i-1, "of") && r.wordAt(i-2, "out") && !r.anotherTown(i+1) {
		return true // "Cascade Roofing out of Yakima"
	}
	if k := r.beforeTown(i); r.opensClause(k) && !r.notByPlace(k) && r.wordAt(i-1, "in", "from", "de", "en", "near") {
		return true // "Ann in Dayton"
	}
	if r.wordAt(i-1, "in", "en", "from", "de", "near") && r.among(i-2, ownRoles) {
		return true // "Travis, handyman in Chattanooga"
	}
	if r.townOfSpeaker(i) || r.townOfWork(i) || r.afterWholeName(i) {
		return true
	}
	from, _ := r.sentence(i)
	if r.wordAt(i-1, "outside", "near", "of") && r.nearBuilding(from, i) {
		return true // "double wide outside Flagstaff"
	}
	if r.wordAt(i-1, "in", "en") && r.useBefore(from, i-2) {
		return true // "es para una bodega en Houston"
	}
	if r.wordAt(i-1, "in", "en") && r.wordAt(i-2, "is", "are", "esta", "its") &&
		!r.wordsIn(from, i, "office", "store", "shop", "you", "your") {
		return true // "the jobsite is in Flagstaff"
	}
	return r.anyOf(from, i, livesWords)
}

// nearBuilding: a building is named before "near", "just outside of".
func (r *reader) nearBuilding(from, i int) bool {
	k := i - 1
	for r.wordAt(k, "of", "outside", "just", "near", "right", "out") {
		k--
	}
	return (r.wordAt(k+1, "outside", "near") || r.wordAt(k+2, "outside", "near")) && r.useBefore(from, k)
}
