package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// SendState is how far a message out has come.
type SendState string

const (
	SendQueued  SendState = "queued"
	SendSending SendState = "sending" // the provider may have it
	SendSent    SendState = "sent"    // the provider has it
	SendFailed  SendState = "failed"  // refused for good
	SendHeld    SendState = "held"    // not to be sent any more
	SendUnknown SendState = "unknown" // nobody can tell whether it went
)

// Why a message was held.
const (
	HeldOptedOut  = "opted_out"
	HeldOvertaken = "overtaken" // a reminder, and the customer wrote first
	HeldBudget    = "budget"    // the day's budget of texts is used up
)

// Send is a message on its way out.
type Send struct {
	MessageID      int64
	ConversationID int64
	N              int
	Ref, Language  string // of the talk; only where a picture goes along
	To             Address
	Text           string
	Kind           conversation.UtteranceKind
	Picture        fitcheck.Topic
	State          SendState
	QueuedAt       time.Time
	ClaimedAt      time.Time // since when the provider may have it
	Attempts       int       // calls to send, this one included
	Checks         int       // questions whether it went
	Segments       int       // as which a text is charged; set by who sends it
	Until          time.Time // until when the provider may be called, by this process's clock; set by who sends it
	Zone           string    // the customer's time zone, of a reminder; empty where not known
}

// Line is what is to be sent in a talk, seen by one who wants to send it.
type Line struct {
	// Mine is the message at its head, now claimed for us: nil where there is nothing to
	// send now. Its state is SendSending for one that nobody has tried, or whose last try
	// failed without doubt; Doubt is set for one that may have gone already.
	Mine  *Send
	Doubt bool
	// Wait is how long until there may be something to do for us; 0 where nothing is left.
	Wait time.Duration
}

// claimed are the columns that claim reads, of a row s of sends with its message m
// beside. What few messages need is looked up for those alone.
const claimed = ` s.message_id, s.conversation_id, m.n, m.channel, m.address, m.text, s.kind, coalesce(s.picture, ''),
	s.state, s.queued_at, s.claimed_at, s.attempts, s.checks,
	CASE WHEN s.picture IS NULL THEN '' ELSE (SELECT c.ref FROM conversations c WHERE c.id = s.conversation_id) END,
	CASE WHEN s.picture IS NULL THEN '' ELSE (SELECT coalesce(c.language, 'en') FROM conversations c WHERE c.id = s.conversation_id) END,
	CASE WHEN s.kind <> 'reminder' THEN '' ELSE (SELECT coalesce(l.time_zone, '') FROM leads l WHERE l.conversation_id = s.conversation_id) END `

// claimFresh takes the head of a talk's line where it is queued and due: not a later
// one, so that order is kept. It holds it back instead where it must not be sent.
const claimFresh = `
	WITH head AS MATERIALIZED (
		SELECT s.message_id, CASE
			WHEN s.kind <> 'farewell' AND EXISTS (SELECT FROM optouts o
				WHERE o.channel = m.channel AND o.address = m.address AND o.lifted_at IS NULL) THEN 'opted_out'
			WHEN s.kind = 'reminder' AND EXISTS (SELECT FROM messages i
				WHERE i.conversation_id = $1 AND i.direction = 'in' AND i.id > m.id) THEN 'overtaken'
			END AS held
		FROM sends s JOIN messages m ON m.id = s.message_id
		WHERE s.conversation_id = $1 AND s.finished_at IS NULL
		ORDER BY s.message_id LIMIT 1
	)
	UPDATE sends s SET
		state = CASE WHEN head.held IS NULL THEN 'sending' ELSE 'held' END,
		error_code = coalesce(head.held, s.error_code),
		finished_at = CASE WHEN head.held IS NOT NULL THEN clock_timestamp() END,
		claimed_at = clock_timestamp(),
		due_at = clock_timestamp() + $2,
		attempts = s.attempts + CASE WHEN head.held IS NULL THEN 1 ELSE 0 END
	FROM head JOIN messages m ON m.id = head.message_id
	WHERE s.message_id = head.message_id AND s.state = 'queued' AND s.due_at <= clock_timestamp()
	RETURNING` + claimed

// claimDoubtful takes over the head where whoever had it is taken for dead, or was told
// by the provider that it can't be known. Nothing but the head is ever being sent.
const claimDoubtful = `
	UPDATE sends s SET due_at = clock_timestamp() + $2, checks = s.checks + 1
	FROM messages m
	WHERE m.id = s.message_id AND s.conversation_id = $1 AND s.finished_at IS NULL AND s.state = 'sending'
		AND s.due_at <= clock_timestamp()
	RETURNING` + claimed

const headOfLine = `
	SELECT greatest(extract(epoch FROM due_at - clock_timestamp()), 0)::float8 FROM sends
	WHERE conversation_id = $1 AND finished_at IS NULL ORDER BY message_id LIMIT 1`

// NextSend claims what is to be sent next in a talk. Nobody else will claim it for the
// length of the lease. What came of the message before (nil for none) is written first.
func NextSend(ctx context.Context, c Conn, result *pgx.Batch, conversationID int64, lease time.Duration) (Line, error) {
	line, err := nextSend(ctx, c, result, conversationID, lease)
	if err != nil {
		return Line{}, fmt.Errorf("next to send in talk %d: %w", conversationID, err)
	}
	return line, nil
}

// nextSend takes one round trip where something is there to be claimed at once, and one
// where, after a result, nothing is left.
func nextSend(ctx context.Context, c Conn, result *pgx.Batch, conversationID int64, lease time.Duration) (Line, error) {
	if result != nil {
		if wait, any, err := lookAhead(ctx, c, result, conversationID); err != nil || !any || wait > 0 {
			return Line{Wait: wait}, err
		}
	}
	mine, err := claim(ctx, c, claimFresh, conversationID, lease)
	if !errors.Is(err, ErrNotFound) {
		return Line{Mine: mine}, err
	}
	if wait, any, err := lookAhead(ctx, c, &pgx.Batch{}, conversationID); err != nil || !any || wait > 0 {
		return Line{Wait: wait}, err
	}
	mine, err = claim(ctx, c, claimDoubtful, conversationID, lease)
	if !errors.Is(err, ErrNotFound) {
		return Line{Mine: mine, Doubt: true}, err
	}
	return Line{Wait: time.Millisecond}, nil // another was faster
}

// lookAhead says whether anything is left to be sent, and how long its head must wait.
func lookAhead(ctx context.Context, c Conn, b *pgx.Batch, conversationID int64) (wait time.Duration, any bool, err error) {
	b.Queue(headOfLine, conversationID).QueryRow(func(row pgx.Row) error {
		var seconds float64
		err := row.Scan(&seconds)
		if errors.Is(err, pgx.ErrNoRows) {
			return nil
		}
		any, wait = true, time.Duration(seconds*float64(time.Second))
		return err
	})
	err = c.SendBatch(ctx, b).Close()
	return wait, any, err
}

// claim runs one of the claiming statements; ErrNotFound where it claims nothing.
func claim(ctx context.Context, c Conn, sql string, conversationID int64, lease time.Duration) (*Send, error) {
	var s Send
	err := c.QueryRow(ctx, sql, conversationID, lease).Scan(&s.MessageID, &s.ConversationID, &s.N, &s.To.Channel,
		&s.To.Address, &s.Text, &s.Kind, &s.Picture, &s.State, &s.QueuedAt, &s.ClaimedAt, &s.Attempts, &s.Checks, &s.Ref, &s.Language, &s.Zone)
	if errors.Is(err, pgx.ErrNoRows) {
		return nil, ErrNotFound
	}
	if err != nil {
		return nil, err
	}
	return &s, nil
}
