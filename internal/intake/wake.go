package intake

import (
	"context"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// workWake speaks up in a talk whose time has come, unless something came in since.
func (s *Service) workWake(ctx context.Context, job *river.Job[wakeArgs]) error {
	return s.hold(ctx, job.Args.ConversationID, func(tx pgx.Tx, h *db.Held) error {
		now := s.now()
		if h.WakeAt == nil || h.WakeAt.After(now) || len(h.Waiting) > 0 {
			return nil
		}
		out, err := guarded("nudge", func() (conversation.Outcome, error) {
			return s.opts.Brain.Nudge(h.Talk, now, s.shop.Load())
		})
		if err != nil {
			return err
		}
		return s.save(ctx, tx, h, out, now)
	})
}
