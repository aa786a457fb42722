package torture_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"sync"
	"testing"
	"time"

	carrier "example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/torture"
)

func TestMain(m *testing.M) {
	code := m.Run()
	torture.Clear()
	os.Exit(code)
}

// faulty fails a part of the sends in all the ways in which a carrier can.
func faulty(seed uint64, share float64) func(carrier.Message) (carrier.Fault, bool) {
	var mu sync.Mutex
	dice := rand.New(rand.NewPCG(seed, 3))
	faults := []carrier.Fault{carrier.ResetBefore, carrier.ResetAfter, carrier.LostAnswer, carrier.BadGateway, carrier.ServerError, carrier.TooMany,
		carrier.Slow(300 * time.Millisecond)}
	return func(carrier.Message) (carrier.Fault, bool) {
		mu.Lock()
		defer mu.Unlock()
		if dice.Float64() >= share {
			return carrier.Fault{}, false
		}
		return faults[dice.IntN(len(faults))], true
	}
}

// run is one run of a number of customers, disturbed or not.
type run struct {
	seed      uint64
	customers []torture.Customer
}

func script(t *testing.T, seed uint64, n int) run {
	t.Helper()
	leftOut(t)
	customers, err := torture.Script(t.Context(), seed, n)
	if err != nil {
		t.Fatal(err)
	}
	return run{seed, customers}
}

// leftOut ends a test in a short run: each of these starts servers and bots.
func leftOut(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("a short run hurts nobody")
	}
}

// calm plays without any trouble.
func (r run) calm(t *testing.T) torture.Remains {
	t.Helper()
	url := dbtest.URL(t)
	h := torture.NewHouse(t, url, url)
	h.Open()
	p := torture.Play{House: h, Customers: r.customers, Seed: r.seed, AtOnce: 24}
	if err := p.Run(t.Context()); err != nil {
		t.Fatal(err)
	}
	left, _, wrong := h.Remains(t.Context(), r.customers)
	for _, w := range wrong {
		t.Errorf("undisturbed: %s", w)
	}
	if t.Failed() {
		t.FailNow()
	}
	return left
}

// compare holds what is left against an undisturbed run, where there is one.
func compare(t *testing.T, h *torture.House, customers []torture.Customer, want torture.Remains) torture.Unknown {
	t.Helper()
	got, unknown, wrong := h.Remains(t.Context(), customers)
	if want != nil {
		wrong = append(wrong, want.Differ(got)...)
	}
	for _, w := range wrong {
		t.Error(w)
	}
	return unknown
}

// killed plays while the bot is killed.
func (r run) killed(t *testing.T, kills, least int, faults float64, want torture.Remains) {
	t.Helper()
	url := dbtest.URL(t)
	h := torture.NewHouse(t, url, url)
	h.Carrier.FailBy(faulty(r.seed, faults))
	h.Carrier.SetCallbacks(carrier.Callbacks{Order: []string{"sent", "delivered", "queued"}, Repeat: 1})
	turns := 0
	for _, c := range r.customers {
		turns += len(c.Turns)
	}
	began := time.Now()
	p := torture.Play{House: h, Customers: r.customers, Seed: r.seed, AtOnce: 64, Repeat: 0.1}
	k := &torture.Killer{House: h, Seed: r.seed, Kills: kills, Tell: func(n int, by map[string]int) {
		if n%25 == 0 {
			fmt.Printf("%s: %d of %d kills, %d of %d turns\n", time.Since(began).Round(time.Second), n, kills, p.Done(), turns)
		}
	}}
	p.Gate = k.Gate(turns, min(24, turns/8))
	var killing sync.WaitGroup
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	killing.Go(func() { k.Run(ctx) })
	err := p.Run(t.Context())
	cancel()
	killing.Wait()
	if err != nil {
		t.Fatal(err)
	}
	unknown := compare(t, h, r.customers, want)
	t.Logf("seed %d: %d customers, %d turns, %d kills in %s; of %d mails nobody can tell whether they went (%d did). Kills by where:%s",
		r.seed, len(r.customers), turns, k.Count(), time.Since(began).Round(time.Second), unknown.Mails, unknown.Went, torture.Tally(k.By()))
	if k.Count() < least {
		t.Errorf("only %d kills, of %d at the least", k.Count(), least)
	}
}

// The same customers, undisturbed and with the bot killed under them: the same leads,
// facts and messages, each message answered once.
func TestKilled(t *testing.T) {
	r := script(t, 11, 10)
	r.killed(t, 20, 10, 0.03, r.calm(t)) // how many there is time for hangs on the machine
}

// atLength leaves out what takes minutes, unless make torture runs it.
func atLength(t *testing.T) {
	t.Helper()
	if os.Getenv("TORTURE") == "" {
		t.Skip("make torture runs it")
	}
}

// number is one of the environment's, for the long run.
func number(t *testing.T, name string, otherwise int) int {
	t.Helper()
	text := os.Getenv(name)
	if text == "" {
		return otherwise
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return n
}

// The long run.
func TestKilledForLong(t *testing.T) {
	atLength(t)
	r := script(t, uint64(number(t, "SEED", 1)), number(t, "CUSTOMERS", 300))
	kills := number(t, "KILLS", 500)
	r.killed(t, kills, kills, 0.03, r.calm(t))
}
