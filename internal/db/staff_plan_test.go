package db_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/db"
)

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

// TestListsFollowIndexes: no list of the staff's page reads a whole table, and each
// follows the index that was made for it.
func TestListsFollowIndexes(t *testing.T) {
	pool := crowd(t, 30_000)
	ctx := t.Context()
	later := db.QueuePlace{Since: time.Now().Add(-1000 * time.Hour), ID: 1}
	for _, c := range []struct {
		what, index string
		ask         func(db.Conn) ([]db.QueueLine, error)
		least, most int
	}{
		{"who waits", "leads_waiting", func(c db.Conn) ([]db.QueueLine, error) {
			return db.WaitingLeads(ctx, c, db.QueueFilter{}, db.QueuePlace{}, 51)
		}, 51, 51},
		{"a later page of them", "leads_waiting", func(c db.Conn) ([]db.QueueLine, error) { return db.WaitingLeads(ctx, c, db.QueueFilter{}, later, 51) }, 51, 51},
		{"a status", "leads_by_status", func(c db.Conn) ([]db.QueueLine, error) { return db.ByStatus(ctx, c, "ready", 0, 51) }, 51, 51},
		{"a later page of a status", "leads_by_status", func(c db.Conn) ([]db.QueueLine, error) { return db.ByStatus(ctx, c, "ready", 15_000, 51) }, 51, 51},
		{"in hands", "lead_hands", func(c db.Conn) ([]db.QueueLine, error) { return db.InHands(ctx, c, 0, 50) }, 0, 0},
		{"a ref", "conversations_ref_key", func(c db.Conn) ([]db.QueueLine, error) { return db.Find(ctx, c, "dcccc", nil, nil, 50) }, 1, 1},
		{"a number's end", "leads_words", func(c db.Conn) ([]db.QueueLine, error) { return db.Find(ctx, c, "", []string{"0012345"}, nil, 50) }, 1, 1},
		{"a name", "leads_words", func(c db.Conn) ([]db.QueueLine, error) { return db.Find(ctx, c, "", []string{"name4321"}, nil, 50) }, 6, 6},
		{"a size", "leads_words", func(c db.Conn) ([]db.QueueLine, error) {
			return db.Find(ctx, c, "", nil, []string{"20.0625x40.0625"}, 50)
		}, 20, 30},
	} {
		e := &explainer{Pool: pool}
		lines, err := c.ask(e)
		if err != nil || len(lines) < c.least || len(lines) > c.most {
			t.Errorf("%s: %d lines, %v", c.what, len(lines), err)
		}
		plan := strings.Join(e.plans, "\n")
		if !strings.Contains(plan, c.index) {
			t.Errorf("%s does not follow %s:\n%s", c.what, c.index, plan)
		}
		for _, table := range []string{"leads", "conversations"} {
			if strings.Contains(plan, "Seq Scan on "+table) {
				t.Errorf("%s reads all of %s:\n%s", c.what, table, plan)
			}
		}
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
