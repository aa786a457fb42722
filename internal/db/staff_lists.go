package db

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// QueueLine is a lead as the staff's lists show it; texts are empty where not known.
type QueueLine struct {
	ID           int64
	Ref          string
	Status       conversation.Status
	Qualified    bool
	WhyStaff     []string
	Urgent       bool
	AfterHours   bool
	Channel      conversation.Channel
	State        conversation.State
	OpenedAt     time.Time
	WaitingSince *time.Time // nil: it does not wait
	UpdatedAt    time.Time
	Name         string
	Phone        string
	Email        string
	City         string
	Region       string
	ZIP          string
	Units        []byte // JSON, as in the lead record
	HolderID     int64  // in whose hands; 0 for nobody's
	Holder       string
}

// QueuePlace is where a list is taken up again; zero is its beginning.
type QueuePlace struct {
	Urgent bool
	Since  time.Time
	ID     int64
}

const queueColumns = `SELECT c.id, c.ref, l.status, l.qualified, l.why_staff, l.urgent, l.after_hours, c.channel, c.state, c.opened_at,
		l.waiting_since, l.updated_at, coalesce(l.name, ''), coalesce(l.phone, ''), coalesce(l.email, ''), coalesce(l.city, ''),
		coalesce(l.region, ''), coalesce(l.zip, ''), l.units, coalesce(h.staff_id, 0), coalesce(s.name, '') `

const queueJoins = ` JOIN conversations c ON c.id = l.conversation_id
	LEFT JOIN lead_hands h ON h.conversation_id = l.conversation_id LEFT JOIN staff s ON s.id = h.staff_id `

// QueueFilter narrows the list of those who wait; zero values let all through.
type QueueFilter struct {
	Status     conversation.Status
	Channel    conversation.Channel
	AfterHours bool // came while the shop was closed
	Urgent     bool
}

// WaitingLeads lists the leads that wait for a person, urgent ones first, then the
// longest waiting, from a place on. It follows an index: without a filter the cost is
// that of the lines given.
func WaitingLeads(ctx context.Context, c Conn, f QueueFilter, from QueuePlace, limit int) ([]QueueLine, error) {
	// Only what narrows the list is asked, so that the server need not plan anew each time.
	sql, args := queueColumns+`FROM leads l `+queueJoins+`WHERE l.waiting_since IS NOT NULL`, []any{limit}
	narrow := func(condition string, values ...any) {
		for _, v := range values {
			args = append(args, v)
			condition = strings.Replace(condition, "?", "$"+strconv.Itoa(len(args)), 1)
		}
		sql += " AND " + condition
	}
	if f.Status != "" {
		narrow(`l.status = ?`, f.Status)
	}
	if f.Channel != "" {
		narrow(`c.channel = ?`, f.Channel)
	}
	if f.AfterHours {
		narrow(`l.after_hours`)
	}
	if f.Urgent {
		narrow(`l.urgent`)
	}
	// The urgent ones are few; behind them the index is entered where the list is taken up.
	switch {
	case from.ID == 0:
	case from.Urgent:
		narrow(`(NOT l.urgent OR (l.waiting_since, l.conversation_id) > (?, ?))`, from.Since, from.ID)
	default:
		narrow(`NOT l.urgent AND l.waiting_since >= ? AND (l.waiting_since, l.conversation_id) > (?, ?)`, from.Since, from.Since, from.ID)
	}
	return queue(ctx, c, sql+` ORDER BY l.urgent DESC, l.waiting_since, l.conversation_id LIMIT $1`, args...)
}

// LateLeads lists leads that have waited since before a time and of which no owner was
// told that they wait too long, the longest waiting first.
func LateLeads(ctx context.Context, c Conn, before time.Time, limit int) ([]QueueLine, error) {
	return queue(ctx, c, queueColumns+`FROM leads l `+queueJoins+`WHERE l.waiting_since IS NOT NULL AND l.waiting_since < $2
		AND NOT EXISTS (SELECT FROM staff_told t WHERE t.conversation_id = l.conversation_id AND t.about = c.ref || ' late')
		ORDER BY l.waiting_since LIMIT $1`, limit, before)
}

// InHands lists the leads that are in somebody's hands and not finished, one person's
// where staffID is not 0, the longest held first.
func InHands(ctx context.Context, c Conn, staffID int64, limit int) ([]QueueLine, error) {
	return queue(ctx, c, queueColumns+`FROM leads l `+queueJoins+`
		WHERE h.staff_id IS NOT NULL AND ($2 = 0 OR h.staff_id = $2) AND l.status NOT IN ('ordered', 'declined', 'closed')
		ORDER BY h.since, l.conversation_id LIMIT $1`, limit, staffID)
}

// ByStatus lists leads of one status, the newest talk first, those before an id where it
// is not 0. The ids come from an index alone, so that a status of which there are few, all
// of them old, costs no more than one that is common.
func ByStatus(ctx context.Context, c Conn, status conversation.Status, before int64, limit int) ([]QueueLine, error) {
	if before == 0 {
		before = math.MaxInt64
	}
	return queue(ctx, c, queueColumns+`FROM (SELECT conversation_id FROM leads WHERE status = $2 AND conversation_id < $3
			ORDER BY conversation_id DESC LIMIT $1) f JOIN leads l USING (conversation_id)`+queueJoins+`
		ORDER BY l.conversation_id DESC`, limit, status, before)
}

// mostFound bounds how many finds are put in order: whoever finds more asks again.
const mostFound = 400

// Find looks for leads by their ref, and by words of which each begins one of the lead's
// own, or is one of its pieces; the newest first. What it costs follows the leads that
// match, not those that there are.
func Find(ctx context.Context, c Conn, ref string, words, pieces []string, limit int) ([]QueueLine, error) {
	terms := make([]string, 0, len(words)+len(pieces))
	for _, w := range words {
		terms = append(terms, lexeme(w)+":*")
	}
	for _, p := range pieces {
		terms = append(terms, lexeme(p))
	}
	args := []any{limit}
	var ways []string // to the ids, so that wide rows are fetched once and for the finds alone
	if len(terms) > 0 {
		args = append(args, strings.Join(terms, " & "))
		ways = append(ways, `(SELECT conversation_id FROM leads WHERE words @@ $2::tsquery LIMIT `+strconv.Itoa(mostFound)+`)`)
	}
	if ref != "" {
		args = append(args, strings.ToUpper(ref))
		ways = append(ways, `SELECT id FROM conversations WHERE ref = $`+strconv.Itoa(len(args)))
	}
	if len(ways) == 0 {
		return nil, nil
	}
	return queue(ctx, c, queueColumns+`FROM (`+strings.Join(ways, ` UNION `)+`) f (id) JOIN leads l ON l.conversation_id = f.id`+queueJoins+
		` ORDER BY l.waiting_since IS NOT NULL DESC, l.updated_at DESC, c.id DESC LIMIT $1`, args...)
}

// lexeme quotes a word for a search.
func lexeme(word string) string {
	return "'" + strings.NewReplacer(`'`, `''`, `\`, `\\`, "\x00", "").Replace(word) + "'"
}

// CountWaiting says how many wait and in hands, without counting further than a thousand.
func CountWaiting(ctx context.Context, c Conn) (waiting, inHands int, err error) {
	const sql = `SELECT (SELECT count(*) FROM (SELECT FROM leads WHERE waiting_since IS NOT NULL LIMIT 1000) w),
		(SELECT count(*) FROM (SELECT FROM lead_hands h JOIN leads l USING (conversation_id)
			WHERE l.status NOT IN ('ordered', 'declined', 'closed') LIMIT 1000) h)`
	if err := c.QueryRow(ctx, sql).Scan(&waiting, &inHands); err != nil {
		return 0, 0, fmt.Errorf("count leads: %w", err)
	}
	return waiting, inHands, nil
}

func queue(ctx context.Context, c Conn, sql string, args ...any) ([]QueueLine, error) {
	rows, err := c.Query(ctx, sql, args...)
	if err != nil {
		return nil, fmt.Errorf("list leads: %w", err)
	}
	lines, err := pgx.CollectRows(rows, pgx.RowToStructByPos[QueueLine])
	if err != nil {
		return nil, fmt.Errorf("list leads: %w", err)
	}
	return lines, nil
}
