package db

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"github.com/jackc/pgx/v5"
)

// PersonTalks are the refs of all talks of the person who ever wrote from an address, or
// gave it: a number in E.164, or a mail address. It reads all messages, which takes a
// second for millions of them: it is asked for a few times a year.
func PersonTalks(ctx context.Context, c Conn, address string) ([]string, error) {
	const sql = `
		WITH found AS (
			SELECT l.conversation_id AS id FROM leads l WHERE l.words @@ $2::tsquery AND (l.phone = $1 OR lower(l.email) = lower($1))
			UNION SELECT conversation_id FROM addresses WHERE address = $1 OR address = lower($1)
			UNION SELECT id FROM conversations WHERE phone = $1 OR lower(email) = lower($1)
			UNION SELECT conversation_id FROM messages WHERE address = $1 OR address = lower($1)
			UNION SELECT conversation_id FROM facts WHERE topic IN ('phone', 'email') AND lower(value #>> '{}') = lower($1)
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
