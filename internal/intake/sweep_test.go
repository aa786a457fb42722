package intake

import (
	"context"
	"testing"
	"time"

	"example.com/intake-bot/internal/conversation"
)

func TestSweepAsksForWhatIsLateAlone(t *testing.T) {
	s := newShop(t, nil)
	s.text("hello")
	jobs := func() (n int) {
		s.one(`SELECT count(*) FROM river_job`, &n)
		return n
	}
	forget := func() {
		t.Helper()
		if _, err := s.pool.Exec(t.Context(), `DELETE FROM river_job`); err != nil {
			t.Fatal(err)
		}
	}
	forget()
	for _, c := range []struct {
		what   string
		change string
		jobs   int
	}{
		{"a message just received", `SELECT`, 0},
		{"one that was received two minutes ago", `UPDATE messages SET received_at = now() - interval '2 minutes'`, 1},
		{"none that waits", `UPDATE messages SET n = 1, handled_at = now(); UPDATE conversations SET last_n = 1`, 0},
		{"a send that is just due", `WITH m AS (INSERT INTO messages (conversation_id, n, direction, author, channel, address, text, at)
			VALUES (1, 2, 'out', 'bot', 'sms', 'x', 'hi', now()) RETURNING id)
			INSERT INTO sends (message_id, conversation_id, channel, kind) SELECT id, 1, 'sms', 'reply' FROM m`, 0},
		{"one that was due two minutes ago", `UPDATE sends SET due_at = now() - interval '2 minutes'`, 1},
		{"one that is done", `UPDATE sends SET state = 'held', error_code = 'x', finished_at = now()`, 0},
		{"a reminder that is due", `UPDATE conversations SET wake_at = '2026-03-02T17:59:59Z'`, 1},
		{"a reminder that is not", `UPDATE conversations SET wake_at = '2026-03-02T18:00:01Z'`, 0},
	} {
		if _, err := s.pool.Exec(t.Context(), c.change); err != nil {
			t.Fatalf("%s: %v", c.what, err)
		}
		if err := s.sweep(t.Context(), sweepLate); err != nil {
			t.Fatal(err)
		}
		if got := jobs(); got != c.jobs {
			t.Errorf("%s: %d jobs, want %d", c.what, got, c.jobs)
		}
		forget()
	}
}

func TestStartTakesUpWhatNoJobIsLeftFor(t *testing.T) {
	s := newShop(t, nil)
	s.text("hello")
	if _, err := s.pool.Exec(t.Context(), `DELETE FROM river_job`); err != nil {
		t.Fatal(err)
	}
	s.start()
	s.quiet()
	s.wantSent("heard 1:hello")
}

func TestOutboxWithoutAPlaceLeavesItToAJob(t *testing.T) {
	s := newShop(t, func(o *Options) { o.SendWorkers = 1 })
	hold := make(chan struct{})
	s.carrier.onSend = nil
	slow := slowSender{s.carrier, phone, hold}
	s.opts.Senders[conversation.SMS] = slow
	s.start()
	s.text("hello")
	s.until("the first is on its way", func() bool { return s.sends() == "sending" })
	s.receive(Inbound{Channel: conversation.SMS, ID: "other", From: "+12185550124", Text: "hi"})
	s.until("the second talk was answered meanwhile", func() bool { return s.sends() == "sending sent" })
	close(hold)
	s.quiet()
}

// slowSender holds up what goes to one number.
type slowSender struct {
	*carrier
	to   string
	hold chan struct{}
}

func (c slowSender) Send(ctx context.Context, m Outgoing) (string, error) {
	if m.To.Address == c.to {
		select {
		case <-c.hold:
		case <-ctx.Done():
			return "", ctx.Err()
		}
	}
	return c.carrier.Send(ctx, m)
}

func TestStopCutsOffWhatDoesNotEnd(t *testing.T) {
	s := newShop(t, func(o *Options) { o.Lease = time.Minute })
	s.opts.Senders[conversation.SMS] = slowSender{s.carrier, phone, make(chan struct{})}
	if err := s.Start(t.Context()); err != nil {
		t.Fatal(err)
	}
	s.text("hello")
	s.until("the text is on its way", func() bool { return s.sends() == "sending" })
	ctx, cancel := context.WithTimeout(t.Context(), 100*time.Millisecond)
	defer cancel()
	if err := s.Stop(ctx); err != nil {
		t.Fatal(err)
	}
	if got := s.sends(); got != "sending:uncertain" {
		t.Errorf("sends %q, want that it is in doubt", got)
	}
}

// A program that dies at each start must not pile up jobs: what has one waiting gets no other.
func TestSweepAsksOnce(t *testing.T) {
	s := newShop(t, nil)
	s.text("hello")
	if err := s.sweep(t.Context(), sweepAll); err != nil {
		t.Fatal(err)
	}
	var jobs int
	s.one(`SELECT count(*) FROM river_job WHERE kind = 'turn'`, &jobs)
	if jobs != 1 {
		t.Errorf("%d jobs for one message that waits", jobs)
	}
	// A job that a dead process was at counts for nothing.
	s.one(`WITH dead AS (UPDATE river_job SET state = 'running', attempted_at = now() WHERE kind = 'turn' RETURNING 1) SELECT count(*) FROM dead`, &jobs)
	for range 3 {
		if err := s.sweep(t.Context(), sweepAll); err != nil {
			t.Fatal(err)
		}
	}
	s.one(`SELECT count(*) FROM river_job WHERE kind = 'turn' AND state = 'available'`, &jobs)
	if jobs != 1 {
		t.Errorf("after three starts %d jobs wait for one message", jobs)
	}
}
