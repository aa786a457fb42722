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
	NewFromDomain   int // mail addresses of one domain that are new within an hour
	PhotosOfOne     int // in one talk
	PhotosADay      int // in all
	SegmentsOfOne   int // of texts out, in one talk within a day
	SegmentsADay    int // of texts out, in all; STOP, HELP and staff get through
	MailsADay       int // out, in all; staff's get through
	SegmentsWarning int // percent of SegmentsADay from which on the log warns; 0: 80
}

// DefaultLimits are far above what customers need.
func DefaultLimits() Limits {
	return Limits{TextsAnHour: 200, MailsAnHour: 40, NewFromPrefix: 1000, NewFromDomain: 300, PhotosOfOne: 100, PhotosADay: 5000,
		SegmentsOfOne: 400, SegmentsADay: 20000, MailsADay: 5000}
}

// Why a talk is held back, for staff.
const (
	whyMany   = "more messages within an hour than are answered"
	whyPrefix = "many new numbers like this one within an hour"
	whyDomain = "many new mail addresses of one domain within an hour"
)

// keywordsAnHour is how often a word such as HELP or START is answered within an hour.
// Nobody needs more, and a program that sends nothing else would have an answer to each.
// STOP counts from the moment it is kept, answered or not.
const keywordsAnHour = 20

// heldBack says why the messages that wait are not to be answered; empty where they are.
// STOP, START and HELP are whatever the limits say, so that nobody is kept from them.
func (s *Service) heldBack(ctx context.Context, tx pgx.Tx, h *db.Held, now time.Time) (string, error) {
	keyword := func(w db.Waiting) bool { return s.opts.Brain.Keyword(w.Message.Text) != "" }
	if slices.ContainsFunc(h.Waiting, keyword) {
		return s.tooManyKeywords(ctx, tx, h)
	}
	if most := s.mostAnHour(h.Newest.Channel); most > 0 && h.LastN+len(h.Waiting) > most {
		n, err := db.HeardSince(ctx, tx, h.ID, time.Hour)
		if err != nil || n > most {
			return whyMany, err
		}
	}
	if h.LastN > 0 {
		return "", nil
	}
	return s.crowded(ctx, tx, h.Newest, now)
}

// tooManyKeywords holds a talk back in which nothing but words for the carrier come.
func (s *Service) tooManyKeywords(ctx context.Context, tx pgx.Tx, h *db.Held) (string, error) {
	if h.LastN < keywordsAnHour || s.mostAnHour(h.Newest.Channel) <= 0 {
		return "", nil
	}
	texts, err := db.WordsSince(ctx, tx, h.ID, time.Hour)
	if err != nil {
		return "", err
	}
	n := 0
	for _, text := range texts {
		if s.opts.Brain.Keyword(text) != "" {
			n++
		}
	}
	if n > keywordsAnHour {
		return whyMany, nil
	}
	return "", nil
}

// crowded says why a sender who is new is not answered: too many like them are new, too.
func (s *Service) crowded(ctx context.Context, tx pgx.Tx, a db.Address, now time.Time) (string, error) {
	l := s.limits.Load()
	switch {
	case a.Channel == conversation.SMS && l.NewFromPrefix > 0:
		n, err := db.NewOfPrefix(ctx, tx, a.Address, now.Add(-time.Hour))
		if err != nil || n > l.NewFromPrefix {
			return whyPrefix, err
		}
	case a.Channel == conversation.Email && l.NewFromDomain > 0:
		n, err := db.NewOfDomain(ctx, tx, a.Address, now.Add(-time.Hour))
		if err != nil || n > l.NewFromDomain {
			return whyDomain, err
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
	switch why {
	case whyPrefix:
		return "prefix"
	case whyDomain:
		return "domain"
	}
	return "sender"
}
