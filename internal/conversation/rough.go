package conversation

import (
	"fmt"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
)

// A rough size is none to order by, but staff have something to begin with: it stands with
// what is missing, in the customer's words, as long as no better one comes.

// keepRough remembers the measures that were told roughly.
func (t *turn) keepRough() {
	for _, u := range t.heard.unclear {
		rough := slices.Contains([]reading.Why{reading.WhyRough, reading.WhyRange, reading.WhyNominal}, u.Why)
		if a := t.askOf(u); rough && u.Said != "" && a.Topic.OfLength() {
			t.talk.Memory.Rough[a] = u.Said
		}
	}
}

// roughly is what was said of a measure that is missing, in brackets, "" where nothing was.
func (t *turn) roughly(a Ask) string {
	said, ok := t.talk.Memory.Rough[a]
	if !ok {
		return ""
	}
	return fmt.Sprintf(" (roughly %q)", said)
}
