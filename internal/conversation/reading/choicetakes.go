package reading

import "example.com/intake-bot/internal/fitcheck"

// Whether a sense of some words counts where they stand: words that name a value of one topic
// often tell, in their place, something else.

var (
	afterGolfGreen = wordsOf(`so and at of on here with`)
	paneLinks      = wordsOf(`is was has got looks esta`)
	finishWishes   = wordsOf(`want need like please prefer quiero favor`)
)

// takes says whether a sense counts here at all: on its own, or as the answer that was asked for.
func (r *reader) takes(s sense, h *hit, answer bool) bool {
	switch {
	case s.topic == "" || s.topic == fitcheck.TopicColor:
		return false
	case s.topic == fitcheck.TopicLayers && r.wordAt(h.last+1, "is", "are") && r.pairAt(h.last+2):
		return false // "actually 1 is 30 x 30"
	case s.asked && s.topic == fitcheck.TopicLayers && r.loneLayers(h):
		return true
	case s.asked && !r.asked(s.topic) && !r.takesUnasked(s, h):
		return false
	case answer && !r.asked(s.topic) && h.shared(s.topic):
		return false
	case s.asked && s.topic != fitcheck.TopicImpactRisk && r.thingIn(h):
		return false
	}
	return !r.senseAstray(s, h) && !r.otherwiseMeant(s, h) && !r.shapeOfOther(s, h) && !r.besideThePoint(s, h)
}

// takesUnasked: what is an answer only stands beside words that make it one where nobody asked.
func (r *reader) takesUnasked(s sense, h *hit) bool {
	return r.ofFrame(s, h) || r.listLayers(s, h) || r.whyChosen(s, h) || r.fieldBefore(h.first) == s.topic ||
		s.topic == fitcheck.TopicProfile && r.shapeSaid(h.first)
}

// senseAstray says whether the words tell something else than a value of the topic.
func (r *reader) senseAstray(s sense, h *hit) bool {
	switch s.topic {
	case fitcheck.TopicLayers:
		return r.countsSkylights(h) || !r.asked(s.topic) && (r.paneHarmed(s, h) || r.eitherNumber(h))
	case fitcheck.TopicFinish:
		return r.metalOfFinish(h) || r.metalThere(h) || !r.asked(s.topic) && r.finishThere()
	case fitcheck.TopicStyle:
		return r.noStyleTold(s, h)
	case fitcheck.TopicWant:
		return r.noWantTold(s, h)
	case fitcheck.TopicProblem:
		return r.noProblemTold(s, h)
	case fitcheck.TopicFrameCondition:
		return r.noConditionTold(s, h)
	case fitcheck.TopicProfile:
		return !r.asked(s.topic) && (r.wordsIn(h.first, h.last+1, "bent", "bends") || // "frame is bent one way"
			r.wordsIn(r.clauseStart(h.first), h.first, "crack"))
	case fitcheck.TopicOutline: // "corner to corner 54 3/8 both ways so it's square"
		return !r.asked(s.topic) && r.wordAt(h.last, "square") && r.measuresCorners()
	case fitcheck.TopicImpactRisk:
		return s.value == "golf" && r.greenThing(h)
	}
	return false
}

// paneHarmed: "one pane is fogged", "one broke": the number is of what is harmed.
func (r *reader) paneHarmed(s sense, h *hit) bool {
	if s.value != "1" || !r.wordAt(h.first, "one", "una") {
		return false
	}
	return r.wordAt(h.last+1, "cracked", "broke", "broken") ||
		r.among(h.last+1, paneLinks) && r.faultIn(h.last+2, min(h.last+3, len(r.toks)-1), nil)
}

// eitherNumber: "one or two layers".
func (r *reader) eitherNumber(h *hit) bool {
	return r.wordAt(h.first-1, "or", "o") && r.wholeAt(h.first-2) > 0
}

// metalThere: "metal frame on a wooden box": what it is like.
func (r *reader) metalThere(h *hit) bool {
	return h.first == h.last && r.wordAt(h.first, "metal") &&
		r.wordAt(h.first+1, "frame", "roof", "ring", "trim", "edge") && len(r.toks) > 3
}

// finishThere: to a question about what is up there, a finish is of that and no wish.
func (r *reader) finishThere() bool {
	return r.asked(fitcheck.TopicStyle) ||
		r.asked(fitcheck.TopicFrameCondition) && !r.anyOf(0, len(r.toks), finishWishes)
}

// greenThing: "the green barn": no green to play on.
func (r *reader) greenThing(h *hit) bool {
	next := h.last + 1
	return r.wordAt(h.last, "green") && next < len(r.toks) && r.toks[next].kind == wordToken && !r.among(next, afterGolfGreen)
}

// noConditionTold says whether the words tell nothing of what the frame is like.
func (r *reader) noConditionTold(s sense, h *hit) bool {
	if h.first == h.last && r.wordAt(h.first, "old", "older", "viejo", "vieja") && r.otherCondition(h) {
		return true // "the old frame is bent"
	}
	if s.value != fitcheck.ConditionGood {
		return false
	}
	if r.wishedFrame(h.first, h.last) || r.noDamageAtAll(h) {
		return true
	}
	return h.first == h.last && (r.wordAt(h.first, "completo", "completa") && r.asked(fitcheck.TopicWant) || // "completo, con marco"
		r.wordAt(h.first, "ok", "okay") && h.first == 0 && r.wordAt(h.last+1, "so", "here", "well") || // "ok so …"
		r.layersBeside(h)) // "one layer is fine"
}

// noDamageAtAll: "no damage, only updating", to what is wrong: it is not said of the frame.
func (r *reader) noDamageAtAll(h *hit) bool {
	if !r.wordAt(h.first, "no") || !r.wordAt(h.last, "damage") || !r.asked(fitcheck.TopicProblem) {
		return false
	}
	onFrame := r.wordAt(h.last+1, "on", "to", "in") && r.wordsIn(h.last+2, h.last+4, "frame", "metal", "marco")
	return !onFrame && !r.wordsIn(r.clauseStart(h.first), h.first, "frame", "metal", "marco")
}
