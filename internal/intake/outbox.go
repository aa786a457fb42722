package intake

import (
	"context"
	"time"
)

// sendNow is the short cut's way to send what a turn says, right after the turn is saved.
// What can't be sent now is left to a job.
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
