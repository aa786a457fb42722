package staff

import (
	"context"
	"time"

	"example.com/intake-bot/internal/db"
)

// sweepEvery is how often log-ins that have run out are removed.
const sweepEvery = 10 * time.Minute

// sweep removes log-ins that have run out until the page is closed. The store's own
// sweeper can't be stopped without a data race, so it is left off.
func (s *Server) sweep(ctx context.Context) {
	tick := time.NewTicker(sweepEvery)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
			if err := db.SweepSessions(ctx, s.opts.Pool); err != nil && ctx.Err() == nil {
				s.log.Error("remove log-ins that have run out", "error", err)
			}
		}
	}
}
