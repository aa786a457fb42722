package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// What kind of frame it is where two phrases seem to tell of two: screws that go with a metal frame make no
// bare plastic, and a box under a frame of fiberglass makes it none of metal.

var (
	screwedWords = wordsOf(`held screwed screws bolted fastened secured atornillado atornillada tornillos`)
	pastFrame    = wordsOf(`straight right directly direct directo directamente derecho through thru roof deck techo
		azotea`)
	holderParts = wordsOf(`frame ring retainer strip strips bar bars`)
	noMetal     = negWords.and(`any nada`)
)

// frameKinds settles such sayings before the values are compared.
func (r *reader) frameKinds(all []saying) []saying {
	for k := range all {
		if s := &all[k]; s.value == fitcheck.StyleBareDome && !s.negated && r.screwedByFrame(s, all) {
			s.value = fitcheck.StyleCurbMount
		}
	}
	k := slices.IndexFunc(all, func(s saying) bool { return s.value == fitcheck.StyleFiberglassFrame && !s.negated })
	if k < 0 || r.namesMetal(0, len(r.toks)) {
		return all
	}
	glassy := all[k]
	return slices.DeleteFunc(all, func(s saying) bool {
		return s.value == fitcheck.StyleCurbMount && s.unit == glassy.unit &&
			!r.wordsIn(min(s.first, glassy.last), max(s.last, glassy.first), "or", "o")
	})
}

// screwedByFrame: "aluminum frame over a wood curb, dome held down with screws", "held down by a second metal
// frame with screws": a metal frame is named, and nothing says that the screws go past it.
func (r *reader) screwedByFrame(s *saying, all []saying) bool {
	if !r.anyOf(s.first, s.last+1, screwedWords) || r.anyOf(s.first, min(s.last+4, len(r.toks)), pastFrame) ||
		r.framesDenied() {
		return false
	}
	if r.heldByMetal(s) {
		return true
	}
	if value, first, _ := r.frameOnBox(); value == fitcheck.StyleCurbMount && first < s.first {
		return true
	}
	return slices.ContainsFunc(all, func(o saying) bool {
		return o.topic == fitcheck.TopicStyle && o.value == fitcheck.StyleCurbMount && o.unit == s.unit &&
			!o.negated && !o.doubted && (o.last < s.first || o.first > s.last) && r.namesMetal(o.first, o.last+1)
	})
}

// heldByMetal: "held down by a second metal frame".
func (r *reader) heldByMetal(s *saying) bool {
	from, to := r.clauseStart(s.first), r.clauseEnd(s.last)+1
	return r.wordsIn(s.first, s.last+1, "held") && r.wordsIn(s.first, to, "by", "under", "with") &&
		r.anyOf(from, to, holderParts) && r.namesMetal(s.first, to)
}

// namesMetal: metal is named between two tokens, and not to say that there is none.
func (r *reader) namesMetal(from, to int) bool {
	for i := from; i < to; i++ {
		if r.among(i, metalWords) && !r.anyOf(max(0, i-4), i, noMetal) {
			return true
		}
	}
	return false
}

// framesDenied: "no metal", "there isn't any frame", "sin marco".
func (r *reader) framesDenied() bool {
	for i := range r.toks {
		if r.among(i, frameParts) && r.anyOf(max(0, i-3), i, noMetal) {
			return true
		}
	}
	return false
}
