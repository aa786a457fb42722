package conversation

import (
	"testing"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// BenchmarkTurn is one turn in memory: a size is read, checked against what is known,
// the next question is decided and worded.
func BenchmarkTurn(b *testing.B) {
	shop, now := testShop(b), time.Date(2026, 3, 2, 16, 0, 0, 0, time.UTC)
	talk := Talk{Ref: "R7KQ4", Channel: SMS, Phone: "+12185550123"}
	for i, text := range []string{"Dana Whitlock, Duluth MN 55802. Our house, one, dome cracked, metal frame on a wood curb, frame is good", "25 1/2 x 49 1/2"} {
		out, err := Respond(talk, []Message{{N: 2*i + 1, At: now, From: FromCustomer, Channel: SMS, Text: text}}, now, shop)
		if err != nil {
			b.Fatal(err)
		}
		talk = out.Talk
	}
	in := []Message{{N: 7, At: now, From: FromCustomer, Channel: SMS, Text: "23 1/2 by 47 1/2"}}
	b.ReportAllocs()
	for b.Loop() {
		out, err := Respond(talk, in, now, shop)
		if err != nil || out.Talk.Value(fitcheck.TopicRetainerOpening, 1) == nil {
			b.Fatal("the size was not read", err)
		}
	}
}
