package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// What came of a try to send. Each of these puts its statement into a batch, so that
// the next message is claimed with the same round trip. None changes a message that is
// finished already, and none but Sent one that another process took over meanwhile: it has
// asked the provider once more than we know of.

// Sent records the provider's id. One that another message has already is not taken:
// it can't be this one's.
func (s *Send) Sent(b *pgx.Batch, providerID string) {
	b.Queue(`UPDATE sends SET state = 'sent', provider_id = $2, error_code = NULL, segments = nullif($3, 0), finished_at = clock_timestamp()
		WHERE message_id = $1 AND state = 'sending'`, s.MessageID, providerID, s.Segments)
}

// Retry puts the message back to the head of its line for a while: the provider does
// not have it.
func (s *Send) Retry(b *pgx.Batch, wait time.Duration, code string) {
	b.Queue(`UPDATE sends SET state = 'queued', due_at = clock_timestamp() + $2, error_code = nullif($3, '')
		WHERE message_id = $1 AND state = 'sending' AND checks = $4`, s.MessageID, wait, code, s.Checks)
}

// Postpone puts the message back without counting the try: it was not yet the hour.
func (s *Send) Postpone(b *pgx.Batch, wait time.Duration) {
	b.Queue(`UPDATE sends SET state = 'queued', due_at = clock_timestamp() + $2, attempts = attempts - 1
		WHERE message_id = $1 AND state = 'sending' AND checks = $3`, s.MessageID, wait, s.Checks)
}

// AskLater leaves the message in doubt until the provider is asked for it.
func (s *Send) AskLater(b *pgx.Batch, wait time.Duration, code string) {
	b.Queue(`UPDATE sends SET due_at = clock_timestamp() + $2, error_code = nullif($3, '')
		WHERE message_id = $1 AND state = 'sending' AND checks = $4`, s.MessageID, wait, code, s.Checks)
}

// Again sends a message that the provider turned out not to have: the same claim, one
// more try.
func (s *Send) Again(b *pgx.Batch) {
	b.Queue(`UPDATE sends SET attempts = attempts + 1, claimed_at = clock_timestamp()
		WHERE message_id = $1 AND state = 'sending' AND checks = $2`, s.MessageID, s.Checks)
}

// Fail ends the message for good, and tells staff.
func (s *Send) Fail(b *pgx.Batch, state SendState, code, alert string, now time.Time) {
	b.Queue(`UPDATE sends SET state = $2, error_code = $3, finished_at = clock_timestamp()
		WHERE message_id = $1 AND state = 'sending' AND checks = $4`, s.MessageID, state, code, s.Checks)
	if alert != "" {
		Alert(b, s.ConversationID, alert, now)
	}
}

// TakenID says whether a provider's id is already that of another message.
func TakenID(ctx context.Context, c Conn, s *Send, providerID string) (bool, error) {
	var taken bool
	const sql = `SELECT EXISTS (SELECT FROM sends WHERE channel = $1 AND provider_id = $2 AND message_id <> $3)`
	if err := c.QueryRow(ctx, sql, s.To.Channel, providerID, s.MessageID).Scan(&taken); err != nil {
		return false, fmt.Errorf("look up send %s: %w", providerID, err)
	}
	return taken, nil
}
