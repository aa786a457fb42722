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

// Figures of talks begun since a time, week by week. Talks that were erased count, but in
// the middle values.
func Figures(ctx context.Context, c Conn, since time.Time, zone string) ([]WeekFigures, error) {
	const sql = `
		WITH talk AS (
			SELECT *, date_trunc('week', opened_at AT TIME ZONE $2) AS week FROM talk_steps WHERE opened_at >= $1
		), kept AS (
			SELECT week, channel, count(*) AS begun, count(*) FILTER (WHERE measured) AS measured, count(ready_at) AS ready,
				count(*) FILTER (WHERE taken) AS taken, count(*) FILTER (WHERE quoted) AS quoted, count(*) FILTER (WHERE ordered) AS ordered,
				count(*) FILTER (WHERE after_hours) AS after_hours,
				coalesce(percentile_cont(0.5) WITHIN GROUP (ORDER BY (SELECT count(*) FROM messages m WHERE m.conversation_id = talk.id
					AND m.direction = 'in' AND m.at <= talk.ready_at)) FILTER (WHERE ready_at IS NOT NULL), 0) AS messages,
				coalesce(percentile_cont(0.5) WITHIN GROUP (ORDER BY extract(epoch FROM ready_at - opened_at) / 60) FILTER (WHERE ready_at IS NOT NULL), 0) AS minutes
			FROM talk GROUP BY week, channel
		)
		SELECT week, channel, sum(begun)::int, sum(measured)::int, sum(ready)::int, sum(taken)::int, sum(quoted)::int, sum(ordered)::int,
			sum(after_hours)::int, max(messages), max(minutes)::float8
		FROM (SELECT * FROM kept UNION ALL
			SELECT week::timestamp, channel, begun, measured, ready, taken, quoted, ordered, after_hours, 0, 0
			FROM gone_talks WHERE week >= ($1::timestamptz AT TIME ZONE $2)::date) t
		GROUP BY week, channel ORDER BY week, channel`
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

// StopFigures say where talks came to a halt.
type StopFigures struct {
	Asked  []Tally // topics: what was asked when the customer fell silent or opted out
	Why    []Tally // why leads came to staff before they were complete, or ended
	Caught []Tally // codes: wrong measurements that the check speaks of
}

// Stops of talks begun since a time.
func Stops(ctx context.Context, c Conn, since time.Time) (s StopFigures, err error) {
	const asked = `
		SELECT split_part(c.memory -> 'asking' ->> 0, '@', 1) AS topic, count(*)::int FROM conversations c JOIN leads l ON l.conversation_id = c.id
		WHERE c.opened_at >= $1 AND c.state IN ('lapsed', 'silenced') AND l.ready_at IS NULL AND jsonb_array_length(c.memory -> 'asking') > 0
		GROUP BY 1 ORDER BY 2 DESC, 1 LIMIT 15`
	const halted = `
		SELECT coalesce(nullif(w, ''), 'not said'), count(*)::int FROM conversations c JOIN leads l ON l.conversation_id = c.id,
			unnest(CASE WHEN cardinality(l.why_staff) = 0 THEN ARRAY['opted out or shut'] ELSE l.why_staff END) w
		WHERE c.opened_at >= $1 AND (l.status IN ('needs_person', 'closed') OR c.state = 'lapsed')
			AND NOT EXISTS (SELECT FROM lead_merges m WHERE m.from_id = c.id)
		GROUP BY 1 ORDER BY 2 DESC, 1 LIMIT 15`
	const wrong = `
		SELECT f ->> 'code', count(*)::int FROM conversations c JOIN leads l ON l.conversation_id = c.id,
			jsonb_array_elements(l.units) u, jsonb_array_elements(u -> 'check' -> 'findings') f
		WHERE c.opened_at >= $1 AND f ->> 'severity' IN ('ask', 'stop')
		GROUP BY 1 ORDER BY 2 DESC, 1 LIMIT 15`
	for _, one := range []struct {
		into *[]Tally
		sql  string
	}{{&s.Asked, asked}, {&s.Why, halted}, {&s.Caught, wrong}} {
		if *one.into, err = tallies(ctx, c, one.sql, since); err != nil {
			return s, err
		}
	}
	return s, nil
}

// TextFigures are the texts out of a week.
type TextFigures struct {
	Week     time.Time
	Texts    int
	Segments int
}

// Texts out since a time, week by week. A text of the plain alphabet holds 160 characters
// in one segment or 153 in each of several; any other 70 or 67 (3GPP TS 23.038, 23.040):
// so they are counted where it was not kept how they were charged.
func Texts(ctx context.Context, c Conn, since time.Time, zone string) ([]TextFigures, error) {
	const sql = `
		SELECT date_trunc('week', at AT TIME ZONE $2), count(*)::int, sum(coalesce(segments, CASE
			WHEN length(text) <= one THEN 1 ELSE ceil(length(text)::numeric / more) END))::int
		FROM (SELECT m.at, m.text, s.segments, CASE WHEN plain THEN 160 ELSE 70 END AS one, CASE WHEN plain THEN 153 ELSE 67 END AS more
			FROM sends s JOIN messages m ON m.id = s.message_id,
				LATERAL (SELECT m.text ~ '^[ -_a-z¡£¤¥§¿ÄÅÆÇÉÑÖØÜßàäåæèéìñòöøùü\n\r]*$' AS plain) p
			WHERE s.channel = 'sms' AND s.state = 'sent' AND s.finished_at >= $1 AND s.queued_at >= $1::timestamptz - interval '30 days') t
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
