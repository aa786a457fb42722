package reading

import "example.com/intake-bot/internal/fitcheck"

// What is up there no more, or not yet: a frame that the storm took, a new one that is wanted.

var (
	goneWords = wordsOf(`gone anymore blew blown flew ripped tore vanished disappeared volo llevo arranco perdio
		desaparecio`)
	takenThings = wordsOf(`it off away frame everything all skylight`)
	newWishes   = wordsOf(`need needs want wants replace whole complete entire quiero necesito ocupo`)
)

// frameGone: "theres no frame its gone": there was one, so the plastic was not bare.
func (r *reader) frameGone(s sense, h *hit) bool {
	return s.value == fitcheck.StyleBareDome && r.wordsIn(h.first, h.last+1, "no", "sin", "without") &&
		r.wordsIn(h.first, h.last+1, "frame", "marco", "metal", "ring") && r.tookAway()
}

// tookAway: the message says that the frame or all of it is gone from where it was.
func (r *reader) tookAway() bool {
	for i := range r.toks {
		if r.awayAt(i) && (!r.negated(i) || r.wordAt(i, "anymore", "frame", "marco")) {
			return true
		}
	}
	return false
}

// awayAt: words begin that tell of something gone.
func (r *reader) awayAt(i int) bool {
	switch {
	case r.among(i, goneWords):
		return true
	case r.wordAt(i, "missing", "torn", "falta"):
		return r.wordsIn(r.clauseStart(i), r.clauseEnd(i)+1, "frame", "frames", "marco")
	case r.wordAt(i, "took", "take", "carried"):
		return r.anyOf(i+1, min(i+6, len(r.toks)), takenThings)
	case r.wordAt(i, "frame", "marco"):
		return r.wordAt(i+1, "left") // "no frame left"
	case r.wordAt(i, "ya"):
		return r.wordAt(i+1, "no") && r.wordAt(i+2, "hay", "tiene", "esta")
	}
	return false
}

// newWished: a "new" beside what is there already, or wished for, tells of no opening still to be
// cut: "wood curb still there. whole new skylight", "new roof, wood box on it".
func (r *reader) newWished(h *hit) bool {
	for n := range r.labels {
		if l := &r.labels[n]; l.is("part", "curb") || l.is("part", "frame") || l.is("part", "flange") {
			return true
		}
	}
	return covers(r.wants, h.first) || r.wordsIn(0, len(r.toks), "old", "existing", "viejo", "vieja") ||
		r.anyOf(r.sentenceFirst(h.first), h.first, newWishes)
}
