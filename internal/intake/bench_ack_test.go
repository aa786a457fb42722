package intake

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

// BenchmarkAcknowledge measures how long the carrier waits for the answer to its post, over
// HTTP, and one insert of the same row by pgx, in turns, each posted by a few at once while
// the turns and the answers go on behind. The server writes to its disk before it says that a
// row is kept, as it does in earnest. "p50-ratio" and "p99-ratio" are ours by the insert's.
func BenchmarkAcknowledge(b *testing.B) {
	for b.Loop() {
		pool := durableDatabase(b)
		ours, bare := acknowledged(b, pool)
		for _, q := range []struct {
			name string
			q    float64
		}{{"p50", 0.5}, {"p99", 0.99}} {
			b.ReportMetric(quantile(ours, q.q)*1e3, q.name+"-ms")
			b.ReportMetric(quantile(bare, q.q)*1e3, q.name+"-insert-ms")
			b.ReportMetric(quantile(ours, q.q)/quantile(bare, q.q), q.name+"-ratio")
		}
		b.ReportMetric(0, "ns/op")
	}
}

const (
	posters   = 4
	perPoster = 500
)

// acknowledged gives the seconds of each post and of each insert.
func acknowledged(b *testing.B, pool *pgxpool.Pool) (ours, bare []float64) {
	s := &shop{t: b, pool: pool, parrot: &parrot{}}
	var err error
	s.Service, err = New(Options{Pool: pool, Shop: &conversation.Shop{}, Brain: s.parrot.brain(),
		Senders: map[conversation.Channel]Sender{conversation.SMS: &desk{}}})
	if err != nil {
		b.Fatal(err)
	}
	webhook, err := sms.NewWebhook(clusterURL, token)
	if err != nil {
		b.Fatal(err)
	}
	const talks = posters * perPoster
	dbtest.FillTalks(b, pool, 2*talks, 2)
	server := httptest.NewServer(s.SMSHandler(webhook))
	defer server.Close()
	s.start()
	var mu sync.Mutex
	each := func(from, to int) {
		var wg sync.WaitGroup
		for p := range posters {
			wg.Go(func() {
				for i := from + p; i < to; i += posters {
					insert := seconds(b, func() error { return insertBare(b.Context(), pool, talks+i+1) })
					post := seconds(b, func() error { return post(b.Context(), server.URL, i+1) })
					mu.Lock()
					ours, bare = append(ours, post), append(bare, insert)
					mu.Unlock()
				}
			})
		}
		wg.Wait()
	}
	each(0, 100) // connections are open, statements prepared
	ours, bare = nil, nil
	each(100, talks)
	var kept int
	s.one(`SELECT count(*) FROM messages WHERE direction = 'in' AND provider_id LIKE 'SM%'`, &kept)
	if kept != 2*talks {
		b.Errorf("%d messages are kept, want %d", kept, 2*talks)
	}
	return ours, bare
}

func seconds(b *testing.B, fn func() error) float64 {
	began := time.Now()
	if err := fn(); err != nil {
		b.Error(err)
	}
	return time.Since(began).Seconds()
}

// durableDatabase is on a server of its own that keeps what it says it kept.
func durableDatabase(b *testing.B) *pgxpool.Pool {
	b.Helper()
	parent := os.TempDir()
	if os.Getuid() == 0 {
		parent = "/var/tmp" // TMPDIR may be root's alone
	}
	dir, err := os.MkdirTemp(parent, "intake-bench-")
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { os.RemoveAll(dir) })
	local, err := db.StartLocal(b.Context(), dir, db.LocalOptions{})
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { local.Stop() })
	pool, err := db.Open(b.Context(), local.URL)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(pool.Close)
	if err := db.Migrate(b.Context(), pool); err != nil {
		b.Fatal(err)
	}
	return pool
}

func insertBare(ctx context.Context, pool *pgxpool.Pool, talk int) error {
	_, err := pool.Exec(ctx, `INSERT INTO messages (conversation_id, direction, author, channel, address, provider_id, text, at)
		VALUES ($1, 'in', 'customer', 'sms', $2, $3, $4, $5)`, talk, dbtest.Phone(talk), fmt.Sprintf("SM%032x", talk), whatIsSaid, time.Now())
	return err
}

func post(ctx context.Context, server string, talk int) error {
	form := url.Values{"MessageSid": {fmt.Sprintf("SM%032x", talk)}, "AccountSid": {account}, "From": {dbtest.Phone(talk)}, "To": {number},
		"Body": {whatIsSaid}, "NumMedia": {"0"}, "NumSegments": {"1"}, "SmsStatus": {"received"}, "ApiVersion": {"2010-04-01"}}
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, server+"/sms/inbound", strings.NewReader(form.Encode()))
	if err != nil {
		return err
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("X-Twilio-Signature", standin.Sign(token, clusterURL+"/sms/inbound", form))
	res, err := http.DefaultClient.Do(r)
	if err != nil {
		return err
	}
	res.Body.Close()
	if res.StatusCode != http.StatusOK {
		return fmt.Errorf("the webhook answered %d", res.StatusCode)
	}
	return nil
}
