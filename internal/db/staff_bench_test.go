package db_test

import (
	"context"
	"flag"
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/db"
)

// mostLeads is how many leads the lists are measured over at the most; fewer for a quick
// look: go test ./internal/db -run - -bench StaffLists -leads 100000
var mostLeads = flag.Int("leads", 1_000_000, "leads of the largest crowd in benchmarks")

// BenchmarkStaffLists measures the list of those who wait and the search, which staff
// look at between two calls: over 100,000 leads against the bare query for the same
// lines, and over a million against a thousand. Both sides take turns, and the middle of
// all their times counts, so that a busy machine weighs on them alike.
func BenchmarkStaffLists(b *testing.B) {
	small, middle, large := crowd(b, 1_000), crowd(b, min(100_000, *mostLeads)), crowd(b, *mostLeads)
	ctx := b.Context()
	must := func(b *testing.B, lines []db.QueueLine, err error, least int) {
		if err != nil || len(lines) < least {
			b.Fatalf("%d lines, %v", len(lines), err)
		}
	}
	waiting := func(b *testing.B, pool *pgxpool.Pool) {
		lines, err := db.WaitingLeads(ctx, pool, db.QueueFilter{}, db.QueuePlace{}, 50)
		must(b, lines, err, 50)
	}
	// A number's end, and a name with a town: what one has at hand when the phone rings.
	find := func(b *testing.B, pool *pgxpool.Pool, i int) {
		n := i*37%1_000 + 1
		lines, err := db.Find(ctx, pool, "", []string{fmt.Sprintf("%07d", n)}, nil, 50)
		must(b, lines, err, 1)
		lines, err = db.Find(ctx, pool, "", []string{fmt.Sprintf("name%d", n), fmt.Sprintf("town%d", n%900)}, nil, 50)
		must(b, lines, err, 1)
	}
	b.Run("waiting", func(b *testing.B) {
		turns(b, func(int) { waiting(b, middle) }, func(int) {
			bare(b, middle, `WHERE l.waiting_since IS NOT NULL ORDER BY l.urgent DESC, l.waiting_since LIMIT 50`)
		})
	})
	b.Run("find", func(b *testing.B) {
		turns(b, func(i int) { find(b, middle, i) }, func(i int) {
			n := i*37%1_000 + 1
			const found = `WHERE l.words @@ $1::tsquery ORDER BY l.updated_at DESC LIMIT 50`
			bare(b, middle, found, fmt.Sprintf("'%07d':*", n))
			bare(b, middle, found, fmt.Sprintf("'name%d':* & 'town%d':*", n, n%900))
		})
	})
	b.Run("waiting-flat", func(b *testing.B) {
		turns(b, func(int) { waiting(b, large) }, func(int) { waiting(b, small) })
	})
	b.Run("find-flat", func(b *testing.B) {
		turns(b, func(i int) { find(b, large, i) }, func(i int) { find(b, small, i) })
	})
}

// bare asks for the columns that a list shows, who holds the lead among them, as one would
// by hand, and reads them.
func bare(b *testing.B, pool *pgxpool.Pool, which string, args ...any) {
	rows, err := pool.Query(context.Background(), `SELECT c.id, c.ref, l.status, l.qualified, l.why_staff, l.urgent, l.after_hours, c.channel, c.state, c.opened_at,
		l.waiting_since, l.updated_at, l.name, l.phone, l.email, l.city, l.region, l.zip, l.units, h.staff_id, s.name
		FROM leads l JOIN conversations c ON c.id = l.conversation_id
		LEFT JOIN lead_hands h ON h.conversation_id = l.conversation_id LEFT JOIN staff s ON s.id = h.staff_id `+which, args...)
	if err != nil {
		b.Fatal(err)
	}
	n := 0
	for rows.Next() {
		if _, err := rows.Values(); err != nil {
			b.Fatal(err)
		}
		n++
	}
	if rows.Err() != nil || n == 0 {
		b.Fatalf("%d lines, %v", n, rows.Err())
	}
}

// turns lets two ways take turns and reports how the first compares with the second.
func turns(b *testing.B, ours, other func(i int)) {
	var times [2][]time.Duration
	for i := 0; b.Loop(); i++ {
		for k, way := range []func(int){ours, other} {
			start := time.Now()
			way(i)
			times[k] = append(times[k], time.Since(start))
		}
	}
	middle := func(all []time.Duration) float64 { slices.Sort(all); return float64(all[len(all)/2]) }
	b.ReportMetric(middle(times[0])/1e3, "us-ours")
	b.ReportMetric(middle(times[0])/middle(times[1]), "ratio")
}
