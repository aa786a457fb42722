package intake

import (
	"context"
	"errors"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// Sender hands messages of one channel to whoever carries them.
type Sender interface {
	// Send hands over one message and gives the provider's id for it. An error is a
	// *Failure, or it is taken for one of kind Uncertain.
	Send(ctx context.Context, m Outgoing) (providerID string, err error)
	// Find asks the provider for a message that Send may have handed over. ErrCantTell
	// says that it never can; any other error, that it can't now.
	Find(ctx context.Context, m Outgoing) (providerID string, found bool, err error)
}

// ErrCantTell is a Sender's word that it has no way to know what it sent.
var ErrCantTell = errors.New("the channel can't tell whether a message went")

// Outgoing is one message on its way to a customer.
type Outgoing struct {
	MessageID int64
	Kind      conversation.UtteranceKind
	To        db.Address
	Ref       string
	Language  string // of the talk; only where a picture goes along
	N         int    // place in the talk
	Text      string
	Picture   fitcheck.Topic // topic of a drawing to send along, empty for none
	Since     time.Time      // the provider can't have it from before
}

// FailureKind says what a failed send means for this message and this customer.
type FailureKind string

const (
	Temporary    FailureKind = "temporary"    // the provider does not have it: try again
	Uncertain    FailureKind = "uncertain"    // the provider may have it: ask before trying again
	Unsubscribed FailureKind = "unsubscribed" // the customer told the carrier to stop
	Unreachable  FailureKind = "unreachable"  // the address takes no such messages
	Refused      FailureKind = "refused"      // refused for good for another reason
)

// Failure is a send that failed. Its text holds no words and no address of a customer.
type Failure struct {
	Kind       FailureKind
	Code       string        // the provider's, or a word of ours
	RetryAfter time.Duration // what the provider asked for; 0 for nothing
	Err        error
}

func (f *Failure) Error() string {
	s := "send: " + string(f.Kind) + " (" + f.Code + ")"
	if f.Err != nil {
		s += ": " + f.Err.Error()
	}
	return s
}

func (f *Failure) Unwrap() error { return f.Err }

// failureOf is what an error of a Sender means.
func failureOf(err error) *Failure {
	var f *Failure
	if errors.As(err, &f) {
		if f.Code == "" {
			f.Code = string(f.Kind)
		}
		return f
	}
	return &Failure{Kind: Uncertain, Code: string(Uncertain), Err: err}
}
