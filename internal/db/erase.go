package db

import (
	"context"
	"fmt"
	"regexp"
	"time"

	"github.com/jackc/pgx/v5"
)

// ErasePerson removes all that is kept of a person: their talks with messages, photos,
// facts, leads and history, mail that came from them or speaks of them by address, and
// jobs about any of it. It says how many talks there were; that number is all that stays,
// in the figures and the history. An opt-out stays as well: it must be kept to be honored.
func ErasePerson(ctx context.Context, tx pgx.Tx, staffID int64, address, zone string, now time.Time) (int, error) {
	refs, err := PersonTalks(ctx, tx, address)
	if err != nil {
		return 0, err
	}
	if err := eraseTraces(ctx, tx, refs, address); err != nil {
		return 0, err
	}
	if len(refs) == 0 {
		return 0, nil
	}
	if err := eraseTalks(ctx, tx, refs, zone); err != nil {
		return 0, err
	}
	_, err = Note(ctx, tx, staffID, 0, DeedErased, HistoryDetail{Text: talksGone(len(refs), "on request")}, now)
	return len(refs), err
}

func talksGone(n int, why string) string {
	if n == 1 {
		return "one talk, " + why
	}
	return fmt.Sprintf("%d talks, %s", n, why)
}

// eraseTraces removes what speaks of a person without belonging to a talk.
func eraseTraces(ctx context.Context, tx pgx.Tx, refs []string, address string) error {
	// The address as a whole: ann@example.com is no part of joann@example.com.
	whole := `(^|[^[:alnum:]._%+-])` + regexp.QuoteMeta(address) + `($|[^[:alnum:].-]|[.]($|[^[:alnum:]]))`
	b := &pgx.Batch{}
	// Mail that no person wrote, by whom it is from, or that names the address: a report
	// on the delivery of ours does.
	b.Queue(`DELETE FROM mails_in WHERE message_id IS NULL AND (sender = lower($1) OR subject ~* $2 OR encode(raw, 'escape') ~* $2)`,
		address, whole)
	// Jobs that are over or wait, with what they were given and how they failed. One that
	// runs now finds nothing when it looks.
	b.Queue(`DELETE FROM river_job j WHERE j.state <> 'running' AND (
		EXISTS (SELECT FROM conversations c WHERE c.ref = ANY ($1) AND j.args @> jsonb_build_object('conversation_id', c.id))
		OR EXISTS (SELECT FROM unnest($1::text[]) w WHERE position(w IN j.args::text || coalesce(j.errors::text, '')) > 0)
		OR j.args::text || coalesce(j.errors::text, '') ~* $2)`, refs, whole)
	b.Queue(`UPDATE staff_history SET detail = detail - 'ref' WHERE detail ->> 'ref' = ANY ($1)`, refs)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("erase what speaks of a person: %w", err)
	}
	return nil
}

// eraseTalks removes talks with all that hangs on them, and counts them.
func eraseTalks(ctx context.Context, tx pgx.Tx, refs []string, zone string) error {
	const count = `
		INSERT INTO gone_talks AS g (week, channel, begun, measured, ready, taken, quoted, ordered, after_hours)
		SELECT date_trunc('week', t.opened_at AT TIME ZONE $2)::date, t.channel, count(*), count(*) FILTER (WHERE measured), count(ready_at),
			count(*) FILTER (WHERE taken), count(*) FILTER (WHERE quoted), count(*) FILTER (WHERE ordered), count(*) FILTER (WHERE after_hours)
		FROM talk_steps t JOIN conversations c USING (id) WHERE c.ref = ANY ($1) GROUP BY 1, 2
		ON CONFLICT (week, channel) DO UPDATE SET begun = g.begun + excluded.begun, measured = g.measured + excluded.measured,
			ready = g.ready + excluded.ready, taken = g.taken + excluded.taken, quoted = g.quoted + excluded.quoted,
			ordered = g.ordered + excluded.ordered, after_hours = g.after_hours + excluded.after_hours`
	b := &pgx.Batch{}
	b.Queue(count, refs, zone)
	b.Queue(`DELETE FROM send_statuses t USING sends s JOIN conversations c ON c.id = s.conversation_id
		WHERE t.channel = s.channel AND t.provider_id = s.provider_id AND c.ref = ANY ($1)`, refs)
	// A line of the history may be undone by another of the same talk.
	b.Queue(`UPDATE staff_history SET undone_by = NULL WHERE conversation_id IN (SELECT id FROM conversations WHERE ref = ANY ($1))`, refs)
	b.Queue(`DELETE FROM conversations WHERE ref = ANY ($1)`, refs)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("erase %d talks: %w", len(refs), err)
	}
	return nil
}
