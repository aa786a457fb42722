package db

import (
	"time"

	"github.com/jackc/pgx/v5"
)

// Why staff are told of a lead.
const (
	AlertLead        = "lead"         // it became ready, needs a person, or is urgent
	AlertTrouble     = "trouble"      // a turn could not be made
	AlertUnreachable = "unreachable"  // the customer's number takes no texts
	AlertNotSent     = "not_sent"     // a message was refused for good
	AlertFlood       = "flood"        // held back: more than is answered
	AlertBudget      = "budget"       // a text waits for the next day's budget
	AlertSendUnknown = "send_unknown" // nobody can tell whether a message went
)

// Alert notes that staff should be told of a lead.
func Alert(b *pgx.Batch, conversationID int64, reason string, at time.Time) {
	b.Queue(`INSERT INTO alerts (conversation_id, reason, at) VALUES ($1, $2, $3)`, conversationID, reason, at)
}
