package reading

import "example.com/intake-bot/internal/fitcheck"

// The frame's color, told with the kind between the two: "the frame of the bath one should be
// bronze", "el marco del baño en bronce".

var frameColorLinks = wordsOf(`of on in for the one ones s is are to be should must can could will would may goes de
		del el la los las en debe deben ser es son va sea sean que color colour finish`)

// frameOfColor is where the frame stands that a color after it is of, -1 for none.
func (r *reader) frameOfColor(h *hit) int {
	for i := h.first - 1; i >= r.clauseStart(h.first); i-- {
		switch {
		case r.wordAt(i, "frame", "frames", "marco", "marcos"):
			return i
		case !r.inRef(i) && !r.among(i, frameColorLinks):
			return -1
		}
	}
	return -1
}

// frameColor takes such a color for the frame's; of bronze it is asked which.
func (r *reader) frameColor(h *hit, value string) bool {
	at := r.frameOfColor(h)
	if at < 0 || at == h.first-1 {
		return at >= 0 // "bath frame bronze" is a phrase
	}
	t := fitcheck.TopicFinish
	if value == fitcheck.ColorBronze && r.choosesNow(at, h.first) && !r.known(t) && !r.doubtful(t) {
		unit := 0
		if u := r.unitsAt(at, h.last); len(u) == 1 {
			unit = u[0]
		}
		r.unclear(t, unit, WhyChoice, nil, at, h.last)
	}
	return true
}

// choosesNow: "the frame should be bronze", or an answer to what it should be.
func (r *reader) choosesNow(from, to int) bool {
	return r.wordsIn(from, to, "can", "could", "should", "will", "must") ||
		r.asked(fitcheck.TopicConfirm) || r.asked(fitcheck.TopicFinish) || r.asked(fitcheck.TopicColor)
}
