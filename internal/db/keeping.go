package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// EraseOldTalks removes talks in which nothing was said, and nothing done by staff, since
// a time; at most so many at once. It says how many there were.
func EraseOldTalks(ctx context.Context, tx pgx.Tx, before time.Time, zone string, limit int, now time.Time) (int, error) {
	// A talk that is at work just now is left to the next time.
	const old = `
		SELECT c.ref FROM conversations c JOIN leads l ON l.conversation_id = c.id
		WHERE c.opened_at < $1 AND l.updated_at < $1
			AND NOT EXISTS (SELECT FROM messages m WHERE m.conversation_id = c.id AND (m.at >= $1 OR m.received_at >= $1))
			AND NOT EXISTS (SELECT FROM staff_history h WHERE h.conversation_id = c.id AND h.at >= $1 AND h.deed <> 'saw')
		ORDER BY c.opened_at LIMIT $2 FOR UPDATE OF c SKIP LOCKED`
	rows, err := tx.Query(ctx, old, before, limit)
	if err != nil {
		return 0, fmt.Errorf("old talks: %w", err)
	}
	refs, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if err != nil || len(refs) == 0 {
		return 0, err
	}
	if err := eraseTalks(ctx, tx, refs, zone); err != nil {
		return 0, err
	}
	_, err = Note(ctx, tx, 0, 0, DeedErased, HistoryDetail{Text: talksGone(len(refs), "by age")}, now)
	return len(refs), err
}

// FadePhotos lets go of photos that were opened before a time; that there was one stays
// with the lead. At most so many at once; it says how many there were.
func FadePhotos(ctx context.Context, c Conn, before time.Time, limit int) (int, error) {
	const sql = `
		WITH old AS (
			SELECT p.id FROM photos p JOIN photo_files f ON f.photo_id = p.id
			WHERE p.state = 'kept' AND p.opened_at < $1 ORDER BY p.id LIMIT $2
		), files AS (
			DELETE FROM photo_files f USING old WHERE f.photo_id = old.id
		), gone AS (
			UPDATE photos p SET state = 'gone', why = 'age', look = NULL, likeness = NULL, sha256 = NULL FROM old WHERE p.id = old.id RETURNING p.id
		) SELECT count(*) FROM gone`
	var n int
	if err := c.QueryRow(ctx, sql, before, limit).Scan(&n); err != nil {
		return 0, fmt.Errorf("let go of old photos: %w", err)
	}
	return n, nil
}

// FadeMail lets go of mail as it was taken in before a time: of what belongs to a talk
// the raw form, of anything else all. At most so many at once; it says how many there were.
func FadeMail(ctx context.Context, c Conn, before time.Time, limit int) (int, error) {
	const sql = `
		WITH old AS (
			SELECT id, message_id FROM mails_in WHERE (raw IS NOT NULL OR message_id IS NULL) AND received_at < $1 ORDER BY received_at LIMIT $2
		), others AS (
			DELETE FROM mails_in m USING old WHERE m.id = old.id AND old.message_id IS NULL
		), ours AS (
			UPDATE mails_in m SET raw = NULL FROM old WHERE m.id = old.id AND old.message_id IS NOT NULL
		) SELECT count(*) FROM old`
	var n int
	if err := c.QueryRow(ctx, sql, before, limit).Scan(&n); err != nil {
		return 0, fmt.Errorf("let go of old mail: %w", err)
	}
	return n, nil
}

// FadeSends lets go of mails out that are over since before a time, and of what providers
// said of messages that nobody knows any more.
func FadeSends(ctx context.Context, c Conn, before time.Time, limit int) (int, error) {
	const sql = `
		WITH sent AS (
			UPDATE mails_out o SET raw = NULL FROM sends s WHERE s.message_id = o.message_id AND o.raw IS NOT NULL AND o.message_id IN (
				SELECT p.message_id FROM mails_out p JOIN sends q USING (message_id) WHERE p.raw IS NOT NULL AND q.finished_at < $1 LIMIT $2)
			RETURNING o.message_id
		), told AS (
			DELETE FROM send_statuses t WHERE t.id IN (SELECT u.id FROM send_statuses u WHERE u.at < $1
				AND NOT EXISTS (SELECT FROM sends s WHERE s.channel = u.channel AND s.provider_id = u.provider_id) LIMIT $2)
			RETURNING t.id
		) SELECT greatest((SELECT count(*) FROM sent), (SELECT count(*) FROM told))`
	var n int
	if err := c.QueryRow(ctx, sql, before, limit).Scan(&n); err != nil {
		return 0, fmt.Errorf("let go of mails that went out: %w", err)
	}
	return n, nil
}
