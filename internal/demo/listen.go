package demo

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/channels/terminal"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// listen waits until the bot has taken all that was sent and said all that it says to it.
func (s *scene) listen(ctx context.Context) error {
	ctx, cancel := context.WithTimeout(ctx, s.stage.Patience)
	defer cancel()
	for {
		settled, err := s.settled(ctx)
		if err != nil {
			return err
		}
		texts, err := s.way.texts()
		if err != nil {
			return err
		}
		if settled >= 0 && len(texts) >= settled {
			return s.show(ctx, texts)
		}
		select {
		case <-time.After(15 * time.Millisecond):
		case <-ctx.Done():
			return fmt.Errorf("the bot does not answer: %w", ctx.Err())
		}
	}
}

func (s *scene) show(ctx context.Context, texts []string) error {
	for _, words := range texts[s.heard:] {
		if err := s.pause(ctx, words); err != nil {
			return err
		}
		fmt.Fprintln(s.stage.Out, terminal.Wrap("shop: ", words))
		s.bot = append(s.bot, words)
	}
	s.heard = len(texts)
	return nil
}

// settled is how many texts the bot has written in all, -1 while some of the customer's
// wait for their turn.
func (s *scene) settled(ctx context.Context) (int, error) {
	if s.ref == "" {
		ref, err := refOf(ctx, s.stage.Pool, s.customer.Address())
		if err != nil || ref == "" {
			return -1, err
		}
		s.ref = ref
	}
	waiting, err := s.look(ctx)
	if err != nil || waiting > 0 {
		return -1, err
	}
	messages, err := db.MessagesOf(ctx, s.stage.Pool, s.ref)
	if err != nil {
		return -1, err
	}
	written := 0
	for _, m := range messages {
		if m.From == conversation.FromBot {
			written++
		}
	}
	return written, nil
}

// look reads the talk, and how many texts wait for their turn.
func (s *scene) look(ctx context.Context) (waiting int, err error) {
	id, err := db.TalkOf(ctx, s.stage.Pool, s.ref)
	if err != nil {
		return 0, err
	}
	tx, err := s.stage.Pool.Begin(ctx)
	if err != nil {
		return 0, fmt.Errorf("look at talk %s: %w", s.ref, err)
	}
	defer func() { _ = tx.Rollback(ctx) }() // nothing was changed
	held, err := db.HoldTalk(ctx, tx, id)
	if err != nil {
		return 0, err
	}
	s.talk = held.Talk
	return len(held.Waiting), nil
}

// refOf is the ref of the lead of a number or mail address, empty while there is none.
func refOf(ctx context.Context, pool *pgxpool.Pool, address string) (string, error) {
	lines, err := db.ListLeads(ctx, pool, db.LeadFilter{})
	if err != nil {
		return "", err
	}
	for _, l := range lines {
		if l.Phone == address || l.Email == address {
			return l.Ref, nil
		}
	}
	return "", nil
}
