package reading

import "example.com/intake-bot/internal/fitcheck"

// Words like "only the plastic" and "all of it" that tell no wish.

var (
	restOfThem       = wordsOf(`third other others rest last everything`)
	lensOnlyWords    = wordsOf(`plastic lens lenses only fix plastico`)
	differenceLinks  = wordsOf(`is are its looks esta estan es`)
	onePieceWords    = wordsOf(`piece glued molded moulded built one together integral part came`)
	straightFastened = wordsOf(`screwed bolted nailed glued caulked sits attached`)
)

// noWantTold says whether the words tell nothing of what is wanted.
func (r *reader) noWantTold(s sense, h *hit) bool {
	switch s.value {
	case fitcheck.WantDomeOnly:
		if r.plasticMeasured(h) || r.plasticToMe(h) {
			return true
		}
	case fitcheck.WantCompleteUnit:
		if r.bothSkylightsOnly(h) || r.withTheirFrames(h) || r.redoneWithRoof(h) {
			return true
		}
	}
	return r.asksForMake(h) || r.ofSomeOfThem(h) || r.differenceAsked(h) || r.woodMeasured(h) ||
		s.value != fitcheck.WantUnsure && r.neitherChosen(r.sentence(h.first)) || // "maybe the dome, maybe the full unit"
		r.wordsIn(max(r.clauseStart(h.first), h.first-3), h.first, "across", "around", "along") || // "41 inches across the whole thing"
		!r.asked(s.topic) && (r.onePiece(h) || r.fastenedWithout(h))
}

// plasticMeasured: "plastic only, 24 1/2 x 48 1/2": what was measured.
func (r *reader) plasticMeasured(h *hit) bool {
	return (r.asked(fitcheck.TopicPlasticSize) || r.asked(fitcheck.TopicRetainerOpening)) && !r.asked(fitcheck.TopicWant) &&
		r.wordsIn(h.first, h.last+1, "only", "just") && r.wordsIn(h.first, h.last+1, "plastic", "acrylic", "sheet", "plastico") &&
		!r.wishedAloud(h)
}

// plasticToMe: "no clue, it's just plastic to me".
func (r *reader) plasticToMe(h *hit) bool {
	return r.wordAt(h.last+1, "to") && r.wordAt(h.last+2, "me", "us") && r.asked(fitcheck.TopicMaterial)
}

// asksForMake: "do you make glass ones too, or just the plastic ones?"
func (r *reader) asksForMake(h *hit) bool {
	k := r.sentenceFirst(h.first)
	return r.wordAt(k, "do", "does") && r.wordAt(k+1, "you", "u", "yall") &&
		r.wordAt(k+2, "make", "sell", "carry", "have", "stock") && r.wordAt(h.first-1, "or")
}

// bothSkylightsOnly: "I only need the plastic part, both", "plastic only for both of them": both
// skylights, not both parts.
func (r *reader) bothSkylightsOnly(h *hit) bool {
	if h.first != h.last || !r.wordAt(h.first, "both", "all", "ambos", "ambas") {
		return false
	}
	if r.wordAt(h.first, "both", "all") && r.wordAt(h.last+1, "of") && r.wordAt(h.first-1, "for", "on", "in") {
		return true
	}
	from := r.sentenceFirst(h.first)
	return r.wordsIn(from, h.first, "only", "just", "solo", "nomas") &&
		r.wordsIn(from, h.first, "plastic", "dome", "domes", "plastico", "domos")
}

// ofSomeOfThem: "plastic only for 2 of them, the third needs everything".
func (r *reader) ofSomeOfThem(h *hit) bool {
	return r.wordAt(h.last+1, "for") && r.wholeAt(h.last+2) > 0 && r.wordAt(h.last+3, "of") &&
		r.wordAt(h.last+4, "them", "those", "these") && r.anyOf(h.last+5, len(r.toks), restOfThem)
}

// withTheirFrames: "domes for skylights with metal frames": what they are for.
func (r *reader) withTheirFrames(h *hit) bool {
	if !r.wordAt(h.last, "frame", "frames", "marco", "marcos") || !r.wordsIn(h.first, h.last, "with", "con") {
		return false
	}
	from, to := r.sentence(h.first)
	return r.anyOf(from, to+1, lensOnlyWords) ||
		r.wordsIn(from, h.last, "for") && r.wordsIn(from, h.last, "skylight", "skylights") &&
			!r.wordsIn(from, h.last, "complete", "whole", "entire", "full", "looking")
}

// redoneWithRoof: "the roof was replaced, everything redone".
func (r *reader) redoneWithRoof(h *hit) bool {
	return r.wordsIn(h.first, h.last+1, "replaced", "redone") &&
		r.wordsIn(r.sentenceFirst(h.first), h.first, "roof", "techo", "kitchen", "house")
}

// differenceAsked: "what's the cost difference between the dome and the whole unit".
func (r *reader) differenceAsked(h *hit) bool {
	return (r.differenceBetween(h.first) || r.differenceBetween(h.first-4)) && !r.anyOf(h.first-4, h.first, differenceLinks)
}

// woodMeasured: "not the frame, I took the wood: 30 x 30".
func (r *reader) woodMeasured(h *hit) bool {
	return r.wordAt(h.first, "not", "no") && r.wordAt(h.last, "frame", "marco") && r.askedSize() != "none" && r.numberNear(h)
}

// onePiece: "all one piece with the frame": what it is like.
func (r *reader) onePiece(h *hit) bool {
	return r.wordAt(h.first, "with") && r.among(h.first-1, onePieceWords)
}

// fastenedWithout: "plástico atornillado directo, sin marco", "it's screwed straight to the roof
// without any frame": what it is like.
func (r *reader) fastenedWithout(h *hit) bool {
	from := r.sentenceFirst(h.first)
	if r.wordAt(h.first, "sin") && r.wordAt(h.last, "marco") {
		return r.wordsIn(from, h.first, "atornillado", "atornillada", "pegado", "clavado") &&
			!r.wordsIn(from, h.first, "quiero", "necesito", "busco", "ocupo")
	}
	return r.wordAt(h.first, "without") && r.anyOf(from, h.first, straightFastened) &&
		!r.wordsIn(from, h.first, "want", "need", "like")
}
