package db

import (
	"time"

	"github.com/jackc/pgx/v5"
)

// WhyUnreachable stands in a lead's reasons for staff where its number takes no texts.
const WhyUnreachable = "number takes no texts"

// Unsubscribed follows a carrier that says that its customer opted out: nothing more is
// sent to that address, and the talk is silent.
func Unsubscribed(b *pgx.Batch, conversationID int64, to Address, now time.Time) {
	queueOptOut(b, to, OptOutCarrier, now)
	b.Queue(`UPDATE conversations SET state = 'silenced', wake_at = NULL WHERE id = $1`, conversationID)
	b.Queue(`UPDATE leads SET status = 'closed', updated_at = $2 WHERE conversation_id = $1 AND status = 'open'`,
		conversationID, now)
}

// Unreachable marks a lead whose number takes no texts: a person must find another way.
// What else waits for that address is held.
func Unreachable(b *pgx.Batch, conversationID int64, to Address, code string, now time.Time) {
	b.Queue(`UPDATE leads SET
			why_staff = CASE WHEN $2 = ANY (why_staff) THEN why_staff ELSE why_staff || $2 END,
			qualified = qualified AND email IS NOT NULL,
			status = CASE WHEN status = 'open' THEN 'needs_person' ELSE status END,
			waiting_since = CASE WHEN status IN ('open', 'ready', 'needs_person') THEN coalesce(waiting_since, $3) END,
			updated_at = $3
		WHERE conversation_id = $1`, conversationID, WhyUnreachable, now)
	b.Queue(`UPDATE conversations SET wake_at = NULL WHERE id = $1`, conversationID)
	b.Queue(`UPDATE sends s SET state = 'held', error_code = $4, finished_at = clock_timestamp()
		FROM messages m WHERE m.id = s.message_id AND s.conversation_id = $1 AND s.state = 'queued'
			AND m.channel = $2 AND m.address = $3`, conversationID, to.Channel, to.Address, code)
	Alert(b, conversationID, AlertUnreachable, now)
}
