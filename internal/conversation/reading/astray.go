package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	sealants           = wordsOf(`caulk caulked tar tarred silicone goop smeared sealant cement mastic`)
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
	skylightsHad = wordsOf(`skylight skylights dome domes bubble bubbles skylite skylites hatch hatches
		leaks em them those`)
	barnOwners    = wordsOf(`our my the grandmas moms mothers dads parents`)
	coveringNouns = wordsOf(`roof shingles shingle shakes tile tiles slate`)
	holdingStrips = wordsOf(`ring retainer strip strips bar bars rim`)
	stripMetals   = wordsOf(`metal aluminum steel retainer retaining a the`)
	notFrameMetal = wordsOf(`roof roofing deck decking screws screw panels panel washers building shed
		siding sheet sheets clips tape flashing tabs brackets anywhere curb box`)
	roomOwners    = wordsOf(`kids daughters sons brothers sisters moms dads dog dogs cat bed tv pool`)
	ownedRooms    = wordsOf(`room rooms bedroom bath bathroom playroom house kennel`)
	harmsOfThings = wordsOf(`cracked broke broken split chipped smashed shattered busted break cracks crack
		leaks leaked leaking hit rompio quebro`)
	harmedLeads  = wordsOf(`the my her his a our their open`)
	thoughtLinks = wordsOf(`a an the was were had it they made of that`)
	housedKin    = wordsOf(`cousin cousins brother brothers sister sisters friend friends buddy buddys moms
		dads parents`)
	neighborNouns = wordsOf(`neighbor neighbors neighbour neighbours vecino vecinos`)
	feelingHedges = wordsOf(`pretty so a little bit kinda very really not getting feeling all just`)
	madeVerbs     = wordsOf(`screwed built made put installed bolted nailed glued caulked sealed tarred smeared
		gobbed puso hizo atornillo clavo pego`)
	gaveNumberVerbs = wordsOf(`gave got sent paso dio recommended referred recomendo`)
	beforeSpeech    = wordsOf(`and i also still really always just y yo would d me`)
	speechVerbs     = wordsOf(`says said thinks saw sees noticed found swears told tells dice dijo vio dicen`)
	householders    = wordsOf(`wife husband mom dad mother father daughter kids`)
	householdWishes = wordsOf(`wants want prefers prefer likes loves insists picked chose voted decided
		rather needs agreed quiere queremos prefiere escogio`)
)

// astray says whether a value's words speak of something else than the skylight: "the
// driveway is cracked", "aluminum ladder", "I'm hazy on that", "the neighbor has glass".
func (r *reader) astray(t fitcheck.Topic, first, last int) bool {
	if r.thoughtOnce(first) || t != fitcheck.TopicWant && r.askedIsOf(first, last) || r.unreal(t, first) || r.inGeneral(t, first, last) || t != fitcheck.TopicProblem && r.overtaken(first) {
		return true
	}
	if t == fitcheck.TopicStyle && r.wordsIn(first, last, "see") && r.anyOf(r.sentenceFirst(first), first, sealants) {
		return true // "smeared with caulk, can't see the metal just the dome"
	}
	if r.othersClause(first, last) || t == fitcheck.TopicStyle && r.bareButFramed(first, last) {
		return true
	}
	if t == fitcheck.TopicImpactRisk || t == fitcheck.TopicWant {
		return r.wordAt(first, "golf") && first == last && r.wordAt(first-1, "i", "we", "he", "she", "they") && !r.wordAt(last+1, "course", "range", "green", "balls", "ball") || r.thingAt(last+1) || r.wordsIn(r.clauseStart(first), first, "named", "name", "called")
	}
	if t == fitcheck.TopicProblem && r.oldOne(first) {
		return true
	}
	if r.modifies(t, last+1) {
		return true
	}
	if t == fitcheck.TopicFrameCondition && r.onlyHeard(first, last) {
		return true
	}
	if t == fitcheck.TopicFrameCondition && r.wordAt(last+1, "on") && r.wordsIn(last+2, min(last+5, len(r.toks)), "screws", "screw", "nails", "bolts", "roof") {
		return true
	}
	if t == fitcheck.TopicUse && (r.wordAt(first, "store") && r.wordAt(first-1, "i", "we", "they", "to", "you") || r.wordAt(first, "bank") && r.anyOf(max(0, first-3), first, bankLeads)) {
		return true // "I store hay in it", "call the bank first"
	}
	if t == fitcheck.TopicUse && !r.asked(t) && r.wordAt(first, "art") && first > 0 && first+1 == len(r.toks) && r.sentenceEnd(first-1) {
		return true // "… Anchorage AK. Art": who writes
	}
	if t == fitcheck.TopicUse && !r.asked(t) && r.wordAt(first-1, "the", "a") && r.wordAt(first-2, "at") && r.wordAt(first-3, "im", "am", "be", "still", "was") && !r.wordsIn(last+1, min(last+4, len(r.toks)), "and", "with", "where") {
		return true // "I'm at the hospital right now"
	}
	if t == fitcheck.TopicStyle && r.wordAt(first, "on", "of") && r.wordsIn(first, last, "your", "ur", "yalls") || t == fitcheck.TopicStyle && r.wordAt(first-1, "your", "ur") && !r.asked(t) {
		return true // "the tolerance on your curb"
	}
	if t == fitcheck.TopicUse && first == last && r.numberedAt(first-1) && r.among(first, phonePlaces) {
		return true // "505-555-0149 mobile"
	}
	if t == fitcheck.TopicUse && r.wordAt(first, "cafe") && r.among(first-1, beforeCoffeeColor) {
		return true // "está como café": a color
	}
	if t == fitcheck.TopicUse && r.behindHouse(first, last) {
		return true
	}
	if t == fitcheck.TopicUse && r.wordAt(first, "art") && !r.wordsIn(r.sentenceFirst(first), first, "where", "store") && !r.wordAt(last+1, "in", "there", "here") && (r.wordAt(first-1, "teach", "teaches", "taught") || r.among(last+1, artSchoolWords)) {
		return true // "I teach art"
	}
	if t == fitcheck.TopicUse && r.asked(fitcheck.TopicPhone) && !r.asked(t) && first == last && r.among(first, phonePlaces) && r.besidePhone(first) {
		return true // "218-555-0166 is the house"
	}
	if t == fitcheck.TopicUse && r.anyOf(first, last+1, parkedThings) && r.anyOf(max(r.sentenceFirst(first), first-7), first, parkVerbs) {
		return true // "detached garage, where I park the RV"
	}
	if t == fitcheck.TopicUse && (r.wordsIn(first, last+1, "doctors", "dentist", "dentists") && r.wordAt(first-1, "my", "the") && r.wordAt(first-2, "at", "in", "from", "leaving") && !r.wordsIn(0, first, "skylight", "skylights") || r.wordsIn(max(0, first-3), first, "over", "above") && r.wordsIn(0, first, "apartment", "condo", "loft")) {
		return true // "I'm at my doctors office", "our apartment is over a convenience store"
	}
	if t == fitcheck.TopicUse {
		return r.ofShop(first) || r.ofPhone(last) || r.wordAt(last+1, "next") && r.wordAt(last+2, "door") || r.wordsIn(max(0, first-5), first, "between") && r.wordAt(first-1, "the", "my", "our") || r.likened(first) || r.wordAt(first, "casa") && r.out.Language == "en" && len(r.toks) > 1 || r.wordAt(first-1, "to", "at") && !r.wordAt(first, "our", "my") && len(r.toks) > 2 && !r.among(first-2, jobsAtPlace) || r.wordAt(first, "van") && !r.asked(fitcheck.TopicUse) && !r.among(first-1, vanOwners) || r.wordAt(first-1, "la", "casa") && r.wordAt(first-2, "a") && !r.anyOf(r.clauseStart(first), first, installInfinitives) || r.wordAt(first-1, "a") && r.wordAt(first-2, "llego", "voy", "llegue") ||
			r.among(first-1, otherPlaceWords) || r.wordAt(first-1, "the") && r.wordAt(first-2, "from", "to") || r.wordAt(first-1, "the", "feed", "hardware", "grocery") && r.wordsIn(max(0, first-4), first, "at") && r.wordsIn(max(0, first-8), first, "number", "flyer", "card", "ad", "name") ||
			!r.under(first, last) && r.among(last+1, placeActs)
	}
	if r.ofPerson(t, first) {
		return true
	}
	if chosen(t) && r.wordsIn(max(r.clauseStart(first), first-5), first, "so", "entonces") {
		return false // "the room faces west so bronze please"
	}
	return r.thingSubject(first, last)
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
	if r.wordAt(first-1, "the", "our", "my") && r.wordAt(first-2, "on", "over", "in", "above") && r.wordAt(first-3, "skylight", "dome", "one", "bubble") {
		return true // "the skylight on the garage has a hole"
	}
	if r.wordAt(i, "our", "my") && r.wordAt(i-1, "of") && r.wordAt(i-2, "skylight", "skylights", "dome", "domes") {
		return true // "the hallway skylight of our house has gotten cloudy"
	}
	return r.wordAt(last+1, "have") && r.wordAt(last+2, "a") || r.wordAt(i, "our", "my") && r.wordAt(i-1, "in", "on", "at", "over") || r.wordAt(last+1, "has", "had", "have") && r.anyOf(last+2, min(last+8, len(r.toks)), skylightsHad) ||
		r.among(first-1, barnOwners) && r.wordAt(last+1, "has", "have") && r.anyOf(last+2, min(last+8, len(r.toks)), coveringNouns) // "my barn has a steel panel roof"
}

// bareButFramed: "screwed down through a metal ring" is no bare sheet, whatever holds it.
func (r *reader) bareButFramed(first, last int) bool {
	if len(r.refs) > 1 {
		return false // of kinds that differ
	}
	bare := false
	hits := within(r.styles, first, first)
	for n := range hits {
		bare = bare || hits[n].is("style", fitcheck.StyleBareDome)
	}
	if !bare {
		return false
	}
	from, to := r.sentence(first)
	for i := from; i <= to; i++ {
		if r.among(i, holdingStrips) && !r.negated(i) && r.among(i-1, stripMetals) {
			return true
		}
		if r.metalFramed(i) {
			return true // "then a metal framed dome is screwed to the outside of it"
		}
	}
	return false
}

// metalFramed: the word names a metal frame that is there.
func (r *reader) metalFramed(i int) bool {
	if !r.asked(fitcheck.TopicStyle) || r.toks[i].kind != wordToken || !metalWords.has(r.toks[i].text) && !r.wordAt(i, "rim") {
		return false
	}
	if r.among(i+1, notFrameMetal) || r.negated(i) || r.deniedAfter(i) {
		return false
	}
	return !r.anyOf(max(0, i-4), i, negWords) && !r.wordsIn(max(0, i-2), i, "roof", "techo") && !r.wordsIn(i+1, min(i+4, len(r.toks)), "roof", "techo")
}

func (r *reader) thingAt(i int) bool {
	if r.wordAt(i, "sky") && r.wordAt(i+1, "light", "lights", "lite", "lites") {
		return false // "a leaky sky light"
	}
	if r.among(i, roomOwners) && r.among(i+1+number(r.markAt(i+1, '\'')), ownedRooms) {
		return false // "the kids' room faces west so bronze please"
	}
	return i >= 0 && i < len(r.toks) && r.toks[i].kind == wordToken && r.toks[i].word != nil && r.toks[i].word.thing && !r.inRef(i)
}

// modifies: the word right after is some other thing's name: "acrylic paint".
func (r *reader) modifies(t fitcheck.Topic, i int) bool {
	if t == fitcheck.TopicProblem && !r.wordAt(i-2, "has", "have", "is", "its", "got") && r.among(i-1, harmsOfThings) { // "cracked the screen", "broke her arm"
		for r.among(i, harmedLeads) {
			i++
		}
	}
	return r.thingAt(i)
}

// thoughtOnce: "I thought it was glass".
func (r *reader) thoughtOnce(first int) bool {
	i := first - 1
	for r.among(i, thoughtLinks) {
		i--
	}
	return r.wordAt(i, "thought", "assumed", "figured") || r.wordAt(i, "like") && r.wordAt(i-1, "looks", "looked", "look") && r.wordsIn(first, r.sentenceLast(first), "but", "pero")
}

func (r *reader) sentenceLast(i int) int {
	_, last := r.sentence(i)
	return last
}

// strictRequests are requests whose words say nothing else.
var strictRequests = map[string]bool{"price": true, "stop": true, "person": true, "undo": true, "howto": true, "again": true, "help": true}

// askedIsOf: the words are part of a longer request or refusal: "none of your business".
func (r *reader) askedIsOf(first, last int) bool {
	from, _ := r.sentence(first)
	talk := within(r.talk, from, first)
	for n := range talk {
		h := &talk[n]
		if h.first <= first && h.last >= last && h.last-h.first > last-first && (h.is("say", "refuse") || h.is("say", "dontknow") || h.senses[0].kind == "req" && strictRequests[h.senses[0].value]) {
			return true
		}
	}
	return false
}

// oldOne: "the old one leaked so we replaced it".
func (r *reader) oldOne(first int) bool {
	for i := r.clauseStart(first); i < first; i++ {
		if r.wordAt(i, "one") && r.wordAt(i-1, "old", "last", "previous") && r.wordsIn(first, r.sentenceLast(first), "replaced", "so") {
			return true
		}
	}
	return false
}

// othersClause: the clause is about what somebody else has.
func (r *reader) othersClause(first, last int) bool {
	from, to := r.clauseStart(first), r.clauseEnd(last)
	for i := from; i <= to; i++ {
		if i < first && r.othersThing(i, first) {
			return true
		}
		if r.among(i, housedKin) && r.wordsIn(to, r.sentenceLast(first)+1, "ours", "mine", "us", "we") && r.wordsIn(to, r.sentenceLast(first)+1, "but") {
			return true // "my cousin's house got hail but ours never"
		}
		if r.among(i, neighborNouns) && r.wordsIn(i+1, min(i+4, to+1), "has", "have", "had", "got", "tiene") && !r.wordAt(i+1, "no", "mi") {
			return true
		}
	}
	return false
}

// ofPerson: "I'm clear on that", "I'm pretty weathered myself".
func (r *reader) ofPerson(t fitcheck.Topic, first int) bool {
	if t == fitcheck.TopicStyle || t == fitcheck.TopicOutline {
		return false
	}
	i := first - 1
	for r.among(i, feelingHedges) {
		i--
	}
	return r.wordAt(i, "im", "hes", "shes") || r.wordAt(i, "am", "is", "was") && r.wordAt(i-1, "i", "he", "she", "who")
}

// madeBy: "my dad just screwed a plastic bubble to the 2x4s": who made it.
func (r *reader) madeBy(i int) bool {
	if r.wordAt(i+1, "in") && r.wordAt(i+2, "law", "laws") {
		i += 2
	}
	return r.anyOf(i+1, min(i+3, len(r.toks)), madeVerbs)
}

// thingSubject: some other thing is named before the value in its clause, and nothing
// of a skylight is.
func (r *reader) thingSubject(first, last int) bool {
	from, to := r.clauseStart(first), r.clauseEnd(last)
	thing := -1
	for i := from; i < first; i++ {
		if r.thingAt(i) && !(r.wordAt(i, "sky") && r.wordAt(i-1, "see")) && !r.madeBy(i) && !r.speaks(i) {
			thing = i
		}
	}
	if thing < 0 || !r.wordsIn(from, first, "his", "her", "their", "has", "who") && r.wordsIn(from, first, "number", "numero", "recommended", "referred", "recomendo") && r.anyOf(from, first, gaveNumberVerbs) {
		return false // also "my neighbor gave me your number our house just the one"
	}
	for i := from; i <= to; i++ {
		if i >= first && i <= last {
			if last > first && r.wordAt(i, "it", "skylight", "dome") || i > thing && i > first-1 && r.labelFrom(i) != nil && r.labelFrom(i).is("part", "frame") && r.wordAt(i-1, "the", "our", "my", "el") {
				return false // "the neighbor's kid put a ball through it"
			}
			continue
		}
		if h := r.labelFrom(i); h != nil && h.senses[0].kind == "part" || i > thing && i < first && r.wordAt(i, "it", "its", "one", "lo", "la") {
			return false
		}
	}
	return true
}

// speaks: the person at the token says or sees what follows, or one of the house wants it:
// "my husband wants the double", "the wife and I picked bronze"; not "Clear. My wife wants a
// white one but she isn't paying".
func (r *reader) speaks(i int) bool {
	who := i
	for i++; r.among(i, beforeSpeech); i++ {
	}
	if r.among(i, speechVerbs) {
		return true
	}
	_, to := r.sentence(who)
	return r.among(who, householders) && r.among(i, householdWishes) && !r.wordAt(i+1, "to", "against", "a") && !r.wordsIn(i, to+1, "but", "pero", "isnt", "though") && !r.choseOther(who)
}

// choseOther: the writer named a value before, in another clause and without a "but".
func (r *reader) choseOther(who int) bool {
	from, to := r.clauseStart(who), r.clauseEnd(who)
	if r.wordsIn(max(0, who-4), who, "wait", "actually", "sorry", "no") || r.wordAt(from, "but", "pero", "and") || r.wordAt(from-1, "but", "pero", "and") {
		return false
	}
	for _, kind := range []string{"color", "material", "layers", "finish"} {
		value, before := "", ""
		for n := range r.choices {
			switch v, ok := r.choices[n].has(kind); {
			case !ok:
			case r.choices[n].first < from:
				before = v
			case r.choices[n].first <= to:
				value = v
			}
		}
		if value != "" && before != "" && value != before {
			return true
		}
	}
	return false
}
