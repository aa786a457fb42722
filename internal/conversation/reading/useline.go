package reading

import "example.com/intake-bot/internal/fitcheck"

// useInLine: what the building is in a hurried opening line, where no rule has taken it since other words
// stand around it: "its Rosa from the laundromat on 4th ours is leaking", "glass at my house chris mwangi". Only
// where one kind of building is named, plainly, and no other person's or thing's.
func (r *reader) useInLine() {
	if r.known(fitcheck.TopicUse) || r.doubtful(fitcheck.TopicUse) ||
		r.out.Language != "en" && r.out.Language != "es" || !r.hurried() ||
		len(r.Asked) > 0 && !r.asked(fitcheck.TopicStyle) && !r.asked(fitcheck.TopicWant) && !r.asked(fitcheck.TopicProblem) {
		return
	}
	value, first, last := "", 0, 0
	for n := range r.choices {
		h := &r.choices[n]
		for _, s := range h.senses {
			if s.topic != fitcheck.TopicUse || s.asked || h.is("none", "none") || r.toks[h.first].named || r.afterName(h) {
				continue
			}
			if value != "" && value != s.value || r.negated(h.first) || r.questioned(h.first) ||
				r.elsewhere(s, h) || r.doubted(h.first, h.last) || r.besideThePoint(s, h) {
				return
			}
			value, first, last = s.value, h.first, h.last
		}
	}
	if value != "" {
		r.fact(fitcheck.TopicUse, 0, fitcheck.Choice(value), first, last)
	}
}

// hurried: the message is one line without a sign that parts what it says.
func (r *reader) hurried() bool {
	for i := range r.toks {
		if i+1 < len(r.toks) && (r.sentenceEnd(i) || r.markAt(i, ',')) {
			return false
		}
	}
	return true
}
