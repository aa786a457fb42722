package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// Turn is what one turn of talk leads to, ready to be saved.
type Turn struct {
	Held    *Held
	Handled []Waiting // with their numbers
	Outcome conversation.Outcome
	Record  conversation.Record // the lead's columns; its lists of facts, messages and photos are not used
	To      Address             // where the answer goes
	Now     time.Time
	Alert   string // why staff should be told; empty: they need not
	Last    bool   // nothing else is written in this transaction: it may end with it
}

// SaveTurn writes a turn in one round trip, in the transaction that holds the talk. It
// says how many messages wait to be sent because of it.
func SaveTurn(ctx context.Context, tx pgx.Tx, t Turn) (queued int, err error) {
	b := &pgx.Batch{}
	id := t.Held.ID
	saveHandled(b, id, t.Handled, t.Now)
	lastN := t.Held.LastN + len(t.Handled)
	out := t.outgoing(lastN)
	out.queue(b)
	talk := t.Outcome.Talk
	if err := saveTalk(b, id, talk, lastN+len(out.said), t.Outcome.Wake); err != nil {
		return 0, fmt.Errorf("save turn of talk %d: %w", id, err)
	}
	if err := saveLedger(b, id, t.Held.Talk.Ledger, talk.Ledger); err != nil {
		return 0, fmt.Errorf("save turn of talk %d: %w", id, err)
	}
	if err := saveLead(b, id, t.Record, t.Now); err != nil {
		return 0, fmt.Errorf("save turn of talk %d: %w", id, err)
	}
	savePhotoTopics(b, id, t.Outcome.PhotosOf)
	t.saveConsent(b)
	if t.Alert != "" {
		Alert(b, id, t.Alert, t.Now)
	}
	send := sendBatch
	if t.Last {
		send = sendLast
	}
	if err := send(ctx, tx, b); err != nil {
		return 0, fmt.Errorf("save turn of talk %d: %w", id, err)
	}
	return len(out.said), nil
}

// saveConsent follows a stop that was said in other words than the carrier's. The way
// back is the customer's own START alone, never what a turn made of something else.
func (t Turn) saveConsent(b *pgx.Batch) {
	if t.Outcome.Talk.State == conversation.Silenced && t.Held.Talk.State != conversation.Silenced {
		queueOptOut(b, t.To, OptOutTalk, t.Now)
	}
}

func (t Turn) outgoing(lastN int) outgoing {
	out := outgoing{conversationID: t.Held.ID, author: conversation.FromBot, to: t.To, at: t.Now}
	for i, u := range t.Outcome.Say {
		out.said = append(out.said, said{n: lastN + i + 1, utterance: u})
	}
	return out
}

// SaveTrouble is kept instead of a turn that could not be made: the messages are taken,
// and the lead waits for a person as it is. Nothing is said.
func SaveTrouble(ctx context.Context, tx pgx.Tx, h *Held, now time.Time) error {
	b := &pgx.Batch{}
	saveHandled(b, h.ID, h.Waiting, now)
	b.Queue(`UPDATE conversations SET last_n = $2, wake_at = NULL,
		state = CASE WHEN state = 'silenced' THEN state ELSE 'with_staff' END WHERE id = $1`, h.ID, h.LastN+len(h.Waiting))
	toStaff(b, h.ID, WhyTrouble, now)
	Alert(b, h.ID, AlertTrouble, now)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("save trouble of talk %d: %w", h.ID, err)
	}
	return nil
}

// WhyTrouble stands in a lead's reasons for staff where the program failed at a turn.
const WhyTrouble = "the program could not go on"
