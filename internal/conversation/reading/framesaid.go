package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	oldKinds         = wordsOf(`style type kind school one fashioned skylight dome timey`)
	otherWoods       = wordsOf(`wood wooden plywood madera drywall ceiling decking box cajon`)
	frameOrMetal     = wordsOf(`frame frames metal marco rim aluminum aluminio screws`)
	sheetNamed       = wordsOf(`plastic dome bubble domo plastico acrylic`)
	nothingMuch      = wordsOf(`serious major bad terrible crazy big grave serio`)
	nadaWhat         = wordsOf(`quebrado roto malo mal danado de que mas grave`)
	noneYetWords     = wordsOf(`nothing new none nada addition remodel`)
	noneYetFollowers = wordsOf(`there yet now up right at currently but today here exists in ahi todavia aun on so
		please sorry construction install installation opening skylight build roof`)
	onlyDoes       = wordsOf(`lasts last lasted cracks comes came yellows goes gets holds has had`)
	partFollowers  = wordsOf(`itself measures is edge from sits part mide measured comes dome panel outside size`)
	unharmedWords  = wordsOf(`harm free order repair unharmed untouched intact unscathed undamaged intacto`)
	otherSound     = wordsOf(`roof house curb flashing rest everything techo`)
	takeOffVerbs   = wordsOf(`took pulled tore ripped pried taken hauled removed threw quitamos quite quitaron sacamos`)
	otherOldThings = wordsOf(`roof ceiling window vent chimney shingles techo`)
)

// notOfFrame: a word that tells the frame's condition only as an answer, and here tells
// something else: "foggy and dull" of the plastic, "screwed straight down" and "an old
// style one" of the kind, "no damage" of what is wrong.
func (r *reader) notOfFrame(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicFrameCondition || !s.asked {
		return false
	}
	if r.oldStyle(h) || r.inLongerStyle(h) ||
		r.wordAt(h.first, "straight") && r.wordAt(h.last+1, "down", "into", "to", "through", "up") {
		return true
	}
	from, to := r.clausesJoined(h.first), r.clauseEnd(h.last)
	framed := r.anyOf(from, to+1, frameOrMetal)
	if !framed && r.anyOf(from, h.first, otherWoods) {
		return true // "the wood is rotten but the metal is fine"
	}
	if framed || !r.asked(fitcheck.TopicProblem) && r.asked(s.topic) {
		return false
	}
	if h.has1("problem") && s.value == fitcheck.ConditionGood {
		return !r.faultBefore(h.first) && !r.goodAlone(h)
	}
	return r.faultIn(from, to, h) || r.anyOf(from, to+1, sheetNamed)
}

// oldStyle: "an old style one", and any "old" where the frame's state was not asked.
func (r *reader) oldStyle(h *hit) bool {
	return r.wordAt(h.first, "old", "viejo", "vieja") &&
		(r.among(h.last+1, oldKinds) || !r.asked(fitcheck.TopicFrameCondition))
}

// inLongerStyle: the words are part of a longer phrase for the kind of skylight.
func (r *reader) inLongerStyle(h *hit) bool {
	return slices.ContainsFunc(r.styles, func(o hit) bool {
		return o.first <= h.first && h.last <= o.last && o.last-o.first > h.last-h.first && !o.is("none", "none")
	})
}

// clausesJoined is where the clause of the token begins, or the first of those that are joined to it by "and".
func (r *reader) clausesJoined(i int) int {
	from := r.clauseStart(i)
	for k := from - 1; k > 0 && r.wordAt(k, "and", "y", "but"); k = from - 1 {
		from = r.clauseStart(k)
	}
	return from
}

// goodAlone: "good", to what is wrong and whether the frame is sound: nobody writes for a new
// dome to say that the old one is.
func (r *reader) goodAlone(h *hit) bool {
	t := fitcheck.TopicFrameCondition
	return r.asked(t) && h.is(string(t), fitcheck.ConditionGood) && h.last-h.first+3 >= len(r.toks)
}

// faultBefore: what is wrong was told before the token.
func (r *reader) faultBefore(i int) bool { return r.faultIn(0, i-1, nil) }

// faultIn: between two tokens stands what is wrong, beside the phrase itself.
func (r *reader) faultIn(from, to int, beside *hit) bool {
	hits := within(r.choices, from, to)
	for n := range hits {
		o := &hits[n]
		if beside != nil && o.first == beside.first {
			continue
		}
		for _, s := range o.senses {
			if s.topic == fitcheck.TopicProblem && s.value != "none" && !s.asked {
				return true
			}
		}
	}
	return false
}

// otherNothing: "nothing serious", "nothing is broken", "a new one" said beside other
// things tell neither that nothing is wrong nor that there is no skylight yet.
func (r *reader) otherNothing(s sense, h *hit) bool {
	unharmed := s.topic == fitcheck.TopicProblem && s.value == "none" && h.first == h.last
	if unharmed && r.wordAt(h.first, "nothing", "nada") {
		return r.nothingSerious(h)
	}
	noneYet := s.value == fitcheck.StyleNoneYet
	if noneYet && r.wordAt(h.last, "nada") && r.among(h.last+1, nadaWhat) {
		return true // "no hay nada quebrado"
	}
	noSkylight := unharmed && r.wordAt(h.first, "no") && r.wordAt(h.last+1, "skylight", "skylights", "dome")
	if (noneYet || noSkylight) && r.oldTakenOff() {
		return true // "no skylight there right now, took the old one off"
	}
	if s.topic != fitcheck.TopicStyle || !noneYet || !s.asked {
		return false
	}
	return r.wordAt(h.first, "new", "nuevo") && r.newWished(h) || h.first == h.last && r.noneOfElse(h)
}

// nothingSerious: "nothing serious", after what is wrong or in the answer on the frame.
func (r *reader) nothingSerious(h *hit) bool {
	return r.among(h.last+1, nothingMuch) &&
		(r.faultBefore(h.first) || r.asked(fitcheck.TopicFrameCondition) && h.first > 0)
}

// noneOfElse: a "none", "nothing" or "new" that is of something else.
func (r *reader) noneOfElse(h *hit) bool {
	if r.wordAt(h.first, "none") && r.wordAt(h.first-1, "has", "had") {
		return true // "is there supposed to be a metal ring? ours has none"
	}
	next := r.wordText(h.last + 1)
	return r.among(h.first, noneYetWords) && next != "" && !noneYetFollowers.has(next)
}

// partOfTalk: "the acrylic itself measures 24 x 48" says what is measured.
func (r *reader) partOfTalk(s sense, h *hit) bool {
	if s.topic == fitcheck.TopicWant && s.value == fitcheck.WantDomeOnly && !r.asked(s.topic) {
		return h.last-h.first == 1 && r.wordAt(h.last, "only") && r.onlyOfTalk(h.last+1)
	}
	return s.topic == fitcheck.TopicMaterial && !r.asked(s.topic) &&
		r.wordAt(h.first-1, "the", "my", "el", "our", "del") && r.among(h.last+1, partFollowers) && r.numberNear(h)
}

// onlyOfTalk: "acrylic only lasts 8 years", "plastic only, 24 x 48": the name of a size.
func (r *reader) onlyOfTalk(i int) bool {
	for r.markAt(i, ',') || r.markAt(i, ':') || r.wordAt(i, "is") {
		i++
	}
	return r.among(i, onlyDoes) || i < len(r.toks) && r.toks[i].kind == numToken
}

func (r *reader) numberNear(h *hit) bool {
	_, to := r.sentence(h.first)
	for i := h.first; i <= to; i++ {
		if r.toks[i].kind == numToken || r.numberAt(i).kind == digitWord {
			return true
		}
	}
	return false
}

// inShape: "metal frame on a wood curb, in good shape", "I checked the frame, it took no harm"
// tell of the frame that was just named, whatever was asked.
func (r *reader) inShape(s sense, h *hit) sense {
	if !s.asked || s.topic != fitcheck.TopicFrameCondition || s.value != fitcheck.ConditionGood {
		return s
	}
	from := r.sentenceFirst(h.first)
	if r.anyOf(h.first, h.last+1, unharmedWords) && r.frameLast(from, h.first) &&
		!r.anyOf(r.clauseStart(h.first), h.first, otherSound) {
		s.asked = false
		return s
	}
	if !r.wordAt(h.first, "in") || h.last == h.first {
		return s
	}
	if from == h.first && from > 1 {
		from = r.sentenceFirst(from - 2)
	}
	s.asked = !r.wordsIn(from, h.first, "frame", "frames", "marco") ||
		r.wordsIn(max(from, h.first-4), h.first, "roof", "house", "building", "techo", "casa")
	return s
}

// oldTakenOff: "took the old one off ourselves", "quitamos el viejo": there was one.
func (r *reader) oldTakenOff() bool {
	for i := range r.toks {
		if r.among(i, takeOffVerbs) && r.wordsIn(i+1, min(i+4, len(r.toks)), "old", "viejo", "anterior") &&
			!r.negated(i) && !r.anyOf(i+1, min(i+5, len(r.toks)), otherOldThings) {
			return true
		}
	}
	return false
}
