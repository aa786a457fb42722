package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// OpenAlert is a lead that staff are to be told of, with all reasons that came up.
type OpenAlert struct {
	IDs            []int64
	ConversationID int64
	Ref            string
	Status         conversation.Status
	Urgent         bool
	Reasons        []string
	LastN          int   // number of the newest message
	HolderID       int64 // in whose hands; 0 for nobody's
}

// OpenAlerts takes up to limit leads' alerts that nobody has seen to; others who ask
// meanwhile get others.
func OpenAlerts(ctx context.Context, tx pgx.Tx, limit int) ([]OpenAlert, error) {
	const sql = `
		WITH open AS (SELECT id, conversation_id, reason FROM alerts WHERE told_at IS NULL ORDER BY at LIMIT $1 FOR UPDATE SKIP LOCKED)
		SELECT array_agg(o.id), c.id, c.ref, l.status, l.urgent, array_agg(DISTINCT o.reason), c.last_n, coalesce(h.staff_id, 0)
		FROM open o JOIN conversations c ON c.id = o.conversation_id JOIN leads l ON l.conversation_id = c.id
		LEFT JOIN lead_hands h ON h.conversation_id = c.id
		GROUP BY c.id, l.conversation_id, h.staff_id ORDER BY c.id`
	rows, err := tx.Query(ctx, sql, limit)
	if err != nil {
		return nil, fmt.Errorf("open alerts: %w", err)
	}
	all, err := pgx.CollectRows(rows, pgx.RowToStructByPos[OpenAlert])
	if err != nil {
		return nil, fmt.Errorf("open alerts: %w", err)
	}
	return all, nil
}

// AlertsTold notes that alerts were seen to.
func AlertsTold(ctx context.Context, c Conn, ids []int64, at time.Time) error {
	if _, err := c.Exec(ctx, `UPDATE alerts SET told_at = $2 WHERE id = ANY ($1)`, ids, at); err != nil {
		return fmt.Errorf("alerts told: %w", err)
	}
	return nil
}

// Tell notes that a person is told of something, and whether that is news to them.
func Tell(ctx context.Context, c Conn, staffID int64, about string, conversationID int64, at time.Time) (news bool, err error) {
	tag, err := c.Exec(ctx, `INSERT INTO staff_told (staff_id, about, conversation_id, at) VALUES ($1, $2, nullif($3, 0), $4)
		ON CONFLICT DO NOTHING`, staffID, about, conversationID, at)
	if err != nil {
		return false, fmt.Errorf("tell of %s: %w", about, err)
	}
	return tag.RowsAffected() == 1, nil
}

// ToAlert are the people who want to be alerted.
func ToAlert(ctx context.Context, c Conn) ([]Staff, error) {
	rows, err := c.Query(ctx, `SELECT `+staffColumns+` FROM staff WHERE left_at IS NULL AND (mail_alerts OR text_alerts) ORDER BY id`)
	if err != nil {
		return nil, fmt.Errorf("people to alert: %w", err)
	}
	all, err := pgx.CollectRows(rows, pgx.RowToStructByPos[Staff])
	if err != nil {
		return nil, fmt.Errorf("people to alert: %w", err)
	}
	return all, nil
}

// LeadEvent is one step of a lead.
type LeadEvent struct {
	ID    int64
	Event string
	At    time.Time
	Ref   string
}

// TakeEvents marks up to limit new steps as asked for and gives their ids.
func TakeEvents(ctx context.Context, tx pgx.Tx, limit int, at time.Time) ([]int64, error) {
	rows, err := tx.Query(ctx, `UPDATE lead_events SET queued_at = $2
		WHERE id IN (SELECT id FROM lead_events WHERE queued_at IS NULL ORDER BY id LIMIT $1 FOR UPDATE SKIP LOCKED) RETURNING id`, limit, at)
	if err != nil {
		return nil, fmt.Errorf("steps of leads: %w", err)
	}
	ids, err := pgx.CollectRows(rows, pgx.RowTo[int64])
	if err != nil {
		return nil, fmt.Errorf("steps of leads: %w", err)
	}
	return ids, nil
}

// LeadEventOf is one step; ErrNotFound where its lead was erased.
func LeadEventOf(ctx context.Context, c Conn, id int64) (LeadEvent, error) {
	var e LeadEvent
	err := c.QueryRow(ctx, `SELECT e.id, e.event, e.at, c.ref FROM lead_events e JOIN conversations c ON c.id = e.conversation_id WHERE e.id = $1`, id).
		Scan(&e.ID, &e.Event, &e.At, &e.Ref)
	if errors.Is(err, pgx.ErrNoRows) {
		err = ErrNotFound
	}
	if err != nil {
		return e, fmt.Errorf("step %d: %w", id, err)
	}
	return e, nil
}
