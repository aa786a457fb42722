package dbtest

import (
	"fmt"
	"testing"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"
)

// FillTalks makes open talks in an empty database with so many messages each, half of them
// answers, as turns would have left them, by a few statements over whole sets. Talk k (from
// 1) has id k and number Phone(k). Its messages are spread over a year, interleaved with
// those of all others.
func FillTalks(t testing.TB, pool *pgxpool.Pool, talks, messages int) {
	t.Helper()
	err := pgx.BeginFunc(t.Context(), pool, func(tx pgx.Tx) error {
		for _, sql := range fillStatements {
			if _, err := tx.Exec(t.Context(), sql, pgx.NamedArgs{"talks": talks, "messages": messages}); err != nil {
				return err
			}
		}
		return nil
	})
	if err == nil { // what the server would do by itself in the course of a year
		_, err = pool.Exec(t.Context(), `VACUUM (ANALYZE)`)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// Phone is the number of the customer of a talk that FillTalks made: one of those set aside for
// fiction as long as there are any, then one that is too long to be anybody's.
func Phone(talk int) string {
	if talk < 80_000 {
		return fmt.Sprintf("+1%03d55501%02d", 200+talk/100, talk%100)
	}
	return fmt.Sprintf("+1218555%06d", talk)
}

var fillStatements = []string{
	// References are right by construction: no need to look each up.
	`SET LOCAL session_replication_role = replica`,
	`INSERT INTO conversations (id, ref, channel, phone, language, state, memory, last_n, wake_at, opened_at) OVERRIDING SYSTEM VALUE
	SELECT k, (SELECT string_agg(substr('CDFGHJKMNPQRTWXY34679', 1 + (k / (21 ^ d)::bigint % 21)::int, 1), '') FROM generate_series(0, 4) d),
		'sms', CASE WHEN k < 80000 THEN '+1' || 200 + k / 100 || '55501' || lpad((k % 100)::text, 2, '0') ELSE '+1218555' || lpad(k::text, 6, '0') END, 'en', 'measuring', '{"greeted": true, "asked": {"curb_outside": 1}}', @messages,
		now() + interval '1 day' + k * interval '1 second', now() - interval '1 year'
	FROM generate_series(1, @talks::bigint) k`,
	`INSERT INTO leads (conversation_id, phone, city, region, zip, use, problem, units, updated_at)
	SELECT id, phone, 'Madison', 'WI', '53704', 'home', '{cracked}', '[{"count": 1, "style": "curb_mount", "curb_outside": {"width_in": 25.5, "length_in": 49.5}}]', opened_at
	FROM conversations`,
	`INSERT INTO addresses (channel, address, conversation_id) SELECT 'sms', phone, id FROM conversations`,
	`INSERT INTO messages (id, conversation_id, n, direction, author, channel, address, provider_id, text, at, received_at, handled_at) OVERRIDING SYSTEM VALUE
	SELECT (n - 1) * @talks::bigint + c.id, c.id, n, CASE WHEN n % 2 = 1 THEN 'in' ELSE 'out' END, CASE WHEN n % 2 = 1 THEN 'customer' ELSE 'bot' END, 'sms', c.phone,
		CASE WHEN n % 2 = 1 THEN 'F' || md5(c.id || '-' || n) END,
		CASE WHEN n % 2 = 1 THEN '25 1/2 by 49 1/2' ELSE '25 1/2 x 49 1/2 in, outside of the box - got it. To check it: what is the opening inside that box, wood to wood?' END,
		t, t, CASE WHEN n % 2 = 1 THEN t END
	FROM generate_series(1, @messages::int) n, conversations c,
		LATERAL (SELECT c.opened_at + interval '1 year' * ((n - 1 + c.id::float8 / @talks) / @messages) AS t) w
	ORDER BY n, c.id`,
	`INSERT INTO sends (message_id, conversation_id, channel, kind, state, queued_at, due_at, claimed_at, attempts, provider_id, segments, finished_at)
	SELECT id, conversation_id, 'sms', 'reply', 'sent', at, at, at, 1, 'OF' || id, 1, at FROM messages WHERE direction = 'out' ORDER BY id`,
	`INSERT INTO facts (conversation_id, seq, topic, unit, value, said, message, by)
	SELECT c.id, s, 'count', 1, '1', 'one', 2 * s - 1, 'customer' FROM conversations c, generate_series(1, least(4, @messages::int / 2)) s`,
	`SELECT setval(pg_get_serial_sequence('conversations', 'id'), @talks::bigint + 1), setval(pg_get_serial_sequence('messages', 'id'), @talks::bigint * @messages::bigint + 1)`,
}
