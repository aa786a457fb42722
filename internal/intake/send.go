package intake

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

const (
	// saveTime is what a result gets to be kept, even where the process is told to end.
	saveTime = 10 * time.Second
	// shortest is the least that a job is put off.
	shortest = 20 * time.Millisecond
)

// workSend is the queue's way to send what waits in a talk: where the process that
// made the turn had no time, ended, or had to put it off.
func (s *Service) workSend(ctx context.Context, job *river.Job[sendArgs]) error {
	wait, err := s.sendAll(ctx, job.Args.ConversationID)
	if err != nil || wait == 0 {
		return err
	}
	return river.JobSnooze(max(wait, shortest))
}

// sendAll sends what waits in a talk, in order, until nothing is left or the head of
// the line must wait so long. The result of each message is written before the next is
// claimed.
func (s *Service) sendAll(ctx context.Context, conversationID int64) (wait time.Duration, err error) {
	until := time.Now().Add(s.opts.Lease)
	var result *pgx.Batch
	for {
		if ctx.Err() != nil || time.Now().After(until) {
			return shortest, s.keep(ctx, result)
		}
		line, err := s.next(ctx, result, conversationID)
		if err != nil || line.Mine == nil {
			return line.Wait, err
		}
		result = s.try(ctx, line)
	}
}

// next keeps a result and claims the next message. What was sent must be recorded even
// where the process is told to end meanwhile.
func (s *Service) next(ctx context.Context, result *pgx.Batch, conversationID int64) (db.Line, error) {
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), saveTime)
	defer cancel()
	began := time.Now()
	line, err := db.NextSend(ctx, s.opts.Pool, result, conversationID, s.opts.Lease)
	if line.Mine != nil {
		line.Mine.Until = began.Add(s.callTime())
	}
	if err == nil && result != nil {
		s.opts.Step(AfterSendRecord)
	}
	return line, err
}

func (s *Service) keep(ctx context.Context, result *pgx.Batch) error {
	if result == nil {
		return nil
	}
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), saveTime)
	defer cancel()
	return s.opts.Pool.SendBatch(ctx, result).Close()
}

// try does what can be done for a claimed message now, and gives what to write of it.
func (s *Service) try(ctx context.Context, line db.Line) *pgx.Batch {
	b, m := &pgx.Batch{}, line.Mine
	sender := s.opts.Senders[m.To.Channel]
	switch {
	case m.State == db.SendHeld:
		s.log.InfoContext(ctx, "message held", "conversation", m.ConversationID, "n", m.N)
	case sender == nil:
		s.failed(ctx, b, m, &Failure{Kind: Temporary, Code: "no_sender"})
	case line.Doubt:
		s.inquire(ctx, b, m, sender)
	default:
		s.tryFresh(ctx, b, m, sender)
	}
	return b
}

// tryFresh sends what nobody has tried, unless it is not the hour, or the day's budget is
// used up: then staff have to see to it.
func (s *Service) tryFresh(ctx context.Context, b *pgx.Batch, m *db.Send, sender Sender) {
	if wait := s.untilAwake(m); wait > 0 {
		m.Postpone(b, wait)
		return
	}
	m.Segments = segmentsOf(m)
	switch ok, err := s.inBudget(ctx, m); {
	case err != nil:
		s.failed(ctx, b, m, &Failure{Kind: Temporary, Code: "database", Err: err})
	case !ok:
		s.opts.Metrics.sent(m.To.Channel, "over_budget")
		m.Fail(b, db.SendHeld, db.HeldBudget, db.AlertBudget, s.now())
	default:
		s.deliver(ctx, b, m, sender)
	}
}

// deliver hands a message to its provider, unless this process stood still since it claimed
// it: by now another may have taken it over.
func (s *Service) deliver(ctx context.Context, b *pgx.Batch, m *db.Send, sender Sender) {
	ctx, cancel := context.WithDeadline(ctx, m.Until)
	defer cancel()
	s.opts.Step(BeforeSendCall)
	if time.Now().After(m.Until) {
		m.Postpone(b, 0) // does nothing where another has
		return
	}
	id, err := sender.Send(ctx, outgoing(m))
	s.opts.Step(AfterSendCall)
	if err != nil {
		s.failed(ctx, b, m, failureOf(err))
		return
	}
	m.Segments = segmentsOf(m)
	s.sent(b, m, id)
}

// sent writes that the provider has a message.
func (s *Service) sent(b *pgx.Batch, m *db.Send, id string) {
	s.spend(m)
	s.opts.Metrics.sent(m.To.Channel, "sent")
	s.opts.Metrics.segments.Add(float64(m.Segments))
	m.Sent(b, id)
}

// callTime bounds the calls after a claim, from before it was asked for: they must be over
// before the lease is.
func (s *Service) callTime() time.Duration { return s.opts.Lease * 2 / 3 }

// skew is by how much the provider's clock may be behind the database's.
const skew = 2 * time.Minute

func outgoing(m *db.Send) Outgoing {
	return Outgoing{MessageID: m.MessageID, Kind: m.Kind, To: m.To, Ref: m.Ref, Language: m.Language, N: m.N, Text: m.Text, Picture: m.Picture, Since: m.ClaimedAt.Add(-skew)}
}

// untilAwake is how long a message that nobody asked for has to wait for the
// customer's day; 0 for any other.
func (s *Service) untilAwake(m *db.Send) time.Duration {
	if m.Kind != conversation.Reminder || m.To.Channel != conversation.SMS {
		return 0
	}
	now := s.now()
	return nextDaytime(now, zonesOf(m.To.Address, m.Zone)).Sub(now)
}
