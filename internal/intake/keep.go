package intake

import (
	"context"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/db"
)

// Keeping is how long things are kept, as the owner wants it; 0 is for good.
type Keeping struct {
	Talks  time.Duration // with their leads, since the last word and the last deed of staff
	Photos time.Duration // since they were opened
	Mail   time.Duration // as it came; its words and photos stay with the talk
}

// DefaultKeeping lets go of nothing but mail as it came, which is kept for staff to look
// at where its reading is in doubt.
func DefaultKeeping() Keeping { return Keeping{Mail: 30 * 24 * time.Hour} }

// SetKeeping puts other times in force.
func (s *Service) SetKeeping(k Keeping) { s.keeping.Store(&k) }

// keepArgs ask to let go of what is old.
type keepArgs struct{}

func (keepArgs) Kind() string { return "keep" }
func (keepArgs) InsertOpts() river.InsertOpts {
	return river.InsertOpts{Queue: turnQueue, MaxAttempts: 1}
}

const (
	keepEvery = time.Hour
	// keepAtOnce bounds one statement, keepRounds how many a job makes: what is left then is
	// let go of an hour later.
	keepAtOnce = 200
	keepRounds = 50
)

// workKeep lets go of what is older than the owner wants it kept. One process of all does
// it at a time.
func (s *Service) workKeep(ctx context.Context, _ *river.Job[keepArgs]) error {
	k, now := s.keeping.Load(), s.now()
	pool := s.opts.Pool
	return errors.Join(
		letGo(k.Mail, now, func(before time.Time) (int, error) { return db.FadeMail(ctx, pool, before, keepAtOnce) }),
		letGo(k.Mail, now, func(before time.Time) (int, error) { return db.FadeSends(ctx, pool, before, keepAtOnce) }),
		letGo(k.Photos, now, func(before time.Time) (int, error) { return db.FadePhotos(ctx, pool, before, keepAtOnce) }),
		letGo(k.Talks, now, func(before time.Time) (n int, err error) {
			err = pgx.BeginFunc(ctx, pool, func(tx pgx.Tx) error {
				n, err = db.EraseOldTalks(ctx, tx, before, s.Today().Location().String(), keepAtOnce, now)
				return err
			})
			return n, err
		}))
}

// letGo goes on until nothing is left that is older than kept.
func letGo(kept time.Duration, now time.Time, some func(before time.Time) (int, error)) error {
	if kept <= 0 {
		return nil
	}
	for range keepRounds {
		if n, err := some(now.Add(-kept)); err != nil || n < keepAtOnce {
			return err
		}
	}
	return nil
}
