package intake

import (
	"context"
	"sync"
	"time"
)

// outbox sends what a turn says right after the turn is saved, in the process that made
// it. It is a short cut only: what waits to be sent stands in the database, and where
// this process dies, the sweep of another finds it.
type outbox struct {
	places  chan struct{} // one for each talk that may be sent at once
	send    func(ctx context.Context, conversationID int64)
	ctx     context.Context // ends when the process can't wait any longer
	cancel  context.CancelFunc
	working sync.WaitGroup
}

func newOutbox(places int, send func(context.Context, int64)) *outbox {
	o := &outbox{places: make(chan struct{}, places), send: send}
	o.ctx, o.cancel = context.WithCancel(context.Background())
	return o
}

// place is the right to send one talk's messages; nil where none was free.
type place struct {
	outbox *outbox
	taken  bool // by a send that goes on after leave
}

// reserve takes a place if one is free.
func (o *outbox) reserve() *place {
	select {
	case o.places <- struct{}{}:
		return &place{outbox: o}
	default:
		return nil
	}
}

// leave gives the place back, unless it is in use. It may be called on nil.
func (p *place) leave() {
	if p != nil && !p.taken {
		<-p.outbox.places
	}
}

// send sends what waits in a talk and gives the place back when that is done. On nil it
// does nothing: a job was asked for instead.
func (p *place) send(conversationID int64) {
	if p == nil {
		return
	}
	p.taken = true
	p.outbox.working.Go(func() {
		defer func() { <-p.outbox.places }()
		p.outbox.send(p.outbox.ctx, conversationID)
	})
}

// stop waits until all that was begun is done. Where ctx ends first, calls are cut off,
// and their results, as far as there are any, are still written.
func (o *outbox) stop(ctx context.Context) {
	done := make(chan struct{})
	go func() {
		o.working.Wait()
		close(done)
	}()
	select {
	case <-done:
	case <-ctx.Done():
		o.cancel()
		<-done
	}
	o.cancel()
}

// sendNow is the short cut's way to send. What can't be sent now is left to a job.
func (s *Service) sendNow(ctx context.Context, conversationID int64) {
	wait, err := guarded("send", func() (time.Duration, error) { return s.sendAll(ctx, conversationID) })
	if err == nil && wait == 0 {
		return
	}
	if err != nil {
		s.log.ErrorContext(ctx, "sending was cut short; it will be taken up again", "conversation", conversationID, "error", err.Error())
	}
	// Where this fails too, the sweep finds what is left.
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), saveTime)
	defer cancel()
	if _, err := s.queue.Insert(ctx, sendArgs{ConversationID: conversationID}, nil); err != nil {
		s.log.ErrorContext(ctx, "no job for what is left to be sent; the sweep will find it",
			"conversation", conversationID, "error", err.Error(), "within", (s.opts.SweepEvery + s.opts.Lease).Round(time.Second).String())
	}
}
