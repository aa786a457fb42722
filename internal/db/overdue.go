package db

import (
	"context"
	"fmt"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"
)

// Overdue are talks in which something should have happened by now. Jobs normally see
// to it; these are for what a dead process left, and for reminders.
type Overdue struct {
	Unheard []Unheard
	Unsent  []int64 // a message waits to be sent, or hangs
	Asleep  []int64 // it is time to speak up
}

// Unheard is a talk in which messages wait for a turn.
type Unheard struct {
	ConversationID int64
	MessageID      int64 // the newest of them
}

// FindOverdue lists at most limit talks of each kind: with messages received more than
// unheard ago, with sends due more than unsent ago, and to be woken by now.
func FindOverdue(ctx context.Context, c Conn, unheard, unsent time.Duration, now time.Time, limit int) (Overdue, error) {
	var o Overdue
	b := &pgx.Batch{}
	take := func(into *[]int64) func(pgx.Rows) error {
		return func(rows pgx.Rows) (err error) { *into, err = pgx.CollectRows(rows, pgx.RowTo[int64]); return err }
	}
	b.Queue(`SELECT conversation_id, max(id) FROM messages
		WHERE direction = 'in' AND handled_at IS NULL AND received_at <= clock_timestamp() - $1::interval
		GROUP BY conversation_id ORDER BY min(id) LIMIT $2`, unheard, limit).
		Query(func(rows pgx.Rows) (err error) {
			o.Unheard, err = pgx.CollectRows(rows, pgx.RowToStructByPos[Unheard])
			return err
		})
	b.Queue(`SELECT conversation_id FROM sends
		WHERE finished_at IS NULL AND due_at <= clock_timestamp() - $1::interval
		GROUP BY conversation_id ORDER BY min(due_at) LIMIT $2`, unsent, limit).Query(take(&o.Unsent))
	b.Queue(`SELECT id FROM conversations WHERE wake_at <= $1 ORDER BY wake_at LIMIT $2`, now, limit).Query(take(&o.Asleep))
	if err := c.SendBatch(ctx, b).Close(); err != nil {
		return Overdue{}, fmt.Errorf("look for what is overdue: %w", err)
	}
	return o, nil
}

// Unasked leaves out of what is overdue what has a job that waits for its turn: a program
// that dies at each start would pile up jobs faster than it does them. A job that somebody
// is at counts for nothing, for they may be dead.
func Unasked(ctx context.Context, c Conn, o Overdue) (Overdue, error) {
	const sql = `SELECT kind, (args ->> 'conversation_id')::bigint, coalesce((args ->> 'message_id')::bigint, 0)
		FROM river_job WHERE state = 'available' AND kind IN ('turn', 'send', 'wake')`
	rows, err := c.Query(ctx, sql)
	if err != nil {
		return o, fmt.Errorf("look for jobs that wait: %w", err)
	}
	type job struct {
		kind string
		of   Unheard
	}
	waits := map[job]bool{}
	var j job
	if _, err := pgx.ForEachRow(rows, []any{&j.kind, &j.of.ConversationID, &j.of.MessageID}, func() error { waits[j] = true; return nil }); err != nil {
		return o, fmt.Errorf("look for jobs that wait: %w", err)
	}
	asked := func(kind string) func(int64) bool {
		return func(id int64) bool { return waits[job{kind, Unheard{ConversationID: id}}] }
	}
	o.Unheard = slices.DeleteFunc(o.Unheard, func(u Unheard) bool { return waits[job{"turn", u}] })
	o.Unsent = slices.DeleteFunc(o.Unsent, asked("send"))
	o.Asleep = slices.DeleteFunc(o.Asleep, asked("wake"))
	return o, nil
}
