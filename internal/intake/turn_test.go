package intake

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/db"
)

func TestTurnWaitsUntilThePersonIsQuiet(t *testing.T) {
	s := newShop(t, func(o *Options) { o.Quiet, o.QuietCap = time.Second, time.Minute })
	s.start()
	for _, words := range []string{"a", "b", "c"} {
		s.text(words)
		time.Sleep(100 * time.Millisecond) // a person, typing
	}
	s.quiet()
	s.wantTalk("1 customer a", "2 customer b", "3 customer c", "4 bot heard 1:a + 2:b + 3:c")
	if n := s.parrot.turns.Load(); n != 1 {
		t.Errorf("%d turns for one thought in three texts, want 1", n)
	}
}

func TestTurnWaitsNoLongerThanItsCap(t *testing.T) {
	s := newShop(t, func(o *Options) { o.Quiet, o.QuietCap = time.Hour, 300*time.Millisecond })
	s.start()
	s.text("on and on")
	s.quiet()
	s.wantSent("heard 1:on and on")
}

func TestTurnDoesNotMakeAStopWait(t *testing.T) {
	s := newShop(t, func(o *Options) { o.Quiet, o.QuietCap = time.Hour, time.Hour })
	s.start()
	s.text("STOP")
	s.quiet()
	s.wantSent("bye")
}

func TestTurnsAtOnceOnOneTalkGiveOneAnswer(t *testing.T) {
	s := newShop(t, nil)
	s.parrot.slow = 20 * time.Millisecond
	for _, words := range []string{"a", "b", "c", "d", "e"} {
		s.text(words) // five jobs wait
	}
	other, err := New(s.opts) // and two processes take them
	if err != nil {
		t.Fatal(err)
	}
	if err := other.Start(t.Context()); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
		defer cancel()
		if err := other.Stop(ctx); err != nil {
			t.Error(err)
		}
	})
	s.start()
	s.quiet()
	s.wantTalk("1 customer a", "2 customer b", "3 customer c", "4 customer d", "5 customer e",
		"6 bot heard 1:a + 2:b + 3:c + 4:d + 5:e")
	s.wantSent("heard 1:a + 2:b + 3:c + 4:d + 5:e")
	if n := s.parrot.turns.Load(); n != 1 {
		t.Errorf("%d turns, want 1", n)
	}
}

func TestTurnKeepsMessagesThatComeMeanwhile(t *testing.T) {
	s := newShop(t, nil)
	s.parrot.slow = 150 * time.Millisecond
	s.start()
	s.text("first")
	s.until("the turn is at work", func() bool { return s.parrot.turns.Load() == 1 })
	began := time.Now()
	s.text("second") // must neither be lost nor have to wait for the turn
	if took := time.Since(began); took > 120*time.Millisecond {
		t.Logf("keeping a message took %v while a turn was at work", took)
	}
	s.quiet()
	s.wantTalk("1 customer first", "2 bot heard 1:first", "3 customer second", "4 bot heard 3:second")
}

func TestTurnThatCannotBeMade(t *testing.T) {
	for _, words := range []string{"boom", "panic"} {
		t.Run(words, func(t *testing.T) {
			s := newShop(t, nil)
			s.start()
			s.text(words)
			s.quiet()
			r := s.record()
			if r.Status != "needs_person" || len(r.WhyStaff) != 1 || r.WhyStaff[0] != db.WhyTrouble {
				t.Errorf("lead %s, why %v, want that it needs a person because of trouble", r.Status, r.WhyStaff)
			}
			s.wantTalk("1 customer " + words)
			if n := s.parrot.turns.Load(); n != brainTries {
				t.Errorf("tried %d times, want %d", n, brainTries)
			}
			var alerts int
			var leaked bool
			s.one(`SELECT count(*) FROM alerts WHERE reason = 'trouble'`, &alerts)
			s.one(`SELECT coalesce(bool_or(errors::text LIKE '%`+words+`%' AND errors::text NOT LIKE '%panic of type%'), false) FROM river_job`, &leaked)
			if alerts != 1 || leaked {
				t.Errorf("%d alerts, words leaked into the queue's errors: %v; want 1, false", alerts, leaked)
			}
			s.text("still me") // the talk goes on being kept
			s.quiet()
			if got := s.talk(); !strings.Contains(strings.Join(got, "\n"), "2 customer still me") {
				t.Errorf("the next message is missing: %q", got)
			}
		})
	}
}

func TestTurnSaysNothing(t *testing.T) {
	s := newShop(t, nil)
	s.start()
	s.text("nothing")
	s.quiet()
	s.wantTalk("1 customer nothing")
	s.wantSent()
}

func TestTurnAlertsStaff(t *testing.T) {
	s := newShop(t, nil)
	s.start()
	s.text("ready")
	s.quiet()
	var reasons string
	s.one(`SELECT string_agg(reason, ' ') FROM alerts`, &reasons)
	if r := s.record(); reasons != db.AlertLead || r.Status != "ready" {
		t.Errorf("alerts %q, status %s, want %q and ready", reasons, r.Status, db.AlertLead)
	}
}

func TestReminder(t *testing.T) {
	s := newShop(t, func(o *Options) { o.SweepEvery = 50 * time.Millisecond })
	s.start()
	s.text("wait")
	s.quiet()
	s.wantSent("heard 1:wait")
	s.later(time.Hour)
	s.until("the reminder is out", func() bool { return len(s.carrier.texts()) == 2 })
	s.wantSent("heard 1:wait", "still there?")
	s.wantTalk("1 customer wait", "2 bot heard 1:wait", "3 bot still there?")
}

func TestReminderNotWhereTheCustomerWrote(t *testing.T) {
	s := newShop(t, nil)
	s.start()
	s.text("wait")
	s.quiet()
	s.text("here I am")
	s.quiet()
	s.later(2 * time.Hour)
	if err := s.sweep(t.Context(), sweepLate); err != nil {
		t.Fatal(err)
	}
	s.quiet()
	s.wantSent("heard 1:wait", "heard 3:here I am")
}

func TestReminderNotAtNight(t *testing.T) {
	s := newShop(t, nil)
	s.start()
	s.text("wait")
	s.quiet()
	s.later(10 * time.Hour) // ten in the evening
	if err := s.sweep(t.Context(), sweepLate); err != nil {
		t.Fatal(err)
	}
	var wait float64
	s.until("the reminder waits", func() bool {
		s.one(`SELECT coalesce(max(extract(epoch FROM due_at - clock_timestamp())) FILTER (WHERE state = 'queued'), 0) / 3600 FROM sends`, &wait)
		return wait > 1
	})
	s.wantSent("heard 1:wait")
	if wait < 9.9 || wait > 10 {
		t.Errorf("it waits %.2f h, want 10, until eight in the morning", wait)
	}
}

// A reminder that may have gone by day, and turns out at night not to have, waits for the
// morning like any other.
func TestReminderInDoubtNotAtNight(t *testing.T) {
	s := newShop(t, nil)
	s.start()
	s.text("wait")
	s.quiet()
	s.carrier.onSend = func(call int, _ Outgoing) error {
		if call == 2 {
			s.later(9 * time.Hour) // ten in the evening
			return &Failure{Kind: Uncertain, Code: "timeout"}
		}
		return nil
	}
	s.later(time.Hour)
	if err := s.sweep(t.Context(), sweepLate); err != nil {
		t.Fatal(err)
	}
	var wait float64
	s.until("the reminder waits", func() bool {
		if err := s.sweep(t.Context(), sweepAll); err != nil {
			t.Fatal(err)
		}
		s.one(`SELECT coalesce(max(extract(epoch FROM due_at - clock_timestamp())) FILTER (WHERE state = 'queued'), 0) / 3600 FROM sends`, &wait)
		return wait > 1
	})
	s.wantSent("heard 1:wait")
	if wait < 9.9 || wait > 10 {
		t.Errorf("it waits %.2f h, want 10, until eight in the morning", wait)
	}
}
