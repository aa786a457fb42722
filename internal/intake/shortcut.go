package intake

import (
	"context"
	"sync/atomic"
	"time"
)

// shortcut does at once, in this process, what is otherwise asked of the job queue: it saves
// the job's own rows. It rests on what the database says is still to be done; where this
// process dies, the sweep of another finds that.
type shortcut[T any] struct {
	places  chan struct{} // one for each thing that may be done at once
	do      func(ctx context.Context, what T)
	open    atomic.Bool
	closing chan struct{}   // closed when it is to come to an end
	ctx     context.Context // ends when the process can't wait any longer
	cancel  context.CancelFunc
}

func newShortcut[T any](places int, do func(context.Context, T)) *shortcut[T] {
	c := &shortcut[T]{places: make(chan struct{}, places), do: do, closing: make(chan struct{})}
	c.ctx, c.cancel = context.WithCancel(context.Background())
	return c
}

// place is the right to have one thing done here; nil where none was free.
type place[T any] struct {
	shortcut *shortcut[T]
	taken    bool // by what goes on after leave
}

// reserve takes a place if one is free, and work has begun and is not to end.
func (c *shortcut[T]) reserve() *place[T] {
	if !c.open.Load() {
		return nil
	}
	select {
	case c.places <- struct{}{}:
		return &place[T]{shortcut: c}
	default:
		return nil
	}
}

// leave gives the place back, unless it is in use. It may be called on nil.
func (p *place[T]) leave() {
	if p != nil && !p.taken {
		<-p.shortcut.places
	}
}

// take has it done and gives the place back then. On nil it does nothing: a job was asked
// for instead.
func (p *place[T]) take(what T) {
	if p == nil {
		return
	}
	p.taken = true
	go func() {
		defer func() { <-p.shortcut.places }()
		p.shortcut.do(p.shortcut.ctx, what)
	}()
}

// start lets things be done.
func (c *shortcut[T]) start() { c.open.Store(true) }

// stop waits until all that was begun is done. Where ctx ends first, calls are cut off,
// and their results, as far as there are any, are still written.
func (c *shortcut[T]) stop(ctx context.Context) {
	defer c.cancel()
	if !c.open.Swap(false) {
		return
	}
	close(c.closing)
	done := make(chan struct{})
	go func() {
		for range cap(c.places) {
			c.places <- struct{}{} // taken for good
		}
		close(done)
	}()
	select {
	case <-done:
		return
	case <-ctx.Done():
	}
	c.cancel()
	select {
	case <-done:
	case <-time.After(2 * saveTime):
	}
}
