package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	mishapPersons   = wordsOf(`i we he she husband wife son guy roofer ive hed`)
	mishapVerbs     = wordsOf(`shot hit threw dropped fell landed went blew kicked stepped put pego cayo aventaron`)
	tapeMishaps     = wordsOf(`broke broken snapped busted fell slipped cayo pedazos rompio quebro`)
	otherThingNouns = wordsOf(`neighbor neighbors vecino kids kid husband wife brother sister daughter mom dad paint
		measure sky nail nails fence door ladder ladders cat cats dog dogs perro gato`)
	beforeSubject = wordsOf(`the my our a an his her your el la los las mi un una of old`)
	endsSubject   = wordsOf(`in on onto over into by near with from above under en sobre con arriba like and y when
		while as than`)
	beforePlace     = wordsOf(`a an the my his her our el la un una mi in en del de`)
	ownPlaceVerbs   = wordsOf(`building own live manage bought ours thats vivo for para is over have tengo edificio`)
	passingLinks    = wordsOf(`after before at from by in to en a de desde`)
	beforeRoofMetal = wordsOf(`the my our a old metal tin steel el mi flat`)
	onRoofLinks     = wordsOf(`on in of over from above en del sobre to under`)
	otherRoofs      = wordsOf(`on over of the my our his her barn shed garage house porch shop there itself here`)
	afterRoofMetal  = wordsOf(`is was has are got looks had rusted rusting esta tiene ya`)
)

// elseSubjects are things of people's days that crack, leak, rust and bend as well, beside the vocabulary's.
var elseSubjects = wordsOf(`windshield van toilet heater fridge freezer dishwasher rib ribs thumb thumbs hip
	wrist ankle shoulder tooth teeth printer mower tractor shutters shutter forecast fender bumper axle lavabo
	inodoro excusado taza regadera tinaco troca pantalla celular espalda rodilla mano pie dedo unas costilla muela
	refri refrigerador estufa lavadora compu computadora lentes`)

// theirThings are words that say that a skylight or its plastic is spoken of.
var theirThings = wordsOf(`skylight skylights skylite skylites dome domes bubble bubbles plastic acrylic lens it
	its they tragaluz tragaluces domo domos claraboya claraboyas plastico burbuja ours mine frame frames marco roof`)

// ofOtherThing: the clause tells of some other thing what the words say: "oil leak in the van", "cracked a
// rib", "my truck's frame rusted through", "se me rajó la pantalla".
func (r *reader) ofOtherThing(t fitcheck.Topic, h *hit) bool {
	if t != fitcheck.TopicProblem && t != fitcheck.TopicFrameCondition {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if h.is(string(t), fitcheck.ProblemHoleOpen) && r.among(h.first-1, mishapPersons) &&
		!r.wordsIn(h.last+1, to+1, "skylight", "dome", "it", "plastic") &&
		r.wordAt(h.first, "came", "fell", "went", "got", "come", "slid") {
		return true // "before I came off the roof"
	}
	if r.toldOfTape(h) || r.wordsIn(h.last+1, to+1, "of") && r.wordsIn(h.last+1, to+1, "them", "em") && r.ofTiles(h.first) {
		return true
	}
	if r.anyOf(from, to+1, mishapVerbs) {
		return false // what hit it
	}
	if t == fitcheck.TopicFrameCondition && r.ofRoof(from, h.first) {
		return true
	}
	other := -1
	for i := from; i <= to; i++ {
		switch w := r.wordText(i); {
		case i >= h.first && i <= h.last:
		case theirThings.has(w) && !(r.wordAt(i, "frame", "frames", "marco", "roof") && i > 0 && r.otherThingAt(i-1)) &&
			!(r.wordAt(i, "it", "its", "roof") && (other >= 0 || i > h.last)):
			return false
		case other < 0 &&
			(r.otherThingAt(i) && !r.wordAt(i, "back") || t == fitcheck.TopicFrameCondition && r.wordAt(i, "window", "windows")) &&
			r.isSubject(i, h):
			other = i
		}
	}
	return other >= 0
}

// toldOfTape: "la cinta se me cayó y se hizo pedazos", "the tape slipped and broke": what it was measured with.
func (r *reader) toldOfTape(h *hit) bool {
	if !r.anyOf(h.first, h.last+1, tapeMishaps) {
		return false
	}
	for i := h.first - 1; i >= r.sentenceFirst(h.first) && i > h.first-14; i-- {
		if theirThings.has(r.wordText(i)) && !r.wordAt(i, "it", "its", "roof") {
			return false
		}
		if r.wordAt(i, "tape", "ruler", "ladder", "cinta", "regla", "escalera", "flexometro") {
			return !r.wordAt(i-1, "with", "of", "and", "duct", "packing", "con") && !r.wordAt(i-2, "with", "con") &&
				!r.wordsIn(i, h.first, "hit", "hits", "pego", "on", "onto", "through", "into")
		}
	}
	return false
}

// otherThingAt: the word is one of those things, or what belongs to one follows: "truck's".
func (r *reader) otherThingAt(i int) bool {
	for r.markAt(i, '\'') || r.wordAt(i, "s") {
		i--
	}
	return elseSubjects.has(r.wordText(i)) || r.thingAt(i) && !r.among(i, otherThingNouns)
}

// isSubject: the thing is what the words are said of, and not where something drips or what hit it.
func (r *reader) isSubject(i int, h *hit) bool {
	if i < h.first {
		k := i - 1
		for r.among(k, beforeSubject) {
			k--
		}
		return !r.among(k, endsSubject)
	}
	for k := h.last + 1; k < i; k++ {
		if !r.among(k, beforePlace) {
			return false
		}
	}
	return !r.wordAt(i-1, "in", "en") && !r.wordAt(i-2, "in", "en") ||
		h.first > 0 && r.wordAt(h.first-1, "oil", "gas", "coolant", "water") || i == h.last+1
}

// whereabouts are words that tell what people do where they are just now.
var whereabouts = wordsOf(`now today look measure meeting typing texting writing sitting waiting text ask asked
	later tomorrow stop stopping stopped after ahorita luego rato bautizo misa paso pasar voy wifi internet service
	signal`)

// passingPlace: "estoy en la iglesia ahorita", "after church on Sunday", "I'm typing from the library", "they
// moved the school board meeting": a place that somebody is at or comes by is not what the skylight is on.
func (r *reader) passingPlace(h *hit) bool {
	if r.wordAt(h.last, "board", "meeting") ||
		r.wordAt(h.last+1, "board", "meeting", "meetings") && !r.wordAt(h.last+2, "room", "building", "house", "hall") {
		return true // "I have a school board meeting tonight"
	}
	from, to := r.sentence(h.first)
	for i := from; i <= to; i++ {
		if w := r.wordText(i); theirThings.has(w) && !r.wordAt(i, "it", "its") ||
			r.wordAt(i, "this") && !r.wordAt(i-1, "writing", "typing", "sending", "reading", "texting") ||
			r.among(i, ownPlaceVerbs) {
			return false
		}
	}
	if r.wordAt(h.last+1, "board", "bus", "meeting", "service", "picnic", "yard", "supply") {
		return true
	}
	i := h.first - 1
	for r.wordAt(i, "the", "a", "my", "la", "el", "un", "una", "our") {
		i--
	}
	if r.wordAt(i, "after") && r.wordAt(i-1, "look", "looks", "looking") {
		return false // "I look after a warehouse"
	}
	if !r.among(i, passingLinks) {
		return false
	}
	for k := from; k <= to; k++ {
		if (k < h.first || k > h.last) && whereabouts.has(r.wordText(k)) {
			return true
		}
	}
	return false
}

// ofRoof: the roof is what the words are said of, "the tin roof on the barn is rusted through", and not where
// the frame is, "the frame on the roof is rusted".
func (r *reader) ofRoof(from, first int) bool {
	roof := false
	for i := from; i < first; i++ {
		switch {
		case r.wordAt(i, "roof", "roofs", "roofing", "techo"):
			k := i - 1
			for r.among(k, beforeRoofMetal) {
				k--
			}
			if r.among(k, onRoofLinks) {
				return false
			}
			for k = i + 1; r.among(k, otherRoofs); k++ {
			}
			roof = r.among(k, afterRoofMetal)
		case theirThings.has(r.wordText(i)) ||
			r.wordAt(i, "rim", "ring", "retainer", "and", "but", "while", "metal") && !(r.wordAt(i, "metal") && r.wordAt(i+1, "roof")):
			return false
		}
	}
	return roof
}
