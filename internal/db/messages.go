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
	if len(handled) == 0 {
		return
	}
	ids, ns := make([]int64, len(handled)), make([]int, len(handled))
	for i, w := range handled {
		ids[i], ns[i] = w.ID, w.Message.N
	}
	b.Queue(`UPDATE messages m SET n = u.n, handled_at = $4
		FROM unnest($2::bigint[], $3::int[]) AS u (id, n) WHERE m.id = u.id AND m.conversation_id = $1`,
		conversationID, ids, ns, now)
}

// outgoing are messages that a turn, or a person of staff, wants sent.
type outgoing struct {
	conversationID int64
	author         string
	to             Address
	at             time.Time

	ns                     []int
	texts, kinds, pictures []string
}

func (o *outgoing) add(n int, u conversation.Utterance) {
	o.ns = append(o.ns, n)
	o.texts = append(o.texts, storable(u.Text))
	o.kinds = append(o.kinds, string(u.Kind))
	o.pictures = append(o.pictures, string(u.Picture))
}

// queue writes the messages and puts them into the line of what is to be sent. Their
// ids rise with their numbers: that is the order in which they go out.
func (o *outgoing) queue(b *pgx.Batch) {
	if len(o.ns) == 0 {
		return
	}
	b.Queue(`
		WITH said AS (
			SELECT * FROM unnest($6::int[], $7::text[], $8::text[], $9::text[]) AS u (n, text, kind, picture)
		), message AS (
			INSERT INTO messages (conversation_id, n, direction, author, channel, address, text, at)
			SELECT $1, n, 'out', $2, $3, $4, text, $5 FROM said ORDER BY n
			RETURNING id, n
		)
		INSERT INTO sends (message_id, conversation_id, channel, kind, picture)
		SELECT id, $1, $3, kind, nullif(picture, '') FROM message JOIN said USING (n)`,
		o.conversationID, o.author, o.to.Channel, o.to.Address, o.at, o.ns, o.texts, o.kinds, o.pictures)
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
