package intake

import (
	"context"
	"fmt"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db/dbtest"
)

const (
	// talkers is how many customers write at once; each waits for the answer.
	talkers = 32
	// perTalk is how many messages a customer writes: what a talk about one unit takes.
	perTalk = 9
	// benchRounds is how often the floor and we take turns.
	benchRounds = 9
	// perRound is how many talks are had in a round, by talkers at a time.
	perRound = 64
)

// BenchmarkDurableTurn measures a message in, its turn and its answer out, with all that
// keeps them through a kill, and the same inserts and updates in as many transactions by
// a bare loop over pgx. "ratio" is our rate by that of the bare loop.
func BenchmarkDurableTurn(b *testing.B) {
	for b.Loop() {
		bare, ours := newBare(b), newDesk(b)
		c := newContest(b, ours.pool)
		for round := range benchRounds {
			talks := talksOf(round, perRound)
			c.round(func() int { return haveTalks(b, talks, bare.say) }, func() int { return haveTalks(b, talks, ours.say) })
		}
		c.report()
	}
}

// talksOf are the talks of a round: those that nobody had yet.
func talksOf(round, n int) []int {
	talks := make([]int, n)
	for i := range talks {
		talks[i] = 1 + round*n + i
	}
	return talks
}

// haveTalks has the talks, talkers at a time, and says how many turns they took.
func haveTalks(tb testing.TB, talks []int, say func(ctx context.Context, talk, m int) error) int {
	next := make(chan int)
	var done atomic.Int64
	var wg sync.WaitGroup
	for range talkers {
		wg.Go(func() {
			for talk := range next {
				for m := range perTalk {
					if err := say(tb.Context(), talk, m); err != nil {
						tb.Error(err)
						break
					}
					done.Add(1)
				}
			}
		})
	}
	for _, talk := range talks {
		next <- talk
	}
	close(next)
	wg.Wait()
	return max(1, int(done.Load()))
}

// whatIsSaid is what customers write.
const whatIsSaid = "25 1/2 by 49 1/2"

// desk is a service whose customers wait for their answers.
type desk struct {
	*shop
	waiting sync.Map // by address: *customer
}

// customer hears what is sent to them.
type customer struct {
	heard chan int // the place in the talk of each text
	seen  int      // of the newest that they waited for
}

// newBareDesk has no talks and does not work yet.
func newBareDesk(b *testing.B) *desk {
	d := &desk{}
	d.shop = newShop(b, func(o *Options) {
		o.Senders = map[conversation.Channel]Sender{conversation.SMS: d}
		o.Clock, o.Lease = time.Now, time.Minute // nothing is to be sent again because the machine is slow
	})
	return d
}

// newDesk opens enough talks for the rounds, and has some more, so that all statements are
// prepared.
func newDesk(b *testing.B) *desk {
	d := newBareDesk(b)
	dbtest.FillTalks(b, d.pool, (benchRounds+1)*perRound, 2)
	d.start()
	haveTalks(b, talksOf(benchRounds, perRound), d.say)
	return d
}

func (d *desk) Send(_ context.Context, m Outgoing) (string, error) {
	if c, ok := d.waiting.Load(m.To.Address); ok {
		c.(*customer).heard <- m.N
	}
	return fmt.Sprintf("OUT%s-%d", m.To.Address, m.N), nil
}

func (*desk) Find(context.Context, Outgoing) (string, bool, error) { return "", false, ErrCantTell }

// say has a customer write, and waits for the answer.
func (d *desk) say(ctx context.Context, talk, m int) error { return d.tell(ctx, talk, m, whatIsSaid) }

func (d *desk) tell(ctx context.Context, talk, m int, words string) error {
	known, _ := d.waiting.LoadOrStore(dbtest.Phone(talk), &customer{heard: make(chan int, 64)})
	c, in := known.(*customer), inboundOf(talk, m)
	in.Text = words
	if _, err := d.Receive(ctx, in); err != nil {
		return err
	}
	// The next place is that of their own message, or of another text of the turn before.
	for from := c.seen + 2; c.seen < from; {
		select {
		case c.seen = <-c.heard:
		case <-time.After(5 * time.Minute):
			return fmt.Errorf("talk %d got no answer to its message %d", talk, m)
		}
	}
	return nil
}

func inboundOf(talk, m int) Inbound {
	return Inbound{Channel: conversation.SMS, ID: fmt.Sprintf("%d-%d", talk, m), From: dbtest.Phone(talk), Text: whatIsSaid}
}

// bareLoop makes the rows of a turn, in the transactions of a turn, and nothing else.
type bareLoop struct{ pool *pgxpool.Pool }

func newBare(b *testing.B) bareLoop {
	bare := bareLoop{newShop(b, nil).pool}
	dbtest.FillTalks(b, bare.pool, (benchRounds+1)*perRound, 2)
	haveTalks(b, talksOf(benchRounds, perRound), bare.say)
	return bare
}

func (l bareLoop) say(ctx context.Context, talk, m int) error {
	n, now, address := 2*m+3, time.Now(), dbtest.Phone(talk)
	var in, out int64
	received := &pgx.Batch{}
	received.Queue(`INSERT INTO messages (conversation_id, direction, author, channel, address, provider_id, text, at)
		VALUES ($1, 'in', 'customer', 'sms', $2, $3, $4, $5) RETURNING id`, talk, address, fmt.Sprintf("%d-%d", talk, m), whatIsSaid, now).
		QueryRow(func(row pgx.Row) error { return row.Scan(&in) })
	if err := l.commit(ctx, received); err != nil {
		return err
	}
	turn := &pgx.Batch{}
	turn.Queue(`UPDATE messages SET n = $2, handled_at = $3 WHERE id = $1`, in, n, now)
	turn.Queue(`INSERT INTO messages (conversation_id, n, direction, author, channel, address, text, at)
		VALUES ($1, $2, 'out', 'bot', 'sms', $3, $4, $5) RETURNING id`, talk, n+1, address, fmt.Sprintf("heard %d:%s", n, whatIsSaid), now).
		QueryRow(func(row pgx.Row) error { return row.Scan(&out) })
	turn.Queue(`INSERT INTO sends (message_id, conversation_id, channel, kind) SELECT id, $1, 'sms', 'reply'
		FROM messages WHERE conversation_id = $1 AND n = $2`, talk, n+1)
	turn.Queue(`UPDATE conversations SET state = 'measuring', memory = '{}', last_n = $2, wake_at = NULL WHERE id = $1`, talk, n+1)
	turn.Queue(`INSERT INTO facts (conversation_id, seq, topic, unit, value, said, message, by)
		VALUES ($1, $2, 'count', 1, '16', $3, $4, 'customer')`, talk, m+2, whatIsSaid, n)
	turn.Queue(`UPDATE leads SET status = 'open', units = '[]', city = NULL, region = NULL, zip = NULL, use = NULL, problem = NULL,
		updated_at = $2 WHERE conversation_id = $1`, talk, now)
	if err := l.commit(ctx, turn); err != nil {
		return err
	}
	claim := &pgx.Batch{}
	claim.Queue(`UPDATE sends SET state = 'sending', claimed_at = now(), attempts = 1 WHERE message_id = $1`, out)
	if err := l.commit(ctx, claim); err != nil {
		return err
	}
	sent := &pgx.Batch{}
	sent.Queue(`UPDATE sends SET state = 'sent', provider_id = $2, segments = 1, finished_at = now() WHERE message_id = $1`, out,
		fmt.Sprintf("OUT%s-%d", address, n))
	return l.commit(ctx, sent)
}

func (l bareLoop) commit(ctx context.Context, b *pgx.Batch) error {
	return pgx.BeginFunc(ctx, l.pool, func(tx pgx.Tx) error { return tx.SendBatch(ctx, b).Close() })
}
