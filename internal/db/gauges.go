package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// Gauges are how things stand, for those who watch over the program.
type Gauges struct {
	Unhandled       int           // messages that no turn has taken
	OldestUnhandled time.Duration // age of the oldest
	Unsent          map[string]int
	OldestUnsent    time.Duration // by how long the sending most overdue is late
	Spent           Spent         // since the day began
	PhotosToOpen    int
	Leads           map[string]int // by status
	Jobs            []JobCount
}

// JobCount is how many jobs of a queue are in a state.
type JobCount struct {
	Queue, State string
	N            int
}

// ReadGauges counts. Each statement goes by an index that holds only what is open, but for
// the leads, of which there are few beside messages.
func ReadGauges(ctx context.Context, c Conn, today time.Time) (Gauges, error) {
	f := Gauges{Unsent: map[string]int{"queued": 0, "sending": 0}, Leads: map[string]int{}}
	seconds := func(n float64) time.Duration { return time.Duration(n * float64(time.Second)) }
	b := &pgx.Batch{}
	b.Queue(`SELECT count(*), coalesce(extract(epoch FROM clock_timestamp() - min(received_at)), 0)::float8
		FROM messages WHERE direction = 'in' AND handled_at IS NULL`).QueryRow(func(row pgx.Row) error {
		var age float64
		err := row.Scan(&f.Unhandled, &age)
		f.OldestUnhandled = seconds(age)
		return err
	})
	b.Queue(`SELECT count(*) FILTER (WHERE state = 'queued'), count(*) FILTER (WHERE state = 'sending'),
		coalesce(greatest(extract(epoch FROM clock_timestamp() - min(due_at)), 0), 0)::float8 FROM sends WHERE finished_at IS NULL`).
		QueryRow(func(row pgx.Row) error {
			var queued, sending int
			var late float64
			err := row.Scan(&queued, &sending, &late)
			f.Unsent["queued"], f.Unsent["sending"], f.OldestUnsent = queued, sending, seconds(late)
			return err
		})
	b.Queue(`SELECT count(*) FROM photos WHERE state = 'referenced'`).QueryRow(func(row pgx.Row) error { return row.Scan(&f.PhotosToOpen) })
	b.Queue(`SELECT status, count(*) FROM leads GROUP BY status`).Query(func(rows pgx.Rows) error {
		var status string
		var n int
		_, err := pgx.ForEachRow(rows, []any{&status, &n}, func() error { f.Leads[status] = n; return nil })
		return err
	})
	b.Queue(`SELECT queue, state::text, count(*) FROM river_job WHERE state NOT IN ('completed', 'cancelled') GROUP BY 1, 2`).
		Query(func(rows pgx.Rows) (err error) {
			f.Jobs, err = pgx.CollectRows(rows, pgx.RowToStructByPos[JobCount])
			return err
		})
	if err := c.SendBatch(ctx, b).Close(); err != nil {
		return f, fmt.Errorf("gauges: %w", err)
	}
	var err error
	f.Spent, err = SpentSince(ctx, c, today)
	return f, err
}
