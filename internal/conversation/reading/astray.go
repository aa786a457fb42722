package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	sealants      = wordsOf(`caulk caulked tar tarred silicone goop smeared sealant cement mastic`)
	holdingStrips = wordsOf(`ring retainer strip strips bar bars rim`)
	stripMetals   = wordsOf(`metal aluminum steel retainer retaining a the`)
	notFrameMetal = wordsOf(`roof roofing deck decking screws screw panels panel washers building shed siding sheet
		sheets clips tape flashing tabs brackets anywhere curb box`)
	harmsOfThings = wordsOf(`cracked broke broken split chipped smashed shattered busted break cracks crack leaks
		leaked leaking hit rompio quebro`)
	harmedLeads   = wordsOf(`the my her his a our their open`)
	thoughtLinks  = wordsOf(`a an the was were had it they made of that`)
	feelingHedges = wordsOf(`pretty so a little bit kinda very really not getting feeling all just`)
)

// astray says whether a value's words speak of something else than the skylight: "the
// driveway is cracked", "aluminum ladder", "I'm hazy on that", "the neighbor has glass".
func (r *reader) astray(t fitcheck.Topic, first, last int) bool {
	if r.notSo(t, first, last) || r.othersClause(first, last) {
		return true
	}
	switch t {
	case fitcheck.TopicImpactRisk, fitcheck.TopicWant:
		return r.playsGolf(first, last) || r.thingAt(last+1) ||
			r.wordsIn(r.clauseStart(first), first, "named", "name", "called")
	case fitcheck.TopicUse:
		return r.modifies(t, last+1) || r.useAstray(first, last)
	case fitcheck.TopicStyle:
		if r.underCaulk(first, last) || r.bareButFramed(first, last) || r.ofYours(first, last) {
			return true
		}
	case fitcheck.TopicProblem:
		if r.oldOne(first) {
			return true
		}
	case fitcheck.TopicFrameCondition:
		if r.onlyHeard(first, last) || r.fastenedOn(last) {
			return true
		}
	}
	if r.modifies(t, last+1) || r.ofPerson(t, first) {
		return true
	}
	if chosen(t) && r.wordsIn(max(r.clauseStart(first), first-5), first, "so", "entonces") {
		return false // "the room faces west so bronze please"
	}
	return r.thingSubject(first, last)
}

// notSo: the words tell what was thought, what is not, or what is so in general.
func (r *reader) notSo(t fitcheck.Topic, first, last int) bool {
	return r.thoughtOnce(first) || t != fitcheck.TopicWant && r.askedIsOf(first, last) || r.unreal(t, first) ||
		r.inGeneral(t, first, last) || t != fitcheck.TopicProblem && r.overtaken(first)
}

// playsGolf: "I golf"; not "we get golf balls".
func (r *reader) playsGolf(first, last int) bool {
	return first == last && r.wordAt(first, "golf") && r.wordAt(first-1, "i", "we", "he", "she", "they") &&
		!r.wordAt(last+1, "course", "range", "green", "balls", "ball")
}

// underCaulk: "smeared with caulk, can't see the metal just the dome".
func (r *reader) underCaulk(first, last int) bool {
	return r.wordsIn(first, last, "see") && r.anyOf(r.sentenceFirst(first), first, sealants)
}

// ofYours: "the tolerance on your curb".
func (r *reader) ofYours(first, last int) bool {
	return r.wordAt(first, "on", "of") && r.wordsIn(first, last, "your", "ur", "yalls") ||
		r.wordAt(first-1, "your", "ur") && !r.asked(fitcheck.TopicStyle)
}

// fastenedOn: the words go on with what is on the roof: "rust on the screws".
func (r *reader) fastenedOn(last int) bool {
	return r.wordAt(last+1, "on") && r.wordsIn(last+2, last+5, "screws", "screw", "nails", "bolts", "roof")
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
		if r.among(i, holdingStrips) && !r.negated(i) && r.among(i-1, stripMetals) || r.metalFramed(i) {
			return true // "then a metal framed dome is screwed to the outside of it"
		}
	}
	return false
}

// metalFramed: the word names a metal frame that is there.
func (r *reader) metalFramed(i int) bool {
	if !r.asked(fitcheck.TopicStyle) || !r.among(i, metalWords) && !r.wordAt(i, "rim") {
		return false
	}
	if r.among(i+1, notFrameMetal) || r.negated(i) || r.deniedAfter(i) {
		return false
	}
	ofRoof := r.wordsIn(i-2, i, "roof", "techo") || r.wordsIn(i+1, i+4, "roof", "techo")
	return !ofRoof && !r.anyOf(i-4, i, negWords)
}

// modifies: the word right after is some other thing's name: "acrylic paint", "cracked the
// screen", "broke her arm".
func (r *reader) modifies(t fitcheck.Topic, i int) bool {
	if t == fitcheck.TopicProblem && r.among(i-1, harmsOfThings) && !r.wordAt(i-2, "has", "have", "is", "its", "got") {
		for r.among(i, harmedLeads) {
			i++
		}
	}
	return r.thingAt(i)
}

// thoughtOnce: "I thought it was glass", "looks like glass but …".
func (r *reader) thoughtOnce(first int) bool {
	i := first - 1
	for r.among(i, thoughtLinks) {
		i--
	}
	if r.wordAt(i, "like") && r.wordAt(i-1, "looks", "looked", "look") {
		return r.wordsIn(first, r.sentenceLast(first), "but", "pero")
	}
	return r.wordAt(i, "thought", "assumed", "figured")
}

func (r *reader) sentenceLast(i int) int {
	_, last := r.sentence(i)
	return last
}

// strictRequests are requests whose words say nothing else.
var strictRequests = wordsOf(`price stop person undo howto again help`)

// askedIsOf: the words are part of a longer request or refusal: "none of your business".
func (r *reader) askedIsOf(first, last int) bool {
	from, _ := r.sentence(first)
	talk := within(r.talk, from, first)
	for n := range talk {
		h := &talk[n]
		longer := h.first <= first && h.last >= last && h.last-h.first > last-first
		if longer && (h.is("say", "refuse") || h.is("say", "dontknow") || h.strictRequest()) {
			return true
		}
	}
	return false
}

func (h *hit) strictRequest() bool {
	return h.senses[0].kind == "req" && strictRequests.has(h.senses[0].value)
}

// oldOne: "the old one leaked so we replaced it".
func (r *reader) oldOne(first int) bool {
	for i := r.clauseStart(first); i < first; i++ {
		if r.wordAt(i, "one") && r.wordAt(i-1, "old", "last", "previous") &&
			r.wordsIn(first, r.sentenceLast(first), "replaced", "so") {
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
