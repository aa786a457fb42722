package torture

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"testing"
)

// Stages disturb a play at set parts of it: when so much of all turns has begun, the next
// stage runs while the others talk on, and the customer whose turn it was waits for its
// end. One stage runs after the other, however long one takes.
type Stages struct {
	T      testing.TB
	Turns  int
	Stages []func()
	mu     sync.Mutex
	begun  int
	next   int
	last   chan struct{} // closed when the stage that began last has ended
}

// Gate is for Play.
func (s *Stages) Gate(context.Context) error {
	s.mu.Lock()
	s.begun++
	due := s.next < len(s.Stages) && s.begun*(len(s.Stages)+1) > s.Turns*(s.next+1)
	if due {
		stage, before, ended := s.Stages[s.next], s.last, make(chan struct{})
		s.next, s.last = s.next+1, ended
		s.mu.Unlock()
		func() {
			defer close(ended)
			if before != nil {
				<-before
			}
			stage()
		}()
	} else {
		s.mu.Unlock()
	}
	if s.T.Failed() {
		return errors.New("a fault did not go as it must")
	}
	return nil
}

// All says whether every stage ran.
func (s *Stages) All() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.next == len(s.Stages)
}

// Red waits until a bot says that it is not ready, with a reason.
func (b *Bot) Red(reasons ...string) {
	b.t.Helper()
	last := ""
	red := Until(b.t, "the bot is not ready", func() bool {
		status, said := b.Ready("/readyz")
		last = fmt.Sprint(status, " ", said)
		for _, r := range reasons {
			if status == 503 && said == r {
				return true
			}
		}
		return false
	})
	b.t.Logf("readiness (%t): %s", red, last)
}

// Green waits until it is ready.
func (b *Bot) Green() {
	b.t.Helper()
	Until(b.t, "the bot is ready", func() bool { status, _ := b.Ready("/readyz"); return status == 200 })
}
