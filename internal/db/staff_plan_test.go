package db_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

// crowd fills a database with n leads of which one in ten waits.
func crowd(t testing.TB, n int) *pgxpool.Pool {
	t.Helper()
	pool := dbtest.New(t)
	ctx := context.Background()
	for _, sql := range []string{
		`ALTER TABLE leads DISABLE TRIGGER USER`,
		// A number written with the 21 letters of a ref, five of them.
		`INSERT INTO conversations (ref, channel, phone, state, opened_at)
			SELECT (SELECT string_agg(substr('CDFGHJKMNPQRTWXY34679', ((i / (21 ^ k)::bigint) % 21)::int + 1, 1), '') FROM generate_series(0, 4) k),
				'sms', '+1218' || lpad(i::text, 7, '0'), 'with_staff', now() - i * interval '7 minutes' FROM generate_series(1, $1::int) i`,
		`INSERT INTO leads (conversation_id, status, why_staff, urgent, name, phone, city, region, zip, waiting_since, ready_at, updated_at, units)
			SELECT id, s.status, '{asked for a person}', id % 97 = 0, 'Name' || id % 5000 || ' Person', phone, 'Town' || id % 900, 'MN', lpad((id % 90000 + 10000)::text, 5, '0'),
				CASE WHEN s.status IN ('ready', 'needs_person') THEN opened_at END, opened_at, opened_at,
				jsonb_build_array(jsonb_build_object('curb_outside', jsonb_build_object('width_in', (20 + id % 400 / 16.0)::float8, 'length_in', (40 + id % 300 / 16.0)::float8),
					'check', jsonb_build_object('replace', 'unit', 'verdict', 'fits', 'missing', '[]'::jsonb)))
			FROM conversations c, LATERAL (SELECT CASE WHEN id % 20 = 0 THEN 'ready' WHEN id % 20 = 1 THEN 'needs_person' WHEN id % 3 = 0 THEN 'ordered' ELSE 'declined' END AS status) s`,
		`ALTER TABLE leads ENABLE TRIGGER USER`,
		`ANALYZE`,
	} {
		args := []any{}
		if strings.Contains(sql, "$1") {
			args = append(args, n)
		}
		if _, err := pool.Exec(ctx, sql, args...); err != nil {
			t.Fatalf("%v in %s", err, sql)
		}
	}
	return pool
}

// explainer is a connection that explains what it is asked instead of doing it.
type explainer struct {
	*pgxpool.Pool
	plans []string
}

func (e *explainer) Query(ctx context.Context, sql string, args ...any) (pgx.Rows, error) {
	rows, err := e.Pool.Query(ctx, "EXPLAIN "+sql, args...)
	if err != nil {
		return nil, err
	}
	lines, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if err != nil {
		return nil, err
	}
	e.plans = append(e.plans, strings.Join(lines, "\n"))
	return e.Pool.Query(ctx, sql, args...)
}

func (e *explainer) Exec(ctx context.Context, sql string, args ...any) (pgconn.CommandTag, error) {
	return e.Pool.Exec(ctx, sql, args...)
}

// TestListsFollowIndexes: no list of the staff's page reads a whole table.
func TestListsFollowIndexes(t *testing.T) {
	pool := crowd(t, 30_000)
	ctx := t.Context()
	for _, c := range []struct {
		what string
		ask  func(db.Conn) ([]db.QueueLine, error)
		want int
	}{
		{"who waits", func(c db.Conn) ([]db.QueueLine, error) {
			return db.WaitingLeads(ctx, c, db.QueueFilter{}, db.QueuePlace{}, 51)
		}, 51},
		{"a status", func(c db.Conn) ([]db.QueueLine, error) { return db.ByStatus(ctx, c, "ordered", 0, 51) }, 51},
		{"a later page of a status", func(c db.Conn) ([]db.QueueLine, error) { return db.ByStatus(ctx, c, "ordered", 15_000, 51) }, 51},
		{"in hands", func(c db.Conn) ([]db.QueueLine, error) { return db.InHands(ctx, c, 0, 50) }, 0},
		{"a number's end", func(c db.Conn) ([]db.QueueLine, error) { return db.Find(ctx, c, "", []string{"0012345"}, nil, 50) }, 1},
		{"a name", func(c db.Conn) ([]db.QueueLine, error) { return db.Find(ctx, c, "", []string{"name4321"}, nil, 50) }, 6},
		{"a size", func(c db.Conn) ([]db.QueueLine, error) {
			return db.Find(ctx, c, "", nil, []string{"20.0625x40.0625"}, 50)
		}, 25},
	} {
		e := &explainer{Pool: pool}
		lines, err := c.ask(e)
		if err != nil || len(lines) < min(c.want, 1) || len(lines) > max(c.want, 50)+1 {
			t.Errorf("%s: %d lines, %v", c.what, len(lines), err)
		}
		for _, plan := range e.plans {
			for _, table := range []string{"leads", "conversations"} {
				if strings.Contains(plan, "Seq Scan on "+table) {
					t.Errorf("%s reads all of %s:\n%s", c.what, table, plan)
				}
			}
		}
	}
}

// BenchmarkLists shows that the cost of a list does not grow with the leads, and how it
// compares with the least that the database could be asked: the same rows by their keys.
func BenchmarkLists(b *testing.B) {
	for _, n := range []int{1_000, 100_000} {
		pool := crowd(b, n)
		ctx := context.Background()
		bare := func() {
			rows, err := pool.Query(ctx, `SELECT c.ref, l.* FROM leads l JOIN conversations c ON c.id = l.conversation_id
				WHERE l.waiting_since IS NOT NULL ORDER BY l.urgent DESC, l.waiting_since LIMIT 50`)
			if err != nil {
				b.Fatal(err)
			}
			rows.Close()
		}
		b.Run(fmt.Sprintf("waiting-%d", n), func(b *testing.B) {
			var ours, least time.Duration
			for b.Loop() {
				start := time.Now()
				bare()
				middle := time.Now()
				if _, err := db.WaitingLeads(ctx, pool, db.QueueFilter{}, db.QueuePlace{}, 50); err != nil {
					b.Fatal(err)
				}
				least, ours = least+middle.Sub(start), ours+time.Since(middle)
			}
			b.ReportMetric(float64(ours)/float64(least), "ratio-to-bare")
		})
		b.Run(fmt.Sprintf("find-%d", n), func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				if _, err := db.Find(ctx, pool, "", []string{fmt.Sprintf("%07d", i%n+1)}, nil, 50); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestPagesOfTheWaiting: one page after the other gives everybody once, in order.
func TestPagesOfTheWaiting(t *testing.T) {
	pool := crowd(t, 2_000)
	ctx := t.Context()
	for _, f := range []db.QueueFilter{{}, {Status: "ready"}, {Urgent: true}, {Channel: "sms"}, {AfterHours: true}, {Channel: "email"}} {
		all, err := db.WaitingLeads(ctx, pool, f, db.QueuePlace{}, 5_000)
		if err != nil {
			t.Fatal(err)
		}
		var paged []db.QueueLine
		for at := (db.QueuePlace{}); ; {
			page, err := db.WaitingLeads(ctx, pool, f, at, 7)
			if err != nil {
				t.Fatal(err)
			}
			if len(page) == 0 {
				break
			}
			paged = append(paged, page...)
			last := page[len(page)-1]
			at = db.QueuePlace{Urgent: last.Urgent, Since: *last.WaitingSince, ID: last.ID}
		}
		if len(paged) != len(all) {
			t.Fatalf("%+v: %d on pages, %d in all", f, len(paged), len(all))
		}
		for i := range all {
			if paged[i].ID != all[i].ID {
				t.Fatalf("%+v: line %d differs", f, i+1)
			}
		}
		if f == (db.QueueFilter{}) && len(all) != 200 {
			t.Errorf("%d wait", len(all))
		}
	}
}
