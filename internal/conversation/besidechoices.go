package conversation

import (
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
)

// The list of choices is long, and people say something else first: "house", "how long does shipping take?". What
// is no answer to it takes nothing from it, once.

// asideOf: this was asked in the list already, and the customer told or asked something else, of no choice.
func (t *turn) asideOf(before []Ask, a Ask) bool {
	if t.talk.Memory.Raised[besideChoices] > 0 || !slices.Contains(before, a) {
		return false
	}
	h := &t.heard
	answered := len(h.dontKnow)+len(h.usual)+len(h.unclear) > 0 ||
		slices.ContainsFunc(slices.Concat(h.entries, h.repeated), func(e Entry) bool { return slices.Contains(choiceTopics, e.Topic) })
	return !answered && (len(h.entries)+len(h.answers) > 0 || h.pass || h.asks(reading.RequestPrice))
}

// keepAside remembers that the list was put again for nothing.
func (t *turn) keepAside(s State, before []Ask) {
	if s == Choosing && slices.ContainsFunc(t.talk.Memory.Asking, func(a Ask) bool { return t.asideOf(before, a) }) {
		t.talk.Memory.Raised[besideChoices]++
	}
}

// besideChoices counts what was said beside the list of choices.
const besideChoices = "beside choices"
