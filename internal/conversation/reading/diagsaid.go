package reading

import "example.com/intake-bot/internal/fitcheck"

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
			m.both = m.both || r.wordAt(m.last+1, "twice") || r.wordAt(m.last+1, "both", "each") && r.wordAt(m.last+2, "times", "time") || r.wordAt(m.last+1, "dos") && r.wordAt(m.last+2, "veces")
			continue
		}
		if m.diag || m.square || m.round || m.other {
			continue
		}
		switch {
		case k == 0 && m.shape == pair && !r.by(m.parts[1].first-1) && m.parts[0].closeTo(&m.parts[1]):
			m.diag = r.diagonalsNamed(m)
		case k > 0 && ms[k-1].diag && ms[k-1].shape == lone && !ms[k-1].both && m.shape == lone && abs(m.parts[0].length()-ms[k-1].parts[0].length()) <= 2*fitcheck.Inch:
			told := m.first // "the other at 42 3/4": the side's name is a part of the length
			for told < m.last && r.toks[told].kind == wordToken && r.numberAt(told).kind == notNumber {
				told++
			}
			m.diag = r.anyOf(ms[k-1].last+1, told, otherCorners) && !r.wordsIn(ms[k-1].last+1, told, "side", "width", "length", "way", "lado") && !r.labelled(ms[k-1].last+1, m.first-1)
		}
	}
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
