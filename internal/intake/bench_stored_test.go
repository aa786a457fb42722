package intake

import (
	"context"
	"math/rand/v2"
	"testing"

	"example.com/intake-bot/internal/db/dbtest"
)

const (
	storedMessages = 20      // of each talk
	fewTalks       = 50      // 1,000 messages
	manyTalks      = 100_000 // 2,000,000
)

// BenchmarkTurnAtTwoMillion measures turns in a database of 1,000 messages and in one of
// 2,000,000, each round in talks that are cold in both. "cost-ratio" is the time of a turn in
// the large one by that in the small one, "cpu-cost-ratio" its processor time.
func BenchmarkTurnAtTwoMillion(b *testing.B) {
	for b.Loop() {
		few, many := newDeskOf(b, fewTalks, storedMessages), newDeskOf(b, manyTalks, storedMessages)
		c := newContest(b, many.pool)
		cold := rand.New(rand.NewPCG(1, 2)).Perm(manyTalks)
		for round := range benchRounds {
			few.again(b)
			some, any := numbered(fewTalks-2), numbered(fewTalks-2)
			for i := range any {
				any[i] = 1 + cold[round*fewTalks+i]
			}
			c.round(func() int { return haveTalks(b, some, few.say) }, func() int { return haveTalks(b, any, many.say) })
		}
		b.ReportMetric(1/c.ratio(wall), "cost-ratio")
		b.ReportMetric(1/c.ratio(cpu), "cpu-cost-ratio")
		b.ReportMetric(0, "ns/op")
	}
}

func numbered(n int) []int {
	talks := make([]int, n)
	for i := range talks {
		talks[i] = 1 + i
	}
	return talks
}

// newDeskOf is a desk with so many talks of so many messages.
func newDeskOf(b *testing.B, talks, messages int) *desk {
	d := newBareDesk(b)
	dbtest.FillTalks(b, d.pool, talks, messages)
	d.start()
	d.warm(b, talks)
	return d
}

// again brings a small database back to what it was.
func (d *desk) again(b *testing.B) {
	if _, err := d.pool.Exec(b.Context(), `TRUNCATE conversations, optouts, send_statuses RESTART IDENTITY CASCADE`); err != nil {
		b.Fatal(err)
	}
	d.waiting.Clear()
	dbtest.FillTalks(b, d.pool, fewTalks, storedMessages)
	d.warm(b, fewTalks)
}

// warm has the last two talks, so that every statement is prepared.
func (d *desk) warm(b *testing.B, talks int) {
	for i := range 5 { // each connection makes its plans after five executions
		haveTalks(b, []int{talks - 1, talks}, func(ctx context.Context, talk, m int) error { return d.say(ctx, talk, m+perTalk*(i+1)) })
	}
}
