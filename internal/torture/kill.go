package torture

import (
	"context"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"time"
)

// Points are those at which the program can end itself: those of internal/intake, and of
// every commit and every call to the carrier.
var Points = []string{
	"before_receive_commit", "after_receive_commit", "before_turn_commit", "after_turn_commit", "before_send_call", "after_send_call",
	"after_send_record", "before_status_commit", "after_status_commit", "before_photo_fetch", "after_photo_fetch", "before_photo_commit",
	"after_photo_commit", "before_mail_call", "after_mail_call", "before_ask_call", "after_ask_call",
	"before_any_commit", "after_any_commit", "before_any_carrier_call", "after_any_carrier_call",
}

// anytime stands for a kill at a random time.
const anytime = "any time"

// Killer kills the bot again and again, at random times and at named points, and starts it
// anew each time.
type Killer struct {
	House *House
	Seed  uint64
	Kills int // how many
	// Only are the points that are tried, each in turn; nil: all.
	Only []string
	Tell func(kills int, by map[string]int) // progress; may be nil

	mu    sync.Mutex
	kills int
	by    map[string]int
}

// Count is how often it killed so far.
func (k *Killer) Count() int {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.kills
}

// By counts kills by where they were.
func (k *Killer) By() map[string]int {
	k.mu.Lock()
	defer k.mu.Unlock()
	return maps.Clone(k.by)
}

// Gate lets turns pass no faster than kills come, so that the kills fall on all of a run
// of so many turns and not on its beginning.
func (k *Killer) Gate(turns, slack int) func(context.Context) error {
	var mu sync.Mutex
	passed := 0
	return func(ctx context.Context) error {
		for {
			kills := k.Count()
			mu.Lock()
			if kills >= k.Kills || passed*k.Kills <= (kills*turns+slack*k.Kills) {
				passed++
				mu.Unlock()
				return nil
			}
			mu.Unlock()
			select {
			case <-ctx.Done():
				return context.Cause(ctx)
			case <-time.After(20 * time.Millisecond):
			}
		}
	}
}

// Run kills until it killed often enough, and leaves a bot that lives.
func (k *Killer) Run(ctx context.Context) {
	dice := rand.New(rand.NewPCG(k.Seed, 7))
	points := k.Only
	if points == nil {
		points = Points
	}
	k.by = map[string]int{}
	for n := 0; k.Count() < k.Kills && ctx.Err() == nil; n++ {
		if n%3 == 2 {
			b := k.House.Begin()
			k.end(ctx, b, time.Duration(dice.IntN(800))*time.Millisecond)
			continue
		}
		p := points[(n-n/3)%len(points)]
		most := 2
		if strings.Contains(p, "_any_") {
			most = 40 // the program's start commits a few times
		}
		b := k.House.Begin(fmt.Sprintf("TORTURE_DIE=%s %d", p, 1+dice.IntN(most)))
		k.end(ctx, b, 2*time.Second+time.Duration(dice.IntN(2000))*time.Millisecond)
	}
	k.House.Open()
}

// end waits until a bot ends itself, and kills it where it has not after a while.
func (k *Killer) end(ctx context.Context, b *Bot, after time.Duration) {
	if b.ready() {
		select {
		case <-b.ended:
		case <-time.After(after):
		case <-ctx.Done():
		}
	}
	b.Kill()
	where := b.point()
	if where == "" {
		where = anytime
	}
	k.mu.Lock()
	k.kills++
	k.by[where]++
	kills, by := k.kills, maps.Clone(k.by)
	k.mu.Unlock()
	if k.Tell != nil {
		k.Tell(kills, by)
	}
}

// Tally is a count by name, one a line.
func Tally(by map[string]int) string {
	var b strings.Builder
	for _, name := range slices.Sorted(maps.Keys(by)) {
		fmt.Fprintf(&b, "\n%6d  %s", by[name], name)
	}
	return b.String()
}
