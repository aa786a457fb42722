package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// Where a town is told by who speaks, where the work is, or what is to get there.

var (
	notSpeakersTown = wordsOf(`skylight skylights house ship dome casa tragaluz its about for enviar`)
	callVerbs       = wordsOf(`calling texting writing emailing llamo llamando escribo escribiendo llama escribe hablo`)
	jobNouns        = wordsOf(`job jobs project jobsite worksite site obra trabajo proyecto property propiedad negocio
		remodel`)
	jobBuildings = wordsOf(`house home church shop barn warehouse roofer contractor handyman plumber builder glazier
		remodeler`)
	ownBuilding = wordsOf(`tengo tenemos casa iglesia taller negocio traila tragaluz tragaluces domo domos edificio
		gimnasio bodega escuela rancho`)
	handsSought = wordsOf(`anybody anyone somebody someone installer installers alguien quien instalador
		instaladores`)
	installVerbs = wordsOf(`install installs installer installers put puts local replace replaces fix fixes measure
		measures instalador instaladores instale instala instalar poner cambiar ponga pone cambie mida monte does look
		inspect check vea revise`)
	sentVerbsTo = wordsOf(`get arrive delivery freight shipped sent mailed deliver delivered out`)
	wishToKnow  = wordsOf(`quiero quiere quieren quisiera queria gustaria necesito want wants wanted wanna like need
		love`)
	streetPoints = wordsOf(`w e n s nw ne sw se west east north south`)
	streetNames  = wordsOf(`first second third 3rd 2nd 1st main elm oak maple park lake center front broad high
		church mill water court`)
	artPlaces = wordsOf(`gallery studio studios center school museum supply room class department installation
		building store deco`)
)

// townOfSpeaker: "this is Mike from Tulsa", "habla Teodoro de Chicago", "calling from Omaha":
// a name, or words of calling, lead from the start of the sentence to the town.
func (r *reader) townOfSpeaker(i int) bool {
	if !r.wordAt(i-1, "from", "in", "near", "outside", "de", "en", "desde") {
		return false
	}
	if r.anyOf(i+1, len(r.toks), notSpeakersTown) && r.anotherTown(i+1) ||
		r.wordAt(i+1, "glass", "roofing", "company", "construction") {
		return false // "calling from Dallas but the skylight is in Fresno"
	}
	if r.among(i-2, callVerbs) {
		return true
	}
	if r.wordAt(i-1, "de") && !r.surelyTown(i) {
		return false // "soy Ana de Leon"
	}
	for k := i - 2; k >= 0 && k > i-6; k-- {
		if r.wordAt(k, "out", "over", "down", "up", "here", "right") && k > 0 {
			continue // "this is Sam over in Boise"
		}
		if r.introEnds(k) {
			return k < i-2
		}
		if r.markAt(k, '.') && r.titleOrInitial(k-1) {
			continue
		}
		if !r.nameWord(k, false) && !r.titleOrInitial(k) {
			return false
		}
	}
	return false
}

// anotherTown: a later "in", "at" or "to" leads to another known town.
func (r *reader) anotherTown(from int) bool {
	for k := from; k+1 < len(r.toks); k++ {
		if r.wordAt(k, "in", "to", "near", "en", "a") && (r.surelyTown(k+1) || r.wordAt(k, "to") && r.shipsTo(k+1)) {
			return true
		}
	}
	return false
}

// surelyTown: the words from token i on are one well-known town's.
func (r *reader) surelyTown(i int) bool {
	var buf [8]string
	name := r.wordsFrom(i, 4, buf[:])
	n := place.Scan(name, "")
	if n == 0 || n == 1 && r.givenAt(i) {
		return false
	}
	_, known := r.surelyMeant(i, r.tokenOf(i, n), joined(name[:n]))
	return known
}

// townOfWork: "job in Boise", "la obra es en Laredo", "anybody in Tulsa who puts these in",
// "how long does it take to get to Yuma".
func (r *reader) townOfWork(i int) bool {
	k := i - 2
	for r.wordAt(k, "es", "is", "esta", "queda", "located", "right", "here", "aqui", "out") {
		k--
	}
	if r.wordAt(i-1, "in", "en", "near") && r.among(k, jobNouns) && !r.wordAt(k-1, "your", "su", "sus") {
		return true
	}
	if r.wordAt(i-1, "in", "near") && k >= 0 && r.toks[k].kind == wordToken &&
		(countNouns.has(r.toks[k].text) || r.among(k, jobBuildings)) && r.surelyTown(i) &&
		!r.wordsIn(r.sentenceFirst(i), i, "made", "bought", "sold", "saw", "used", "your") {
		return true // "2 skylights in Tucson"
	}
	if r.wordAt(i-1, "es", "its", "is") && r.wordsIn(max(0, i-7), i, "ciudad", "pueblo", "city", "town") && r.surelyTown(i) {
		return true // "la ciudad está mal, es Harlingen"
	}
	if r.wordAt(i-1, "en") && r.out.Language == "es" && r.surelyTown(i) && r.anyOf(r.sentenceFirst(i), i, ownBuilding) {
		return true // "tengo una traila en Bakersfield y …"
	}
	return r.seeksHands(i) || r.sentThere(i)
}

// clauseTown: in an opening message a well-known town is a clause of its own: "Linda Cho,
// Sacramento. cracked skylight".
func (r *reader) clauseTown() bool {
	if len(r.Asked) > 0 {
		return false
	}
	var buf [8]string
	for i := 1; i < len(r.toks); i++ {
		if r.toks[i].kind != wordToken || r.toks[i].used || !r.markAt(i-1, ',') && !r.sentenceEnd(i-1) {
			continue
		}
		name := r.wordsFrom(i, 5, buf[:])
		n := place.Scan(name, "")
		if n == 0 || len(joined(name[:n])) < 5 && !(i == 3 && r.givenAt(0) && r.markAt(2, ',') && r.capital(i)) {
			continue // a short one only right behind a name: "Kevin Marsh, Reno."
		}
		last := r.tokenOf(i, n)
		if w := r.toks[i].word; last+1 < len(r.toks) && !r.markAt(last+1, ',') && !r.sentenceEnd(last+1) ||
			n == 1 && (r.givenAt(i) || w != nil && (w.common || w.filler || w.trade)) ||
			r.aboutShop(i) ||
			last+1 == len(r.toks) &&
				(r.markAt(i-1, '\n') || r.wordAt(i-2, "thanks", "thank", "regards", "sincerely", "cheers", "best", "saludos", "gracias")) {
			continue // also who signs as Dallas
		}
		if e, ok := r.surelyMeant(i, last, joined(name[:n])); ok {
			return r.townFact(i, last, e)
		}
	}
	return false
}

// seeksHands: the question is who would do the work in the town.
func (r *reader) seeksHands(i int) bool {
	from, to := r.sentence(i)
	if r.wordsIn(i, to+1, "made", "expensive", "cheap", "or", "did", "quoted") {
		return false
	}
	return r.wordAt(i-1, "in", "near", "around", "en", "cerca", "by", "de", "to") && r.anyOf(from, i, handsSought) &&
		r.anyOf(from, to+1, installVerbs) &&
		!r.wordsIn(from, to+1, "talk", "speak", "office", "hablar", "oficina", "tienda", "store")
}

// sentThere: "cuánto tarda en llegar a Yuma", "el envío a Laredo".
func (r *reader) sentThere(i int) bool {
	return r.wordAt(i-1, "to") && r.among(i-2, sentVerbsTo) &&
		r.wordsIn(r.sentenceFirst(i), i, "long", "much", "soon", "time", "freight", "delivery", "cost", "fast") ||
		r.wordAt(i-1, "a", "hasta") && r.wordAt(i-2, "llegar", "envio", "enviar", "enviarlo", "mandar", "mandarlo", "flete", "llevar")
}

// handsWanted: a sentence asks who would do the work in the town that it names.
func (r *reader) handsWanted() bool {
	for _, w := range r.where {
		if w.topic == fitcheck.TopicPlace && r.seeksHands(w.first) {
			return true
		}
	}
	return false
}

// wantsToKnow: "quiero saber cuánto tarda", "wondering how long it takes".
func (r *reader) wantsToKnow(i int) bool {
	if r.wordAt(i-1, "saber", "know") {
		return r.anyOf(max(r.sentenceFirst(i), i-5), i-1, wishToKnow) &&
			!r.wordsIn(max(r.sentenceFirst(i), i-5), i-1, "you", "usted", "no", "dont")
	}
	return r.wordAt(i-1, "wondering", "curious") || r.wordAt(i-1, "about", "on") && r.wordAt(i-2, "wondering", "curious")
}

// facedStreet: "418 W 3rd. Chicago", "915 W Elm, Springfield IL": a number, where the street
// lies, and its name, beside a place.
func (r *reader) facedStreet(i int) bool {
	if !r.among(i+1, streetPoints) || r.toks[i].dec > 0 || i+2 >= len(r.toks) {
		return false
	}
	end := i + 2
	if r.markAt(end, '.') && end+1 < len(r.toks) {
		end++
	}
	switch t := &r.toks[end]; {
	case t.kind == numToken &&
		(r.wordAt(end+1, "th", "st", "nd", "rd") || len(t.text) > 2 && (t.text[len(t.text)-1] == 'd' || t.text[len(t.text)-1] == 'h')):
		end += number(r.wordAt(end+1, "th", "st", "nd", "rd"))
	case t.kind == wordToken && (t.word == nil || t.word.given || t.among(streetNames)) && r.unitAt(end) == noUnit && !r.by(end):
	default:
		return false
	}
	if !r.known(fitcheck.TopicPlace) && !r.asked(fitcheck.TopicPlace) ||
		end+1 < len(r.toks) && r.toks[end+1].kind != markToken && !r.toks[end+1].used &&
			!r.wordAt(end+1, "apt", "unit", "ste", "suite") {
		return false
	}
	r.use(i, end)
	return true
}

// artPlace: "art gallery" and the like is a building, nobody called Art.
func (r *reader) artPlace(i int) bool {
	return r.wordAt(i, "art") && r.among(i+1, artPlaces)
}

// nameIsFine: "Mr. Haskins is fine", "just Dot works": asked for a name, one that will do.
func (r *reader) nameIsFine() bool {
	for i := 1; i < len(r.toks); i++ {
		if r.possessiveFine(i) {
			return true
		}
		if !r.wordAt(i, "works") && !(r.wordAt(i, "is") && r.wordAt(i+1, "fine", "good", "ok", "okay", "great", "plenty")) &&
			!(r.wordAt(i, "will") && r.wordAt(i+1, "do", "work")) &&
			!(r.wordAt(i, "is") && r.wordAt(i+1, "what") &&
				r.wordsIn(i+2, min(i+8, len(r.toks)), "go", "call", "called", "calls", "goes", "answer")) {
			continue
		}
		first := i
		for first > 0 && i-first < 4 &&
			(r.nameWord(first-1, true) || r.markAt(first-1, '.') && first > 1 && r.titleOrInitial(first-2)) &&
			!afterName.has(r.toks[first-1].text) {
			first--
		}
		if first == i ||
			first > 0 && r.toks[first-1].kind != markToken && !r.wordAt(first-1, "just", "yeah", "yes", "sure", "ok", "me") {
			continue
		}
		if !r.givenAt(first) && !r.titleOrInitial(first) && !r.wordAt(first-1, "just") ||
			r.wordsIn(i, len(r.toks), "im", "with", "here") ||
			r.wordAt(i+2, "to", "at", "with", "about") {
			continue // also "Maria is good with that, I'm John"
		}
		r.nameFact(first, i-1)
		return true
	}
	return false
}

// possessiveFine: "Hank's fine": the name before its shortened "is".
func (r *reader) possessiveFine(i int) bool {
	if i != 1 || !r.wordAt(i, "fine", "good", "ok", "okay", "plenty", "great") ||
		i+1 < len(r.toks) && r.toks[i+1].kind != markToken {
		return false
	}
	said := r.said(0, 0)
	name, ok := strings.CutSuffix(strings.ReplaceAll(said, "\u2019", "'"), "'s")
	if !ok || len(name) < 2 || r.wordAt(0, "thats", "its", "hes", "shes", "everythings", "whats", "frames") {
		return false
	}
	r.name(0, 0)
	r.fact(fitcheck.TopicName, 0, fitcheck.Text(properCase(name)), 0, 0)
	return true
}

// townCalled: "northern Michigan, little town called Gaylord".
func (r *reader) townCalled(state string) string {
	var buf [8]string
	for i := range r.toks {
		if !r.wordAt(i, "called", "named", "llamado", "llama") ||
			!r.wordsIn(max(0, i-4), i, "town", "city", "place", "village", "pueblo") {
			continue
		}
		name := r.wordsFrom(i+1, 4, buf[:])
		if n := place.Scan(name, state); n > 0 {
			r.name(i+1, r.tokenOf(i+1, n))
			return place.Towns(joined(name[:n]), state)[0].City
		}
	}
	return ""
}

// learntFrom: what is known or learnt from it: "I learn better from looking than from reading".
func (r *reader) learntFrom(i int) bool {
	return r.wordAt(i-1, "from") &&
		r.wordsIn(max(0, i-4), i-1, "learn", "learned", "better", "know", "knew", "judge", "guess", "remember", "than")
}
