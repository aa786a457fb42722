package rehearsal

import (
	"cmp"
	"context"
	"errors"
	"runtime"
	"sync"
	"sync/atomic"

	"example.com/intake-bot/internal/conversation"
)

// Options are what a rehearsal is made of.
type Options struct {
	Seed      uint64
	Customers int
	// Only lets a single customer of the run talk; 0: all.
	Only      int
	Shop      *conversation.Shop
	Assistant Assistant
	// AtOnce is how many customers talk at the same time; 0: one a core.
	AtOnce int
	// Progress is told how many customers are done; it may be nil.
	Progress func(done, of int)
}

// Run lets the customers talk, on all cores, and reports. An error means that the
// assistant itself failed, not that a talk went badly.
func Run(ctx context.Context, o Options) (*Report, error) {
	books, err := phrasebooks()
	if err != nil {
		return nil, err
	}
	numbers := make([]int, 0, o.Customers)
	for n := 1; n <= o.Customers; n++ {
		if o.Only == 0 || o.Only == n {
			numbers = append(numbers, n)
		}
	}
	talks, failed := make([]Talk, len(numbers)), make([]error, len(numbers))
	var next atomic.Int64
	var wait sync.WaitGroup
	done := counter{tell: o.Progress, of: len(numbers)}
	for range min(cmp.Or(o.AtOnce, runtime.GOMAXPROCS(0)), len(numbers)) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(numbers) && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				talks[i], failed[i] = newCustomer(o.Seed, numbers[i], books).visit(o.Assistant, o.Shop).play()
				done.add()
			}
		})
	}
	wait.Wait()
	if err := errors.Join(append(failed, ctx.Err())...); err != nil {
		return nil, err
	}
	return newReport(o.Seed, talks), nil
}

// counter tells how far a run is, one step after the other.
type counter struct {
	tell     func(done, of int)
	mu       sync.Mutex
	done, of int
}

func (c *counter) add() {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.done++; c.tell != nil {
		c.tell(c.done, c.of)
	}
}
