package intake

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
)

const (
	// talkers is how many customers write at once; each waits for the answer.
	talkers = 32
	// perTalk is how many messages a customer writes: what a talk about one unit takes.
	perTalk = 9
	// perTalker is how many talks a talker has, one after the other.
	perTalker = 10
)

// BenchmarkDurableTurn measures a message in, its turn and its answer out, with all that
// keeps them through a kill, and the same inserts and updates in as many transactions by
// a bare loop over pgx. "ratio" is our rate by that of the bare loop: goal at least 0.5.
func BenchmarkDurableTurn(b *testing.B) {
	var bare, ours time.Duration
	var n int
	for b.Loop() {
		bare += timeBare(b)
		ours += timeOurs(b)
		n += talkers * perTalker * perTalk
	}
	b.ReportMetric(float64(n)/ours.Seconds(), "turns/s")
	b.ReportMetric(float64(n)/bare.Seconds(), "bare/s")
	b.ReportMetric(bare.Seconds()/ours.Seconds(), "ratio")
	b.ReportMetric(0, "ns/op")
}

// answers tells each customer of his answer.
type answers struct{ to map[string]chan struct{} }

func (a answers) Send(_ context.Context, m Outgoing) (string, error) {
	a.to[m.To.Address] <- struct{}{}
	return fmt.Sprintf("OUT%s-%d", m.To.Address, m.N), nil
}

func (answers) Find(context.Context, Outgoing) (string, bool, error) { return "", false, ErrCantTell }

// addressOf is the number from which the kth talk of a talker comes.
func addressOf(talker, k int) string { return fmt.Sprintf("+1218555%06d", talker*perTalker+k) }

func timeOurs(b *testing.B) time.Duration {
	a := answers{map[string]chan struct{}{}}
	for i := range talkers {
		for k := range perTalker {
			a.to[addressOf(i, k)] = make(chan struct{}, 1)
		}
	}
	s := newShop(b, func(o *Options) {
		o.Senders = map[conversation.Channel]Sender{conversation.SMS: a}
		o.Clock = time.Now
	})
	s.start()
	say := func(i, k, m int) {
		in := Inbound{Channel: conversation.SMS, ID: fmt.Sprintf("%d-%d-%d", i, k, m), From: addressOf(i, k), Text: "25 1/2 by 49 1/2"}
		if _, err := s.Receive(b.Context(), in); err != nil {
			b.Error(err)
		}
		<-a.to[in.From]
	}
	talk(func(i, k int) { say(i, k, 0) }) // the talks are open, the statements prepared
	return stopwatch(func() {
		talk(func(i, k int) {
			for m := range perTalk {
				say(i, k, m+1)
			}
		})
	})
}

// talk lets all talkers have all their talks.
func talk(have func(talker, k int)) {
	each(talkers, func(i int) {
		for k := range perTalker {
			have(i, k)
		}
	})
}

func each(n int, fn func(i int)) {
	var wg sync.WaitGroup
	for i := range n {
		wg.Go(func() { fn(i) })
	}
	wg.Wait()
}

func stopwatch(fn func()) time.Duration {
	began := time.Now()
	fn()
	return time.Since(began)
}

// timeBare makes the rows of a turn, in the transactions of a turn, and nothing else.
func timeBare(b *testing.B) time.Duration {
	s := newShop(b, nil)
	for talker := range talkers {
		for k := range perTalker {
			s.receive(Inbound{Channel: conversation.SMS, ID: fmt.Sprintf("%d-%d-0", talker, k), From: addressOf(talker, k), Text: "hello"})
		}
	}
	if _, err := s.pool.Exec(b.Context(), `UPDATE messages SET n = 1, handled_at = now(); UPDATE conversations SET last_n = 1`); err != nil {
		b.Fatal(err)
	}
	return stopwatch(func() {
		talk(func(i, k int) {
			for m := range perTalk {
				if err := bareTurn(b.Context(), s.pool, i, k, m); err != nil {
					b.Error(err)
					return
				}
			}
		})
	})
}

func bareTurn(ctx context.Context, pool *pgxpool.Pool, i, k, m int) error {
	talk, n, now, address := int64(i*perTalker+k+1), 2*m+2, time.Now(), addressOf(i, k)
	var in, out int64
	received := &pgx.Batch{}
	received.Queue(`INSERT INTO messages (conversation_id, direction, author, channel, address, provider_id, text, at)
		VALUES ($1, 'in', 'customer', 'sms', $2, $3, $4, $5) RETURNING id`, talk, address, fmt.Sprintf("%d-%d-%d", i, k, m+1), "25 1/2 by 49 1/2", now).
		QueryRow(func(row pgx.Row) error { return row.Scan(&in) })
	if err := commit(ctx, pool, received); err != nil {
		return err
	}
	turn := &pgx.Batch{}
	turn.Queue(`UPDATE messages SET n = $2, handled_at = $3 WHERE id = $1`, in, n, now)
	turn.Queue(`INSERT INTO messages (conversation_id, n, direction, author, channel, address, text, at)
		VALUES ($1, $2, 'out', 'bot', 'sms', $3, $4, $5) RETURNING id`, talk, n+1, address, "heard 25 1/2 by 49 1/2", now).
		QueryRow(func(row pgx.Row) error { return row.Scan(&out) })
	turn.Queue(`INSERT INTO sends (message_id, conversation_id, channel, kind) SELECT id, $1, 'sms', 'reply'
		FROM messages WHERE conversation_id = $1 AND n = $2`, talk, n+1)
	turn.Queue(`UPDATE conversations SET state = 'measuring', memory = '{}', last_n = $2 WHERE id = $1`, talk, n+1)
	turn.Queue(`INSERT INTO facts (conversation_id, seq, topic, unit, value, said, message, by)
		VALUES ($1, $2, 'count', 1, '16', $3, $4, 'customer')`, talk, m+1, "25 1/2 by 49 1/2", n)
	turn.Queue(`UPDATE leads SET status = 'open', units = '[]', updated_at = $2 WHERE conversation_id = $1`, talk, now)
	if err := commit(ctx, pool, turn); err != nil {
		return err
	}
	claim := &pgx.Batch{}
	claim.Queue(`UPDATE sends SET state = 'sending', claimed_at = now(), attempts = 1 WHERE message_id = $1`, out)
	if err := commit(ctx, pool, claim); err != nil {
		return err
	}
	sent := &pgx.Batch{}
	sent.Queue(`UPDATE sends SET state = 'sent', provider_id = $2, finished_at = now() WHERE message_id = $1`, out,
		strings.Join([]string{"OUT", address, fmt.Sprint(n)}, "-"))
	return commit(ctx, pool, sent)
}

func commit(ctx context.Context, pool *pgxpool.Pool, b *pgx.Batch) error {
	return pgx.BeginFunc(ctx, pool, func(tx pgx.Tx) error { return tx.SendBatch(ctx, b).Close() })
}
