package db

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// goesOn is the condition, on c and l, that a talk can take another message. $1 is the
// time before which a talk whose lead staff finished is over.
const goesOn = ` NOT (l.status IN ('ordered', 'declined', 'closed') AND c.state <> 'silenced' AND l.updated_at < $1)
	AND NOT EXISTS (SELECT FROM lead_merges g WHERE g.from_id = c.id) `

// Claimed is a talk that a message may belong to.
type Claimed struct {
	ID   int64
	Ref  string
	Name string // the customer's, empty where not known
}

// ClaimedByRef is the talk with a ref, where it goes on; ErrNotFound otherwise.
func ClaimedByRef(ctx context.Context, c Conn, ref string, endedBefore time.Time) (Claimed, error) {
	const sql = `SELECT c.id, c.ref, coalesce(l.name, '') FROM conversations c JOIN leads l ON l.conversation_id = c.id
		WHERE c.ref = $2 AND` + goesOn
	return claimedTalk(ctx, c, sql, endedBefore, ref)
}

// ClaimedByWay is the talk whose customer gave a number or address that is not known to
// have written itself, the newest where there are several, but not the talk except;
// ErrNotFound for none.
func ClaimedByWay(ctx context.Context, c Conn, a Address, except int64, endedBefore time.Time) (Claimed, error) {
	// By the words of leads, which have an index; the equality makes sure.
	lexeme := strings.TrimPrefix(strings.ToLower(a.Address), "+")
	lexeme = "'" + strings.NewReplacer(`\`, `\\`, `'`, `''`).Replace(lexeme) + "'"
	column := "lower(l.email)"
	if a.Channel == conversation.SMS {
		column = "l.phone"
	}
	sql := `SELECT c.id, c.ref, coalesce(l.name, '') FROM leads l JOIN conversations c ON c.id = l.conversation_id
		WHERE l.words @@ $3::tsquery AND ` + column + ` = $2 AND c.id <> $4 AND` + goesOn + `ORDER BY l.updated_at DESC, c.id DESC LIMIT 1`
	return claimedTalk(ctx, c, sql, endedBefore, a.Address, lexeme, except)
}

func claimedTalk(ctx context.Context, c Conn, sql string, args ...any) (Claimed, error) {
	var found Claimed
	err := c.QueryRow(ctx, sql, args...).Scan(&found.ID, &found.Ref, &found.Name)
	if errors.Is(err, pgx.ErrNoRows) {
		return found, ErrNotFound
	}
	if err != nil {
		return found, fmt.Errorf("look for the talk that a message belongs to: %w", err)
	}
	return found, nil
}

// joinAddress lets an address belong to a talk from now on.
func joinAddress(ctx context.Context, tx pgx.Tx, a Address, conversationID int64) error {
	b := &pgx.Batch{}
	b.Queue(`INSERT INTO addresses (channel, address, conversation_id) VALUES ($1, $2, $3)
		ON CONFLICT (channel, address) DO UPDATE SET conversation_id = excluded.conversation_id`, a.Channel, a.Address, conversationID)
	b.Queue(`UPDATE conversations SET phone = coalesce(phone, CASE WHEN $2 = 'sms' THEN $3 END),
		email = coalesce(email, CASE WHEN $2 = 'email' THEN $3 END) WHERE id = $1`, conversationID, a.Channel, a.Address)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("join an address to talk %d: %w", conversationID, err)
	}
	return nil
}

// MoveTalk puts all that was said in one talk into another of the same person, behind
// what was said there: shift is added to each message's number. The facts are the
// caller's to add. What is left of the first is closed, and names the other. The caller
// holds both.
func MoveTalk(ctx context.Context, tx pgx.Tx, from, into int64, shift int, now time.Time) error {
	b := &pgx.Batch{}
	b.Queue(`DELETE FROM facts WHERE conversation_id = $1`, from)
	b.Queue(`UPDATE messages SET conversation_id = $2, n = n + $3 WHERE conversation_id = $1`, from, into, shift)
	for _, table := range []string{"sends", "alerts", "addresses"} {
		b.Queue(`UPDATE `+table+` SET conversation_id = $2 WHERE conversation_id = $1`, from, into)
	}
	b.Queue(`UPDATE conversations i SET phone = coalesce(i.phone, f.phone), email = coalesce(i.email, f.email)
		FROM conversations f WHERE f.id = $1 AND i.id = $2`, from, into)
	b.Queue(`UPDATE conversations SET state = 'handed_over', memory = '{}', last_n = 0, wake_at = NULL WHERE id = $1`, from)
	b.Queue(`UPDATE leads SET status = 'closed', qualified = false, waiting_since = NULL, units = '[]', updated_at = $3,
		why_staff = ARRAY['joined with ' || (SELECT ref FROM conversations WHERE id = $2)] WHERE conversation_id = $1`, from, into, now)
	b.Queue(`INSERT INTO lead_merges (from_id, into_id, at) VALUES ($1, $2, $3) ON CONFLICT (from_id) DO NOTHING`, from, into, now)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("move talk %d into %d: %w", from, into, err)
	}
	return nil
}
