package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// Lull says how long ago a talk was last heard, of what no turn has taken yet.
type Lull struct {
	Newest      int64         // id of the newest message; 0: nothing waits
	SinceNewest time.Duration // since it was received
	SinceOldest time.Duration
}

// LullOf looks without locking.
func LullOf(ctx context.Context, c Conn, conversationID int64) (Lull, error) {
	const sql = `
		SELECT coalesce(max(id), 0), coalesce(extract(epoch FROM clock_timestamp() - max(received_at)), 0)::float8,
			coalesce(extract(epoch FROM clock_timestamp() - min(received_at)), 0)::float8
		FROM messages WHERE conversation_id = $1 AND direction = 'in' AND handled_at IS NULL`
	var l Lull
	var newest, oldest float64
	if err := c.QueryRow(ctx, sql, conversationID).Scan(&l.Newest, &newest, &oldest); err != nil {
		return l, fmt.Errorf("what waits in talk %d: %w", conversationID, err)
	}
	l.SinceNewest = time.Duration(newest * float64(time.Second))
	l.SinceOldest = time.Duration(oldest * float64(time.Second))
	return l, nil
}

// saveHandled gives messages their numbers and marks them as taken.
func saveHandled(b *pgx.Batch, conversationID int64, handled []Waiting, now time.Time) {
	for _, w := range handled {
		b.Queue(`UPDATE messages SET n = $3, handled_at = $4 WHERE id = $1 AND conversation_id = $2`,
			w.ID, conversationID, w.Message.N, now)
	}
}

// outgoing are messages that a turn, or a person of staff, wants sent.
type outgoing struct {
	conversationID int64
	author         string
	to             Address
	at             time.Time
	said           []said
}

// said is one of them, with its number.
type said struct {
	n         int
	utterance conversation.Utterance
}

// queue writes the messages and puts them into the line of what is to be sent. Their
// ids rise with their numbers: that is the order in which they go out.
func (o *outgoing) queue(b *pgx.Batch) {
	const sql = `
		WITH message AS (
			INSERT INTO messages (conversation_id, n, direction, author, channel, address, text, at)
			VALUES ($1, $2, 'out', $3, $4, $5, $6, $7) RETURNING id
		)
		INSERT INTO sends (message_id, conversation_id, channel, kind, picture)
		SELECT id, $1, $4, $8, nullif($9, '') FROM message`
	for _, s := range o.said {
		b.Queue(sql, o.conversationID, s.n, o.author, o.to.Channel, o.to.Address, storable(s.utterance.Text), o.at,
			s.utterance.Kind, s.utterance.Picture)
	}
}

// MessagesOf lists the messages of a talk that have their number, in order.
func MessagesOf(ctx context.Context, c Conn, ref string) ([]conversation.Message, error) {
	const sql = `
		SELECT m.n, m.at, m.author, m.channel, m.text, m.photos
		FROM messages m JOIN conversations c ON c.id = m.conversation_id
		WHERE c.ref = $1 AND m.n IS NOT NULL ORDER BY m.n`
	rows, err := c.Query(ctx, sql, ref)
	if err != nil {
		return nil, fmt.Errorf("messages of %s: %w", ref, err)
	}
	messages, err := pgx.CollectRows(rows, func(row pgx.CollectableRow) (m conversation.Message, err error) {
		err = row.Scan(&m.N, &m.At, &m.From, &m.Channel, &m.Text, &m.Photos)
		m.At = m.At.UTC()
		return m, err
	})
	if err != nil {
		return nil, fmt.Errorf("messages of %s: %w", ref, err)
	}
	return messages, nil
}

// TalkOf is the id of the talk with a ref.
func TalkOf(ctx context.Context, c Conn, ref string) (int64, error) {
	var id int64
	err := c.QueryRow(ctx, `SELECT id FROM conversations WHERE ref = $1`, ref).Scan(&id)
	if errors.Is(err, pgx.ErrNoRows) {
		err = ErrNotFound
	}
	if err != nil {
		return 0, fmt.Errorf("talk %s: %w", ref, err)
	}
	return id, nil
}
