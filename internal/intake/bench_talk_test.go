package intake

import (
	"context"
	"testing"
	"time"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/db"
	shopfile "example.com/intake-bot/internal/shop"
)

// wholeTalk is what a customer writes whose lead is ready at its end.
var wholeTalk = []string{"Hi, the dome on our skylight is cracked, can I get a new one?", "Dana Whitlock, 80302", "house, just one",
	"it's a metal frame on a wood box, screws around the sides", "frame is fine", "25 1/2 x 49 1/2", "23 1/2 by 47 1/2", "2 layers, clear, acrylic", "yes"}

// BenchmarkWholeTalk measures whole talks as customers have them, with the real reading,
// check and words, from the first message of an unknown number to the ready lead. It tells
// the processor time of a turn, what it writes to the log and how much the database grows;
// where the time goes, by -cpuprofile.
func BenchmarkWholeTalk(b *testing.B) {
	file, err := shopfile.Parse([]byte(deploy.ExampleShop))
	if err != nil {
		b.Fatal(err)
	}
	talking, err := file.Conversation()
	if err != nil {
		b.Fatal(err)
	}
	d := &desk{}
	d.shop = newShop(b, func(o *Options) {
		o.Senders = map[conversation.Channel]Sender{conversation.SMS: d}
		o.Clock, o.Lease, o.Shop = time.Now, time.Minute, talking
		o.Brain = Brain{Respond: conversation.Respond, Nudge: conversation.Nudge, Keyword: reading.Keyword,
			Record: func(t conversation.Talk) conversation.Record { return conversation.NewRecord(t, nil, nil) }}
	})
	d.start()
	say := func(ctx context.Context, talk, m int) error { return d.tell(ctx, talk, m, wholeTalk[m]) }
	haveTalks(b, talksOf(0, perRound), say)
	clock, round := cpuClockOf(b.Context(), d.pool), 0
	var all []span
	var wal, size, walThen, sizeThen float64
	const written = `SELECT (pg_current_wal_insert_lsn() - '0/0')::float8, pg_database_size(current_database())::float8`
	d.one(written, &wal, &size)
	for b.Loop() {
		round++
		all = append(all, clock.measure(func() int { return haveTalks(b, talksOf(round, 4*perRound), say) }))
	}
	d.one(written, &walThen, &sizeThen)
	lines, err := db.ListLeads(b.Context(), d.pool, db.LeadFilter{Status: []conversation.Status{conversation.StatusReady}})
	if want := perRound + round*4*perRound; err != nil || len(lines) < want {
		b.Errorf("%d leads are ready, want %d; %v", len(lines), want, err)
	}
	var bot, server []float64
	for _, s := range all {
		bot, server = append(bot, s.bot.Seconds()*1e6/float64(s.work)), append(server, s.server.Seconds()*1e6/float64(s.work))
	}
	b.ReportMetric(median(bot), "bot-us/turn")
	b.ReportMetric(median(server), "db-us/turn")
	turns := float64(round * 4 * perRound * len(wholeTalk))
	b.ReportMetric((walThen-wal)/1024/turns, "wal-kB/turn")
	b.ReportMetric((sizeThen-size)/1024/turns, "disk-kB/turn")
	b.ReportMetric(0, "ns/op")
}
