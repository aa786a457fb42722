package torture

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// Remains is what a run left of each customer, by address: to be held against what
// another run left.
type Remains map[string]string

// Unknown counts mails of which nobody can tell whether they went: a mail server can't be
// asked. They are told to staff, and not sent again.
type Unknown struct {
	Mails int // in that state
	Went  int // that the mail server has in truth
}

// sendRow is a message out, as the database knows it.
type sendRow struct {
	Address, Channel, Kind, State, Text string
	ID                                  string // the provider's, or the Message-ID
}

// Remains looks at what is left, and says what is wrong in itself: a message that was not
// answered, one that was sent twice or is on nobody's record, a mail in doubt that staff
// were not told of.
func (h *House) Remains(ctx context.Context, customers []Customer) (left Remains, unknown Unknown, wrong []string) {
	h.t.Helper()
	records := h.records(ctx)
	sends := h.sends(ctx)
	left = Remains{}
	for _, c := range customers {
		record, ok := records[c.Address]
		if !ok {
			wrong = append(wrong, c.Address+": there is no lead")
			continue
		}
		var b strings.Builder
		b.WriteString(record)
		for _, s := range sends[c.Address] {
			state := s.State
			if state == string(db.SendUnknown) {
				state = string(db.SendSent) // as far as it can be known
			}
			fmt.Fprintf(&b, "\n%s %s", s.Kind, state)
		}
		left[c.Address] = b.String()
		wrong = append(wrong, h.heard(c, sends[c.Address], &unknown)...)
	}
	return left, unknown, append(wrong, h.loose(ctx, unknown)...)
}

// heard holds what reached a customer against what the database says was sent: each once,
// in order.
func (h *House) heard(c Customer, sends []sendRow, unknown *Unknown) (wrong []string) {
	var got []string
	if c.Channel == conversation.Email {
		got = h.mailed(c.Address)
	} else {
		for _, m := range h.Carrier.To(c.Address) {
			got = append(got, m.ID)
		}
	}
	for _, s := range sends {
		there := len(got) > 0 && got[0] == s.ID
		switch s.State {
		case string(db.SendUnknown):
			unknown.Mails++
			if there {
				unknown.Went++
			}
		case string(db.SendSent):
			if !there {
				return append(wrong, fmt.Sprintf("%s: %s was sent, and did not come next; left are %v", c.Address, s.ID, got))
			}
		default:
			if s.State != string(db.SendHeld) {
				wrong = append(wrong, fmt.Sprintf("%s: a message is %s", c.Address, s.State))
			}
			there = false
		}
		if there {
			got = got[1:]
		}
	}
	if len(got) > 0 {
		wrong = append(wrong, fmt.Sprintf("%s: got what nobody has on record, or got it twice: %v", c.Address, got))
	}
	return wrong
}

// mailed are the Message-IDs of what an address got.
func (h *House) mailed(address string) (ids []string) {
	h.t.Helper()
	for _, m := range h.Office.To(address) {
		parsed, err := email.Parse(bytes.NewReader(m.Raw), email.Limits{})
		if err != nil {
			h.t.Fatal(err)
		}
		ids = append(ids, parsed.ID)
	}
	return ids
}

// loose ends: what must be so of all customers together.
func (h *House) loose(ctx context.Context, unknown Unknown) (wrong []string) {
	h.t.Helper()
	for what, sql := range map[string]string{
		"messages that no turn has taken":         `SELECT count(*) FROM messages WHERE direction = 'in' AND handled_at IS NULL`,
		"messages that are not sent to their end": `SELECT count(*) FROM sends WHERE finished_at IS NULL`,
		"photos that are not opened":              `SELECT count(*) FROM photos WHERE state = 'referenced'`,
		"photos that are lost":                    `SELECT count(*) FROM photos WHERE state = 'gone'`,
		"mails that could not be read":            `SELECT count(*) FROM mails_in WHERE kind <> 'message'`,
		"turns that could not be made":            `SELECT count(*) FROM alerts WHERE reason = 'trouble'`,
		"talks that share a customer":             `SELECT count(*) - count(DISTINCT coalesce(phone, email)) FROM conversations`,
	} {
		if n := h.Count(ctx, sql); n != 0 {
			wrong = append(wrong, fmt.Sprintf("%s: %d", what, n))
		}
	}
	told := h.Count(ctx, `SELECT count(*) FROM sends s WHERE s.state = 'unknown' AND EXISTS (SELECT FROM alerts a
		WHERE a.conversation_id = s.conversation_id AND a.reason = 'send_unknown')`)
	if told != unknown.Mails {
		wrong = append(wrong, fmt.Sprintf("of %d mails in doubt staff were told of %d", unknown.Mails, told))
	}
	if n := h.Office.Left("INBOX"); n != 0 {
		wrong = append(wrong, fmt.Sprintf("%d mails lie in the mailbox", n))
	}
	return wrong
}

// records are the lead records but for times and refs, by the address that wrote.
func (h *House) records(ctx context.Context) map[string]string {
	h.t.Helper()
	rows, err := h.Pool.Query(ctx, `SELECT a.address, c.ref FROM addresses a JOIN conversations c ON c.id = a.conversation_id`)
	if err != nil {
		h.t.Fatal(err)
	}
	refs, err := pgx.CollectRows(rows, pgx.RowToStructByPos[struct{ Address, Ref string }])
	if err != nil {
		h.t.Fatal(err)
	}
	out := map[string]string{}
	for _, r := range refs {
		record, err := db.LeadRecord(ctx, h.Pool, r.Ref)
		if err != nil {
			h.t.Fatal(err)
		}
		out[r.Address] = strings.ReplaceAll(namesake.ReplaceAllString(untimed(record), ""), r.Ref, "REF")
	}
	return out
}

// namesake is what a lead says of another customer of the same name and place. Of two of
// them the later one says it, and who of a crowd comes first is no two runs' alike.
var namesake = regexp.MustCompile(`"may be the same person as [A-Z0-9]{5}",|,?"may be the same person as [A-Z0-9]{5}"`)

// untimed is a record byte for byte but for its times.
func untimed(raw json.RawMessage) string {
	var b strings.Builder
	rest := string(raw)
	for {
		at, name := len(rest), ""
		for _, n := range []string{`"at":"`, `"opened_at":"`, `"ready_at":"`} {
			if i := strings.Index(rest, n); i >= 0 && i < at {
				at, name = i, n
			}
		}
		if name == "" {
			b.WriteString(rest)
			return b.String()
		}
		b.WriteString(rest[:at+len(name)])
		rest = rest[at+len(name):]
		rest = rest[strings.IndexByte(rest, '"'):]
	}
}

func (h *House) sends(ctx context.Context) map[string][]sendRow {
	h.t.Helper()
	const sql = `SELECT m.address, m.channel, s.kind, s.state, m.text, coalesce(o.mail_id, s.provider_id, '')
		FROM sends s JOIN messages m ON m.id = s.message_id LEFT JOIN mails_out o ON o.message_id = m.id ORDER BY m.id`
	rows, err := h.Pool.Query(ctx, sql)
	if err != nil {
		h.t.Fatal(err)
	}
	all, err := pgx.CollectRows(rows, pgx.RowToStructByPos[sendRow])
	if err != nil {
		h.t.Fatal(err)
	}
	out := map[string][]sendRow{}
	for _, s := range all {
		out[s.Address] = append(out[s.Address], s)
	}
	return out
}

// Differ says where two runs left something else.
func (r Remains) Differ(other Remains) (out []string) {
	addresses := make([]string, 0, len(r))
	for a := range r {
		addresses = append(addresses, a)
	}
	slices.Sort(addresses)
	for _, a := range addresses {
		if r[a] == other[a] {
			continue
		}
		i := 0
		for i < min(len(r[a]), len(other[a])) && r[a][i] == other[a][i] {
			i++
		}
		from := max(0, i-200)
		out = append(out, fmt.Sprintf("%s differs at byte %d:\n  undisturbed …%s\n  this run    …%s", a, i, cut(r[a][from:]), cut(other[a][min(from, len(other[a])):])))
	}
	if len(r) != len(other) {
		out = append(out, fmt.Sprintf("%d customers, undisturbed %d", len(other), len(r)))
	}
	return out
}

func cut(s string) string { return s[:min(len(s), 500)] }
