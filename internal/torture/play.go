package torture

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"sync"
	"sync/atomic"
	"time"

	"example.com/intake-bot/internal/channels/email"
	office "example.com/intake-bot/internal/channels/email/standin"
	carrier "example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/conversation"
)

// Play lets customers talk to whatever bots there are.
type Play struct {
	House     *House
	Customers []Customer
	Seed      uint64
	AtOnce    int                         // how many talk at the same time; 0: all
	Repeat    float64                     // how likely the carrier posts a message once more
	Gate      func(context.Context) error // is passed before each turn; nil: there is none
	Acked     func(id string)             // is told of each text that was acknowledged
	done      atomic.Int64
	settled   *settled
}

// Done is how many turns were answered.
func (p *Play) Done() int { return int(p.done.Load()) }

// Run plays until every customer has said all and everything is answered.
func (p *Play) Run(ctx context.Context) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	p.settled = newSettled(p.House)
	var watching sync.WaitGroup
	watching.Go(func() { p.settled.watch(ctx) })
	defer watching.Wait()
	defer cancel(nil)
	places := make(chan struct{}, max(1, p.atOnce()))
	var playing sync.WaitGroup
	for i := range p.Customers {
		places <- struct{}{}
		if ctx.Err() != nil {
			break
		}
		playing.Go(func() {
			defer func() { <-places }()
			if err := p.customer(ctx, i); err != nil {
				cancel(fmt.Errorf("customer %d (%s): %w", i, p.Customers[i].Address, err))
			}
		})
	}
	playing.Wait()
	return context.Cause(ctx)
}

func (p *Play) atOnce() int {
	if p.AtOnce > 0 {
		return p.AtOnce
	}
	return len(p.Customers)
}

func (p *Play) customer(ctx context.Context, i int) error {
	c := &p.Customers[i]
	dice := rand.New(rand.NewPCG(p.Seed, uint64(i)))
	for n, t := range c.Turns {
		if p.Gate != nil {
			if err := p.Gate(ctx); err != nil {
				return err
			}
		}
		var photos [][]byte
		for k := range t.Photos {
			photos = append(photos, picture(fmt.Sprint(c.Address, n, k)))
		}
		say := p.text
		if c.Channel == conversation.Email {
			say = p.mail
		}
		id, err := say(ctx, c, n, t, photos, dice)
		if err == nil {
			err = p.settled.wait(ctx, id)
		}
		if err != nil {
			return fmt.Errorf("turn %d of %d: %w", n+1, len(c.Turns), err)
		}
		p.done.Add(1)
	}
	return nil
}

// text has a text posted until it is acknowledged, as the carrier does, and now and then
// once more.
func (p *Play) text(ctx context.Context, c *Customer, _ int, t Turn, photos [][]byte, dice *rand.Rand) (string, error) {
	var files []carrier.File
	for _, data := range photos {
		files = append(files, carrier.File{Type: "image/jpeg", Data: data})
	}
	d := p.House.Carrier.Take(c.Address, t.Text, files...)
	for {
		status, err := p.House.Carrier.Deliver(ctx, d)
		if err == nil && status == 200 {
			break
		}
		if ctx.Err() != nil {
			return "", ctx.Err()
		}
		if err == nil && status < 500 {
			return "", fmt.Errorf("refused with %d", status)
		}
		time.Sleep(50 * time.Millisecond)
	}
	if p.Acked != nil {
		p.Acked(d.Message.ID)
	}
	if dice.Float64() < p.Repeat {
		_, _ = p.House.Carrier.Deliver(ctx, d) // whatever comes of it
	}
	return d.Message.ID, nil
}

// mail has a letter lie in the mailbox.
func (p *Play) mail(_ context.Context, c *Customer, n int, t Turn, photos [][]byte, _ *rand.Rand) (string, error) {
	l := office.Letter{From: email.Mailbox{Address: c.Address}, Text: t.Text}
	for k, data := range photos {
		l.Files = append(l.Files, office.File{Name: fmt.Sprintf("photo%d.jpg", k), Type: "image/jpeg", Data: data})
	}
	if n == 0 {
		l.Subject = "Skylight"
	} else if sent := p.House.Office.To(c.Address); len(sent) > 0 {
		l.Answers = &sent[len(sent)-1]
	} else {
		l.Subject = "Re: Skylight"
	}
	return p.House.Office.Write(l)
}

// settled knows which messages are answered, and what is said to them handed over. One
// question for all who wait keeps the customers from being the load.
type settled struct {
	house *House
	mu    sync.Mutex
	wants map[string]chan struct{}
}

func newSettled(h *House) *settled { return &settled{house: h, wants: map[string]chan struct{}{}} }

const settledQuery = `SELECT w.id FROM unnest($1::text[]) w (id)
	JOIN messages m ON m.id = coalesce((SELECT x.id FROM messages x WHERE x.channel = 'sms' AND x.provider_id = w.id),
		(SELECT i.message_id FROM mails_in i WHERE i.mail_id = w.id))
	WHERE m.handled_at IS NOT NULL
		AND NOT EXISTS (SELECT FROM sends s WHERE s.conversation_id = m.conversation_id AND s.finished_at IS NULL)
		AND NOT EXISTS (SELECT FROM photos f WHERE f.message_id = m.id AND f.state = 'referenced')`

func (s *settled) wait(ctx context.Context, id string) error {
	done := make(chan struct{})
	s.mu.Lock()
	s.wants[id] = done
	s.mu.Unlock()
	select {
	case <-done:
		return nil
	case <-ctx.Done():
		return context.Cause(ctx)
	case <-time.After(10 * time.Minute):
		return errors.New("message " + id + " was not answered")
	}
}

func (s *settled) watch(ctx context.Context) {
	for ctx.Err() == nil {
		s.look(ctx)
		select {
		case <-ctx.Done():
		case <-time.After(40 * time.Millisecond):
		}
	}
}

// look lets go of those whose messages are answered. The database may be away for a while.
func (s *settled) look(ctx context.Context) {
	s.mu.Lock()
	ids := make([]string, 0, len(s.wants))
	for id := range s.wants {
		ids = append(ids, id)
	}
	s.mu.Unlock()
	if len(ids) == 0 {
		return
	}
	asking, cancel := context.WithTimeout(ctx, 20*time.Second)
	defer cancel()
	rows, err := s.house.Pool.Query(asking, settledQuery, ids)
	if err != nil {
		return
	}
	defer rows.Close()
	for rows.Next() {
		var id string
		if rows.Scan(&id) != nil {
			return
		}
		s.mu.Lock()
		if done := s.wants[id]; done != nil {
			close(done)
			delete(s.wants, id)
		}
		s.mu.Unlock()
	}
}
