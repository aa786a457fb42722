package intake

import (
	"context"
	"errors"
	"time"
)

// inboxPlaces bounds how many messages may wait here for their turn, most of them for
// their sender to be quiet; the rest have jobs.
const inboxPlaces = 1024

// turnNow is the short cut's way to make the turn of a message that was received here.
// What can't be done now is left to a job.
func (s *Service) turnNow(ctx context.Context, args turnArgs) {
	err := s.turnHere(ctx, args)
	if err == nil {
		return
	}
	var broken *BrainError
	if errors.As(err, &broken) {
		args.Tried++
	}
	if !errors.Is(err, errClosing) && !errors.Is(err, errPhotosFirst) {
		s.log.ErrorContext(ctx, "a turn was cut short; it will be taken up again", "conversation", args.ConversationID, "error", err.Error())
	}
	// Where this fails too, the sweep finds what is left.
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), saveTime)
	defer cancel()
	if _, err := s.queue.Insert(ctx, args, nil); err != nil {
		s.log.ErrorContext(ctx, "no job for a turn; the sweep will find it", "conversation", args.ConversationID,
			"error", err.Error(), "within", (s.opts.SweepEvery + s.opts.QuietCap + turnLate).Round(time.Second).String())
	}
}

// errClosing says that this process makes no more turns.
var errClosing = errors.New("the process ends")

// turnHere waits for the person to be quiet and for a free hand, and makes the turn.
func (s *Service) turnHere(ctx context.Context, args turnArgs) error {
	for wait := args.wait; ; {
		if err := s.sleep(ctx, wait); err != nil {
			return err
		}
		next, mine, err := s.lull(ctx, args)
		if err != nil || !mine {
			return err
		}
		if wait = next; wait <= 0 {
			break
		}
	}
	select {
	case s.hands <- struct{}{}:
		defer func() { <-s.hands }()
	case <-ctx.Done():
		return errClosing
	}
	ctx, cancel := context.WithTimeout(ctx, jobTimeout)
	defer cancel()
	var err error
	_, panicked := guarded("turn", func() (none struct{}, _ error) {
		err = s.turn(ctx, args.ConversationID, s.opts.Photos != nil && !args.AtOnce)
		return none, nil
	})
	if panicked != nil {
		return panicked
	}
	return err
}

// sleep waits, unless the process is to end.
func (s *Service) sleep(ctx context.Context, wait time.Duration) error {
	if wait <= 0 {
		return nil
	}
	t := time.NewTimer(wait)
	defer t.Stop()
	select {
	case <-t.C:
		return nil
	case <-s.inbox.closing:
	case <-ctx.Done():
	}
	return errClosing
}
