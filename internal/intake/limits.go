package intake

import (
	"context"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// Limits keep one sender, or many that act as one, from running up the bill. What is over
// a limit is kept like anything else and put before staff; it is not answered. 0: no limit.
type Limits struct {
	TextsAnHour     int // from one number
	MailsAnHour     int // from one address
	NewFromPrefix   int // numbers that are new within an hour and alike in all but the last four digits
	PhotosOfOne     int // in one talk
	SegmentsADay    int // of texts out, in all; STOP, HELP and staff get through
	SegmentsWarning int // percent of SegmentsADay from which on the log warns; 0: 80
}

// DefaultLimits are far above what customers need.
func DefaultLimits() Limits {
	return Limits{TextsAnHour: 200, MailsAnHour: 40, NewFromPrefix: 1000, PhotosOfOne: 100, SegmentsADay: 20000}
}

// Why a talk is held back, for staff.
const (
	whyMany   = "more messages within an hour than are answered"
	whyPrefix = "many new numbers like this one within an hour"
)

// heldBack says why the messages that wait are not to be answered; empty where they are.
// STOP, START and HELP always are.
func (s *Service) heldBack(ctx context.Context, tx pgx.Tx, h *db.Held, now time.Time) (string, error) {
	keyword := func(w db.Waiting) bool { return s.opts.Brain.Keyword(w.Message.Text) != "" }
	if slices.ContainsFunc(h.Waiting, keyword) {
		return "", nil
	}
	if most := s.mostAnHour(h.Newest.Channel); most > 0 && h.LastN+len(h.Waiting) > most {
		n, err := db.HeardSince(ctx, tx, h.ID, time.Hour)
		if err != nil || n > most {
			return whyMany, err
		}
	}
	if most := s.limits.Load().NewFromPrefix; most > 0 && h.LastN == 0 && h.Newest.Channel == conversation.SMS {
		n, err := db.NewOfPrefix(ctx, tx, h.Newest.Address, now.Add(-time.Hour))
		if err != nil || n > most {
			return whyPrefix, err
		}
	}
	return "", nil
}

func (s *Service) mostAnHour(c conversation.Channel) int {
	switch c {
	case conversation.SMS:
		return s.limits.Load().TextsAnHour
	case conversation.Email:
		return s.limits.Load().MailsAnHour
	}
	return 0
}

// holdBack takes the messages that wait without a word.
func (s *Service) holdBack(ctx context.Context, tx pgx.Tx, h *db.Held, why string, now time.Time) error {
	s.log.WarnContext(ctx, "a talk is held back", "conversation", h.ID, "why", why)
	for i := range h.Waiting {
		h.Waiting[i].Message.N = h.LastN + i + 1
	}
	return db.SaveHeldBack(ctx, tx, h, why, now)
}

// reasonOf is a reason in a word, for those who count.
func reasonOf(why string) string {
	if why == whyPrefix {
		return "prefix"
	}
	return "sender"
}
