package demo

import (
	"sync"
	"time"
)

// Clock is a clock that can be set; from then on it goes as the real one does.
type Clock struct {
	mu     sync.Mutex
	offset time.Duration
}

// Now is the time that the clock shows.
func (c *Clock) Now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return time.Now().Add(c.offset)
}

// Set puts the clock to a time; the zero time is the real one.
func (c *Clock) Set(t time.Time) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.offset = 0
	if !t.IsZero() {
		c.offset = time.Until(t)
	}
}
