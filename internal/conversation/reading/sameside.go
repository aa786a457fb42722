package reading

import "example.com/intake-bot/internal/fitcheck"

// Where one number stands for both sides.

var (
	wayNouns      = wordsOf(`way ways side sides direction directions dimension lado lados sentido`)
	bothWords     = wordsOf(`both all each every other either two four opposite dos cuatro ambos otro todos cada`)
	notEqualWords = wordsOf(`not isnt arent wasnt no nor almost nearly about if supposed should probably maybe
		skylight skylights one ones unit dome roof house wall look looks techo casa casi si`)
)

// sameAgain: "48 wide, same length"; not "the same length as the first one".
func (r *reader) sameAgain(m *measure, h *hit) bool {
	return m.shape == lone && h.first-m.last <= 3 && r.only(m.last+1, h.first-1) &&
		(h.last+1 >= len(r.toks) || r.sentenceEnd(h.last+1))
}

// equalBothWays: "32 1/2 inches apart, and it's the same the other way", "it's a square one, so both
// ways are the same. I get 36 1/8": a clause says of the only length that its sides are alike.
func (r *reader) equalBothWays(ms []measure) {
	if len(ms) != 1 || ms[0].shape != lone || ms[0].diag || ms[0].round ||
		ms[0].parts[0].side == height || r.asked(fitcheck.TopicCurbHeight) ||
		r.asked(fitcheck.TopicDomeRise) || r.asked(fitcheck.TopicCurbDiagonals) {
		return
	}
	for i := range r.toks {
		if !r.wordAt(i, "same", "equal", "alike", "identical", "igual", "iguales", "mismo", "misma", "matches") {
			continue
		}
		from, to := r.clauseStart(i), r.clauseEnd(i)+1
		if r.anyOf(from, to, wayNouns) &&
			r.anyOf(from, to, bothWords) &&
			!r.anyOf(from, to, notEqualWords) && !r.markAt(r.sentenceLast(i), '?') {
			ms[0].square = true
		}
	}
}

// sameSide: "49 x same", "49, same": the other side is as long.
func (r *reader) sameSide(m *measure) {
	if m.shape != lone || m.diag || m.parts[0].side == height || r.askedSize() == "none" && !m.where {
		return
	}
	i := m.last + 1
	for r.by(i) || r.markAt(i, ',') ||
		r.wordAt(i, "and", "y", "the", "lo", "el", "is", "es") ||
		i < len(r.toks) && i > m.last && m.parts[0].side != noSide && r.labelKind(i, "axis") {
		i++
	}
	if r.wordAt(i, "same", "igual", "mismo", "itself") && (i+1 >= len(r.toks) || r.toks[i+1].kind == markToken) {
		m.square, m.last = true, i
	}
}
