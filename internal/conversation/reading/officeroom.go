package reading

import "example.com/intake-bot/internal/fitcheck"

// officeAtHome: "my house, clear for the ones over my office", "the two over the office": a room that a
// house has as well, told as the place of a skylight, says nothing of the building where that was told
// in the same message or something else was asked.
func (r *reader) officeAtHome(h *hit) bool {
	if !r.wordAt(h.last, "office", "oficina") || r.asked(fitcheck.TopicUse) ||
		r.wordAt(h.last+1, "building", "park", "complex", "space") {
		return false
	}
	i := h.last - 1
	for r.wordAt(i, "the", "my", "our", "home", "mi", "la", "el") {
		i--
	}
	if !r.whereWord(i) && !r.wordAt(i, "del", "de") || r.wordAt(h.last-1, "a", "an", "una") {
		return false
	}
	return len(r.Asked) > 0 && !r.asked(fitcheck.TopicPlace) && !r.asked(fitcheck.TopicName) && !r.asked(fitcheck.TopicProblem) ||
		r.homeSaid()
}

// homeSaid: the message names a home as the building.
func (r *reader) homeSaid() bool {
	for n := range r.choices {
		if h := &r.choices[n]; h.is(string(fitcheck.TopicUse), "home") &&
			r.wordsIn(max(0, h.first-1), h.last, "my", "our", "mi", "nuestra", "a", "una") {
			return true
		}
	}
	return false
}
