package conversation

import (
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// Shop is what the owner decides and the talk needs.
type Shop struct {
	Name      string // "Larkspur Dome Supply"
	Assistant string // how the bot calls itself: "the shop's text assistant"
	Phone     string // for people, as it is to be read: "(802) 555-0142"
	Email     string
	Address   string
	Zone      *time.Location
	Hours     Calendar
	Rules     *fitcheck.Rules
	// ShowEstimate allows the low and high of an estimate to be told to a customer.
	ShowEstimate bool
	// Silences are how long after a silent customer's last message each reminder is due,
	// and last, when what is known is left as it is; nil: the usual ones.
	Silences []time.Duration
	// Wording replaces sentences by key and language; see the wording package.
	Wording map[string]map[string]string
}

// Calendar knows when the shop is open.
type Calendar interface {
	Open(t time.Time) bool
	// NextOpening is the first time at or after t at which the shop opens; t itself
	// while it is open.
	NextOpening(t time.Time) time.Time
}
