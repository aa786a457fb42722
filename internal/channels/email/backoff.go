package email

import (
	"context"
	"math/rand/v2"
	"time"
)

// maxPause is the longest that a mailbox or server is left alone after failures.
const maxPause = 5 * time.Minute

// backoff gives pauses that double, each shortened by up to half at random, so that
// many processes don't come back at once.
type backoff struct {
	first time.Duration
	last  time.Duration
}

func (b *backoff) next() time.Duration {
	b.last = min(max(2*b.last, b.first), maxPause)
	return b.last/2 + rand.N(b.last/2+1)
}

func (b *backoff) reset() { b.last = 0 }

func sleep(ctx context.Context, d time.Duration) {
	t := time.NewTimer(d)
	defer t.Stop()
	select {
	case <-t.C:
	case <-ctx.Done():
	}
}
