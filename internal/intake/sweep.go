package intake

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/db"
)

// sweepLimit bounds how many talks one sweep takes up; the next takes more.
const sweepLimit = 1000

// sweepAll is the margin of the sweep at the start: all that waits is taken up, what is
// not yet due too, for its job may have died with another process.
const sweepAll = -longestWait

// sweepLate is the margin of later ones: by then its own job has failed it.
const sweepLate = time.Minute

// turnLate is the margin for turns, since most have no job: by then the process that
// received the message has made it, or never will.
const turnLate = 10 * time.Second

// workSweep looks for what is overdue. One process of all does it at a time.
func (s *Service) workSweep(ctx context.Context, _ *river.Job[sweepArgs]) error {
	return errors.Join(s.sweep(ctx, sweepLate), s.tellAll(ctx))
}

// sweep asks for the turns, sends and reminders that should have been made more than
// margin ago. A job too many does no harm: it finds nothing to do.
func (s *Service) sweep(ctx context.Context, margin time.Duration) error {
	unheard := time.Duration(0)
	if margin > 0 {
		unheard = min(margin, turnLate) + s.opts.QuietCap
	}
	o, err := db.FindOverdue(ctx, s.opts.Pool, unheard, min(margin, s.opts.Lease), s.now(), sweepLimit)
	if err == nil {
		o, err = db.Unasked(ctx, s.opts.Pool, o)
	}
	if err != nil {
		return err
	}
	jobs := make([]river.InsertManyParams, 0, len(o.Unheard)+len(o.Unsent)+len(o.Asleep))
	for _, u := range o.Unheard {
		jobs = append(jobs, river.InsertManyParams{Args: turnArgs{ConversationID: u.ConversationID, MessageID: u.MessageID}})
	}
	for _, id := range o.Unsent {
		jobs = append(jobs, river.InsertManyParams{Args: sendArgs{ConversationID: id}})
	}
	for _, id := range o.Asleep {
		jobs = append(jobs, river.InsertManyParams{Args: wakeArgs{ConversationID: id}})
	}
	if len(jobs) == 0 {
		return nil
	}
	if _, err := s.queue.InsertManyFast(ctx, jobs); s.kept(err) != nil {
		return fmt.Errorf("ask for what is overdue: %w", err)
	}
	return nil
}

// sweepPhotos asks for photos that a dead process was at to be opened: the queue itself
// finds out only when their time is up, and a turn does not wait that long.
func (s *Service) sweepPhotos(ctx context.Context) error {
	if s.opts.Photos == nil {
		return nil
	}
	ids, err := db.PhotosLeft(ctx, s.opts.Pool, photoArgs{}.Kind(), sweepLimit)
	if err != nil || len(ids) == 0 {
		return err
	}
	jobs := make([]river.InsertManyParams, 0, len(ids))
	for _, id := range ids {
		jobs = append(jobs, river.InsertManyParams{Args: photoArgs{PhotoID: id}})
	}
	if _, err := s.queue.InsertManyFast(ctx, jobs); err != nil {
		return fmt.Errorf("ask for photos that are left: %w", err)
	}
	return nil
}
