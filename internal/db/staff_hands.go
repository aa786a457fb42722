package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// Hands are whose a lead is in.
type Hands struct {
	StaffID int64 // 0: nobody's
	Name    string
	Since   time.Time
}

// HandsOf says in whose hands a lead is.
func HandsOf(ctx context.Context, c Conn, conversationID int64) (Hands, error) {
	var h Hands
	const sql = `SELECT s.id, s.name, h.since FROM lead_hands h JOIN staff s ON s.id = h.staff_id WHERE h.conversation_id = $1`
	err := c.QueryRow(ctx, sql, conversationID).Scan(&h.StaffID, &h.Name, &h.Since)
	if errors.Is(err, pgx.ErrNoRows) {
		return Hands{}, nil
	}
	if err != nil {
		return h, fmt.Errorf("hands of talk %d: %w", conversationID, err)
	}
	return h, nil
}

// TakeInHand puts a lead into a person's hands, out of anybody else's. The caller holds
// the talk and has looked whose it was.
func TakeInHand(ctx context.Context, c Conn, conversationID, staffID int64, now time.Time) error {
	const sql = `INSERT INTO lead_hands (conversation_id, staff_id, since) VALUES ($1, $2, $3)
		ON CONFLICT (conversation_id) DO UPDATE SET staff_id = excluded.staff_id, since = excluded.since`
	if _, err := c.Exec(ctx, sql, conversationID, staffID, now); err != nil {
		return fmt.Errorf("take talk %d in hand: %w", conversationID, err)
	}
	return nil
}

// LetGo takes a lead out of whoever's hands it is in.
func LetGo(ctx context.Context, c Conn, conversationID int64) error {
	if _, err := c.Exec(ctx, `DELETE FROM lead_hands WHERE conversation_id = $1`, conversationID); err != nil {
		return fmt.Errorf("let go of talk %d: %w", conversationID, err)
	}
	return nil
}

// SaveDeed keeps what staff did in a talk, in the transaction that holds it. What the
// outcome says is the assistant's; text, where there is one, is staff's own and goes to
// the address. It says how many messages wait to be sent because of it.
func SaveDeed(ctx context.Context, tx pgx.Tx, h *Held, out conversation.Outcome, record conversation.Record, text string, to Address, now time.Time) (queued int, err error) {
	if to == (Address{}) {
		to = h.Newest
	}
	queued, err = SaveTurn(ctx, tx, Turn{Held: h, Outcome: out, Record: record, To: to, Now: now})
	if err != nil || text == "" {
		return queued, err
	}
	b := &pgx.Batch{}
	n := h.LastN + queued + 1
	own := outgoing{conversationID: h.ID, author: conversation.FromStaff, to: to, at: now}
	own.said = append(own.said, said{n, conversation.Utterance{Text: text, Kind: KindStaff}})
	own.queue(b)
	b.Queue(`UPDATE conversations SET last_n = $2 WHERE id = $1`, h.ID, n)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return 0, fmt.Errorf("write in talk %d: %w", h.ID, err)
	}
	return queued + 1, nil
}

// KindStaff is the kind of a message that a person of staff wrote.
const KindStaff conversation.UtteranceKind = "staff"

// AddressesOf are where a customer can be written to: where the talk came from, the one
// heard last first, and where nothing may be sent any more.
func AddressesOf(ctx context.Context, c Conn, conversationID int64) ([]Reach, error) {
	const sql = `
		SELECT a.channel, a.address, EXISTS (SELECT FROM optouts o WHERE o.channel = a.channel AND o.address = a.address AND o.lifted_at IS NULL)
		FROM addresses a WHERE a.conversation_id = $1
		ORDER BY (SELECT max(m.id) FROM messages m WHERE m.conversation_id = $1 AND m.direction = 'in'
			AND m.channel = a.channel AND m.address = a.address) DESC NULLS LAST, a.channel DESC`
	rows, err := c.Query(ctx, sql, conversationID)
	if err != nil {
		return nil, fmt.Errorf("addresses of talk %d: %w", conversationID, err)
	}
	all, err := pgx.CollectRows(rows, func(row pgx.CollectableRow) (r Reach, err error) {
		err = row.Scan(&r.Channel, &r.Address.Address, &r.OptedOut)
		return r, err
	})
	if err != nil {
		return nil, fmt.Errorf("addresses of talk %d: %w", conversationID, err)
	}
	return all, nil
}

// Reach is an address of a customer's, and whether they opted out there.
type Reach struct {
	Address
	OptedOut bool
}

// LiftStaffOptOut lifts what staff themselves recorded, never what a customer asked for.
func LiftStaffOptOut(ctx context.Context, c Conn, a Address, at time.Time) error {
	const sql = `UPDATE optouts SET lifted_at = greatest($3, since)
		WHERE channel = $1 AND address = $2 AND lifted_at IS NULL AND source = 'staff'`
	if _, err := c.Exec(ctx, sql, a.Channel, a.Address, at); err != nil {
		return fmt.Errorf("lift an opt-out: %w", err)
	}
	return nil
}

// TakeAsSent takes all that waits to be sent in a talk for sent: in talks that were
// brought in, and not held through a channel of ours.
func TakeAsSent(ctx context.Context, c Conn, conversationID int64) error {
	const sql = `UPDATE sends s SET state = 'sent', provider_id = 'brought-in-' || s.message_id, finished_at = m.at
		FROM messages m WHERE m.id = s.message_id AND s.conversation_id = $1 AND s.state = 'queued'`
	if _, err := c.Exec(ctx, sql, conversationID); err != nil {
		return fmt.Errorf("take as sent in talk %d: %w", conversationID, err)
	}
	return nil
}
