package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// WeekFigures are how a week's talks of one channel went; talks count in the week in
// which they began.
type WeekFigures struct {
	Week       time.Time // its Monday, in the shop's zone
	Channel    string
	Begun      int
	Measured   int // a size was told
	Ready      int // complete and confirmed at some time
	Taken      int // by one of staff
	Quoted     int
	Ordered    int
	AfterHours int
	Messages   float64 // of a ready one up to then, in the middle
	Minutes    float64 // from the first message to ready, in the middle
}

// Figures of talks begun since a time, week by week.
func Figures(ctx context.Context, c Conn, since time.Time, zone string) ([]WeekFigures, error) {
	const sql = `
		WITH talk AS (
			SELECT c.id, c.channel, c.opened_at, date_trunc('week', c.opened_at AT TIME ZONE $2) AS week, l.ready_at, l.after_hours, l.status,
				EXISTS (SELECT FROM facts f WHERE f.conversation_id = c.id AND f.topic IN ('plastic_size', 'retainer_opening', 'retainer_outside',
					'frame_inside', 'curb_outside', 'curb_inside', 'bulge_base') AND NOT f.undone) AS measured,
				h.deeds
			FROM conversations c JOIN leads l ON l.conversation_id = c.id
			LEFT JOIN LATERAL (SELECT array_agg(deed || coalesce(':' || (detail ->> 'status'), '')) AS deeds FROM staff_history s
				WHERE s.conversation_id = c.id AND s.undone_by IS NULL AND s.deed IN ('took', 'took_by_text', 'marked')) h ON true
			WHERE c.opened_at >= $1 AND NOT EXISTS (SELECT FROM lead_merges m WHERE m.from_id = c.id)
		)
		SELECT week, channel, count(*), count(*) FILTER (WHERE measured), count(ready_at),
			count(*) FILTER (WHERE deeds && ARRAY['took', 'took_by_text'] OR status IN ('picked_up', 'quoted', 'ordered', 'declined')),
			count(*) FILTER (WHERE deeds @> ARRAY['marked:quoted'] OR status IN ('quoted', 'ordered')),
			count(*) FILTER (WHERE status = 'ordered'), count(*) FILTER (WHERE after_hours),
			coalesce(percentile_cont(0.5) WITHIN GROUP (ORDER BY (SELECT count(*) FROM messages m WHERE m.conversation_id = talk.id
				AND m.direction = 'in' AND m.at <= talk.ready_at)) FILTER (WHERE ready_at IS NOT NULL), 0),
			coalesce(percentile_cont(0.5) WITHIN GROUP (ORDER BY extract(epoch FROM ready_at - opened_at) / 60) FILTER (WHERE ready_at IS NOT NULL), 0)
		FROM talk GROUP BY week, channel ORDER BY week, channel`
	rows, err := c.Query(ctx, sql, since, zone)
	if err != nil {
		return nil, fmt.Errorf("figures: %w", err)
	}
	all, err := pgx.CollectRows(rows, pgx.RowToStructByPos[WeekFigures])
	if err != nil {
		return nil, fmt.Errorf("figures: %w", err)
	}
	return all, nil
}

// Tally is how often something was so.
type Tally struct {
	What string
	N    int
}

// Stops are where talks since a time came to a halt: those that went quiet, stopped or
// were handed over early, by what was still missing; Caught are wrong measurements that
// the check speaks of, by kind.
func Stops(ctx context.Context, c Conn, since time.Time) (stops, caught []Tally, err error) {
	const halted = `
		SELECT coalesce(nullif(w, ''), 'not said'), count(*)::int FROM conversations c JOIN leads l ON l.conversation_id = c.id,
			unnest(CASE WHEN cardinality(l.why_staff) = 0 THEN ARRAY['opted out or shut'] ELSE l.why_staff END) w
		WHERE c.opened_at >= $1 AND (l.status IN ('needs_person', 'closed') OR c.state = 'lapsed')
		GROUP BY 1 ORDER BY 2 DESC, 1 LIMIT 15`
	const wrong = `
		SELECT f ->> 'code', count(*)::int FROM conversations c JOIN leads l ON l.conversation_id = c.id,
			jsonb_array_elements(l.units) u, jsonb_array_elements(u -> 'check' -> 'findings') f
		WHERE c.opened_at >= $1 AND f ->> 'severity' IN ('ask', 'stop')
		GROUP BY 1 ORDER BY 2 DESC, 1 LIMIT 15`
	if stops, err = tallies(ctx, c, halted, since); err != nil {
		return nil, nil, err
	}
	caught, err = tallies(ctx, c, wrong, since)
	return stops, caught, err
}

// TextFigures are the texts out of a week.
type TextFigures struct {
	Week     time.Time
	Texts    int
	Segments int
}

// Texts out since a time, week by week. A text of the plain alphabet holds 160 characters
// in one segment or 153 in each of several; any other 70 or 67 (3GPP TS 23.038, 23.040).
func Texts(ctx context.Context, c Conn, since time.Time, zone string) ([]TextFigures, error) {
	const sql = `
		SELECT date_trunc('week', at AT TIME ZONE $2), count(*)::int, sum(CASE
			WHEN length(text) <= one THEN 1 ELSE ceil(length(text)::numeric / more) END)::int
		FROM (SELECT m.at, m.text, CASE WHEN plain THEN 160 ELSE 70 END AS one, CASE WHEN plain THEN 153 ELSE 67 END AS more
			FROM sends s JOIN messages m ON m.id = s.message_id,
				LATERAL (SELECT m.text ~ '^[ -_a-z¡£¤¥§¿ÄÅÆÇÉÑÖØÜßàäåæèéìñòöøùü\n\r]*$' AS plain) p
			WHERE s.channel = 'sms' AND s.state = 'sent' AND s.finished_at >= $1) t
		GROUP BY 1 ORDER BY 1`
	rows, err := c.Query(ctx, sql, since, zone)
	if err != nil {
		return nil, fmt.Errorf("figures of texts: %w", err)
	}
	all, err := pgx.CollectRows(rows, pgx.RowToStructByPos[TextFigures])
	if err != nil {
		return nil, fmt.Errorf("figures of texts: %w", err)
	}
	return all, nil
}

func tallies(ctx context.Context, c Conn, sql string, args ...any) ([]Tally, error) {
	rows, err := c.Query(ctx, sql, args...)
	if err != nil {
		return nil, fmt.Errorf("figures: %w", err)
	}
	all, err := pgx.CollectRows(rows, pgx.RowToStructByPos[Tally])
	if err != nil {
		return nil, fmt.Errorf("figures: %w", err)
	}
	return all, nil
}
