package torture

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"time"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/rehearsal"
	"example.com/intake-bot/internal/shop"
)

// Customer is a made-up person with all that they will write.
type Customer struct {
	Channel conversation.Channel
	Address string // a number or a mail address
	Turns   []Turn
}

// Turn is what a customer writes in one go.
type Turn struct {
	Text   string
	Photos int
}

// ShopText is the example's file of a shop that never closes, so that what is said does
// not depend on when the test runs, that answers fast, and that a crowd can't use up.
func ShopText() string {
	return strings.NewReplacer("day: 8:00-17:00", "day: 0:00-24:00", "day: closed", "day: 0:00-24:00", "quiet: 4s", "quiet: 20ms",
		"  - Christmas Day\n", "", "segments_a_day: 20000", "segments_a_day: 2000000", "photos: 100", "photos: 10000").Replace(deploy.ExampleShop)
}

// Script lets n customers of a seed talk in memory, and writes down what they say. What
// they write in one go becomes one message: how many pieces of a thought a turn takes
// together depends on how fast the machine is, and the runs must be comparable.
func Script(ctx context.Context, seed uint64, n int) ([]Customer, error) {
	file, err := shop.Parse([]byte(ShopText()), wording.CheckOverride)
	if err != nil {
		return nil, err
	}
	talking, err := file.Conversation()
	if err != nil {
		return nil, err
	}
	s := scribe{of: map[string]*Customer{}}
	_, err = rehearsal.Run(ctx, rehearsal.Options{Seed: seed, Customers: n, Shop: talking, AtOnce: 1,
		Assistant: rehearsal.Assistant{Respond: s.respond, Nudge: stayStill, Answer: file.Questions().Find}})
	if err != nil {
		return nil, fmt.Errorf("script: %w", err)
	}
	return s.customers(), nil
}

// scribe notes what customers write to the assistant.
type scribe struct {
	mu    sync.Mutex
	of    map[string]*Customer
	order []string
}

func (s *scribe) respond(talk conversation.Talk, in []conversation.Message, now time.Time, shop *conversation.Shop) (conversation.Outcome, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	address := talk.Phone
	if talk.Channel == conversation.Email {
		address = talk.Email
	}
	c := s.of[address]
	if c == nil {
		c = &Customer{Channel: talk.Channel, Address: address}
		s.of[address] = c
		s.order = append(s.order, address)
	}
	var t Turn
	var texts []string
	for _, m := range in {
		texts = append(texts, m.Text)
		t.Photos += m.Photos
	}
	t.Text = strings.TrimSpace(strings.Join(texts, "\n"))
	c.Turns = append(c.Turns, t)
	return conversation.Respond(talk, in, now, shop)
}

// stayStill: nobody is reminded within the minutes that a run takes.
func stayStill(talk conversation.Talk, _ time.Time, _ *conversation.Shop) (conversation.Outcome, error) {
	return conversation.Outcome{Talk: talk}, nil
}

func (s *scribe) customers() []Customer {
	out := make([]Customer, 0, len(s.order))
	for _, address := range s.order {
		out = append(out, *s.of[address])
	}
	return out
}
