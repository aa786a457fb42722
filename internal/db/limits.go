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

// NewOfDomain is how many talks began since a time by mail from a domain: that of a mail
// address.
func NewOfDomain(ctx context.Context, c Conn, address string, since time.Time) (int, error) {
	const sql = `SELECT count(*) FROM conversations WHERE split_part(email, '@', 2) = split_part($1, '@', 2) AND email IS NOT NULL AND opened_at > $2`
	var n int
	if err := c.QueryRow(ctx, sql, address, since).Scan(&n); err != nil {
		return 0, fmt.Errorf("talks of a domain: %w", err)
	}
	return n, nil
}

// WordsSince are the texts that came in a talk since a time, by the database's clock.
func WordsSince(ctx context.Context, c Conn, conversationID int64, ago time.Duration) ([]string, error) {
	const sql = `SELECT left(text, 100) FROM messages WHERE conversation_id = $1 AND direction = 'in' AND received_at > clock_timestamp() - $2::interval`
	rows, err := c.Query(ctx, sql, conversationID, ago)
	if err != nil {
		return nil, fmt.Errorf("messages of talk %d: %w", conversationID, err)
	}
	return pgx.CollectRows(rows, pgx.RowTo[string])
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

// PhotosKeptSince is how many photos were kept since a time, in all.
func PhotosKeptSince(ctx context.Context, c Conn, since time.Time) (int, error) {
	var n int
	if err := c.QueryRow(ctx, `SELECT count(*) FROM photos WHERE opened_at >= $1 AND state = 'kept'`, since).Scan(&n); err != nil {
		return 0, fmt.Errorf("photos of a day: %w", err)
	}
	return n, nil
}

// Spent is what went out since a time.
type Spent struct {
	Segments int // of texts
	Mails    int
}

// SpentSince counts it. What was queued more than a week before is not looked at.
func SpentSince(ctx context.Context, c Conn, since time.Time) (Spent, error) {
	const sql = `SELECT coalesce(sum(segments), 0), count(*) FILTER (WHERE channel = 'email' AND state = 'sent')
		FROM sends WHERE queued_at > $1::timestamptz - interval '7 days' AND finished_at >= $1`
	var n Spent
	if err := c.QueryRow(ctx, sql, since).Scan(&n.Segments, &n.Mails); err != nil {
		return n, fmt.Errorf("what went out: %w", err)
	}
	return n, nil
}

// SegmentsOfTalk is how many segments of texts went out in a talk of late.
func SegmentsOfTalk(ctx context.Context, c Conn, conversationID int64, ago time.Duration) (int, error) {
	const sql = `SELECT coalesce(sum(s.segments), 0) FROM messages m JOIN sends s ON s.message_id = m.id
		WHERE m.conversation_id = $1 AND m.direction = 'out' AND s.finished_at > clock_timestamp() - $2::interval`
	var n int
	if err := c.QueryRow(ctx, sql, conversationID, ago).Scan(&n); err != nil {
		return 0, fmt.Errorf("segments of talk %d: %w", conversationID, err)
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
