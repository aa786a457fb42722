package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Words for the plastic or the frame that tell what is up there, and not what is wanted.

var (
	styleWishes = wordsOf(`whole complete entire completo keep reuse buy wanted like ocupo only want need replace get
		order looking replacing quiero necesito porque because prefiero rather cambiar`)
	saysItIs           = wordsOf(`its thats theyre is are like as es son ser be it`)
	styleOrders        = wordsOf(`replace replacing order buy purchase need get getting change reemplazar cambiar comprar`)
	unknownVerbs       = wordsOf(`know sure tell see unsure se clue idea remember`)
	beforeFrameSubject = wordsOf(`the my our metal aluminum old el and but`)
	ownSubjectVerbs    = wordsOf(`is are has looks esta estan`)
)

// saysStyle: "just a plastic dome screwed to the wood" tells what is there, not what
// is wanted.
func (r *reader) saysStyle(all []saying, h *hit) bool {
	from, to := r.sentence(h.first)
	if r.asked(fitcheck.TopicStyle) && !r.asked(fitcheck.TopicWant) && !r.justThis(h) && !r.anyOf(from, to+1, styleWishes) {
		return true
	}
	if r.fastenedBare(h) || !r.asked(fitcheck.TopicWant) && r.isPlastic(h) {
		return true
	}
	for k := range all {
		s := &all[k]
		if s.value == fitcheck.StyleCurbMount && len(r.Asked) == 0 && r.anyOf(from, h.first+1, styleOrders) {
			continue // "replace only the dome on a curb-mounted skylight"
		}
		if r.besideStyle(s, h) || r.besideProblem(s, h) {
			return true
		}
	}
	return false
}

// justThis: "just the plastic", a clause by itself at the end of its sentence: a wish.
func (r *reader) justThis(h *hit) bool {
	return h.first > 0 && r.wordAt(h.first, "just", "solo", "nomas") &&
		(h.first == r.clauseStart(h.first) || r.frameTold(h.first-1)) &&
		(h.last+1 >= len(r.toks) || r.sentenceEnd(h.last+1))
}

// fastenedBare: "bolted straight down to the deck, just the plastic, no frame".
func (r *reader) fastenedBare(h *hit) bool {
	if len(r.Asked) > 0 || !h.is("want", fitcheck.WantDomeOnly) || h.last-h.first >= 3 ||
		!r.markAt(h.last+1, ',') || !r.wordAt(h.last+2, "no") || !r.wordAt(h.last+3, "frame", "metal") {
		return false
	}
	from, to := r.sentence(h.first)
	return r.wordsIn(from, h.first, "bolted", "screwed", "nailed", "fastened", "attached") &&
		!r.wordsIn(from, h.first, "frame", "need", "want") && !r.wordsIn(h.last, to+1, "please", "need", "want")
}

// isPlastic: "to me it's just plastic".
func (r *reader) isPlastic(h *hit) bool {
	return h.last == h.first+1 && r.wordAt(h.last, "plastic", "acrylic", "plastico", "acrilico") &&
		r.among(h.first-1, saysItIs) && !r.wordAt(h.first-2, "want", "wanted", "need", "think", "do")
}

// besideStyle: the words are part of a phrase for the kind, or one follows them.
func (r *reader) besideStyle(s *saying, h *hit) bool {
	if s.topic != fitcheck.TopicStyle || s.asked || h.first > s.last ||
		!h.is("want", fitcheck.WantDomeOnly) && r.wordAt(h.first, "complete", "whole", "entire", "full") {
		return false
	}
	afterComma := s.first == h.last+2 && r.markAt(h.last+1, ',') && s.value == fitcheck.StyleBareDome &&
		!r.wordAt(s.first, "no", "sin")
	return s.first <= h.last+1 || afterComma
}

// besideProblem: what is wrong follows right after the words.
func (r *reader) besideProblem(s *saying, h *hit) bool {
	return s.topic == fitcheck.TopicProblem && !r.asked(fitcheck.TopicWant) &&
		s.first > h.last && s.first-h.last <= 3 && !r.softBetween(h.last+1, s.first)
}

// frameTold: the word ends what tells of the frame's condition: "frames fine", before "just plastic".
func (r *reader) frameTold(i int) bool {
	return slices.ContainsFunc(r.choices, func(h hit) bool {
		return h.last == i && h.first < i && h.has1(string(fitcheck.TopicFrameCondition))
	})
}

// unknownTo: "I don't know if it's cracked".
func (r *reader) unknownTo(first int) bool {
	for i := r.clauseStart(first); i < first; i++ {
		if r.wordAt(i, "if", "whether", "si") && r.among(i-1, unknownVerbs) {
			return true
		}
	}
	return false
}

// frameSubject: the clause begins with the frame: what it says is of that.
func (r *reader) frameSubject(h *hit) bool {
	i := r.clauseStart(h.first)
	for r.among(i, beforeFrameSubject) {
		i++
	}
	return i < h.first && r.wordAt(i, "frame", "frames", "marco", "marcos", "metal") &&
		!r.wordsIn(i+1, h.first, "and", "dome", "plastic", "around")
}

// ownSubject: the words are a statement by themselves, so that a "not" further before is another's:
// "he never called me back frame is a bit weathered".
func (r *reader) ownSubject(h *hit) bool {
	return h.last > h.first+1 && r.wordAt(h.first, "frame", "frames", "marco", "marcos") &&
		r.among(h.first+1, ownSubjectVerbs) &&
		!r.among(h.first-1, negWords) && !r.wordAt(h.first-1, "the", "my", "our", "el", "los")
}
