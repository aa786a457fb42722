package intake

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// workWake speaks up in a talk whose time has come, unless something came in since.
func (s *Service) workWake(ctx context.Context, job *river.Job[wakeArgs]) error {
	return s.speak(ctx, job.Args.ConversationID, func(_ pgx.Tx, h *db.Held, now time.Time) (spoken, error) {
		if h.WakeAt == nil || h.WakeAt.After(now) || len(h.Waiting) > 0 {
			return spoken{}, nil
		}
		out, err := guarded("nudge", func() (conversation.Outcome, error) {
			return s.opts.Brain.Nudge(h.Talk, now, s.shop.Load())
		})
		return spoken{h, out, true}, err
	})
}
