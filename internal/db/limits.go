package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// HeardSince is how many messages came in a talk since a time, by the database's clock.
func HeardSince(ctx context.Context, c Conn, conversationID int64, ago time.Duration) (int, error) {
	const sql = `SELECT count(*) FROM messages WHERE conversation_id = $1 AND direction = 'in' AND received_at > clock_timestamp() - $2::interval`
	var n int
	if err := c.QueryRow(ctx, sql, conversationID, ago).Scan(&n); err != nil {
		return 0, fmt.Errorf("messages of talk %d: %w", conversationID, err)
	}
	return n, nil
}

// NewOfPrefix is how many talks of numbers like this one, in all but the last four digits,
// began since a time.
func NewOfPrefix(ctx context.Context, c Conn, phone string, since time.Time) (int, error) {
	const sql = `SELECT count(*) FROM conversations WHERE left(phone, 8) = left($1, 8) AND opened_at > $2`
	var n int
	if err := c.QueryRow(ctx, sql, phone, since).Scan(&n); err != nil {
		return 0, fmt.Errorf("talks of a prefix: %w", err)
	}
	return n, nil
}

// PhotosBefore is how many photos of its talk came before one.
func PhotosBefore(ctx context.Context, c Conn, t PhotoTask) (int, error) {
	const sql = `SELECT count(*) FROM photos p JOIN messages m ON m.id = p.message_id WHERE m.conversation_id = $1 AND p.id < $2`
	var n int
	if err := c.QueryRow(ctx, sql, t.ConversationID, t.ID).Scan(&n); err != nil {
		return 0, fmt.Errorf("photos of talk %d: %w", t.ConversationID, err)
	}
	return n, nil
}

// SegmentsSince is how many segments of texts were sent since a time. Those that were
// queued more than a week before it are not looked at.
func SegmentsSince(ctx context.Context, c Conn, since time.Time) (int, error) {
	const sql = `SELECT coalesce(sum(segments), 0) FROM sends WHERE queued_at > $1::timestamptz - interval '7 days' AND finished_at >= $1 AND segments IS NOT NULL`
	var n int
	if err := c.QueryRow(ctx, sql, since).Scan(&n); err != nil {
		return 0, fmt.Errorf("segments sent: %w", err)
	}
	return n, nil
}

// SaveHeldBack is kept instead of a turn that is not to be made: the messages are taken and
// nothing is said. Staff are told once, why.
func SaveHeldBack(ctx context.Context, tx pgx.Tx, h *Held, why string, now time.Time) error {
	b := &pgx.Batch{}
	saveHandled(b, h.ID, h.Waiting, now)
	b.Queue(`UPDATE conversations SET last_n = $2, wake_at = NULL, memory = memory || jsonb_build_object('flood', $3::text),
		state = CASE WHEN state IN ('silenced', 'handed_over') THEN state ELSE 'with_staff' END WHERE id = $1`,
		h.ID, h.LastN+len(h.Waiting), why)
	if h.Talk.Memory.Flood != why {
		toStaff(b, h.ID, why, now)
		Alert(b, h.ID, AlertFlood, now)
	}
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("hold back talk %d: %w", h.ID, err)
	}
	return nil
}

// toStaff puts a lead before staff as it is, with a reason.
func toStaff(b *pgx.Batch, conversationID int64, why string, now time.Time) {
	b.Queue(`UPDATE leads SET
			status = CASE WHEN status IN ('open', 'closed') THEN 'needs_person' ELSE status END,
			why_staff = CASE WHEN $2 = ANY (why_staff) THEN why_staff ELSE why_staff || $2 END, updated_at = $3,
			waiting_since = CASE WHEN status IN ('open', 'closed', 'ready', 'needs_person') THEN coalesce(waiting_since, $3) END
		WHERE conversation_id = $1`, conversationID, why, now)
}
