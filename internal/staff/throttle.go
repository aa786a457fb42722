package staff

import (
	"time"

	"example.com/intake-bot/internal/db"
)

// Tries to log in that may fail within span. Somebody who forgot a password comes by
// well under them. An account can't be locked for its owner by others who try: an
// address that got in within the month is measured by its own failures alone.
const (
	span         = 15 * time.Minute
	mostByPair   = 8  // of one account from one address
	mostByLogin  = 30 // of one account from addresses that are not known
	mostByClient = 60 // from one address, of any accounts: an office shares one
)

// pause is how long the next try must wait; 0: it may come now.
func pause(f db.Failures, now time.Time) time.Duration {
	var wait time.Duration
	until := func(since time.Time) { wait = max(wait, since.Add(span).Sub(now), time.Second) }
	if f.Pair >= mostByPair {
		until(f.PairSince)
	}
	if !f.Known && f.Login >= mostByLogin {
		until(f.LoginSince)
	}
	if !f.Known && f.Address >= mostByClient {
		until(f.AddressSince)
	}
	return wait
}
