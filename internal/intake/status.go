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

// Status is what a provider says of a message after it took it.
type Status struct {
	Channel conversation.Channel
	ID      string // the provider's, of the message
	Word    string // the provider's: "delivered"
	Code    string // the provider's, of an error; empty for none
	// Kind is what the error means: Unsubscribed, Unreachable or Refused are acted on,
	// anything else is just kept.
	Kind FailureKind
	At   time.Time
}

// ReceiveStatus keeps a status. They may come in any order, more than once, and before
// we know the message's id ourselves.
func (s *Service) ReceiveStatus(ctx context.Context, st Status) error {
	if st.At.IsZero() {
		st.At = s.now()
	}
	err := pgx.BeginFunc(ctx, s.opts.Pool, func(tx pgx.Tx) error {
		err := s.keepStatus(ctx, tx, st)
		s.opts.Step(BeforeStatusCommit)
		return err
	})
	if err = s.kept(err); err != nil {
		return fmt.Errorf("receive status of %s: %w", st.ID, err)
	}
	s.opts.Step(AfterStatusCommit)
	return nil
}

func (s *Service) keepStatus(ctx context.Context, tx pgx.Tx, st Status) error {
	again, err := db.KeepStatus(ctx, tx, db.SendStatus{Channel: st.Channel, ProviderID: st.ID, Status: st.Word,
		ErrorCode: st.Code, At: st.At.UTC()})
	if err != nil || again || !final(st.Kind) {
		return err
	}
	args := statusArgs{Channel: string(st.Channel), ProviderID: st.ID, Meaning: st.Kind, Code: st.Code}
	_, err = s.queue.InsertTx(ctx, tx, args, nil)
	return err
}

func final(k FailureKind) bool { return k == Unsubscribed || k == Unreachable || k == Refused }

// strangerAfter is how long a status waits for its message to become known.
const strangerAfter = time.Hour

// workStatus acts on a message that the provider took and then could not deliver.
func (s *Service) workStatus(ctx context.Context, job *river.Job[statusArgs]) error {
	a := job.Args
	id, to, err := db.SentAs(ctx, s.opts.Pool, conversation.Channel(a.Channel), a.ProviderID)
	if errors.Is(err, db.ErrNotFound) {
		if s.since(job.CreatedAt) > strangerAfter {
			s.log.WarnContext(ctx, "status of a message that is not ours", "provider_id", a.ProviderID)
			return nil
		}
		return river.JobSnooze(2 * time.Second)
	}
	if err != nil {
		return err
	}
	now := s.now()
	b := &pgx.Batch{}
	switch a.Meaning {
	case Unsubscribed:
		db.Unsubscribed(b, id, to, now)
	case Unreachable:
		db.Unreachable(b, id, to, a.Code, now)
	default:
		db.Alert(b, id, db.AlertNotSent, now)
	}
	if err := s.opts.Pool.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("act on status of %s: %w", a.ProviderID, err)
	}
	return nil
}
