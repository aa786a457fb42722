package intake

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// brainTries is how often a turn is tried that the pure part fails at, before a person
// gets the lead as it is.
const brainTries = 4

// workTurn makes the turn that a message asked for where the process that received it could
// not. There may be several for a talk; the one that finds the person quiet takes all that
// waits, and the others find nothing.
func (s *Service) workTurn(ctx context.Context, job *river.Job[turnArgs]) error {
	wait, mine, err := s.lull(ctx, job.Args)
	if err != nil || !mine {
		return err
	}
	if wait > 0 {
		return river.JobSnooze(wait)
	}
	patience := s.patience(job)
	err = s.turn(ctx, job.Args.ConversationID, patience > 0)
	if errors.Is(err, errPhotosFirst) {
		return river.JobSnooze(patience)
	}
	var broken *BrainError
	if errors.As(err, &broken) && job.Attempt+job.Args.Tried >= brainTries {
		return s.giveToStaff(ctx, job.Args.ConversationID, broken)
	}
	return err
}

// lull says whether the turn is this message's to make, and how long to wait first.
// Where more came in since, the newest message's job makes it, unless the oldest has
// waited too long already.
func (s *Service) lull(ctx context.Context, args turnArgs) (wait time.Duration, mine bool, err error) {
	if args.AtOnce || s.opts.Quiet <= 0 {
		return 0, true, nil
	}
	l, err := db.LullOf(ctx, s.opts.Pool, args.ConversationID)
	if err != nil || l.Newest == 0 {
		return 0, false, err
	}
	wait = min(s.opts.Quiet-l.SinceNewest, s.opts.QuietCap-l.SinceOldest)
	switch {
	case wait <= 0:
		return 0, true, nil
	case l.Newest > args.MessageID:
		return 0, false, nil
	}
	return wait, true, nil
}

// turn answers all that waits in a talk, in one transaction. A patient one waits for
// photos instead, where there are some: errPhotosFirst.
func (s *Service) turn(ctx context.Context, conversationID int64, patient bool) error {
	began := time.Now()
	err := s.speak(ctx, conversationID, func(tx pgx.Tx, h *db.Held, now time.Time) (spoken, error) {
		if len(h.Waiting) == 0 {
			return spoken{}, nil
		}
		if why, err := s.heldBack(ctx, tx, h, now); err != nil || why != "" {
			if err == nil {
				s.opts.Metrics.held.WithLabelValues(reasonOf(why)).Inc()
				err = s.holdBack(ctx, tx, h, why, now)
			}
			return spoken{}, err
		}
		if patient {
			if err := s.photosFirst(ctx, tx, h); err != nil {
				return spoken{}, err
			}
		}
		in, told, err := s.number(ctx, tx, h, now)
		if err != nil {
			return spoken{}, err
		}
		out, err := guarded("respond", func() (conversation.Outcome, error) {
			return s.opts.Brain.Respond(h.Talk, in, now, s.shop.Load())
		})
		if err != nil {
			return spoken{}, err
		}
		if err := db.PhotosTold(ctx, tx, told); err != nil {
			return spoken{}, err
		}
		if out.Talk.Memory.Claims != "" {
			into, joined, ok, err := s.joined(ctx, tx, h, out, now)
			if err != nil || ok {
				return spoken{into, joined, true}, err
			}
		}
		return spoken{h, out, true}, nil
	})
	if err == nil {
		s.opts.Metrics.turned(began)
		s.opts.Step(AfterTurnCommit)
	}
	return err
}

// spoken is what comes of a turn, and the talk that it is of: mostly the one that was held.
type spoken struct {
	talk *db.Held
	out  conversation.Outcome
	say  bool // false: there was nothing to be done
}

// speak saves what decide makes of a talk, if anything, and sees that it is sent.
func (s *Service) speak(ctx context.Context, conversationID int64, decide func(pgx.Tx, *db.Held, time.Time) (spoken, error)) error {
	queued := 0
	place := s.outbox.reserve()
	defer place.leave()
	err := s.hold(ctx, conversationID, func(tx pgx.Tx, h *db.Held) error {
		now := s.now()
		// The talk is held in the manner of the channel where the customer was heard last.
		h.Talk.Channel = h.Newest.Channel
		did, err := decide(tx, h, now)
		if err != nil || !did.say {
			return err
		}
		conversationID = did.talk.ID
		if len(did.out.Say) > 0 && place == nil { // nobody here has time: whoever has it first
			if _, err = s.queue.InsertTx(ctx, tx, sendArgs{ConversationID: conversationID}, nil); err != nil {
				return err
			}
		}
		queued, err = s.save(ctx, tx, did.talk, did.out, now)
		return err
	})
	if err == nil && queued > 0 {
		place.take(conversationID)
	}
	return err
}

// hold runs fn in a transaction that holds the talk.
func (s *Service) hold(ctx context.Context, conversationID int64, fn func(pgx.Tx, *db.Held) error) error {
	held := false
	err := db.InTalk(ctx, s.opts.Pool, conversationID, func(tx pgx.Tx, h *db.Held) error { held = true; return fn(tx, h) })
	if !held && errors.Is(err, db.ErrNotFound) {
		return nil // erased since
	}
	if err = s.kept(err); err != nil {
		return fmt.Errorf("talk %d: %w", conversationID, err)
	}
	return nil
}

// number gives what waits its places in the talk, and looks up what else is known of it:
// the owner's answers, the mail that it came by, what was seen of its photos. told are the
// photos that are then spoken of.
func (s *Service) number(ctx context.Context, tx pgx.Tx, h *db.Held, now time.Time) (in []conversation.Message, told []int64, err error) {
	subjects, err := db.AddMail(ctx, tx, h.Waiting)
	if err != nil {
		return nil, nil, err
	}
	if err := s.claim(ctx, tx, h, subjects, now); err != nil {
		return nil, nil, err
	}
	if told, err = s.addPhotos(ctx, tx, h); err != nil {
		return nil, nil, err
	}
	in = make([]conversation.Message, 0, len(h.Waiting))
	for i := range h.Waiting {
		m := &h.Waiting[i].Message
		m.N = h.LastN + i + 1
		if s.opts.Brain.Answer != nil {
			if m.Answer, err = s.opts.Brain.Answer(ctx, tx, m.Text); err != nil {
				return nil, nil, fmt.Errorf("look up an answer: %w", err)
			}
		}
		in = append(in, *m)
	}
	return in, told, nil
}

// save keeps a turn, which ends its transaction, and says how many messages wait to be sent
// because of it.
func (s *Service) save(ctx context.Context, tx pgx.Tx, h *db.Held, out conversation.Outcome, now time.Time) (queued int, err error) {
	record, err := guarded("record", func() (conversation.Record, error) { return s.opts.Brain.Record(out.Talk), nil })
	if err != nil {
		return 0, err
	}
	if out.Talk.Lead.Units == nil {
		record.Units = nil // the turn did not look at them: they stay as they are
	}
	t := db.Turn{Held: h, Handled: h.Waiting, Outcome: out, Record: record, To: h.Newest, Now: now, Last: true}
	if out.Alert {
		t.Alert = db.AlertLead
	}
	s.opts.Step(BeforeTurnCommit)
	return db.SaveTurn(ctx, tx, t)
}

// giveToStaff is the last resort for a turn that can't be made: nothing that the
// customer wrote is lost, and a person goes on.
func (s *Service) giveToStaff(ctx context.Context, conversationID int64, cause *BrainError) error {
	s.log.ErrorContext(ctx, "a turn could not be made; the lead goes to staff",
		"conversation", conversationID, "step", cause.Step, "error", cause.Err.Error())
	return s.hold(ctx, conversationID, func(tx pgx.Tx, h *db.Held) error {
		for i := range h.Waiting {
			h.Waiting[i].Message.N = h.LastN + i + 1
		}
		return db.SaveTrouble(ctx, tx, h, s.now())
	})
}
