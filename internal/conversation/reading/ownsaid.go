package reading

import "example.com/intake-bot/internal/fitcheck"

// What is told beside an answer, whatever else its clause says: "no can do today, the skylight leaks worse
// by the minute". A clause is taken by its parts: their skylight is what it speaks of, a word for a harm
// says what of it, in the present, and nothing in it denies, doubts, asks or supposes.

var (
	beforeOwnHarm = wordsOf(`el la los las mi mis nuestro un una del de`)
	beforeUse     = wordsOf(`a an this our my the old little small big una un esta este mi nuestra la el wide double
		single community local`)
	haveUseVerbs = wordsOf(`had have own owned bought look take manage run rent live lived got maintain tengo
		tenemos compramos compre vivo vivimos administro cuido manejo`)
	useUnsaid    = wordsOf(`used if when once before dont not no never si cuando`)
	concernLinks = wordsOf(`is are our my only main real big biggest the one`)
)

var (
	// skylightSubjects are what a clause about their skylight begins with.
	skylightSubjects = wordsOf(`skylight skylights skylite skylites dome domes bubble bubbles plastic acrylic lens
		it its they theyre thing things one ones ours mine all both each every tragaluz tragaluces domo domos
		claraboya claraboyas plastico burbuja todos todas ambos ambas lo`)
	subjectBefore = wordsOf(`the that this my our those these a of and but so because cuz since also plus anyway
		well oh as for right now here there currently already still just every each single whole other old poor darn
		dang damn ugly stupid blasted dumb known only el la los las mi mis ese esa este esta nuestro y pero porque
		pues que es es ya ahi ahorita unico unica de en se ve`)
	// harmVerbs lead from what it is said of to the harm.
	harmVerbs = wordsOf(`is s are re has have got gets keeps started starts just been gone went all so now still
		really badly pretty very both also too already starting getting looking looks only do does a an the some big
		bad nasty long huge little small its every cracked leaking esta estan tiene tienen sigue siguen anda andan ya
		se le nos me muy bien bastante toda todo todos por una un unas ve ven hace mucho unico`)
	otherTense = wordsOf(`was were had used before until after once ago last when while if whether unless might may
		could would should hope hopefully afraid worried worry prevent avoid till gonna will wont doesnt isnt arent
		antes hasta cuando si estaba estaban tenia habia era fue ojala podria`)
)

// ownHarm: the harm is told of their skylight in a clause of its own.
func (r *reader) ownHarm(t fitcheck.Topic, h *hit) bool {
	if t != fitcheck.TopicProblem || r.asked(fitcheck.TopicConfirm) ||
		h.has1(string(fitcheck.TopicFrameCondition)) || h.senses[0].asked ||
		r.wordsIn(h.first, h.last+1, "leaked", "dripped", "rained", "rain", "llovio", "goteaba", "goteo") ||
		r.markAt(r.sentenceLast(h.last), '?') {
		return false
	}
	from := r.clauseStart(h.first)
	if r.wordAt(h.last, "dark") && r.wordAt(h.first-1, "it") {
		return false // "it got dark before I was done"
	}
	for k := from; k < h.first; k++ {
		if w := r.wordText(k); otherTense.has(w) ||
			stateDoubts.has(w) && !r.wordAt(k, "know", "how", "what", "si") || stateDenials.has(w) {
			return false
		}
	}
	i := h.first - 1
	for i >= from && harmVerbs.has(r.wordText(i)) && !skylightSubjects.has(r.wordText(i)) {
		i--
	}
	if i < from || r.toks[i].kind == markToken || r.wordAt(i, "que") && r.wordAt(i-1, "es") {
		k := h.last + 1
		for r.among(k, beforeOwnHarm) {
			k++
		}
		// "y así: sigue goteando", "lo que pasa es que se está metiendo el agua"; not "se me quebró un vaso"
		return r.out.Language == "es" && (h.is(string(t), fitcheck.ProblemLeaking) || skylightSubjects.has(r.wordText(k)))
	}
	if !skylightSubjects.has(r.wordText(i)) {
		return false
	}
	for i--; i >= from; i-- {
		if w := r.wordText(i); !subjectBefore.has(w) && !skylightSubjects.has(w) {
			return false
		}
	}
	return true
}

// ownUse: the writer owns, keeps or has bought the building that is named: "I look after a warehouse by the
// rail yard", "we've had this mobile home since we retired".
func (r *reader) ownUse(t fitcheck.Topic, h *hit) bool {
	if t != fitcheck.TopicUse || r.asked(fitcheck.TopicConfirm) || r.markAt(r.sentenceLast(h.last), '?') {
		return false
	}
	i := h.first - 1
	for r.among(i, beforeUse) {
		i--
	}
	if i == h.first-1 {
		return false
	}
	if r.wordAt(i, "in", "after", "en", "of") {
		i--
	}
	if r.wordAt(i, "care") {
		i--
	}
	if !r.among(i, haveUseVerbs) {
		return false
	}
	from := r.clauseStart(h.first)
	return (r.wordAt(i-1, "i", "we", "ive", "weve", "just", "yo") || r.out.Language == "es") && !r.anyOf(from, i, useUnsaid) &&
		!r.wordAt(h.last+1, "meeting", "board", "too", "sale", "yard", "store", "next", "at")
}

// weGet: "we get hail out here that'll dent a truck hood": what comes down where they live, whatever it does.
func (r *reader) weGet(h *hit) bool {
	from := r.clauseStart(h.first)
	return r.wordAt(h.first, "we", "you") && r.wordsIn(h.first, h.last+1, "get", "gets") &&
		r.onlyWords(from, h.first, "and", "but", "so", "because", "since", "well", "oh", "yes", "yeah", "out", "here", "up") &&
		!r.wordsIn(h.last+1, r.sentenceLast(h.last)+1, "once", "rarely", "seldom", "never", "hardly", "used")
}

// ofConcern: "golf balls are my only concern".
func (r *reader) ofConcern(h *hit) bool {
	i := h.last + 1
	for r.among(i, concernLinks) {
		i++
	}
	return i > h.last+2 && r.wordAt(i, "concern", "worry", "concerns", "worries", "problem", "fear") &&
		r.wordsIn(h.last+1, i, "my", "our") && !r.markAt(r.sentenceLast(i), '?')
}
