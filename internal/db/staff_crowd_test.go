package db_test

import (
	"context"
	"testing"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/db/dbtest"
)

// crowd fills a database with n leads of which one in ten waits. All of it is done by a
// few statements on whole tables, and indexes are made when the rows are there: a million
// take a minute or two.
func crowd(t testing.TB, n int) *pgxpool.Pool {
	t.Helper()
	pool := dbtest.New(t)
	for _, step := range []struct {
		sql  string
		args []any
	}{
		{sql: `CREATE TABLE later AS SELECT indexdef FROM pg_indexes
			WHERE tablename IN ('conversations', 'leads') AND indexname NOT IN (SELECT conname FROM pg_constraint)`},
		{sql: `DO $$ DECLARE one text; BEGIN
			FOR one IN SELECT indexname FROM pg_indexes WHERE indexdef IN (SELECT indexdef FROM later) LOOP EXECUTE 'DROP INDEX ' || one; END LOOP;
			END $$`},
		{sql: `ALTER TABLE leads DISABLE TRIGGER USER`},
		// The ref is a number written with the 21 letters of refs, five of them.
		{`INSERT INTO conversations (ref, channel, phone, state, opened_at)
			SELECT substr(l, i % 21 + 1, 1) || substr(l, i / 21 % 21 + 1, 1) || substr(l, i / 441 % 21 + 1, 1) || substr(l, i / 9261 % 21 + 1, 1)
				|| substr(l, i / 194481 % 21 + 1, 1), 'sms', '+1218' || lpad(i::text, 7, '0'), 'with_staff', now() - i * interval '7 minutes'
			FROM generate_series(1, $1::int) i, (VALUES ('CDFGHJKMNPQRTWXY34679')) letters (l)`, []any{n}},
		{sql: `INSERT INTO leads (conversation_id, status, why_staff, urgent, name, phone, city, region, zip, waiting_since, ready_at, updated_at, units)
			SELECT id, s.status, '{asked for a person}', id % 97 = 0, 'Name' || id % 5000 || ' Person', phone, 'Town' || id % 900, 'MN', lpad((id % 90000 + 10000)::text, 5, '0'),
				CASE WHEN s.status IN ('ready', 'needs_person') THEN opened_at END, opened_at, opened_at,
				jsonb_build_array(jsonb_build_object('curb_outside', jsonb_build_object('width_in', (20 + id % 400 / 16.0)::float8, 'length_in', (40 + id % 300 / 16.0)::float8),
					'check', jsonb_build_object('replace', 'unit', 'verdict', 'fits', 'missing', '[]'::jsonb)))
			FROM conversations c, LATERAL (SELECT CASE WHEN id % 20 = 0 THEN 'ready' WHEN id % 20 = 1 THEN 'needs_person' WHEN id % 3 = 0 THEN 'ordered' ELSE 'declined' END AS status) s`},
		{sql: `DO $$ DECLARE one text; BEGIN FOR one IN SELECT indexdef FROM later LOOP EXECUTE one; END LOOP; DROP TABLE later; END $$`},
		{sql: `ALTER TABLE leads ENABLE TRIGGER USER`},
		{sql: `VACUUM ANALYZE`},
	} {
		if _, err := pool.Exec(context.Background(), step.sql, step.args...); err != nil {
			t.Fatalf("%v in %s", err, step.sql)
		}
	}
	return pool
}
