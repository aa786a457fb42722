package intake

import (
	"context"
	"encoding/json"
	"fmt"
	"log/slog"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

const phone = "+12185550123"

// carrier is a provider in memory: it takes what it is sent, unless it was told to fail.
type carrier struct {
	mu     sync.Mutex
	sent   []Outgoing
	calls  int
	finds  int
	onSend func(call int, m Outgoing) error // an error: not taken
	after  func(call int, m Outgoing) error // an error: taken, but the caller does not hear of it
	onFind func(find int) error
}

func (c *carrier) Send(_ context.Context, m Outgoing) (string, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.calls++
	if c.onSend != nil {
		if err := c.onSend(c.calls, m); err != nil {
			return "", err
		}
	}
	c.sent = append(c.sent, m)
	if c.after != nil {
		if err := c.after(c.calls, m); err != nil {
			return "", err
		}
	}
	return fmt.Sprintf("OUT%d", len(c.sent)), nil
}

func (c *carrier) Find(_ context.Context, m Outgoing) (string, bool, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.finds++
	if c.onFind != nil {
		if err := c.onFind(c.finds); err != nil {
			return "", false, err
		}
	}
	for i := len(c.sent) - 1; i >= 0; i-- {
		if c.sent[i].To == m.To && c.sent[i].Text == m.Text {
			return fmt.Sprintf("OUT%d", i+1), true, nil
		}
	}
	return "", false, nil
}

// texts are what the carrier took, in order.
func (c *carrier) texts() []string {
	c.mu.Lock()
	defer c.mu.Unlock()
	var texts []string
	for _, m := range c.sent {
		texts = append(texts, m.Text)
	}
	return texts
}

// shop is a service on a database of its own, with a parrot and a carrier.
type shop struct {
	*Service
	t       testing.TB
	pool    *pgxpool.Pool
	parrot  *parrot
	carrier *carrier
	clock   time.Time
	mu      sync.Mutex
	count   int
}

// noon is noon in Duluth.
var noon = time.Date(2026, 3, 2, 18, 0, 0, 0, time.UTC)

func newShop(t testing.TB, change func(*Options)) *shop {
	t.Helper()
	if test, ok := t.(*testing.T); ok {
		test.Parallel() // they mostly wait
	}
	s := &shop{t: t, pool: dbtest.New(t), parrot: &parrot{}, carrier: &carrier{}, clock: noon}
	opts := Options{Pool: s.pool, Shop: &conversation.Shop{Name: "Pinwheel Dome Supply"}, Brain: s.parrot.brain(),
		Senders: map[conversation.Channel]Sender{conversation.SMS: s.carrier},
		Clock:   s.now, SweepEvery: time.Hour, Lease: time.Second,
		Log: slog.New(slog.NewTextHandler(t.Output(), &slog.HandlerOptions{Level: slog.LevelWarn}))}
	if change != nil {
		change(&opts)
	}
	var err error
	if s.Service, err = New(opts); err != nil {
		t.Fatal(err)
	}
	return s
}

func (s *shop) now() time.Time {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.clock
}

func (s *shop) later(d time.Duration) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.clock = s.clock.Add(d)
}

// start runs jobs until the test ends.
func (s *shop) start() {
	s.t.Helper()
	if err := s.Start(s.t.Context()); err != nil {
		s.t.Fatal(err)
	}
	s.t.Cleanup(func() {
		ctx, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
		defer cancel()
		if err := s.Stop(ctx); err != nil {
			s.t.Errorf("stop: %v", err)
		}
	})
}

// text receives a text from the customer.
func (s *shop) text(words string) {
	s.t.Helper()
	s.count++
	s.receive(Inbound{Channel: conversation.SMS, ID: fmt.Sprintf("SM%d", s.count), From: phone, Text: words})
}

func (s *shop) receive(in Inbound) (again bool) {
	s.t.Helper()
	again, err := s.Receive(s.t.Context(), in)
	if err != nil {
		s.t.Fatal(err)
	}
	return again
}

// quiet waits until nothing is left to be done.
func (s *shop) quiet() {
	s.t.Helper()
	s.until("nothing is left to be done", func() bool {
		o, err := db.FindOverdue(s.t.Context(), s.pool, 0, -time.Hour, time.Time{}, 10)
		if err != nil {
			s.t.Fatal(err)
		}
		return len(o.Unheard)+len(o.Unsent) == 0
	})
}

func (s *shop) until(what string, done func() bool) {
	s.t.Helper()
	for end := time.Now().Add(3 * time.Minute); !done(); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			s.t.Fatalf("waited in vain until %s", what)
		}
	}
}

// one scans one row into dest.
func (s *shop) one(sql string, dest ...any) {
	s.t.Helper()
	if err := s.pool.QueryRow(s.t.Context(), sql).Scan(dest...); err != nil {
		s.t.Fatalf("%s: %v", sql, err)
	}
}

// sends are the states of what went out, in order: "sent", "failed:21614".
func (s *shop) sends() string {
	s.t.Helper()
	var states string
	s.one(`SELECT coalesce(string_agg(state || coalesce(':' || error_code, ''), ' ' ORDER BY message_id), '') FROM sends`, &states)
	return states
}

func (s *shop) wantSent(want ...string) {
	s.t.Helper()
	if got := s.carrier.texts(); strings.Join(got, "|") != strings.Join(want, "|") {
		s.t.Errorf("the carrier got %q, want %q", got, want)
	}
}

// record is the only lead's.
func (s *shop) record() (r struct {
	Status   string
	WhyStaff []string `json:"why_staff"`
	Facts    []struct{ Message int }
	Messages []struct {
		N          int
		From, Text string
	}
}) {
	s.t.Helper()
	var raw []byte
	s.one(`SELECT record FROM lead_record`, &raw)
	if err := json.Unmarshal(raw, &r); err != nil {
		s.t.Fatal(err)
	}
	return r
}

// talk is the only lead's messages: "1 customer hello".
func (s *shop) talk() []string {
	s.t.Helper()
	var lines []string
	for _, m := range s.record().Messages {
		lines = append(lines, fmt.Sprintf("%d %s %s", m.N, m.From, m.Text))
	}
	return lines
}

func (s *shop) wantTalk(want ...string) {
	s.t.Helper()
	if got := s.talk(); strings.Join(got, "\n") != strings.Join(want, "\n") {
		s.t.Errorf("the talk is\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
