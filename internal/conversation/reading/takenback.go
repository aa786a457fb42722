package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Requests that the rest of the message decides: what is meant by a word, what is taken back.

// meantBy: "what do you mean by curb?", asked for a size: how it is measured tells it.
func (r *reader) meantBy() {
	if !slices.Contains(r.out.Requests, RequestAgain) || r.askedSize() == "none" {
		return
	}
	for i := range r.toks {
		if r.wordAt(i, "by") && r.wordAt(i-1, "mean", "meant") && i+1 < len(r.toks) && r.toks[i+1].kind == wordToken {
			r.request(RequestHowTo)
			return
		}
	}
}

// measuredNow: the message tells more than who writes: "disregard the last one. It is 25 x 49".
func (r *reader) measuredNow() bool {
	for _, f := range r.out.Facts {
		if f.Topic != fitcheck.TopicName && f.Topic != fitcheck.TopicPhone && f.Topic != fitcheck.TopicEmail {
			return true
		}
	}
	return len(r.out.Unclear) > 0
}

// neverMind: the bare words take back what was said last.
func (r *reader) neverMind() bool {
	if len(r.out.Facts)+len(r.out.Unclear)+len(r.out.Requests) > 0 {
		return false
	}
	text := politeness(bareWords(r.Text))
	return text == "nevermind" || text == "never mind" || text == "nvm" || text == "nm" || text == "olvidalo" || text == "no importa"
}

// takenOff: a thing is taken off or apart, no word of an answer: "do I have to take it apart?", "do I
// need to undo it to measure".
func (r *reader) takenOff(h *hit) bool {
	if !r.wordsIn(h.first, h.last+1, "take", "taking", "undo") {
		return false
	}
	if !r.wordsIn(h.first, h.last+1, "back", "undo") || r.wordAt(h.last+1, "off", "apart", "out", "down", "up", "outside", "to") {
		return true
	}
	from, _ := r.sentence(h.first)
	return r.wordsIn(from, h.first, "do", "does", "should", "must", "have", "need", "supposed", "gotta") &&
		!r.wordsIn(from, h.first, "how", "can", "could", "may")
}

// undoStands: the words take back what was said, and nothing that only might have gone wrong.
func (r *reader) undoStands(h *hit) bool {
	if r.takenOff(h) {
		return false
	}
	if h.first == h.last && r.wordAt(h.first, "disregard", "ignore", "autocorrect") &&
		r.toks[min(h.last+1, len(r.toks)-1)].kind == wordToken && h.last+1 < len(r.toks) {
		return false
	}
	if r.wordsIn(max(0, h.first-3), h.first, "if", "si", "when", "unless") ||
		r.wordsIn(r.sentenceFirst(h.first), h.first, "suppose", "supposing", "happens", "turns", "suponga", "supongamos") {
		return false // "what happens if I measured it wrong", "suppose my helper then turns out to have misread it"
	}
	if r.wordsIn(h.first, h.last+1, "last", "previous", "prior") && r.wordsIn(h.first, h.last+1, "before") && h.last > h.first+3 {
		return !r.negated(h.first) // "polycarbonate. scratch my last answer before this one tho"
	}
	if r.wordsIn(h.first, h.last+1, "last") && r.wordsIn(h.first, h.last+1, "disregard", "ignore", "forget") {
		return !r.negated(h.first) && !r.measuredNow()
	}
	return (!r.negated(h.first) || r.wordAt(h.first-1, "wait", "no")) && r.onlySigned() && len(r.out.Unclear) == 0
}

// onlySigned: nothing is told but who writes: "Please take back my last answer. Thanks, Cesar".
func (r *reader) onlySigned() bool {
	return !slices.ContainsFunc(r.out.Facts, func(f Fact) bool {
		return f.Topic != fitcheck.TopicName && f.Topic != fitcheck.TopicPhone && f.Topic != fitcheck.TopicEmail
	})
}
