package intake

import (
	"sync"
	"time"

	"example.com/intake-bot/internal/db"
)

// trouble remembers what last kept this process from keeping something. A database may
// answer every question and still take nothing in, where its disk is full.
type trouble struct {
	mu   sync.Mutex
	what string
	at   time.Time
}

// troubleFor is how long a failure counts where nothing was kept since: then it is worth
// another try, and there is none unless somebody sends something.
const troubleFor = 20 * time.Second

// kept notes how keeping something went, and passes the error on.
func (s *Service) kept(err error) error {
	what := db.Unwell(err)
	if err != nil && what == "" {
		return err // about the message, not about the database
	}
	s.trouble.mu.Lock()
	defer s.trouble.mu.Unlock()
	s.trouble.what, s.trouble.at = what, time.Now()
	return err
}

// Trouble says in a few words why nothing can be kept just now; empty where it can.
func (s *Service) Trouble() string {
	s.trouble.mu.Lock()
	defer s.trouble.mu.Unlock()
	if time.Since(s.trouble.at) > troubleFor {
		return ""
	}
	return s.trouble.what
}
