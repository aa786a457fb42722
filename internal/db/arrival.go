package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// Arrival is a message as a channel took it in.
type Arrival struct {
	Channel    conversation.Channel
	Address    string // the customer's: E.164, or a mail address in lower case
	ProviderID string // the channel's own, the same whenever it hands over the message again
	Text       string
	At         time.Time // when it was written, as far as is known
	Photos     []PhotoSource
}

// PhotoSource is where a channel keeps a photo of a message.
type PhotoSource struct {
	Source      string
	ContentType string // as the sender said
	// File is the photo itself, where it came with the message.
	File []byte
	// Refused says why a file that came is no photo; empty where it may be one.
	Refused conversation.PhotoLook
}

// Kept says where an arrival was put.
type Kept struct {
	ConversationID int64
	MessageID      int64
	Again          bool          // it was there before; the ids are then 0
	Behind         time.Duration // since the oldest message was received that waits for a turn in the talk; 0: none does
}

// Arrivals keep messages that come in.
type Arrivals struct {
	// NewRef draws a ref for a new talk.
	NewRef func() (string, error)
	// EndedBefore: a talk whose lead staff finished before then is over, and the next
	// message from its address begins a new one.
	EndedBefore time.Time
	// Known, where it is there, finds the talk that a message from an address without one
	// belongs to; 0 for none: it begins a new one.
	Known func(ctx context.Context, tx pgx.Tx, m Arrival) (conversationID int64, err error)
}

// KeepAlone stores an arrival by one statement, which is a transaction of its own, where
// its talk is there and it is not; ErrNotFound otherwise: that is for Keep.
func (a Arrivals) KeepAlone(ctx context.Context, c Conn, m Arrival) (Kept, error) {
	return a.insert(ctx, c, m)
}

// Keep stores an arrival with the talk that its address belongs to, which is made
// where there is none. A message that is there already changes nothing.
func (a Arrivals) Keep(ctx context.Context, tx pgx.Tx, m Arrival) (Kept, error) {
	kept, err := a.insert(ctx, tx, m)
	if !errors.Is(err, ErrNotFound) {
		return kept, err
	}
	// Rare from here on: it is there already, or the talk is yet to be made. One at a
	// time for each address, so that two messages at once make one talk.
	const lock = `SELECT pg_advisory_xact_lock(hashtextextended($1 || ':' || $2, 1))`
	if _, err := tx.Exec(ctx, lock, m.Channel, m.Address); err != nil {
		return Kept{}, fmt.Errorf("keep message %s: %w", m.ProviderID, err)
	}
	var again bool
	const seen = `SELECT EXISTS (SELECT FROM messages WHERE channel = $1 AND provider_id = $2)`
	if err := tx.QueryRow(ctx, seen, m.Channel, m.ProviderID).Scan(&again); err != nil {
		return Kept{}, fmt.Errorf("keep message %s: %w", m.ProviderID, err)
	}
	if again {
		return Kept{Again: true}, nil
	}
	kept, err = a.insert(ctx, tx, m)
	if !errors.Is(err, ErrNotFound) {
		return kept, err // the talk was made while we waited
	}
	if err := a.openTalk(ctx, tx, m); err != nil {
		return Kept{}, err
	}
	return a.insert(ctx, tx, m)
}

// insertMessage stores a message where its address has a talk that is not over.
const insertMessage = `
	INSERT INTO messages (conversation_id, direction, author, channel, address, provider_id, text, photos, at)
	SELECT c.id, 'in', 'customer', $1, $2, $3, $4, $7, $5
	FROM addresses a
	JOIN conversations c ON c.id = a.conversation_id
	JOIN leads l ON l.conversation_id = c.id
	WHERE a.channel = $1 AND a.address = $2 AND NOT (l.status IN ('ordered', 'declined', 'closed')
		AND c.state <> 'silenced' AND l.updated_at < $6)
	ON CONFLICT (channel, provider_id) WHERE provider_id IS NOT NULL DO NOTHING
	RETURNING id, conversation_id, coalesce((SELECT extract(epoch FROM clock_timestamp() - min(w.received_at)) FROM messages w
		WHERE w.conversation_id = messages.conversation_id AND w.direction = 'in' AND w.handled_at IS NULL), 0)::float8`

const insertWithPhotos = `
	WITH message (id, conversation_id, behind) AS (` + insertMessage + `), pictures AS (
		INSERT INTO photos (message_id, k, source, content_type)
		SELECT message.id, p.k, p.source, p.type
		FROM message, unnest($8::text[], $9::text[]) WITH ORDINALITY AS p (source, type, k)
	)
	SELECT id, conversation_id, behind FROM message`

// insert stores the message where its address has a talk that is not over and it is
// not there yet; ErrNotFound otherwise.
func (a Arrivals) insert(ctx context.Context, c Conn, m Arrival) (Kept, error) {
	sources, types := make([]string, 0, len(m.Photos)), make([]string, 0, len(m.Photos))
	for _, p := range m.Photos {
		sources = append(sources, storable(p.Source))
		types = append(types, storable(p.ContentType))
	}
	args := []any{m.Channel, m.Address, m.ProviderID, storable(m.Text), m.At, a.EndedBefore, len(m.Photos)}
	sql := insertMessage
	if len(m.Photos) > 0 {
		sql, args = insertWithPhotos, append(args, sources, types)
	}
	var kept Kept
	var behind float64
	err := c.QueryRow(ctx, sql, args...).Scan(&kept.MessageID, &kept.ConversationID, &behind)
	if errors.Is(err, pgx.ErrNoRows) {
		return Kept{}, ErrNotFound
	}
	if err != nil {
		return Kept{}, fmt.Errorf("keep message %s: %w", m.ProviderID, err)
	}
	kept.Behind = time.Duration(behind * float64(time.Second))
	return kept, keepFiles(ctx, c, kept.MessageID, m.Photos)
}

// refTries bounds how often a ref that is taken is drawn again: with half of all refs
// taken, thirty draws fail once in a thousand million times.
const refTries = 30

// openTalk makes a talk with its lead, and the address joins it from now on.
func (a Arrivals) openTalk(ctx context.Context, tx pgx.Tx, m Arrival) error {
	former, err := formerTalk(ctx, tx, Address{m.Channel, m.Address})
	if err != nil && !errors.Is(err, ErrNotFound) {
		return fmt.Errorf("open a talk: %w", err)
	}
	if former == 0 && a.Known != nil {
		known, err := a.Known(ctx, tx, m)
		if err != nil {
			return fmt.Errorf("open a talk: %w", err)
		}
		if known != 0 {
			return joinAddress(ctx, tx, Address{m.Channel, m.Address}, known)
		}
	}
	id, err := a.newTalk(ctx, tx, m)
	if err != nil || former == 0 {
		return err
	}
	return succeed(ctx, tx, former, id)
}

func (a Arrivals) newTalk(ctx context.Context, tx pgx.Tx, m Arrival) (id int64, err error) {
	const sql = `
		WITH talk AS (
			INSERT INTO conversations (ref, channel, phone, email, opened_at)
			VALUES ($1, $2, CASE WHEN $2 = 'sms' THEN $3 END, CASE WHEN $2 = 'email' THEN $3 END, $4)
			ON CONFLICT (ref) DO NOTHING RETURNING id
		), lead AS (
			INSERT INTO leads (conversation_id, phone, email, updated_at)
			SELECT id, CASE WHEN $2 = 'sms' THEN $3 END, CASE WHEN $2 = 'email' THEN $3 END, $4 FROM talk
		)
		INSERT INTO addresses (channel, address, conversation_id) SELECT $2, $3, id FROM talk
		ON CONFLICT (channel, address) DO UPDATE SET conversation_id = excluded.conversation_id
		RETURNING conversation_id`
	for range refTries {
		ref, err := a.NewRef()
		if err != nil {
			return 0, err
		}
		err = tx.QueryRow(ctx, sql, ref, m.Channel, m.Address, m.At).Scan(&id)
		if err == nil {
			return id, nil
		}
		if !errors.Is(err, pgx.ErrNoRows) {
			return 0, fmt.Errorf("open a talk: %w", err)
		}
	}
	return 0, fmt.Errorf("open a talk: %d refs in a row were taken", refTries)
}
