package reading

import "example.com/intake-bot/internal/fitcheck"

// Words that tell neither how a skylight is made nor what is wrong with it.

var (
	buyVerbs        = wordsOf(`need want like sell buy order replace new`)
	frameOrBox      = wordsOf(`frame frames metal curb box boxes`)
	plainLooks      = wordsOf(`old viejo vieja square round white black brown flat`)
	milkyWords      = wordsOf(`milky lechoso lechosa smoky opaco opaque cloudy frosted lechosos`)
	soloWishes      = wordsOf(`solo nomas puro pura busco buco quiero necesito`)
	turnedHazyWords = wordsOf(`now anymore hardly but turned gotten ya pero puso ahora`)
)

// noStyleTold says whether the words tell nothing of how a skylight is made.
func (r *reader) noStyleTold(s sense, h *hit) bool {
	if s.value == fitcheck.StyleBareDome && (r.onlyWished(h) || r.wishedWithout(h) || r.aroundFrame(h)) {
		return true
	}
	if s.value == "?" && r.among(h.first, plainLooks) && r.firstTalk("dontknow") != nil {
		return true // "honestly no idea, it's old", "not sure, all I see is a square of daylight"
	}
	return !r.asked(s.topic) && r.wordAt(h.first, "on") && r.wordAt(h.first+1, "the", "my", "our") && h.last == h.first+2 &&
		!r.wordAt(h.last+1, "mount", "mounted") // "diagonals on the curb"
}

// onlyWished: "frame looks fine, only the plastic": a wish.
func (r *reader) onlyWished(h *hit) bool {
	if !r.wordAt(h.first, "only", "just") {
		return false
	}
	if !r.asked(fitcheck.TopicStyle) && (len(r.Asked) > 0 || r.anyOf(0, len(r.toks), buyVerbs)) {
		return true
	}
	return r.anyOf(0, len(r.toks), frameOrBox) && !r.wordsIn(0, len(r.toks), "no")
}

// wishedWithout: "solo la burbuja, sin marco": a wish.
func (r *reader) wishedWithout(h *hit) bool {
	return !r.asked(fitcheck.TopicStyle) && r.wordAt(h.first, "sin") && r.wordAt(h.last, "marco") &&
		r.anyOf(r.sentenceFirst(h.first), h.first, soloWishes)
}

// aroundFrame: "the frame is screwed around the perimeter into the roof".
func (r *reader) aroundFrame(h *hit) bool {
	from, to := r.sentence(h.first)
	return r.wordsIn(h.first, h.last+1, "around") &&
		r.wordsIn(from, to+1, "frame", "curb", "box", "retainer", "retaining")
}

// noProblemTold says whether the words tell nothing of what is wrong.
func (r *reader) noProblemTold(s sense, h *hit) bool {
	if r.wordAt(h.first, "nothings") && r.wordsIn(h.last+1, h.last+3, "except", "but", "besides", "other", "only") {
		return true // "nothings broken except the dome"
	}
	if r.asked(s.topic) {
		return false
	}
	if r.asked(fitcheck.TopicColor) && (r.frameTurned(h) || r.milkyKind(s, h) || h.first == h.last && r.tintWord(h)) {
		return true
	}
	return r.asked(fitcheck.TopicFrameCondition) && (r.frameTurned(h) || r.hiddenFrame(s, h))
}

// frameTurned: "el marco se puso negro", "tronado el marco".
func (r *reader) frameTurned(h *hit) bool {
	return r.wordsIn(h.first, h.last+1, "puso") ||
		r.wordsIn(h.first, h.last+1, "tronado") && r.wordsIn(h.first, h.last+4, "marco")
}

// milkyKind: "white, the milky kind you can't see through": what kind of white it is.
func (r *reader) milkyKind(s sense, h *hit) bool {
	return s.value == fitcheck.ProblemHazy && r.wordsIn(h.first, h.last+1, "through", "thru") &&
		r.wordsIn(0, h.first, "kind", "type", "milky", "sort", "white") && !r.turnedHazy()
}

// tintWord: "blanco, del lechoso", "smoky brown": the word is of the color.
func (r *reader) tintWord(h *hit) bool {
	if r.colorBeside(h) {
		return true
	}
	short := len(r.toks) < 8 || r.wordAt(h.first, "smoky") && r.wordAt(h.first-1, "was", "were")
	return short && r.among(h.first, milkyWords) && !r.turnedHazy()
}

// hiddenFrame: "no se ve nada, está todo tapado de silicón", to what the frame is like.
func (r *reader) hiddenFrame(s sense, h *hit) bool {
	return s.value == fitcheck.ProblemHazy && r.wordAt(h.first, "no") && r.wordsIn(h.first, h.last+1, "ve", "veo")
}

// turnedHazy: it was not so from the start: "clear but now you can hardly see through it".
func (r *reader) turnedHazy() bool { return r.anyOf(0, len(r.toks), turnedHazyWords) }
