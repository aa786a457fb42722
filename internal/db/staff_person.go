package db

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
)

// PersonTalks are the refs of all talks of the person who wrote from an address, or gave
// it: a number in E.164, or a mail address.
func PersonTalks(ctx context.Context, c Conn, address string) ([]string, error) {
	const sql = `
		WITH found AS (
			SELECT l.conversation_id AS id FROM leads l WHERE l.words @@ $2::tsquery AND (l.phone = $1 OR lower(l.email) = lower($1))
			UNION SELECT conversation_id FROM addresses WHERE address = $1 OR address = lower($1)
		), joined AS (
			SELECT id FROM found UNION SELECT from_id FROM lead_merges JOIN found ON into_id = id
			UNION SELECT into_id FROM lead_merges JOIN found ON from_id = id
		)
		SELECT c.ref FROM joined JOIN conversations c USING (id) ORDER BY c.ref`
	rows, err := c.Query(ctx, sql, address, lexeme(strings.TrimPrefix(strings.ToLower(address), "+")))
	if err != nil {
		return nil, fmt.Errorf("talks of a person: %w", err)
	}
	refs, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if err != nil {
		return nil, fmt.Errorf("talks of a person: %w", err)
	}
	return refs, nil
}

// PersonRecords are all lead records of a person, for them to have.
func PersonRecords(ctx context.Context, c Conn, address string) ([]json.RawMessage, error) {
	refs, err := PersonTalks(ctx, c, address)
	if err != nil {
		return nil, err
	}
	records := make([]json.RawMessage, 0, len(refs))
	for _, ref := range refs {
		r, err := LeadRecord(ctx, c, ref)
		if err != nil {
			return nil, err
		}
		records = append(records, r)
	}
	return records, nil
}

// ErasePerson removes all talks of a person, with their messages, photos, facts, leads
// and history, and says which. An opt-out stays: it must be kept to be honored.
func ErasePerson(ctx context.Context, tx pgx.Tx, staffID int64, address string, now time.Time) ([]string, error) {
	refs, err := PersonTalks(ctx, tx, address)
	if err != nil || len(refs) == 0 {
		return nil, err
	}
	b := &pgx.Batch{}
	b.Queue(`DELETE FROM send_statuses t USING sends s JOIN conversations c ON c.id = s.conversation_id
		WHERE t.channel = s.channel AND t.provider_id = s.provider_id AND c.ref = ANY ($1)`, refs)
	// A line of the history may be undone by another of the same talk.
	b.Queue(`UPDATE staff_history SET undone_by = NULL WHERE conversation_id IN (SELECT id FROM conversations WHERE ref = ANY ($1))`, refs)
	b.Queue(`DELETE FROM conversations WHERE ref = ANY ($1)`, refs)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return nil, fmt.Errorf("erase talks %v: %w", refs, err)
	}
	_, err = Note(ctx, tx, staffID, 0, DeedErased, HistoryDetail{Text: strings.Join(refs, ", ")}, now)
	return refs, err
}
