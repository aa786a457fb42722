package torture_test

import (
	"slices"
	"sync"
	"testing"
	"time"

	carrier "example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/torture"
)

// limit is what stopping may take: the program's own limit and what results get to be kept.
const limit = 40 * time.Second

// Told to stop in the middle of everything, the bot says so, ends in time with status 0 and
// leaves nothing half done; the next one goes on. Then the carrier hangs while it stops:
// what it took by then is not sent again.
func TestStoppedInTheMiddle(t *testing.T) {
	r, want := theCrowd(t)
	url := dbtest.URL(t)
	h := torture.NewHouse(t, url, url)
	b := h.Open()
	var hanging sync.Once
	r.disturbed(t, h, want,
		func() {
			stop(t, b)
			// Nothing is half done: no send without its result, no job that somebody is at.
			if n := h.Count(t.Context(), `SELECT (SELECT count(*) FROM sends WHERE state = 'sending') +
				(SELECT count(*) FROM river_job WHERE state = 'running')`); n != 0 {
				t.Errorf("%d things are half done", n)
			}
			b = h.Open("TORTURE_DRAIN=1s")
		},
		func() {
			h.Carrier.FailBy(func(carrier.Message) (carrier.Fault, bool) {
				hung := false
				hanging.Do(func() { hung = true })
				return carrier.Slow(20 * time.Second), hung
			})
			torture.Until(t, "a send hangs", func() bool {
				return h.Count(t.Context(), `SELECT count(*) FROM sends WHERE state = 'sending' AND claimed_at < clock_timestamp() - interval '1 second'`) > 0
			})
			stop(t, b)
			b = h.Open()
		})
}

func stop(t *testing.T, b *torture.Bot) {
	t.Helper()
	took, err := b.Stop()
	if err != nil || took > limit {
		t.Errorf("stopped after %s: %v", took, err)
	}
	t.Logf("stopped after %s", took.Round(time.Millisecond))
}

// While it says goodbye, readiness is red and messages are still taken.
func TestReadinessIsRedBeforeTheDoorCloses(t *testing.T) {
	leftOut(t)
	url := dbtest.URL(t)
	h := torture.NewHouse(t, url, url)
	b := h.Open("STOP_WAIT=3s")
	if status, said := b.Ready("/readyz/all"); status != 200 {
		t.Fatalf("%d: %s", status, said)
	}
	ended := make(chan error)
	go func() { _, err := b.Stop(); ended <- err }()
	b.Red("stopping")
	if _, err := h.Carrier.Text(t.Context(), "+12185550160", "anybody there?"); err != nil {
		t.Errorf("a text after that: %v", err)
	}
	if err := <-ended; err != nil {
		t.Error(err)
	}
	if n := h.Count(t.Context(), `SELECT count(*) FROM messages WHERE direction = 'in'`); n != 1 {
		t.Errorf("%d texts kept", n)
	}
}

// Two machines whose clocks are wrong in different ways: the database's clock is gone by,
// so nobody is answered hours later and no message bears a wrong time.
func TestMachinesWithWrongClocks(t *testing.T) {
	atLength(t)
	r, want := theCrowd(t)
	url := dbtest.URL(t)
	h := torture.NewHouse(t, url, url)
	h.Open("TORTURE_CLOCK=7h")
	h.Open("TORTURE_CLOCK=-40m")
	h.Carrier.FailBy(faulty(9, 0.1)) // so that things are put off
	p := &torture.Play{House: h, Customers: r.customers, Seed: r.seed}
	began := time.Now()
	if err := p.Run(t.Context()); err != nil {
		t.Fatal(err)
	}
	compare(t, h, r.customers, want)
	wrong := h.Count(t.Context(), `SELECT count(*) FROM messages WHERE at NOT BETWEEN $1::timestamptz - interval '1 minute' AND clock_timestamp() + interval '1 minute'`, began)
	if wrong != 0 {
		t.Errorf("%d messages bear a wrong time", wrong)
	}
	if n := h.Count(t.Context(), `SELECT count(*) FROM river_job WHERE scheduled_at > clock_timestamp() + interval '20 minutes'`); n != 0 {
		t.Errorf("%d jobs are put off for hours", n)
	}
}

// The order of a talk is kept where two bots share it and one is killed again and again.
func TestTwoBotsOneKilled(t *testing.T) {
	r, want := theCrowd(t)
	url := dbtest.URL(t)
	h := torture.NewHouse(t, url, url)
	h.Open()
	other := h.Open()
	again := func() {
		other.Kill()
		other = h.Open()
	}
	r.disturbed(t, h, want, slices.Repeat([]func(){again}, 4)...)
}
