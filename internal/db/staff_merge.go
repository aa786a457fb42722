package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// LockTalks holds several talks until the transaction ends, always in the same order, so
// that two who do so at once wait for each other and no longer.
func LockTalks(ctx context.Context, tx pgx.Tx, ids ...int64) error {
	const sql = `SELECT count(*) FROM (SELECT FROM conversations WHERE id = ANY ($1) ORDER BY id FOR NO KEY UPDATE) c`
	var n int
	if err := tx.QueryRow(ctx, sql, ids).Scan(&n); err != nil {
		return fmt.Errorf("lock talks %v: %w", ids, err)
	}
	return nil
}

// MergeTalk moves all messages of one talk, with what hangs on them, behind those of
// another. Both are held. The ledger is the caller's to join: the facts of the talk that
// is joined are taken out here, and its messages get the numbers that they had plus the
// other's last one, which is moved on. SplitTalk undoes it.
func MergeTalk(ctx context.Context, tx pgx.Tx, from, into *Held, now time.Time) error {
	var before []byte
	if err := tx.QueryRow(ctx, bothAsTheyAre, from.ID, into.ID).Scan(&before); err != nil {
		return fmt.Errorf("join talk %d into %d: %w", from.ID, into.ID, err)
	}
	if err := MoveTalk(ctx, tx, from.ID, into.ID, into.LastN, now); err != nil {
		return err
	}
	b := &pgx.Batch{}
	b.Queue(`UPDATE staff_history SET conversation_id = $2 WHERE conversation_id = $1`, from.ID, into.ID)
	b.Queue(`DELETE FROM lead_hands WHERE conversation_id = $1`, from.ID)
	b.Queue(`UPDATE lead_merges SET into_id = $2 WHERE into_id = $1`, from.ID, into.ID)
	b.Queue(`UPDATE lead_merges SET before = $2 WHERE from_id = $1`, from.ID, before)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("join talk %d into %d: %w", from.ID, into.ID, err)
	}
	if into.Talk.Phone == "" {
		into.Talk.Phone = from.Talk.Phone
	}
	if into.Talk.Email == "" {
		into.Talk.Email = from.Talk.Email
	}
	into.LastN += from.LastN
	return nil
}

// bothAsTheyAre is what it takes to put two talks back: their own rows, and of what moves
// from the first ($1) to the second ($2), which it was.
const bothAsTheyAre = `SELECT jsonb_build_object(
	'talks', (SELECT jsonb_agg(to_jsonb(c)) FROM conversations c WHERE id IN ($1, $2)),
	'leads', (SELECT jsonb_agg(to_jsonb(l) - 'words') FROM leads l WHERE conversation_id IN ($1, $2)),
	'facts', (SELECT coalesce(jsonb_agg(to_jsonb(f)), '[]') FROM facts f WHERE conversation_id IN ($1, $2)),
	'messages', (SELECT coalesce(jsonb_agg(jsonb_build_object('id', id, 'n', n)), '[]') FROM messages WHERE conversation_id = $1),
	'said', (SELECT count(*) FROM messages WHERE conversation_id IN ($1, $2)),
	'alerts', (SELECT coalesce(jsonb_agg(id), '[]') FROM alerts WHERE conversation_id = $1),
	'addresses', (SELECT coalesce(jsonb_agg(to_jsonb(a)), '[]') FROM addresses a WHERE conversation_id = $1),
	'history', (SELECT coalesce(jsonb_agg(id), '[]') FROM staff_history WHERE conversation_id = $1),
	'hands', (SELECT coalesce(jsonb_agg(to_jsonb(h)), '[]') FROM lead_hands h WHERE conversation_id = $1),
	'merges', (SELECT coalesce(jsonb_agg(from_id), '[]') FROM lead_merges WHERE into_id = $1))`

// ErrGoneOn says that a talk has gone on since, so that something can't be undone.
var ErrGoneOn = errors.New("the talk has gone on")

// SplitTalk takes two talks apart that were joined, as long as nothing was said and nobody
// did anything in them since: both stand again as they did, and what was only noted, or
// whose hands the second is in, stays. The line of history is that of the joining. The
// caller holds the talk into which the other went.
func SplitTalk(ctx context.Context, tx pgx.Tx, ref string, into, line int64, now time.Time) error {
	const look = `
		SELECT m.from_id, m.before, (m.before ->> 'said')::int = (SELECT count(*) FROM messages WHERE conversation_id = $2)
			AND NOT EXISTS (SELECT FROM staff_history h WHERE h.conversation_id = $2 AND h.id > $3 AND h.undone_by IS NULL
				AND h.deed NOT IN ('saw', 'noted', 'took', 'took_by_text', 'put_back') AND NOT h.detail ? 'undoes')
		FROM lead_merges m JOIN conversations c ON c.id = m.from_id WHERE c.ref = $1 AND m.into_id = $2 AND m.before IS NOT NULL`
	var from int64
	var before []byte
	var still bool
	err := tx.QueryRow(ctx, look, ref, into, line).Scan(&from, &before, &still)
	if errors.Is(err, pgx.ErrNoRows) || err == nil && !still {
		err = ErrGoneOn
	}
	if err != nil {
		return fmt.Errorf("take %s out of talk %d: %w", ref, into, err)
	}
	if err := LockTalks(ctx, tx, from, into); err != nil {
		return err
	}
	b := &pgx.Batch{}
	for _, sql := range apart {
		b.Queue(sql, from, into, before, now)
	}
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("take %s out of talk %d: %w", ref, into, err)
	}
	return nil
}

// apart puts two talks back, in an order that no reference between them minds. All take
// the same values, named in the first; not all need each.
var apart = func() []string {
	const given = `WITH given AS (SELECT $1::bigint AS a, $2::bigint AS b, $3::jsonb AS was, $4::timestamptz AS now) `
	all := []string{
		`DELETE FROM facts USING given WHERE conversation_id IN (a, b)`,
		`UPDATE messages m SET conversation_id = a, n = o.n FROM given, jsonb_to_recordset(was -> 'messages') o (id bigint, n int) WHERE m.id = o.id`,
		`UPDATE sends s SET conversation_id = a FROM given, jsonb_to_recordset(was -> 'messages') o (id bigint, n int) WHERE s.message_id = o.id`,
		`UPDATE alerts SET conversation_id = a FROM given WHERE was -> 'alerts' @> to_jsonb(id)`,
		`UPDATE addresses x SET conversation_id = a FROM given, jsonb_populate_recordset(NULL::addresses, was -> 'addresses') o
			WHERE x.channel = o.channel AND x.address = o.address AND x.conversation_id = b`,
		`UPDATE staff_history SET conversation_id = a FROM given WHERE conversation_id = b AND was -> 'history' @> to_jsonb(id)`,
		`UPDATE lead_merges SET into_id = a FROM given WHERE into_id = b AND was -> 'merges' @> to_jsonb(from_id)`,
		`INSERT INTO lead_hands SELECT o.* FROM given, jsonb_populate_recordset(NULL::lead_hands, was -> 'hands') o`,
		`UPDATE conversations c SET phone = o.phone, email = o.email, language = o.language, state = o.state, memory = o.memory, last_n = o.last_n, wake_at = o.wake_at
			FROM given, jsonb_populate_recordset(NULL::conversations, was -> 'talks') o WHERE c.id = o.id`,
		`INSERT INTO facts SELECT o.* FROM given, jsonb_populate_recordset(NULL::facts, was -> 'facts') o`,
		`UPDATE leads l SET status = o.status, qualified = o.qualified, why_staff = o.why_staff, urgent = o.urgent, after_hours = o.after_hours, ready_at = o.ready_at,
			name = o.name, phone = o.phone, email = o.email, city = o.city, region = o.region, zip = o.zip, time_zone = o.time_zone, use = o.use, problem = o.problem,
			units = o.units, waiting_since = o.waiting_since, updated_at = now
			FROM given, jsonb_populate_recordset(NULL::leads, was -> 'leads') o WHERE l.conversation_id = o.conversation_id`,
		// Whose hands it is in may have changed since.
		`UPDATE leads l SET status = 'picked_up', waiting_since = NULL FROM given WHERE conversation_id = b
			AND status IN ('open', 'ready', 'needs_person') AND EXISTS (SELECT FROM lead_hands h WHERE h.conversation_id = b)`,
		`DELETE FROM lead_merges USING given WHERE from_id = a`,
	}
	for i := range all {
		all[i] = given + all[i]
	}
	return all
}()
