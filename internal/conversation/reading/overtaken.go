package reading

import "strings"

// What was before, or is somebody else's, is told for the sake of what is now or is ours:
// "the old one was bronze but I don't care", "my neighbor has 4, I only got 1", "moved from
// Texas, now in Tulsa".

var (
	speakersOwn = wordsOf(`i we im were id mine ours yo nosotros mio nuestro`)
	otherOwners = wordsOf(`neighbor neighbors neighbour neighbours brother brothers sister sisters cousin cousins
		friend friends buddy buddys vecino vecina vecinos hermano hermana primo amigo inlaws parents son daughter hijo
		hija boss jefe`)
	ownsOrLives  = wordsOf(`has have had got is lives live works tiene tienen vive viven es uses s`)
	othersPlural = wordsOf(`cousins brothers sisters friends buddys uncles aunts coworkers nephews hermano hermana
		primo amigo`)
	othersThings = wordsOf(`skylight skylights dome domes roof skylite bubble tragaluz domo claraboya techo`)
)

// overtaken says whether the words before a value tell of former times or of another's
// things, and those after it go on to the present or to the writer's own.
func (r *reader) overtaken(first int) bool {
	from, to := r.clauseStart(first), r.clauseEnd(first)
	if !r.former(from, first) && !r.anothers(from, first) {
		return false
	}
	end := r.sentenceLast(first)
	if next := end + 1; next < len(r.toks) {
		end = r.sentenceLast(next)
	}
	for i := first + 1; i <= end; i++ {
		if i <= to {
			if r.wordAt(i, "now", "ahora", "today", "currently") {
				return true
			}
			continue
		}
		if r.wordAt(i, "but", "pero", "now", "ahora", "currently", "instead", "actually") ||
			i == to+1 && r.wordAt(i, "though", "while") {
			return true
		}
		if r.toks[i-1].kind == markToken && r.among(i, speakersOwn) && !r.wordAt(i+1, "think", "guess", "believe") {
			return true
		}
	}
	return false
}

// former: the words tell of what was.
func (r *reader) former(from, first int) bool {
	for i := from; i < first; i++ {
		switch {
		case r.wordAt(i, "originally", "formerly", "former", "previously", "antes", "originalmente"):
			return true
		case r.wordAt(i, "was", "were") && r.wordAt(i+1, "gonna", "going", "planning", "thinking"), r.wordAt(i, "iba", "ibamos") &&
			r.wordAt(i+1, "a"):
			return true
		case r.wordAt(i, "used") && r.wordAt(i+1, "to"), r.wordAt(i, "moved", "came") &&
			r.wordAt(i+1, "here", "from", "up", "down", "out"), r.wordAt(i, "grew") && r.wordAt(i+1, "up"):
			return true
		case r.wordAt(i, "old", "last", "previous", "first", "original") && r.wordAt(i+1, "one", "ones") &&
			r.wordAt(i+2, "was", "were", "had"):
			return true
		case r.wordAt(i, "viejo", "vieja", "anterior") && r.wordAt(i+1, "era", "eran", "tenia", "estaba"):
			return true
		}
	}
	return false
}

// anothers: the words are about somebody else who has, lives or got.
func (r *reader) anothers(from, first int) bool {
	for i := from; i < first; i++ {
		if r.among(i, otherOwners) &&
			r.among(i+1, ownsOrLives) && !(i+2 < len(r.toks) && strings.HasSuffix(r.toks[i+2].text, "ing")) {
			return true
		}
	}
	return false
}

// othersThing: the clause's subject is a neighbor's skylight or roof, or a kinsman's that ours is set
// beside: "my neighbor's skylight leaks", "my sister's dome cracked, mine is fine".
func (r *reader) othersThing(i, first int) bool {
	near := r.wordAt(i, "neighbors", "neighbours", "vecino", "vecina", "vecinos")
	if !near && !r.among(i, othersPlural) {
		return false
	}
	from, to := i+1, min(i+4, first)
	if r.wordAt(i-1, "del", "de", "mi") && r.out.Language == "es" {
		from, to = max(r.clauseStart(i), i-4), i // "el tragaluz de mi vecino gotea"
	}
	if !r.anyOf(from, to, othersThings) ||
		r.wordsIn(i, first, "hit", "fell", "put", "broke", "threw", "into", "my", "our", "nuestro") {
		return false
	}
	return near || r.wordsIn(first, len(r.toks), "ours", "mine", "nuestro", "mio", "our")
}
