package db_test

import (
	"errors"
	"testing"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/fitcheck"
)

// seed is a talk with one message in and one out, for statements to be tried on.
const seed = `
	INSERT INTO conversations (ref, channel, phone, state, last_n, opened_at) VALUES ('R7KQ4', 'sms', '+12185550123', 'measuring', 2, now());
	INSERT INTO leads (conversation_id) VALUES (1);
	INSERT INTO addresses VALUES ('sms', '+12185550123', 1);
	INSERT INTO messages (conversation_id, n, direction, author, channel, address, provider_id, text, at, handled_at)
		VALUES (1, 1, 'in', 'customer', 'sms', '+12185550123', 'SM1', 'hello', now(), now());
	INSERT INTO messages (conversation_id, n, direction, author, channel, address, text, at)
		VALUES (1, 2, 'out', 'bot', 'sms', '+12185550123', 'hello yourself', now());
	INSERT INTO sends (message_id, conversation_id, channel, kind) VALUES (2, 1, 'sms', 'reply');
	INSERT INTO photos (message_id, k, source) VALUES (1, 1, 'https://carrier.example/1');
	INSERT INTO facts (conversation_id, seq, topic, unit, value, said, message, by)
		VALUES (1, 1, 'count', 1, '1', 'one', 1, 'customer');`

func TestSchemaRefusesIllegalStates(t *testing.T) {
	const in = `INSERT INTO messages (conversation_id, n, direction, author, channel, address, provider_id, text, at, handled_at) VALUES `
	const fact = `INSERT INTO facts (conversation_id, seq, topic, unit, value, said, message, by) VALUES `
	pool := dbtest.New(t)
	if _, err := pool.Exec(t.Context(), seed); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ what, sql string }{
		{"a state that is none", `UPDATE conversations SET state = 'dreaming'`},
		{"a ref with a look-alike letter", `UPDATE conversations SET ref = 'R7KQ0'`},
		{"a ref that is too short", `UPDATE conversations SET ref = 'R7KQ'`},
		{"the same ref twice", `INSERT INTO conversations (ref, channel, phone, opened_at) VALUES ('R7KQ4', 'sms', '+12185550124', now())`},
		{"a phone that is no E.164", `UPDATE conversations SET phone = '218-555-0123'`},
		{"a talk by text without a number", `UPDATE conversations SET phone = NULL`},
		{"a memory that is no object", `UPDATE conversations SET memory = '[]'`},
		{"a second talk for one address", `INSERT INTO addresses VALUES ('sms', '+12185550123', 1)`},
		{"the same message twice", in + `(1, 3, 'in', 'customer', 'sms', '+12185550123', 'SM1', 'hello', now(), now())`},
		{"the same number twice", in + `(1, 1, 'in', 'customer', 'sms', '+12185550123', 'SM2', 'hello', now(), now())`},
		{"a message in without the provider's id", in + `(1, 3, 'in', 'customer', 'sms', '+12185550123', NULL, 'hello', now(), now())`},
		{"a message in from the bot", in + `(1, 3, 'in', 'bot', 'sms', '+12185550123', 'SM2', 'hello', now(), now())`},
		{"a message out from the customer", `UPDATE messages SET author = 'customer' WHERE id = 2`},
		{"a message out without a number", `UPDATE messages SET n = NULL WHERE id = 2`},
		{"a handled message without a number", in + `(1, NULL, 'in', 'customer', 'sms', '+12185550123', 'SM2', 'hello', now(), now())`},
		{"a message of no talk", in + `(9, 1, 'in', 'customer', 'sms', '+12185550123', 'SM2', 'hello', now(), now())`},
		{"a topic that is none", fact + `(1, 2, 'mood', 0, '1', 'x', 1, 'customer')`},
		{"a unit topic without its unit", fact + `(1, 2, 'count', 0, '1', 'x', 1, 'customer')`},
		{"a lead topic with a unit", fact + `(1, 2, 'name', 1, '"x"', 'x', 1, 'customer')`},
		{"a fact without a value", fact + `(1, 2, 'name', 0, 'null', 'x', 1, 'customer')`},
		{"a customer's fact without its message", fact + `(1, 2, 'name', 0, '"x"', 'x', NULL, 'customer')`},
		{"a fact of a message that is not there", fact + `(1, 2, 'name', 0, '"x"', 'x', 7, 'customer')`},
		{"a fact that the bot made up", fact + `(1, 2, 'name', 0, '"x"', 'x', 2, 'bot')`},
		{"a status that is none", `UPDATE leads SET status = 'lost'`},
		{"a ready lead that was never ready", `UPDATE leads SET status = 'ready', waiting_since = now()`},
		{"a lead for a person without a reason", `UPDATE leads SET status = 'needs_person', waiting_since = now()`},
		{"a lead for a person that does not wait", `UPDATE leads SET status = 'needs_person', why_staff = '{x}'`},
		{"an open lead that waits for a person", `UPDATE leads SET waiting_since = now()`},
		{"a problem that is none", `UPDATE leads SET problem = '{cracked,sad}'`},
		{"a state's name instead of its code", `UPDATE leads SET region = 'Minnesota'`},
		{"a ZIP code with four digits", `UPDATE leads SET zip = '5580'`},
		{"units that are no list", `UPDATE leads SET units = '{}'`},
		{"a second lead for one talk", `INSERT INTO leads (conversation_id) VALUES (1)`},
		{"a photo with half a size", `UPDATE photos SET width = 10`},
		{"a kept photo without its size", `UPDATE photos SET state = 'kept'`},
		{"a sent message without the provider's id", `UPDATE sends SET state = 'sent', finished_at = now()`},
		{"a queued message with a provider's id", `UPDATE sends SET provider_id = 'SM9'`},
		{"a message being sent by nobody", `UPDATE sends SET state = 'sending'`},
		{"a failed message without a reason", `UPDATE sends SET state = 'failed', finished_at = now()`},
		{"a failed message that never ended", `UPDATE sends SET state = 'failed', error_code = 'x'`},
		{"two sends of one message", `INSERT INTO sends (message_id, conversation_id, channel, kind) VALUES (2, 1, 'sms', 'reply')`},
		{"an opt-out from nowhere", `INSERT INTO optouts (channel, address, source, since) VALUES ('sms', '', 'keyword', now())`},
		{"an opt-out lifted before it began", `INSERT INTO optouts (channel, address, source, since, lifted_at) VALUES ('sms', 'x', 'keyword', now(), now() - interval '1 s')`},
		{"two standing opt-outs of one address", `INSERT INTO optouts (channel, address, source, since) VALUES ('sms', 'x', 'keyword', now()), ('sms', 'x', 'talk', now())`},
	} {
		// Tried in a transaction of its own, so that one that passes does not change the next.
		err := pgx.BeginFunc(t.Context(), pool, func(tx pgx.Tx) error {
			if _, err := tx.Exec(t.Context(), c.sql); err != nil {
				return err
			}
			return errPassed
		})
		var refused *pgconn.PgError
		if !errors.As(err, &refused) || refused.Code[:2] != "23" {
			t.Errorf("%s: %v, want that a constraint refuses it", c.what, err)
		}
	}
}

var errPassed = errors.New("it passed")

func TestSchemaKnowsTheTopics(t *testing.T) {
	pool := dbtest.New(t)
	if _, err := pool.Exec(t.Context(), seed); err != nil {
		t.Fatal(err)
	}
	seq := 1
	add := func(topic fitcheck.Topic, unit int) {
		seq++
		const sql = `INSERT INTO facts (conversation_id, seq, topic, unit, value, said, message, by) VALUES (1, $1, $2, $3, '1', 'x', 1, 'customer')`
		if _, err := pool.Exec(t.Context(), sql, seq, topic, unit); err != nil {
			t.Errorf("topic %s, unit %d: %v", topic, unit, err)
		}
	}
	for _, topic := range fitcheck.LeadTopics {
		add(topic, 0)
	}
	for _, topic := range fitcheck.UnitTopics {
		add(topic, 2)
	}
}
