package standin

import (
	"context"
	"crypto/rand"
	"encoding/hex"
	"fmt"
	"slices"
	"time"
)

// Message is one text in either direction, as the carrier keeps it.
type Message struct {
	ID        string
	Inbound   bool // from a person to the shop
	From, To  string
	Body      string
	MediaURLs []string
	Status    string
	ErrorCode int
	Created   time.Time

	callback string
}

// newID makes an id in the carrier's form: two letters and 32 hex digits.
func newID(prefix string) string {
	var b [16]byte
	rand.Read(b[:]) // never fails: crypto/rand
	return prefix + hex.EncodeToString(b[:])
}

func (c *Carrier) keep(m Message) Message {
	c.mu.Lock()
	defer c.mu.Unlock()
	m.Created = c.cfg.Now().UTC().Truncate(time.Second)
	kept := m
	c.messages = append(c.messages, &kept)
	c.byID[m.ID] = &kept
	c.wake()
	if c.cfg.OnMessage != nil {
		c.cfg.OnMessage(m)
	}
	return m
}

func (c *Carrier) setStatus(id, status string, code int) (Message, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	m, ok := c.byID[id]
	if !ok {
		return Message{}, false
	}
	m.Status, m.ErrorCode = status, code
	c.wake()
	return *m, true
}

func (c *Carrier) wake() {
	close(c.changed)
	c.changed = make(chan struct{})
}

func (c *Carrier) message(id string) (Message, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	m, ok := c.byID[id]
	if !ok {
		return Message{}, false
	}
	return *m, true
}

// Messages are all that the carrier took, oldest first.
func (c *Carrier) Messages() []Message {
	all, _ := c.snapshot()
	return all
}

// To are the messages that were sent to one number, oldest first.
func (c *Carrier) To(number string) []Message {
	return slices.DeleteFunc(c.Messages(), func(m Message) bool { return m.Inbound || m.To != number })
}

// Talk are the messages to and from one number, oldest first.
func (c *Carrier) Talk(number string) []Message {
	return slices.DeleteFunc(c.Messages(), func(m Message) bool {
		return m.To != number && m.From != number
	})
}

// WaitTo waits until n messages were sent to a number, and returns all that were.
func (c *Carrier) WaitTo(ctx context.Context, number string, n int) ([]Message, error) {
	for {
		_, changed := c.snapshot()
		if got := c.To(number); len(got) >= n {
			return got, nil
		}
		select {
		case <-changed:
		case <-ctx.Done():
			return c.To(number), fmt.Errorf("waiting for %d messages: %w", n, ctx.Err())
		}
	}
}

// WaitStatus waits until a message has a status.
func (c *Carrier) WaitStatus(ctx context.Context, id, status string) error {
	for {
		_, changed := c.snapshot()
		if m, ok := c.message(id); ok && m.Status == status {
			return nil
		}
		select {
		case <-changed:
		case <-ctx.Done():
			return fmt.Errorf("waiting for %s of %s: %w", status, id, ctx.Err())
		}
	}
}

func (c *Carrier) snapshot() ([]Message, <-chan struct{}) {
	c.mu.Lock()
	defer c.mu.Unlock()
	all := make([]Message, len(c.messages))
	for i, m := range c.messages {
		all[i] = *m
	}
	return all, c.changed
}
