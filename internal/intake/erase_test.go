package intake

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// whatTablesHold says of every table whose it is. A new table is to be named here, and
// where it holds anything of customers, erasing has to reach it.
var whatTablesHold = map[string]string{
	"conversations": "customers", "addresses": "customers", "messages": "customers", "photos": "customers", "photo_files": "customers",
	"facts": "customers", "leads": "customers", "sends": "customers", "send_statuses": "customers", "alerts": "customers",
	"mails_in": "customers", "mails_out": "customers", "lead_hands": "customers", "lead_merges": "customers", "lead_events": "customers",
	"staff_told": "customers", "staff_history": "customers",

	"optouts": "opt-outs: kept, to be honored", "gone_talks": "counts",
	"staff": "staff", "sessions": "staff", "staff_logins": "staff", "answers": "the owner's", "link_keys": "the program's",
	"goose_db_version": "the program's", "river_job": "jobs", "river_leader": "jobs", "river_queue": "jobs", "river_migration": "jobs",
	"river_client": "jobs", "river_client_queue": "jobs", "river_notification": "jobs",
}

const (
	zebsPhone = "+12185550187"
	zebsMail  = "zebulon@quarry.example"
)

// zebs are words that nobody but one customer brings in.
var zebs = []string{"12185550187", "5550187", "zebulon", "quarry", "wobblefitz"}

// TestErasingLeavesCountsOnly looks for one customer in every column of every table,
// before they are erased and after.
func TestErasingLeavesCountsOnly(t *testing.T) {
	m := newMailShop(t, func(o *Options) {
		mailBrain(o)
		o.Photos = labOnly()
		o.Alerts = Alerts{Mail: (&told{}).mail, Page: "https://bot.example/staff"}
	})
	m.person("kim", db.RoleOwner, "kim@pinwheel.example", "")
	m.open()
	m.write(standin.Letter{Subject: "Dome", Text: "My skylight dome is cracked. Dana Fields in Duluth MN"})
	m.tellNow()
	before := m.tables()
	refs := m.leaveTraces()

	seen := m.holding(append(refs, zebs...))
	for table, whose := range whatTablesHold {
		if whose == "customers" && m.tables()[table] == before[table] {
			t.Errorf("the customer left nothing in %s: this test does not reach it", table)
		}
	}
	if len(seen) < 15 {
		t.Errorf("the customer is found in %v only", seen)
	}
	gone := 0
	if err := pgx.BeginFunc(t.Context(), m.pool, func(tx pgx.Tx) (err error) {
		gone, err = db.ErasePerson(t.Context(), tx, 1, zebsMail, "America/Chicago", noon)
		return err
	}); err != nil {
		t.Fatal(err)
	}
	if gone != len(refs) {
		t.Errorf("%d talks erased, want %d", gone, len(refs))
	}
	if left := m.holding(append(refs, zebs...)); !slices.Equal(left, []string{"optouts.address"}) {
		t.Errorf("after erasing, the customer is still in %v", left)
	}
	before["staff_history"]++ // that there was something to erase
	for table, n := range m.tables() {
		whose, known := whatTablesHold[table]
		if !known {
			t.Errorf("%s is a new table: say what it holds, and see that erasing reaches it", table)
		}
		if whose == "customers" && n != before[table] {
			t.Errorf("%s has %d rows, of others than the erased there were %d", table, n, before[table])
		}
	}
	var begun int
	m.one(`SELECT sum(begun) FROM gone_talks`, &begun)
	if begun != len(refs)-1 { // one of them was joined into another
		t.Errorf("%d talks are counted", begun)
	}
}

// leaveTraces has one customer write, text, send photos, bounce, opt out and be dealt with
// by staff. It gives the refs.
func (m *mailShop) leaveTraces() (refs []string) {
	m.t.Helper()
	ctx := m.t.Context()
	exec := func(sql string, args ...any) {
		m.t.Helper()
		if _, err := m.pool.Exec(ctx, sql, args...); err != nil {
			m.t.Fatalf("%s: %v", sql, err)
		}
	}
	m.write(standin.Letter{From: email.Mailbox{Name: "Zebulon Quarrymark", Address: zebsMail}, Subject: "wobblefitz dome",
		Text:  "My dome is a cracked wobblefitz. Zebulon Quarrymark, call me at 218 555 0187",
		Files: []standin.File{{Name: "roof.jpg", Type: "image/jpeg", Data: pictureOf(1, 900, 700, 1, false)}}})
	m.opened()
	m.receive(Inbound{Channel: conversation.SMS, ID: "Z1", From: zebsPhone, Text: "Zebulon here, mail me at " + zebsMail})
	m.quiet()
	m.receive(Inbound{Channel: conversation.SMS, ID: "Z2", From: zebsPhone, Text: "STOP"})
	m.quiet()
	m.put(zebsMail, "From: "+zebsMail+"\nTo: "+shopMail+"\nMessage-ID: <away@quarry.example>\nAuto-Submitted: auto-replied\nSubject: away\n\nwobblefitz\n")
	m.put("", "From: MAILER-DAEMON@mx.example.net\nTo: "+shopMail+"\nMessage-ID: <b1@mx.example.net>\nSubject: Delivery of "+zebsMail+
		"\nAuto-Submitted: auto-replied\n\nNot delivered: "+zebsMail+"\n")
	rows, err := m.pool.Query(ctx, `SELECT DISTINCT c.ref FROM conversations c JOIN messages m ON m.conversation_id = c.id WHERE m.address = ANY ($1) ORDER BY 1`,
		[]string{zebsMail, zebsPhone})
	if err != nil {
		m.t.Fatal(err)
	}
	if refs, err = pgx.CollectRows(rows, pgx.RowTo[string]); err != nil || len(refs) == 0 {
		m.t.Fatalf("refs %v, %v", refs, err)
	}
	// A talk under another address of theirs, joined by staff.
	exec(`WITH c AS (INSERT INTO conversations (ref, channel, phone, opened_at) VALUES ('QQQQ7', 'sms', '+12185550111', now()) RETURNING id),
		l AS (INSERT INTO leads (conversation_id) SELECT id FROM c)
		INSERT INTO lead_merges (from_id, into_id, at) SELECT c.id, k.id, now() FROM c, conversations k WHERE k.ref = $1`, refs[0])
	refs = append(refs, "QQQQ7")
	slices.Sort(refs)
	var id int64
	if err := m.pool.QueryRow(ctx, `SELECT id FROM conversations WHERE ref = ANY ($1) AND email IS NOT NULL ORDER BY id LIMIT 1`, refs).Scan(&id); err != nil {
		m.t.Fatal(err)
	}
	exec(`INSERT INTO lead_hands (conversation_id, staff_id, since) VALUES ($1, 1, now())`, id)
	exec(`UPDATE leads SET status = 'picked_up', waiting_since = NULL WHERE conversation_id = $1`, id)
	exec(`UPDATE mails_out o SET raw = convert_to('To: ' || m.address, 'UTF8') FROM messages m WHERE m.id = o.message_id AND m.conversation_id = $1`, id)
	exec(`INSERT INTO send_statuses (channel, provider_id, status, at) SELECT channel, provider_id, 'delivered', now() FROM sends WHERE conversation_id = $1 AND provider_id IS NOT NULL LIMIT 1`, id)
	exec(`INSERT INTO alerts (conversation_id, reason, at) VALUES ($1, 'not_sent', now())`, id)
	m.tellNow()
	if _, err := db.Note(ctx, m.pool, 1, id, db.DeedNoted, db.HistoryDetail{Text: "wobblefitz, says Zebulon"}, noon); err != nil {
		m.t.Fatal(err)
	}
	exec(`INSERT INTO river_job (kind, max_attempts, attempt, queue, state, finalized_at, args, errors) VALUES ('tell', 1, 1, 'alerts', 'discarded', now(),
		jsonb_build_object('ref', $1::text), ARRAY[jsonb_build_object('error', 'no such user ' || $2)])`, refs[0], zebsMail)
	return refs
}

// tables are all tables of the database with how many rows they have.
func (m *mailShop) tables() map[string]int {
	m.t.Helper()
	n := map[string]int{}
	for column := range m.columns() {
		table, _, _ := strings.Cut(column, ".")
		if _, known := n[table]; !known {
			var rows int
			m.one(`SELECT count(*) FROM `+pgx.Identifier{table}.Sanitize(), &rows)
			n[table] = rows
		}
	}
	return n
}

// columns are all columns of all tables, each with how to read it as text.
func (m *mailShop) columns() map[string]string {
	m.t.Helper()
	const sql = `SELECT c.table_name, c.column_name, c.data_type FROM information_schema.columns c
		JOIN information_schema.tables t USING (table_schema, table_name) WHERE c.table_schema = 'public' AND t.table_type = 'BASE TABLE'`
	rows, err := m.pool.Query(context.Background(), sql)
	if err != nil {
		m.t.Fatal(err)
	}
	all := map[string]string{}
	var table, column, kind string
	if _, err := pgx.ForEachRow(rows, []any{&table, &column, &kind}, func() error {
		as := pgx.Identifier{column}.Sanitize()
		if kind == "bytea" {
			as = "encode(" + as + ", 'escape')"
		}
		all[table+"."+column] = as + "::text"
		return nil
	}); err != nil {
		m.t.Fatal(err)
	}
	return all
}

// holding are the columns in which any of the words stands.
func (m *mailShop) holding(words []string) []string {
	m.t.Helper()
	var found []string
	for column, text := range m.columns() {
		table, _, _ := strings.Cut(column, ".")
		var holds bool
		sql := fmt.Sprintf(`SELECT EXISTS (SELECT FROM %s, unnest($1::text[]) w WHERE position(lower(w) IN lower(%s)) > 0)`, pgx.Identifier{table}.Sanitize(), text)
		if err := m.pool.QueryRow(context.Background(), sql, words).Scan(&holds); err != nil {
			m.t.Fatalf("%s: %v", column, err)
		}
		if holds {
			found = append(found, column)
		}
	}
	slices.Sort(found)
	return found
}

// Only the whole address is the person's: joann@ is somebody else than ann@.
func TestErasingLeavesALikeAddress(t *testing.T) {
	m := newMailShop(t, mailBrain)
	m.open()
	for _, to := range []string{"joann@reef.example", "ann@reef.example"} {
		m.put("", "From: MAILER-DAEMON@mx.example.net\nTo: "+shopMail+"\nMessage-ID: <"+to[:3]+"@mx.example.net>\nSubject: Delivery of "+to+
			"\nAuto-Submitted: auto-replied\n\nNot delivered: "+to+".\n")
	}
	if err := pgx.BeginFunc(t.Context(), m.pool, func(tx pgx.Tx) error {
		_, err := db.ErasePerson(t.Context(), tx, 1, "ann@reef.example", "America/Chicago", noon)
		return err
	}); err != nil {
		t.Fatal(err)
	}
	var left string
	m.one(`SELECT string_agg(subject, ', ') FROM mails_in`, &left)
	if left != "Delivery of joann@reef.example" {
		t.Errorf("left is %q", left)
	}
}
