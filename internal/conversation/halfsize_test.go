package conversation

import (
	"encoding/json"
	"testing"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// One side of a size was told and the other asked. Only words about the other side
// complete it: whatever else is said instead makes no square of it.
func TestOtherSideIsNeverMadeUp(t *testing.T) {
	const told = "Al Berg, Boise ID. house, one skylight, cracked. curb mount, metal frame is good, just the dome. plastic is 25 1/2 on one side"
	for answer, want := range map[string]string{
		"what's the warranty like":     `{"one_in":25.5}`,
		"no way to measure that":       `{"one_in":25.5}`,
		"what?":                        `{"one_in":25.5}`,
		"cuanto cuesta":                `{"one_in":25.5}`,
		"same":                         `{"width_in":25.5,"length_in":25.5}`,
		"its the same both ways":       `{"width_in":25.5,"length_in":25.5}`,
		"square":                       `{"width_in":25.5,"length_in":25.5}`,
		"igual":                        `{"width_in":25.5,"length_in":25.5}`,
		"49 1/2":                       `{"width_in":25.5,"length_in":49.5}`,
		"the other one is 49 1/2 long": `{"width_in":25.5,"length_in":49.5}`,
	} {
		talk := Talk{Ref: "R7KQ4", Channel: SMS}
		now := time.Date(2026, 3, 3, 16, 0, 0, 0, time.UTC)
		for n, text := range []string{told, answer} {
			out, err := Respond(talk, []Message{{N: n + 1, At: now, From: FromCustomer, Channel: SMS, Text: text}}, now, testShop(t))
			if err != nil {
				t.Fatal(err)
			}
			talk, now = out.Talk, now.Add(time.Minute)
		}
		if got := encoded(t, talk.Value(fitcheck.TopicPlasticSize, 1)); got != want || talk.UnitCount() != 1 {
			t.Errorf("%q: %s of %d kinds of skylight, want %s of one", answer, got, talk.UnitCount(), want)
		}
	}
}

func encoded(t *testing.T, v fitcheck.Value) string {
	t.Helper()
	raw, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}
