package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Which lengths are diagonals, by words that stand further off.

var (
	diagWithout = wordsOf(`no not before without instead skip skipped skipping forget forgot sin antes after
		except`)
	putOffWords  = wordsOf(`later tomorrow next luego manana despues tonight can havent arent`)
	otherCorners = wordsOf(`other others second opposite next otra otro segunda`)
)

// noDiagonal: "no diagonals yet but the curb stands 6", "before corners, here are the sides", "cracked
// from corner to corner": the words name no diagonal that is told.
func (r *reader) noDiagonal(h *hit) bool {
	return r.crackRuns(h) || r.negated(h.first) || r.anyOf(max(r.sentenceFirst(h.first), h.first-2), h.first, diagWithout) ||
		r.among(h.last+1, putOffWords)
}

// moreDiagonals finds the lengths that the words before make diagonals: a sentence that did nothing
// but name them ("Did corner to corner on the curb first. 55 5/8 one way, 55 1/2 the other"), and the
// other of two ("corner to corner 43 1/2 and the other 43 1/4").
func (r *reader) moreDiagonals(ms []measure) {
	for k := range ms {
		m := &ms[k]
		if m.diag && m.shape == lone {
			m.both = m.both || r.bothTimes(m.last+1)
			continue
		}
		if m.diag || m.square || m.round || m.other {
			continue
		}
		switch {
		case k == 0 && m.shape == pair && !r.by(m.parts[1].first-1) && m.parts[0].closeTo(&m.parts[1]):
			m.diag = r.diagonalsNamed(m)
		case k > 0 && diagonalsAlike(&ms[k-1], m):
			m.diag = r.otherDiagonal(&ms[k-1], m)
		}
	}
}

// bothTimes: "55 5/8 twice", "both times".
func (r *reader) bothTimes(i int) bool {
	return r.wordAt(i, "twice") || r.wordAt(i, "both", "each") && r.wordAt(i+1, "times", "time") ||
		r.wordAt(i, "dos") && r.wordAt(i+1, "veces")
}

// diagonalsAlike: the first of two lengths is a diagonal, and the second is nearly as long.
func diagonalsAlike(a, m *measure) bool {
	return a.diag && a.shape == lone && !a.both && m.shape == lone &&
		abs(m.parts[0].length()-a.parts[0].length()) <= 2*fitcheck.Inch
}

// otherDiagonal: the words between two lengths say that the second is the other diagonal.
func (r *reader) otherDiagonal(a, m *measure) bool {
	told := m.first // "the other at 42 3/4": the side's name is a part of the length
	for told < m.last && r.toks[told].kind == wordToken && r.numberAt(told).kind == notNumber {
		told++
	}
	return r.anyOf(a.last+1, told, otherCorners) && !r.labelled(a.last+1, m.first-1) &&
		!r.wordsIn(a.last+1, told, "side", "width", "length", "way", "lado")
}

// diagonalsNamed: the sentence before the first measure names diagonals and tells no number.
func (r *reader) diagonalsNamed(m *measure) bool {
	own := r.sentenceFirst(m.first)
	if own == 0 || r.labelled(own, m.first-1) {
		return false
	}
	labels := within(r.labels, r.sentenceFirst(own-1), own-1)
	for n := range labels {
		if labels[n].is("shape", "diagonal") {
			return !r.noDiagonal(&labels[n]) && !r.denied(labels[n].first)
		}
	}
	return false
}

// diagonalsOver: diagonals were asked for, and the clause of the face names them: the face tells only
// where they were taken.
func (r *reader) diagonalsOver(h *hit) bool {
	return r.asked(fitcheck.TopicCurbDiagonals) && slices.ContainsFunc(r.labels, func(l hit) bool {
		return l.is("shape", "diagonal") && l.first >= r.clauseStart(h.first) && l.last <= r.clauseEnd(h.last) && !r.noDiagonal(&l)
	})
}
