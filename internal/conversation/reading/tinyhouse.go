package reading

import "example.com/intake-bot/internal/fitcheck"

// tinyOnFoundation: "tiny house, on a foundation not wheels": what is doubtful by its name
// alone is a home where the message tells that it stands on a foundation.
func (r *reader) tinyOnFoundation(s sense, h *hit) sense {
	if s.topic != fitcheck.TopicUse || s.value != "?" || !r.wordsIn(h.first, h.last+1, "tiny", "modular", "yurt") {
		return s
	}
	founded := false
	for i := range r.toks {
		switch {
		case r.wordAt(i, "foundation", "slab", "cimientos", "basement"):
			if r.negated(i) {
				return s
			}
			founded = true
		case r.wordAt(i, "wheels", "trailer", "skids", "ruedas") && !r.negated(i):
			return s
		}
	}
	if founded {
		s.value, s.asked = fitcheck.UseHome, false
	}
	return s
}
