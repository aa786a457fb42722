package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// SendStatus is what a provider said later of a message that went out.
type SendStatus struct {
	Channel    conversation.Channel
	ProviderID string
	Status     string // in the provider's words
	ErrorCode  string // empty for none
	At         time.Time
}

// KeepStatus stores a status; again where just that was said before.
func KeepStatus(ctx context.Context, tx pgx.Tx, s SendStatus) (again bool, err error) {
	const sql = `INSERT INTO send_statuses (channel, provider_id, status, error_code, at) VALUES ($1, $2, $3, $4, $5)
		ON CONFLICT (channel, provider_id, status, error_code) DO NOTHING`
	tag, err := tx.Exec(ctx, sql, s.Channel, s.ProviderID, s.Status, s.ErrorCode, s.At)
	if err != nil {
		return false, fmt.Errorf("keep status of %s: %w", s.ProviderID, err)
	}
	return tag.RowsAffected() == 0, nil
}

// StatusesOf lists what the provider said of a message, in the order in which it was heard.
func StatusesOf(ctx context.Context, c Conn, channel conversation.Channel, providerID string) ([]SendStatus, error) {
	const sql = `SELECT channel, provider_id, status, error_code, at FROM send_statuses
		WHERE channel = $1 AND provider_id = $2 ORDER BY id`
	rows, err := c.Query(ctx, sql, channel, providerID)
	if err != nil {
		return nil, fmt.Errorf("statuses of %s: %w", providerID, err)
	}
	statuses, err := pgx.CollectRows(rows, pgx.RowToStructByPos[SendStatus])
	if err != nil {
		return nil, fmt.Errorf("statuses of %s: %w", providerID, err)
	}
	return statuses, nil
}

// SentAs finds the talk and address of a message by the id that its provider gave it;
// ErrNotFound where no message out has that id (yet).
func SentAs(ctx context.Context, c Conn, channel conversation.Channel, providerID string) (conversationID int64, to Address, err error) {
	const sql = `SELECT s.conversation_id, m.channel, m.address FROM sends s JOIN messages m ON m.id = s.message_id
		WHERE s.channel = $1 AND s.provider_id = $2`
	err = c.QueryRow(ctx, sql, channel, providerID).Scan(&conversationID, &to.Channel, &to.Address)
	if errors.Is(err, pgx.ErrNoRows) {
		err = ErrNotFound
	}
	if err != nil {
		return 0, Address{}, fmt.Errorf("find send %s: %w", providerID, err)
	}
	return conversationID, to, nil
}
