package intake

import (
	"context"
	"errors"
	"math"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

const (
	// askAfter is how long a provider gets until a message that it may have shows in its
	// list; doubled with each question that it did not answer.
	askAfter = 15 * time.Second
	// mostChecks bounds those questions: after about a quarter of an hour a person decides.
	mostChecks = 7
	// longestWait bounds the wait between two tries, whatever a provider asks for.
	longestWait = 15 * time.Minute
)

// failed writes what a failure means: for this message, and for its customer.
func (s *Service) failed(ctx context.Context, b *pgx.Batch, m *db.Send, f *Failure) {
	now := s.now()
	s.opts.Metrics.sent(m.To.Channel, string(f.Kind))
	s.log.WarnContext(ctx, "message not sent", "conversation", m.ConversationID, "n", m.N,
		"kind", string(f.Kind), "code", f.Code, "attempts", m.Attempts)
	switch f.Kind {
	case Temporary:
		if s.since(m.QueuedAt) > s.opts.GiveUpAfter {
			m.Fail(b, db.SendFailed, f.Code, db.AlertNotSent, now)
			return
		}
		m.Retry(b, sendWait(m.Attempts, f.RetryAfter), f.Code)
	case Unsubscribed:
		m.Fail(b, db.SendFailed, f.Code, "", now)
		db.Unsubscribed(b, m.ConversationID, m.To, now)
	case Unreachable:
		m.Fail(b, db.SendFailed, f.Code, "", now)
		db.Unreachable(b, m.ConversationID, m.To, f.Code, now)
	case Refused:
		m.Fail(b, db.SendFailed, f.Code, db.AlertNotSent, now)
	default:
		m.AskLater(b, s.askWait(0), f.Code)
	}
}

// inquire asks the provider whether it has a message that may have gone already. It is
// sent again only where the provider says that it has not.
func (s *Service) inquire(ctx context.Context, b *pgx.Batch, m *db.Send, sender Sender) {
	found, id, err := s.ask(ctx, m, sender)
	switch {
	case errors.Is(err, ErrCantTell), err != nil && m.Checks >= mostChecks:
		m.Fail(b, db.SendUnknown, "unknown", db.AlertSendUnknown, s.now())
	case err != nil:
		s.log.WarnContext(ctx, "provider can't say whether a message went", "conversation", m.ConversationID,
			"n", m.N, "checks", m.Checks, "error", err.Error())
		m.AskLater(b, s.askWait(m.Checks), "unknown")
	case found:
		m.Segments = segmentsOf(m)
		s.sent(b, m, id)
	default:
		s.again(ctx, b, m, sender)
	}
}

// again sends a message that the provider turned out not to have, unless the customer
// opted out meanwhile; a reminder waits where it is night by now.
func (s *Service) again(ctx context.Context, b *pgx.Batch, m *db.Send, sender Sender) {
	out, err := db.OptedOut(ctx, s.opts.Pool, m.To)
	switch wait := s.untilAwake(m); {
	case err != nil:
		m.AskLater(b, s.askWait(m.Checks), "unknown")
	case out && m.Kind != conversation.Farewell:
		m.Fail(b, db.SendHeld, db.HeldOptedOut, "", s.now())
	case wait > 0:
		m.Postpone(b, wait)
	default:
		m.Again(b)
		m.Attempts++
		s.deliver(ctx, b, m, sender)
	}
}

// ask looks for a message at its provider. An id that another message has is not this
// one's: two may say the same.
func (s *Service) ask(ctx context.Context, m *db.Send, sender Sender) (found bool, id string, err error) {
	ctx, cancel := context.WithTimeout(ctx, s.callTime()/2)
	defer cancel()
	s.opts.Step(BeforeAskCall)
	id, found, err = sender.Find(ctx, outgoing(m))
	s.opts.Step(AfterAskCall)
	if err != nil || !found {
		return false, "", err
	}
	taken, err := db.TakenID(ctx, s.opts.Pool, m, id)
	return !taken, id, err
}

// askWait is how long after the nth question to ask again.
func (s *Service) askWait(n int) time.Duration {
	return min(longestWait, min(askAfter, s.opts.Lease/2)*time.Duration(math.Exp2(float64(min(n, 10)))))
}

// sendWait is how long after the nth failed try to try again: 2 s, doubled each time,
// and no sooner than the provider asked for.
func sendWait(n int, asked time.Duration) time.Duration {
	backoff := 2 * time.Second * time.Duration(math.Exp2(float64(min(max(n-1, 0), 12))))
	return min(longestWait, max(backoff, asked))
}
