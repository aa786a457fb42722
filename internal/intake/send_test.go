package intake

import (
	"errors"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

func TestSendFailures(t *testing.T) {
	fail := func(kind FailureKind, code string) error { return &Failure{Kind: kind, Code: code} }
	for _, c := range []struct {
		what     string
		onSend   error // of the first call
		sends    string
		sent     []string
		status   string
		why      string
		alert    string
		optedOut bool
	}{
		{"a temporary error: tried again", fail(Temporary, "429"), "sent sent", []string{"one", "two"}, "open", "", "", false},
		{"unsubscribed at the carrier: an opt-out", fail(Unsubscribed, "21610"), "failed:21610 held:opted_out", nil, "closed", "", "", true},
		{"a landline: a person must find another way", fail(Unreachable, "21614"), "failed:21614 held:21614", nil,
			"needs_person", conversation.WhyNoTexts, db.AlertUnreachable, false},
		{"refused: staff are told, the next is tried", fail(Refused, "30007"), "failed:30007 sent", []string{"two"},
			"open", "", db.AlertNotSent, false},
		{"nobody knows, and the provider has it not: sent again", fail(Uncertain, ""), "sent sent", []string{"one", "two"}, "open", "", "", false},
		{"an error of no kind may have been sent", errors.New("connection reset"), "sent sent", []string{"one", "two"}, "open", "", "", false},
	} {
		t.Run(c.what, func(t *testing.T) {
			s := newShop(t, nil)
			s.carrier.onSend = func(call int, _ Outgoing) error {
				if call == 1 {
					return c.onSend
				}
				return nil
			}
			s.start()
			s.text("twice")
			s.quiet()
			s.wantSent(c.sent...)
			r := s.record()
			why := strings.Join(r.WhyStaff, " ")
			var alerts string
			s.one(`SELECT coalesce(string_agg(reason, ' '), '') FROM alerts`, &alerts)
			if got := s.sends(); got != c.sends || r.Status != c.status || why != c.why || alerts != c.alert {
				t.Errorf("sends %q, status %s, why %q, alerts %q; want %q, %s, %q, %q",
					got, r.Status, why, alerts, c.sends, c.status, c.why, c.alert)
			}
			out, err := db.OptedOut(t.Context(), s.pool, db.Address{Channel: conversation.SMS, Address: phone})
			if err != nil || out != c.optedOut {
				t.Errorf("opted out %v, %v, want %v", out, err, c.optedOut)
			}
		})
	}
}

func TestSendThatWentThoughNobodyHeard(t *testing.T) {
	s := newShop(t, nil)
	s.carrier.after = func(call int, _ Outgoing) error {
		if call == 1 {
			return &Failure{Kind: Uncertain, Code: "timeout"}
		}
		return nil
	}
	s.start()
	s.text("twice")
	s.quiet()
	s.wantSent("one", "two") // each once: the provider was asked
	if got := s.sends(); got != "sent sent" || s.carrier.finds != 1 {
		t.Errorf("sends %q after %d questions, want both sent after 1", got, s.carrier.finds)
	}
}

func TestSendOfTheSameWordsAgain(t *testing.T) {
	s := newShop(t, nil)
	s.start()
	s.text("hello") // 1; answer is 2
	s.quiet()
	s.carrier.onSend = func(call int, _ Outgoing) error {
		if call == 2 {
			return &Failure{Kind: Uncertain, Code: "timeout"}
		}
		return nil
	}
	if _, err := s.pool.Exec(t.Context(), `UPDATE conversations SET last_n = last_n`); err != nil {
		t.Fatal(err)
	}
	// The same words as before, which the provider has: that is the earlier message.
	const again = `WITH m AS (INSERT INTO messages (conversation_id, n, direction, author, channel, address, text, at)
		VALUES (1, 3, 'out', 'bot', 'sms', '` + phone + `', 'heard 1:hello', now()) RETURNING id)
		INSERT INTO sends (message_id, conversation_id, channel, kind) SELECT id, 1, 'sms', 'reply' FROM m`
	if _, err := s.pool.Exec(t.Context(), again); err != nil {
		t.Fatal(err)
	}
	if err := s.sweep(t.Context(), sweepAll); err != nil {
		t.Fatal(err)
	}
	s.quiet()
	s.wantSent("heard 1:hello", "heard 1:hello")
	if got := s.sends(); got != "sent sent" {
		t.Errorf("sends %q, want both sent", got)
	}
}

func TestSendThatNobodyCanTell(t *testing.T) {
	for _, c := range []struct {
		what  string
		find  error
		finds int
	}{
		{"a channel without a list", ErrCantTell, 1},
		{"a provider that never answers", errors.New("unavailable"), mostChecks},
	} {
		t.Run(c.what, func(t *testing.T) {
			s := newShop(t, func(o *Options) { o.Lease = 20 * time.Millisecond })
			s.carrier.after = func(call int, _ Outgoing) error {
				if call == 1 {
					return &Failure{Kind: Uncertain, Code: "timeout"}
				}
				return nil
			}
			s.carrier.onFind = func(int) error { return c.find }
			s.start()
			s.text("twice")
			s.quiet()
			s.wantSent("one", "two") // "one" is not sent again
			var alerts string
			s.one(`SELECT string_agg(reason, ' ') FROM alerts`, &alerts)
			if got := s.sends(); got != "unknown:unknown sent" || alerts != db.AlertSendUnknown || s.carrier.finds != c.finds {
				t.Errorf("sends %q, alerts %q, asked %d times; want unknown, %q, %d", got, alerts, s.carrier.finds, db.AlertSendUnknown, c.finds)
			}
		})
	}
}

func TestSendGivesUp(t *testing.T) {
	s := newShop(t, func(o *Options) { o.GiveUpAfter = time.Nanosecond })
	s.carrier.onSend = func(int, Outgoing) error { return &Failure{Kind: Temporary, Code: "503"} }
	s.start()
	s.text("hello")
	s.quiet()
	if got := s.sends(); got != "failed:503" {
		t.Errorf("sends %q, want that it failed", got)
	}
}

func TestSendKeepsTheOrder(t *testing.T) {
	s := newShop(t, nil)
	s.carrier.onSend = func(call int, m Outgoing) error {
		if m.Text == "one" && call == 1 {
			return &Failure{Kind: Temporary, Code: "503", RetryAfter: 50 * time.Millisecond}
		}
		return nil
	}
	s.start()
	s.text("twice")
	s.until("the first was tried", func() bool { return s.sends() == "queued:503 queued" })
	s.text("and me") // its answer must not overtake the two
	s.quiet()
	s.wantSent("one", "two", "heard 4:and me")
}

func TestSendAfterAnOptOut(t *testing.T) {
	s := newShop(t, nil)
	hold := make(chan struct{})
	s.carrier.onSend = func(call int, _ Outgoing) error {
		if call == 1 {
			<-hold // the first text is on its way when STOP comes
		}
		return nil
	}
	s.start()
	s.text("twice")
	s.until("the first is on its way", func() bool { return s.sends() == "sending queued" })
	s.text("STOP")
	close(hold)
	s.quiet()
	s.wantSent("one", "bye") // "two" is not sent; the confirmation is
	if got := s.sends(); got != "sent held:opted_out sent" {
		t.Errorf("sends %q, want the second held", got)
	}
	s.text("hello?")
	s.quiet()
	if got := s.carrier.texts(); len(got) != 2 {
		t.Errorf("sent %q to somebody who opted out", got)
	}
	s.text("START")
	s.quiet()
	if got := s.carrier.texts(); len(got) != 3 {
		t.Errorf("sent %q, want an answer after START", got)
	}
}

func TestSendInDoubtAfterAnOptOut(t *testing.T) {
	s := newShop(t, nil)
	s.carrier.onSend = func(call int, _ Outgoing) error {
		if call == 1 {
			return &Failure{Kind: Uncertain, Code: "timeout"} // the provider has it not
		}
		return nil
	}
	s.start()
	s.text("hello")
	s.until("the text is in doubt", func() bool { return s.sends() == "sending:timeout" })
	s.text("STOP")
	s.quiet()
	s.wantSent("bye")
}

func TestSendHeldFromTheMomentThatStopIsKept(t *testing.T) {
	s := newShop(t, nil)
	s.text("twice")
	s.text("STOP") // both wait; no job has run yet
	if _, err := s.pool.Exec(t.Context(), `DELETE FROM messages WHERE text = 'STOP'`); err != nil {
		t.Fatal(err) // its turn shall not be what holds the texts
	}
	s.start()
	s.quiet()
	s.wantSent()
	if got := s.sends(); got != "held:opted_out held:opted_out" {
		t.Errorf("sends %q, want both held", got)
	}
}

func TestOptOutInOtherWords(t *testing.T) {
	s := newShop(t, nil)
	s.start()
	s.text("leave me alone")
	s.quiet()
	var source string
	s.one(`SELECT source FROM optouts WHERE lifted_at IS NULL`, &source)
	s.wantSent("bye")
	if source != string(db.OptOutTalk) {
		t.Errorf("source %q, want %q", source, db.OptOutTalk)
	}
}

func TestStatusesInAnyOrder(t *testing.T) {
	s := newShop(t, nil)
	report := func(id, word, code string, kind FailureKind) {
		t.Helper()
		if err := s.ReceiveStatus(t.Context(), Status{Channel: conversation.SMS, ID: id, Word: word, Code: code, Kind: kind}); err != nil {
			t.Fatal(err)
		}
	}
	report("OUT1", "undelivered", "30006", Unreachable) // before we know that id ourselves
	report("OUT1", "sent", "", "")
	report("OUT1", "undelivered", "30006", Unreachable) // again
	s.start()
	s.text("hello")
	s.quiet()
	s.until("the lead is marked", func() bool { return slices.Contains(s.record().WhyStaff, conversation.WhyNoTexts) })
	statuses, err := db.StatusesOf(t.Context(), s.pool, conversation.SMS, "OUT1")
	if err != nil || len(statuses) != 2 || statuses[0].Status != "undelivered" || statuses[1].Status != "sent" {
		t.Errorf("statuses %+v, %v, want undelivered and sent, each once", statuses, err)
	}
	if r := s.record(); r.Status != "needs_person" {
		t.Errorf("status %s, want needs_person", r.Status)
	}
}

func TestStopInTheMiddleFinishesWhatItBegan(t *testing.T) {
	s := newShop(t, nil)
	began, hold := make(chan struct{}), make(chan struct{})
	s.carrier.onSend = func(call int, _ Outgoing) error {
		if call == 1 {
			close(began)
			<-hold
		}
		return nil
	}
	if err := s.Start(t.Context()); err != nil {
		t.Fatal(err)
	}
	s.text("hello")
	<-began
	time.AfterFunc(100*time.Millisecond, func() { close(hold) })
	if err := s.Stop(t.Context()); err != nil {
		t.Fatal(err)
	}
	if got := s.sends(); got != "sent" {
		t.Errorf("sends %q after a stop in the middle, want it recorded", got)
	}
}

func TestSendWaits(t *testing.T) {
	for _, c := range []struct {
		n     int
		asked time.Duration
		want  time.Duration
	}{
		{1, 0, 2 * time.Second}, {2, 0, 4 * time.Second}, {5, 0, 32 * time.Second}, {100, 0, longestWait},
		{1, time.Minute, time.Minute}, {1, 24 * time.Hour, longestWait}, {0, 0, 2 * time.Second},
	} {
		if got := sendWait(c.n, c.asked); got != c.want {
			t.Errorf("after %d tries, asked to wait %v: %v, want %v", c.n, c.asked, got, c.want)
		}
	}
}

// A process that stands still between its claim and its call finds, when it goes on, that
// another has sent the message.
func TestSendNotAfterStandingStill(t *testing.T) {
	stands, goesOn := make(chan struct{}), make(chan struct{})
	var once sync.Once
	s := newShop(t, func(o *Options) {
		o.Lease = 500 * time.Millisecond
		o.Step = func(p Point) {
			if p == BeforeSendCall {
				once.Do(func() { close(stands); <-goesOn })
			}
		}
	})
	s.start()
	s.text("hello")
	<-stands
	opts := s.opts
	opts.Step = nil
	other, err := New(opts)
	if err != nil {
		t.Fatal(err)
	}
	s.until("the other has sent it", func() bool {
		if _, err := other.sendAll(t.Context(), 1); err != nil {
			t.Fatal(err)
		}
		return s.sends() == "sent"
	})
	close(goesOn)
	s.outbox.stop(t.Context()) // once what was begun is done
	s.wantSent("heard 1:hello")
}
