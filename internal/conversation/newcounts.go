package conversation

import "example.com/intake-bot/internal/fitcheck"

// newTotal: where the messages of a turn tell how many there are of every kind, those numbers replace what was
// told of all before: "make that 4 small ones, still 2 big".
func (t *turn) newTotal() {
	told := map[int]bool{}
	for _, list := range [][]Entry{t.heard.entries, t.heard.repeated} {
		for _, e := range list {
			if e.Topic == fitcheck.TopicCount && e.By == FromCustomer {
				told[e.Unit] = true
			}
		}
	}
	if sum := t.sumOfKinds(); t.talk.Memory.Total > 0 && sum > 0 && len(told) == t.talk.UnitCount() {
		t.talk.Memory.Total = sum
	}
}
