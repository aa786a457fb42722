package intake

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"
	"strings"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/db"
)

// Brain is the pure part that a turn calls. All of it is needed but Answer.
type Brain struct {
	// Respond takes what came in, oldest first, and says what comes of it.
	Respond func(talk conversation.Talk, in []conversation.Message, now time.Time, shop *conversation.Shop) (conversation.Outcome, error)
	// Nudge says what to do where nothing came in for long.
	Nudge func(talk conversation.Talk, now time.Time, shop *conversation.Shop) (conversation.Outcome, error)
	// Record gives the lead record of a talk; its messages and photos may be missing.
	Record func(talk conversation.Talk) conversation.Record
	// Keyword is the request that a whole message is by the carriers' rules, or "".
	Keyword func(text string) reading.Request
	// Answer looks up the owner's answer to a question in a message, "" where none fits
	// well; nil: there are none. It runs on the turn's own connection.
	Answer func(ctx context.Context, c db.Conn, text string) (string, error)
}

func (b Brain) check() error {
	if b.Respond == nil || b.Nudge == nil || b.Record == nil || b.Keyword == nil {
		return errors.New("intake needs Respond, Nudge, Record and Keyword")
	}
	return nil
}

// BrainError says that the pure part failed, which no second try will mend. It holds
// no words of a customer.
type BrainError struct {
	Step string
	Err  error
}

func (e *BrainError) Error() string { return e.Step + ": " + e.Err.Error() }
func (e *BrainError) Unwrap() error { return e.Err }

// guarded calls what may break; a panic in it is an error like any other, so that one
// talk that trips it can't stop the others.
func guarded[T any](step string, fn func() (T, error)) (out T, err error) {
	defer func() {
		if p := recover(); p != nil {
			// Not the value itself: it may quote the customer.
			err = &BrainError{Step: step, Err: fmt.Errorf("panic of type %T at %s", p, panicSite(string(debug.Stack())))}
		}
	}()
	if out, err = fn(); err != nil {
		return out, &BrainError{Step: step, Err: err}
	}
	return out, nil
}

// panicSite is the first line of a stack that is neither the runtime's nor ours.
func panicSite(stack string) string {
	_, after, found := strings.Cut(stack, "panic(")
	if !found {
		return "unknown place"
	}
	for line := range strings.Lines(after) {
		line = strings.TrimSpace(line)
		if strings.Contains(line, ".go:") && !strings.Contains(line, "/runtime/") {
			site, _, _ := strings.Cut(line, " +0x")
			return site
		}
	}
	return "unknown place"
}
