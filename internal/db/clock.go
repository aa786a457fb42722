package db

import (
	"context"
	"fmt"
	"log/slog"
	"sync/atomic"
	"time"
)

// Clock is the database's clock. It is the one that counts: all processes share it, and
// what is due, late or in the customer's night must not depend on which machine looks,
// nor on one whose clock was set wrong. Between two looks it goes by the machine's.
type Clock struct {
	machine func() time.Time
	ahead   atomic.Int64 // by how much the database's is ahead of the machine's
}

const (
	// clockTrust is up to which difference the machine's clock is taken as it is: less can't
	// be told from the time that the question took, and means nothing to a customer.
	clockTrust = time.Second
	// clockLook is how often it is looked at, for a machine's clock may be set.
	clockLook = 30 * time.Second
)

// NewClock makes a clock that shows the machine's time until the first Look; machine is
// nil for time.Now.
func NewClock(machine func() time.Time) *Clock {
	if machine == nil {
		machine = time.Now
	}
	return &Clock{machine: machine}
}

// Now is the time by the database's clock.
func (c *Clock) Now() time.Time { return c.machine().Add(time.Duration(c.ahead.Load())) }

// Look asks the database for its time, and gives by how much the machine's is behind it;
// 0 for less than a second.
func (c *Clock) Look(ctx context.Context, conn Conn) (ahead time.Duration, err error) {
	before := c.machine()
	var there time.Time
	if err := conn.QueryRow(ctx, `SELECT clock_timestamp()`).Scan(&there); err != nil {
		return 0, fmt.Errorf("ask the database for its time: %w", err)
	}
	took := c.machine().Sub(before)
	ahead = there.Sub(before.Add(took / 2))
	if ahead.Abs() < clockTrust+took/2 {
		ahead = 0
	}
	c.ahead.Store(int64(ahead))
	return ahead, nil
}

// Follow looks again and again until ctx ends, and says where the two clocks differ.
func (c *Clock) Follow(ctx context.Context, conn Conn, log *slog.Logger) {
	known := time.Duration(c.ahead.Load())
	for {
		select {
		case <-ctx.Done():
			return
		case <-time.After(clockLook):
		}
		asking, cancel := context.WithTimeout(ctx, clockLook/3)
		ahead, err := c.Look(asking, conn)
		cancel()
		if err == nil && (ahead-known).Abs() > clockTrust {
			TellClock(ctx, log, ahead)
			known = ahead
		}
	}
}

// TellClock says that the machine's clock and the database's differ, if they do.
func TellClock(ctx context.Context, log *slog.Logger, ahead time.Duration) {
	if ahead != 0 {
		log.WarnContext(ctx, "this machine's clock differs from the database's, which is gone by", "database_ahead", ahead.Round(time.Second).String())
	}
}
