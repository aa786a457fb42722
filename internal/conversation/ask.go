package conversation

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// String is "curb_outside@2" for a topic of unit 2, "place" for one of the whole lead.
func (a Ask) String() string {
	if a.Unit == 0 {
		return string(a.Topic)
	}
	return string(a.Topic) + "@" + strconv.Itoa(a.Unit)
}

// MarshalText lets an Ask be a key or a string in JSON.
func (a Ask) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText reads what MarshalText wrote.
func (a *Ask) UnmarshalText(b []byte) error {
	topic, unit, found := strings.Cut(string(b), "@")
	*a = Ask{Topic: fitcheck.Topic(topic)}
	if !found {
		return nil
	}
	n, err := strconv.Atoi(unit)
	if err != nil || n < 1 {
		return fmt.Errorf("%q names no unit", unit)
	}
	a.Unit = n
	return nil
}

// Asking is what is asked, as the contract's chat shows it: the unit only where the
// talk knows several.
func (t *Talk) Asking() []string {
	if t.State == Lapsed {
		return []string{} // what was asked last is kept, for when they write again
	}
	several := t.UnitCount() > 1
	out := make([]string, 0, len(t.Memory.Asking))
	for _, a := range t.Memory.Asking {
		if several {
			out = append(out, a.String())
		} else {
			out = append(out, string(a.Topic))
		}
	}
	return out
}

// UnitCount is how many kinds of unit the talk knows, those among them that nothing is
// known of but that they are there.
func (t *Talk) UnitCount() int {
	n := 0
	for _, e := range t.Ledger {
		if !e.Undone {
			n = max(n, e.Unit)
		}
	}
	for unit := range t.Memory.Called {
		n = max(n, unit)
	}
	return n
}

func topicsOf(asks []Ask) []fitcheck.Topic {
	topics := make([]fitcheck.Topic, 0, len(asks))
	for _, a := range asks {
		topics = append(topics, a.Topic)
	}
	return topics
}
