package rehearsal

import (
	"fmt"
	"iter"
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// FaultKind is a way in which a talk went wrong.
type FaultKind string

const (
	WrongFact   FaultKind = "wrong_fact"   // noted down, and not meant
	AfterStop   FaultKind = "after_stop"   // a text after the opt-out was confirmed
	AskedThrice FaultKind = "asked_thrice" // the same thing three times
	SameWords   FaultKind = "same_words"   // the same sentence to the same person
	DeadEnd     FaultKind = "dead_end"     // nothing is asked, and the lead is open
	NoAnswer    FaultKind = "no_answer"    // a message that nothing was said to
	Unfilled    FaultKind = "unfilled"     // a brace left in a sentence
)

// Fault is one thing that went wrong in a talk.
type Fault struct {
	Kind  FaultKind `json:"kind"`
	Ask   string    `json:"topic,omitempty"` // with @unit
	Value string    `json:"value,omitempty"`
	Words string    `json:"words,omitempty"`
	Why   string    `json:"why,omitempty"`
	// Message and Asked are what the customer wrote, and to which question.
	Message string   `json:"message,omitempty"`
	Asked   []string `json:"asked,omitempty"`
}

// Missed is something that a careful reader would have understood.
type Missed struct {
	Customer int      `json:"customer"`
	Words    string   `json:"words"`
	Asked    []string `json:"asked"`
	Meant    string   `json:"meant"`
	Noted    string   `json:"noted"` // what stands for it after the turn
}

// Talk is how one customer's talk went.
type Talk struct {
	Number   int    `json:"customer"`
	Kind     string `json:"kind"`
	Manner   string `json:"manner"`
	Leaving  string `json:"leaving"`
	Language string `json:"language"`
	Channel  string `json:"channel"`
	Mistake  string `json:"mistake,omitempty"`
	// ShouldBeReady: the shop can make it and the customer plays along to the end.
	ShouldBeReady bool            `json:"should_be_ready"`
	Status        string          `json:"status"`
	State         string          `json:"state"`
	Why           []string        `json:"why_staff"`
	Messages      int             `json:"messages"` // the customer's
	LastAsked     []string        `json:"last_asked"`
	Caught        []fitcheck.Code `json:"caught"`
	Faults        []Fault         `json:"faults,omitempty"`
	Missed        []Missed        `json:"missed,omitempty"`
	Lines         []string        `json:"talk,omitempty"`

	// Became says what became of the mistake, OpenAsk what was asked before the last message.
	Became  string `json:"mistake_became,omitempty"`
	OpenAsk string `json:"open_question,omitempty"`
}

func (t *Talk) fault(f Fault) { t.Faults = append(t.Faults, f) }

func (t *Talk) wrong() bool {
	for _, f := range t.Faults {
		if f.Kind == WrongFact || f.Kind == AfterStop {
			return true
		}
	}
	return false
}

func (t *Talk) said(who, text string) {
	t.Lines = append(t.Lines, who+strings.ReplaceAll(text, "\n", "\n   "))
}

// noted adds to the talk what a turn took and where it stands.
func (t *Talk) noted(talk *conversation.Talk, facts []conversation.Entry) {
	var b strings.Builder
	fmt.Fprintf(&b, "   (%s; asking %s)", talk.State, strings.Join(talk.Asking(), ", "))
	for _, e := range facts {
		fmt.Fprintf(&b, " +%s=%s", conversation.Ask{Topic: e.Topic, Unit: e.Unit}, asJSON(e.Value))
	}
	t.Lines = append(t.Lines, b.String())
}

// String is the whole talk, to be read.
func (t *Talk) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "--- customer %d: %s, %s, %s, %s, %s", t.Number, t.Kind, t.Manner, t.Channel, t.Language, t.Leaving)
	if t.Mistake != "" {
		fmt.Fprintf(&b, "; mistake: %s (%s)", t.Mistake, t.Became)
	}
	fmt.Fprintf(&b, "\n%s\n= %s", strings.Join(t.Lines, "\n"), t.Status)
	if len(t.Why) > 0 {
		fmt.Fprintf(&b, ": %s", strings.Join(t.Why, "; "))
	}
	b.WriteString("\n")
	for _, f := range t.Faults {
		fmt.Fprintf(&b, "! %s %s %s %q %s\n", f.Kind, f.Ask, f.Value, f.Words, f.Why)
	}
	for _, m := range t.Missed {
		fmt.Fprintf(&b, "? not understood: %s (noted: %s)\n", m.Meant, m.Noted)
	}
	return b.String()
}

func keys[K comparable, V any](m map[K]V) iter.Seq[K] {
	return func(yield func(K) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}
