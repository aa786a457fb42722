package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/intake"
	"example.com/intake-bot/internal/rehearsal"
	"example.com/intake-bot/internal/shop"
)

// turnWait is how long a turn may take over the database before the rehearsal gives up.
const turnWait = time.Minute

// databaseRehearsal lets the customers' messages go the way that real ones go: kept in
// the database, taken up by a job, answered, and the answer sent, here to nobody.
type databaseRehearsal struct {
	pool     *pgxpool.Pool
	service  *intake.Service
	messages atomic.Int64
	mu       sync.Mutex
	outcomes map[string]chan conversation.Outcome // by who wrote
}

// newDatabaseRehearsal wants a database with no talk in it: made-up customers must not
// end up among real leads.
func newDatabaseRehearsal(ctx context.Context, address string, f *shop.File, talkShop *conversation.Shop) (*databaseRehearsal, error) {
	pool, err := db.Open(ctx, address)
	if err != nil {
		return nil, err
	}
	r := &databaseRehearsal{pool: pool, outcomes: map[string]chan conversation.Outcome{}}
	if err := r.start(ctx, f, talkShop); err != nil {
		pool.Close()
		return nil, err
	}
	return r, nil
}

func (r *databaseRehearsal) start(ctx context.Context, f *shop.File, talkShop *conversation.Shop) error {
	if err := db.Migrate(ctx, r.pool); err != nil {
		return err
	}
	used := false
	if err := r.pool.QueryRow(ctx, `SELECT EXISTS (SELECT FROM conversations)`).Scan(&used); err != nil {
		return fmt.Errorf("look for talks: %w", err)
	}
	if used {
		return errors.New("that database has talks in it: a rehearsal wants an empty one of its own")
	}
	answers := f.Questions()
	nowhere := sink{}
	var err error
	r.service, err = intake.New(intake.Options{Pool: r.pool, Shop: talkShop, Log: slog.New(slog.DiscardHandler),
		Clock:   func() time.Time { return rehearsal.Begun },
		Senders: map[conversation.Channel]intake.Sender{conversation.SMS: nowhere, conversation.Email: nowhere},
		Brain: intake.Brain{Respond: r.respond, Nudge: conversation.Nudge, Keyword: reading.Keyword,
			Record: func(t conversation.Talk) conversation.Record { return conversation.NewRecord(t, nil, nil) },
			Answer: func(_ context.Context, _ db.Conn, text string) (string, error) { return answers.Find(text), nil },
		}})
	if err != nil {
		return err
	}
	return r.service.Start(ctx)
}

func (r *databaseRehearsal) close() error {
	ctx, cancel := context.WithTimeout(context.Background(), drain)
	defer cancel()
	err := r.service.Stop(ctx)
	r.pool.Close()
	return err
}

// assistant talks over the database. Time stands still there, so nobody is reminded.
func (r *databaseRehearsal) assistant(ctx context.Context) rehearsal.Assistant {
	return rehearsal.Assistant{
		Respond: func(talk conversation.Talk, in []conversation.Message, _ time.Time, _ *conversation.Shop) (conversation.Outcome, error) {
			return r.turn(ctx, talk, in)
		},
		Nudge: func(talk conversation.Talk, _ time.Time, _ *conversation.Shop) (conversation.Outcome, error) {
			return conversation.Outcome{Talk: talk}, nil
		},
	}
}

// turn hands messages that were sent in one go over as one, and waits for what comes of it.
func (r *databaseRehearsal) turn(ctx context.Context, talk conversation.Talk, in []conversation.Message) (conversation.Outcome, error) {
	from, message := writer(talk), intake.Inbound{Channel: talk.Channel, ID: "rehearsal-" + strconv.FormatInt(r.messages.Add(1), 10)}
	message.From = from
	var texts []string
	for _, m := range in {
		texts = append(texts, m.Text)
		for range m.Photos {
			message.Photos = append(message.Photos, db.PhotoSource{Source: message.ID, ContentType: "image/jpeg"})
		}
	}
	message.Text = strings.Join(texts, "\n")
	outcome := r.of(from)
	if _, err := r.service.Receive(ctx, message); err != nil {
		return conversation.Outcome{}, err
	}
	select {
	case out := <-outcome:
		return out, nil
	case <-ctx.Done():
		return conversation.Outcome{}, ctx.Err()
	case <-time.After(turnWait):
		return conversation.Outcome{}, fmt.Errorf("message %s of talk %s was not answered within %v", message.ID, talk.Ref, turnWait)
	}
}

// respond is the assistant, listened to.
func (r *databaseRehearsal) respond(talk conversation.Talk, in []conversation.Message, now time.Time, s *conversation.Shop) (conversation.Outcome, error) {
	out, err := conversation.Respond(talk, in, now, s)
	if err == nil {
		select {
		case r.of(writer(talk)) <- out:
		default: // the same turn once more, after a fault
		}
	}
	return out, err
}

func (r *databaseRehearsal) of(writer string) chan conversation.Outcome {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.outcomes[writer] == nil {
		r.outcomes[writer] = make(chan conversation.Outcome, 1)
	}
	return r.outcomes[writer]
}

func writer(t conversation.Talk) string {
	if t.Channel == conversation.Email {
		return t.Email
	}
	return t.Phone
}

// sink takes what is sent and does nothing with it.
type sink struct{}

func (sink) Send(_ context.Context, m intake.Outgoing) (string, error) {
	return fmt.Sprintf("sent-%s-%d", m.Ref, m.N), nil
}

func (sink) Find(context.Context, intake.Outgoing) (string, bool, error) { return "", false, nil }
