package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// LeadFilter narrows a list of leads; zero values let all through.
type LeadFilter struct {
	Status []conversation.Status
	Since  time.Time // opened at or after
	Limit  int       // 0: all
}

// LeadLine is a lead in a list; texts are empty and times zero where not known.
type LeadLine struct {
	Ref        string
	Status     conversation.Status
	Qualified  bool
	WhyStaff   []string
	Urgent     bool
	AfterHours bool
	Channel    conversation.Channel
	Language   string
	State      conversation.State
	OpenedAt   time.Time
	ReadyAt    *time.Time
	Waiting    *time.Time // since when it waits for a person; nil: it does not
	UpdatedAt  time.Time
	Name       string
	Phone      string
	Email      string
	City       string
	Region     string // the state's postal code
	ZIP        string
	Use        string
	Problem    []string
	Units      int // kinds of unit
}

// ListLeads lists leads, those that wait for a person first (urgent ones before
// others, then the longest waiting), then the rest, the newest first.
func ListLeads(ctx context.Context, c Conn, f LeadFilter) ([]LeadLine, error) {
	const sql = `
		SELECT c.ref, l.status, l.qualified, l.why_staff, l.urgent, l.after_hours, c.channel, coalesce(c.language, 'en') AS language, c.state,
			c.opened_at, l.ready_at, l.waiting_since, l.updated_at, coalesce(l.name, '') AS name, coalesce(l.phone, '') AS phone,
			coalesce(l.email, '') AS email, coalesce(l.city, '') AS city, coalesce(l.region, '') AS region,
			coalesce(l.zip, '') AS zip, coalesce(l.use, '') AS use, l.problem, jsonb_array_length(l.units) AS units
		FROM conversations c JOIN leads l ON l.conversation_id = c.id
		WHERE (cardinality($1::text[]) = 0 OR l.status = ANY ($1)) AND c.opened_at >= $2
		ORDER BY l.waiting_since IS NOT NULL DESC, l.urgent DESC, l.waiting_since, c.opened_at DESC, c.id DESC
		LIMIT nullif($3, 0)`
	status := make([]string, 0, len(f.Status))
	for _, s := range f.Status {
		status = append(status, string(s))
	}
	rows, err := c.Query(ctx, sql, status, f.Since, f.Limit)
	if err != nil {
		return nil, fmt.Errorf("list leads: %w", err)
	}
	lines, err := pgx.CollectRows(rows, pgx.RowToStructByPos[LeadLine])
	if err != nil {
		return nil, fmt.Errorf("list leads: %w", err)
	}
	return lines, nil
}

// saveLead writes the lead as it stands after a turn. Units that the record does not
// give (nil) stay as they are.
func saveLead(b *pgx.Batch, conversationID int64, r conversation.Record, now time.Time) error {
	const sql = `
		UPDATE leads SET status = $2, qualified = $3, why_staff = $4, urgent = $5, after_hours = $6, ready_at = $7,
			name = nullif($8, ''), phone = nullif($9, ''), email = nullif($10, ''), city = nullif($11, ''),
			region = nullif($12, ''), zip = nullif($13, ''), time_zone = nullif($14, ''), use = nullif($15, ''),
			problem = $16, units = coalesce($17, units), updated_at = $18,
			waiting_since = CASE WHEN $2 IN ('ready', 'needs_person') THEN coalesce(waiting_since, $18) END
		WHERE conversation_id = $1`
	units, err := encodeUnits(r.Units)
	if err != nil {
		return err
	}
	why := r.WhyStaff
	if why == nil {
		why = []string{}
	}
	b.Queue(sql, conversationID, r.Status, r.Qualified, why, r.Urgent, r.AfterHours, r.ReadyAt,
		r.Customer.Name, r.Customer.Phone, r.Customer.Email, r.Place.City, r.Place.State, r.Place.ZIP,
		r.Place.TimeZone, r.Use, r.Problem, units, now)
	return nil
}

// leadOf is what is kept of a lead, without its units: those follow from the ledger.
func leadOf(row pgx.Row) (conversation.Lead, error) {
	var l conversation.Lead
	err := row.Scan(&l.Status, &l.Qualified, &l.WhyStaff, &l.Urgent, &l.AfterHours, &l.ReadyAt)
	if errors.Is(err, pgx.ErrNoRows) {
		return l, ErrNotFound
	}
	return l, err
}
