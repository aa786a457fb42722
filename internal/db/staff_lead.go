package db

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// LeadView is all that the page of a lead shows, read without holding the talk.
type LeadView struct {
	ID       int64
	Talk     conversation.Talk
	Since    *time.Time // waiting since; nil: it does not wait
	TimeZone string     // the customer's, empty where not known
	Messages []TalkMessage
	Photos   []TalkPhoto
	Hands    Hands
	Reach    []Reach
	History  []HistoryEntry
	MergedTo string   // ref of the lead that it went into, empty for none
	Merged   []string // refs of leads that went into this one
	Others   []Other  // other leads that may be the same person's
}

// TalkMessage is a message with what became of it.
type TalkMessage struct {
	ID      int64
	N       int // the place that it has, or will have
	From    string
	Channel conversation.Channel
	Address string
	Text    string
	At      time.Time
	Handled bool // a message in that a turn took
	// Send is how far a message out has come, and Code why it came no further.
	Send SendState
	Code string
}

// TalkPhoto is a photo that came with a message.
type TalkPhoto struct {
	ID            int64
	N             int // of its message
	K             int // place in it
	Of            string
	State         string
	Width, Height int
	Why, Look     string // why it was refused, why it may be of little use
}

// Other is another lead of what may be the same person.
type Other struct {
	Ref      string
	Status   conversation.Status
	Name     string
	OpenedAt time.Time
}

// ViewLead reads a lead by its ref, in capitals or not; ErrNotFound where there is none.
func ViewLead(ctx context.Context, c Conn, ref string) (*LeadView, error) {
	ref = strings.ToUpper(strings.TrimSpace(ref))
	id, err := TalkOf(ctx, c, ref)
	if err != nil {
		return nil, err
	}
	v, h := &LeadView{ID: id}, &Held{ID: id}
	b := &pgx.Batch{}
	b.Queue(`SELECT ref, channel, coalesce(phone, ''), coalesce(email, ''), coalesce(language, ''), state, memory, last_n, wake_at, opened_at
		FROM conversations WHERE id = $1`, id).QueryRow(h.scanTalk)
	b.Queue(`SELECT status, qualified, why_staff, urgent, after_hours, ready_at FROM leads WHERE conversation_id = $1`, id).
		QueryRow(func(row pgx.Row) (err error) { h.Talk.Lead, err = leadOf(row); return err })
	b.Queue(`SELECT waiting_since, coalesce(time_zone, '') FROM leads WHERE conversation_id = $1`, id).
		QueryRow(func(row pgx.Row) error { return row.Scan(&v.Since, &v.TimeZone) })
	b.Queue(`SELECT topic, unit, value, resolution_nm, said, coalesce(message, 0), by, undone
		FROM facts WHERE conversation_id = $1 ORDER BY seq`, id).
		Query(func(rows pgx.Rows) (err error) { h.Talk.Ledger, err = pgx.CollectRows(rows, scanEntry); return err })
	v.queueTalk(b)
	if err := c.SendBatch(ctx, b).Close(); err != nil {
		if errors.Is(err, pgx.ErrNoRows) {
			err = ErrNotFound
		}
		return nil, fmt.Errorf("view lead %s: %w", ref, err)
	}
	v.Talk = h.Talk
	return v, v.rest(ctx, c)
}

func (v *LeadView) queueTalk(b *pgx.Batch) {
	b.Queue(`SELECT m.id, coalesce(m.n, 0), m.author, m.channel, m.address, m.text, m.at, m.handled_at IS NOT NULL, coalesce(s.state, ''), coalesce(s.error_code, '')
		FROM messages m LEFT JOIN sends s ON s.message_id = m.id WHERE m.conversation_id = $1 ORDER BY m.n NULLS LAST, m.at, m.id`, v.ID).
		Query(func(rows pgx.Rows) (err error) {
			v.Messages, err = pgx.CollectRows(rows, pgx.RowToStructByPos[TalkMessage])
			return err
		})
	b.Queue(`SELECT p.id, coalesce(m.n, 0), p.k, coalesce(p.of, ''), p.state, coalesce(p.width, 0), coalesce(p.height, 0), coalesce(p.why, ''), coalesce(p.look, '')
		FROM photos p JOIN messages m ON m.id = p.message_id WHERE m.conversation_id = $1 ORDER BY m.n NULLS LAST, m.id, p.k`, v.ID).
		Query(func(rows pgx.Rows) (err error) {
			v.Photos, err = pgx.CollectRows(rows, pgx.RowToStructByPos[TalkPhoto])
			return err
		})
	b.Queue(`SELECT coalesce((SELECT c.ref FROM lead_merges m JOIN conversations c ON c.id = m.into_id WHERE m.from_id = $1), ''),
		ARRAY(SELECT c.ref FROM lead_merges m JOIN conversations c ON c.id = m.from_id WHERE m.into_id = $1 ORDER BY m.at)`, v.ID).
		QueryRow(func(row pgx.Row) error { return row.Scan(&v.MergedTo, &v.Merged) })
	// The same number, address, or name and ZIP code.
	b.Queue(`SELECT c.ref, o.status, coalesce(o.name, ''), c.opened_at
		FROM leads l, leads o JOIN conversations c ON c.id = o.conversation_id
		WHERE l.conversation_id = $1 AND o.conversation_id <> $1
			AND o.words @@ array_to_string(array_remove(ARRAY[quote_literal(right(l.phone, -1)), quote_literal(lower(l.email)),
				quote_literal(lower(l.zip))], NULL), ' | ')::tsquery
			AND (o.phone = l.phone OR lower(o.email) = lower(l.email) OR lower(o.name) = lower(l.name) AND o.zip = l.zip)
			AND NOT EXISTS (SELECT FROM lead_merges m WHERE m.from_id = o.conversation_id)
		ORDER BY c.opened_at DESC LIMIT 20`, v.ID).
		Query(func(rows pgx.Rows) (err error) {
			v.Others, err = pgx.CollectRows(rows, pgx.RowToStructByPos[Other])
			return err
		})
}

func (v *LeadView) rest(ctx context.Context, c Conn) (err error) {
	if v.Hands, err = HandsOf(ctx, c, v.ID); err != nil {
		return err
	}
	if v.Reach, err = AddressesOf(ctx, c, v.ID); err != nil {
		return err
	}
	v.History, err = HistoryOf(ctx, c, v.ID)
	last := 0
	for i := range v.Messages {
		m := &v.Messages[i]
		if m.N == 0 {
			m.N = last + 1
		}
		last = m.N
	}
	return err
}

// Entry is a fact of the ledger with its place in it.
func (v *LeadView) Entry(topic fitcheck.Topic, unit int) (e conversation.Entry, seq int) {
	for i := len(v.Talk.Ledger) - 1; i >= 0; i-- {
		if e := v.Talk.Ledger[i]; e.Topic == topic && e.Unit == unit && !e.Undone {
			return e, i + 1
		}
	}
	return conversation.Entry{}, 0
}
