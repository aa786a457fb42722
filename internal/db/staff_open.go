package db

import (
	"context"
	"crypto/rand"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// OpenByHand makes a talk that no message began: somebody called. An address that
// already joins another talk goes on joining that one.
func OpenByHand(ctx context.Context, tx pgx.Tx, t conversation.Talk, at time.Time) (ref string, id int64, err error) {
	const sql = `
		WITH talk AS (
			INSERT INTO conversations (ref, channel, phone, email, language, opened_at)
			VALUES ($1, $2, nullif($3, ''), nullif($4, ''), $5, $6) ON CONFLICT (ref) DO NOTHING RETURNING id
		), lead AS (
			INSERT INTO leads (conversation_id, phone, email, updated_at) SELECT id, nullif($3, ''), nullif($4, ''), $6 FROM talk
		), joins AS (
			INSERT INTO addresses (channel, address, conversation_id)
			SELECT a.channel, a.address, talk.id FROM talk, (VALUES ('sms', $3), ('email', $4)) a (channel, address) WHERE a.address <> ''
			ON CONFLICT (channel, address) DO NOTHING
		)
		SELECT coalesce((SELECT id FROM talk), 0)`
	for range refTries {
		if ref, err = NewRef(rand.Reader); err != nil {
			return "", 0, err
		}
		if err := tx.QueryRow(ctx, sql, ref, t.Channel, t.Phone, t.Email, t.Language, at).Scan(&id); err != nil {
			return "", 0, fmt.Errorf("open a talk by hand: %w", err)
		}
		if id != 0 {
			return ref, id, nil
		}
	}
	return "", 0, fmt.Errorf("open a talk by hand: %d refs in a row were taken", refTries)
}
