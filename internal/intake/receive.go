package intake

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/db"
)

// Inbound is a message from a customer, proven and parsed by its channel.
type Inbound struct {
	Channel conversation.Channel
	ID      string // the provider's, the same whenever it is handed over again
	From    string // E.164, or a mail address in lower case
	Text    string
	Photos  []db.PhotoSource
	At      time.Time // when it was written; zero: now

	// Of mail: the sender's name and the subject as written, and whether nothing shows that
	// the sender's domain stands behind it.
	Name, Subject string
	Unproven      bool

	// also is kept in the same transaction, where the message is new.
	also func(ctx context.Context, tx pgx.Tx, kept db.Kept) error
}

// mostWords bounds a message, in characters: nobody writes, and nothing reads, that much.
const mostWords = 50_000

func clipped(s string, most int) string {
	for i := range s {
		if most--; most < 0 {
			return s[:i]
		}
	}
	return s
}

// ErrBadInbound says that a message lacks what it needs to be kept.
var ErrBadInbound = errors.New("message without channel, sender or id")

// Receive keeps a message, with what asks for its turn, in one transaction: once it returns
// without an error the message will be answered. One that was kept before changes
// nothing. An opt-out or its end counts from the same moment.
func (s *Service) Receive(ctx context.Context, in Inbound) (again bool, err error) {
	if in.Channel == "" || in.ID == "" || in.From == "" {
		return false, ErrBadInbound
	}
	now := s.now()
	if in.At.IsZero() {
		in.At = now
	}
	in.Text = clipped(in.Text, mostWords)
	if done, err := s.staffWord(ctx, in, now); done || err != nil {
		return false, err
	}
	place := s.placeFor(in)
	defer place.leave()
	kept, err := s.keepInbound(ctx, in, now, place != nil)
	if err = s.kept(err); err != nil {
		return false, fmt.Errorf("receive message %s: %w", in.ID, err)
	}
	if !kept.Again {
		s.opts.Metrics.received.WithLabelValues(string(in.Channel)).Inc()
	}
	s.opts.Step(AfterReceiveCommit)
	if !kept.Again {
		args := s.turnFor(in, kept)
		args.wait = min(s.opts.Quiet, s.opts.QuietCap-kept.Behind)
		if args.AtOnce {
			args.wait = 0
		}
		place.take(args)
	}
	return kept.Again, nil
}

// placeFor is the right to make a message's turn here; nil where it needs a job: nobody
// here has time, or it must wait for photos.
func (s *Service) placeFor(in Inbound) *place[turnArgs] {
	if len(in.Photos) > 0 {
		return nil
	}
	return s.inbox.reserve()
}

// turnFor is the turn that a message asks for.
func (s *Service) turnFor(in Inbound, kept db.Kept) turnArgs {
	return turnArgs{ConversationID: kept.ConversationID, MessageID: kept.MessageID, AtOnce: s.opts.Brain.Keyword(in.Text) != ""}
}

// keepInbound keeps a message with all that must stand or fall with it, in one transaction.
// That the turn is still to be made is kept with the message itself; where it is not to be
// made here, there is a job too.
func (s *Service) keepInbound(ctx context.Context, in Inbound, now time.Time, here bool) (kept db.Kept, err error) {
	arrivals := s.arrivals(now, in)
	arrival := db.Arrival{Channel: in.Channel, Address: in.From, ProviderID: in.ID, Text: in.Text,
		At: in.At.UTC().Truncate(time.Microsecond), Photos: in.Photos}
	request := s.opts.Brain.Keyword(in.Text)
	if here && request == "" && in.also == nil && len(in.Photos) == 0 {
		s.opts.Step(BeforeReceiveCommit)
		kept, err = arrivals.KeepAlone(ctx, s.opts.Pool, arrival)
		if !errors.Is(err, db.ErrNotFound) {
			return kept, err
		}
	}
	err = pgx.BeginFunc(ctx, s.opts.Pool, func(tx pgx.Tx) (err error) {
		if kept, err = arrivals.Keep(ctx, tx, arrival); err != nil || kept.Again {
			return err
		}
		if err := s.consent(ctx, tx, in, request, now); err != nil {
			return err
		}
		if in.also != nil {
			if err := in.also(ctx, tx, kept); err != nil {
				return err
			}
		}
		if err := s.askForPhotos(ctx, tx, kept.MessageID, in.Photos); err != nil {
			return err
		}
		if !here {
			_, err = s.queue.InsertTx(ctx, tx, s.turnFor(in, kept), nil)
		}
		s.opts.Step(BeforeReceiveCommit)
		return err
	})
	return kept, err
}

func (s *Service) arrivals(now time.Time, in Inbound) db.Arrivals {
	a := db.Arrivals{NewRef: s.newRef, EndedBefore: s.endedBefore(now)}
	a.Known = func(ctx context.Context, tx pgx.Tx, _ db.Arrival) (int64, error) {
		return s.knownTalk(ctx, tx, in, now)
	}
	return a
}

// endedBefore is the time before which a lead that staff finished is over.
func (s *Service) endedBefore(now time.Time) time.Time { return now.Add(-s.opts.NewTalkAfter) }

// consent records STOP and START with the message itself: no message may slip out
// between the word and its turn.
func (s *Service) consent(ctx context.Context, tx pgx.Tx, in Inbound, r reading.Request, now time.Time) error {
	from := db.Address{Channel: in.Channel, Address: in.From}
	switch r {
	case reading.RequestStop:
		return db.OptOut(ctx, tx, from, db.OptOutKeyword, now)
	case reading.RequestStart:
		return db.OptIn(ctx, tx, from, now)
	}
	return nil
}
