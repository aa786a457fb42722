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
