package db

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// Held is a talk that this transaction has locked, with what no turn has taken yet.
type Held struct {
	ID      int64
	Talk    conversation.Talk
	LastN   int        // number of the newest numbered message
	WakeAt  *time.Time // when to speak up if nothing comes in
	Waiting []Waiting  // the oldest first
	Newest  Address    // where the customer was last heard, for answers
}

// Address is where a customer can be written to.
type Address struct {
	Channel conversation.Channel
	Address string
}

// Waiting is a message that no turn has taken yet; it has no number so far.
type Waiting struct {
	ID      int64
	Message conversation.Message
	Address string // from which it came, on the message's channel
}

// mostAtOnce bounds what one turn takes; the rest is for the next.
const mostAtOnce = 100

// HoldTalk locks a talk until the transaction ends and reads all that a turn needs, in
// one round trip. Others wait; messages can still come in.
func HoldTalk(ctx context.Context, tx pgx.Tx, id int64) (*Held, error) {
	h := &Held{ID: id}
	err := tx.SendBatch(ctx, h.look()).Close()
	if err == nil {
		err = h.findNewest(ctx, tx)
	}
	if err != nil {
		return nil, h.failed(err)
	}
	return h, nil
}

// InTalk runs fn in a transaction of its own that holds a talk, as HoldTalk does. It is
// committed where fn gives no error. ErrNotFound, and no call of fn, where there is no such
// talk.
func InTalk(ctx context.Context, pool *pgxpool.Pool, id int64, fn func(tx pgx.Tx, h *Held) error) error {
	h, held := &Held{ID: id}, false
	err := inLean(ctx, pool, h.look(), func(tx pgx.Tx) error {
		if err := h.findNewest(ctx, tx); err != nil {
			return err
		}
		held = true
		return fn(tx, h)
	})
	if err != nil && !held {
		return h.failed(err)
	}
	return err
}

func (h *Held) failed(err error) error {
	if errors.Is(err, pgx.ErrNoRows) {
		err = ErrNotFound
	}
	return fmt.Errorf("hold talk %d: %w", h.ID, err)
}

// look asks for a talk with all that a turn needs.
func (h *Held) look() *pgx.Batch {
	id, b := h.ID, &pgx.Batch{}
	// Each statement sees what was committed before it began, so the lock comes first.
	// NO KEY: a message that comes in refers to the row and must not have to wait.
	b.Queue(`SELECT ref, channel, coalesce(phone, ''), coalesce(email, ''), coalesce(language, ''), state, memory, last_n, wake_at, opened_at
		FROM conversations WHERE id = $1 FOR NO KEY UPDATE`, id).QueryRow(h.scanTalk)
	b.Queue(`SELECT status, qualified, why_staff, urgent, after_hours, ready_at FROM leads WHERE conversation_id = $1`, id).
		QueryRow(func(row pgx.Row) (err error) { h.Talk.Lead, err = leadOf(row); return err })
	b.Queue(`SELECT topic, unit, value, resolution_nm, said, coalesce(message, 0), by, undone
		FROM facts WHERE conversation_id = $1 ORDER BY seq`, id).
		Query(func(rows pgx.Rows) (err error) { h.Talk.Ledger, err = pgx.CollectRows(rows, scanEntry); return err })
	b.Queue(`SELECT id, at, channel, text, photos, address FROM messages
		WHERE conversation_id = $1 AND direction = 'in' AND handled_at IS NULL ORDER BY at, id LIMIT $2`, id, mostAtOnce).
		Query(func(rows pgx.Rows) (err error) { h.Waiting, err = pgx.CollectRows(rows, scanWaiting); return err })
	return b
}

// findNewest says where the customer was last heard. A talk in which nobody was, since
// staff entered it, is written to at the address that it joins.
func (h *Held) findNewest(ctx context.Context, tx pgx.Tx) error {
	if len(h.Waiting) > 0 {
		newest := h.Waiting[len(h.Waiting)-1]
		h.Newest = Address{Channel: newest.Message.Channel, Address: newest.Address}
		return nil
	}
	const sql = `(SELECT channel, address FROM messages
		WHERE conversation_id = $1 AND direction = 'in' ORDER BY at DESC, id DESC LIMIT 1)
		UNION ALL (SELECT channel, coalesce(phone, email, 'terminal') FROM conversations
		WHERE id = $1 AND NOT EXISTS (SELECT FROM messages WHERE conversation_id = $1 AND direction = 'in'))`
	return tx.QueryRow(ctx, sql, h.ID).Scan(&h.Newest.Channel, &h.Newest.Address)
}

func (h *Held) scanTalk(row pgx.Row) error {
	t := &h.Talk
	var memory []byte
	err := row.Scan(&t.Ref, &t.Channel, &t.Phone, &t.Email, &t.Language, &t.State, &memory, &h.LastN, &h.WakeAt, &t.OpenedAt)
	if err != nil {
		return err
	}
	t.OpenedAt = t.OpenedAt.UTC()
	if err := json.Unmarshal(memory, &t.Memory); err != nil {
		return fmt.Errorf("memory: %w", err)
	}
	return nil
}

func scanEntry(row pgx.CollectableRow) (conversation.Entry, error) {
	var e conversation.Entry
	var value []byte
	var resolution fitcheck.Length
	err := row.Scan(&e.Topic, &e.Unit, &value, &resolution, &e.Said, &e.Message, &e.By, &e.Undone)
	if err != nil {
		return e, err
	}
	e.Value, err = decodeValue(e.Topic, value, resolution)
	return e, err
}

func scanWaiting(row pgx.CollectableRow) (Waiting, error) {
	w := Waiting{Message: conversation.Message{From: conversation.FromCustomer}}
	err := row.Scan(&w.ID, &w.Message.At, &w.Message.Channel, &w.Message.Text, &w.Message.Photos, &w.Address)
	w.Message.At = w.Message.At.UTC()
	return w, err
}

// saveTalk writes what a turn changed of the talk itself.
func saveTalk(b *pgx.Batch, id int64, t conversation.Talk, lastN int, wake time.Time) error {
	memory, err := json.Marshal(t.Memory)
	if err != nil {
		return fmt.Errorf("memory: %w", err)
	}
	var wakeAt *time.Time
	if !wake.IsZero() {
		wakeAt = &wake
	}
	b.Queue(`UPDATE conversations SET language = nullif($2, ''), state = $3, memory = $4, last_n = $5, wake_at = $6 WHERE id = $1`,
		id, t.Language, t.State, memory, lastN, wakeAt)
	return nil
}
