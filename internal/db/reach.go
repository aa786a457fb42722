package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// Unsubscribed follows a carrier that says that its customer opted out: nothing more is
// sent to that address, and the talk is silent.
func Unsubscribed(b *pgx.Batch, conversationID int64, to Address, now time.Time) {
	queueOptOut(b, to, OptOutCarrier, now)
	silenceOn(b, conversationID, to)
	b.Queue(`UPDATE leads SET status = 'closed', updated_at = $2 WHERE conversation_id = $1 AND status = 'open'`,
		conversationID, now)
}

// silenceOn makes a talk silent because of an opt-out on one of its ways; on another the
// customer may still write.
func silenceOn(b *pgx.Batch, conversationID int64, to Address) {
	b.Queue(`UPDATE conversations SET state = 'silenced', wake_at = NULL,
		memory = memory || jsonb_build_object('stopped', true, 'stopped_on', $2::text) WHERE id = $1`, conversationID, to.Channel)
}

// FollowLink follows an opt-out by the link in a mail: it counts for the address of that
// message. ErrNotFound where there is no such message.
func FollowLink(ctx context.Context, tx pgx.Tx, messageID int64, now time.Time) error {
	var id int64
	var to Address
	err := tx.QueryRow(ctx, `SELECT conversation_id, channel, address FROM messages WHERE id = $1 AND direction = 'out'`, messageID).
		Scan(&id, &to.Channel, &to.Address)
	if errors.Is(err, pgx.ErrNoRows) {
		return ErrNotFound
	}
	if err != nil {
		return fmt.Errorf("opt-out by message %d: %w", messageID, err)
	}
	b := &pgx.Batch{}
	queueOptOut(b, to, OptOutLink, now)
	silenceOn(b, id, to)
	b.Queue(`UPDATE leads SET status = 'closed', waiting_since = NULL, updated_at = $2 WHERE conversation_id = $1 AND status = 'open'`, id, now)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("opt-out by message %d: %w", messageID, err)
	}
	return nil
}

// wayOf says what a way that leads nowhere is called: in the talk's memory, and to staff.
func wayOf(to Address) (remember, why string) {
	if to.Channel == conversation.Email {
		return "no_mail", conversation.WhyNoMail
	}
	return "no_texts", conversation.WhyNoTexts
}

// Unreachable marks a lead whose number takes no texts, or whose address takes no mail: a
// person must find another way. What else waits for that address is held.
func Unreachable(b *pgx.Batch, conversationID int64, to Address, code string, now time.Time) {
	remember, why := wayOf(to)
	b.Queue(`UPDATE leads SET
			why_staff = CASE WHEN $2 = ANY (why_staff) THEN why_staff ELSE why_staff || $2 END,
			qualified = qualified AND CASE WHEN $4 THEN phone ELSE email END IS NOT NULL,
			status = CASE WHEN status = 'open' THEN 'needs_person' ELSE status END,
			waiting_since = CASE WHEN status IN ('open', 'ready', 'needs_person') THEN coalesce(waiting_since, $3) END,
			updated_at = $3
		WHERE conversation_id = $1`, conversationID, why, now, to.Channel == conversation.Email)
	b.Queue(`UPDATE conversations SET wake_at = NULL, memory = memory || jsonb_build_object($2::text, true) WHERE id = $1`,
		conversationID, remember)
	b.Queue(`UPDATE sends s SET state = 'held', error_code = $4, finished_at = clock_timestamp()
		FROM messages m WHERE m.id = s.message_id AND s.conversation_id = $1 AND s.state = 'queued'
			AND m.channel = $2 AND m.address = $3`, conversationID, to.Channel, to.Address, code)
	Alert(b, conversationID, AlertUnreachable, now)
}
