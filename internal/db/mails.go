package db

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"example.com/intake-bot/internal/conversation"
)

// MailKind says what became of a mail that came in.
type MailKind string

const (
	MailMessage    MailKind = "message"    // of a person: it has its message in a talk
	MailAuto       MailKind = "auto"       // no person wrote it; never answered
	MailBounce     MailKind = "bounce"     // on the delivery of one of ours
	MailOwn        MailKind = "own"        // one of ours, come back
	MailUnreadable MailKind = "unreadable" // for a person to look at
)

// Standing says whether a sender's domain stands behind a mail.
type Standing string

const (
	Proven    Standing = "proven"
	Unproven  Standing = "unproven"
	Unchecked Standing = "unchecked" // nobody was there to ask
)

// MailIn is a mail as it was taken in.
type MailIn struct {
	Key      string // of Message-ID and content: the same mail has the same
	Kind     MailKind
	Why      string // how it is known that no person wrote it
	MailID   string // Message-ID without brackets
	Sender   string
	Subject  string
	Thread   []string // what an answer names, oldest first, this mail last
	Standing Standing
	Blocks   []conversation.Block // of an interleaved answer
	Size     int64
	Raw      []byte // as much of it as is kept
}

// KeepMail stores a mail; messageID is 0 where it is no message of a talk. again: it is
// there already, and nothing was changed.
func KeepMail(ctx context.Context, tx pgx.Tx, m MailIn, messageID int64) (again bool, err error) {
	var blocks []byte
	if len(m.Blocks) > 0 {
		if blocks, err = json.Marshal(m.Blocks); err != nil {
			return false, fmt.Errorf("keep mail: %w", err)
		}
	}
	if m.Standing == "" {
		m.Standing = Unchecked
	}
	thread := make([]string, 0, len(m.Thread))
	for _, id := range m.Thread {
		thread = append(thread, storable(id))
	}
	const sql = `INSERT INTO mails_in (key, kind, why, mail_id, sender, subject, thread, standing, blocks, message_id, size, raw)
		VALUES ($1, $2, nullif($3, ''), nullif($4, ''), nullif($5, ''), left($6, 1000), $7, $8, $9, nullif($10, 0), $11, $12)
		ON CONFLICT (key) DO NOTHING`
	if len(m.MailID) > 255 {
		m.MailID = ""
	}
	tag, err := tx.Exec(ctx, sql, m.Key, m.Kind, m.Why, storable(m.MailID), storable(m.Sender), storable(m.Subject), thread, m.Standing, blocks,
		messageID, m.Size, m.Raw)
	if err != nil {
		return false, fmt.Errorf("keep mail %s: %w", m.Key, err)
	}
	return tag.RowsAffected() == 0, nil
}

// MailKnown says whether a mail was taken in before.
func MailKnown(ctx context.Context, c Conn, key string) (bool, error) {
	var known bool
	if err := c.QueryRow(ctx, `SELECT EXISTS (SELECT FROM mails_in WHERE key = $1)`, key).Scan(&known); err != nil {
		return false, fmt.Errorf("look up mail %s: %w", key, err)
	}
	return known, nil
}

// AddMail gives messages what only their mail knows: which piece answers what, and
// whether the sender is proven. The subjects come by message.
func AddMail(ctx context.Context, c Conn, messages []Waiting) (subjects map[int64]string, err error) {
	at, ids := map[int64]int{}, []int64{}
	for i, w := range messages {
		if w.Message.Channel == conversation.Email {
			at[w.ID], ids = i, append(ids, w.ID)
		}
	}
	if len(ids) == 0 {
		return nil, nil
	}
	rows, err := c.Query(ctx, `SELECT message_id, subject, standing, blocks FROM mails_in WHERE message_id = ANY ($1)`, ids)
	if err != nil {
		return nil, fmt.Errorf("mails of messages: %w", err)
	}
	subjects = map[int64]string{}
	var id int64
	var subject string
	var standing Standing
	var blocks []byte
	_, err = pgx.ForEachRow(rows, []any{&id, &subject, &standing, &blocks}, func() error {
		m := &messages[at[id]].Message
		subjects[id] = subject
		m.Unproven = standing == Unproven
		m.Blocks = nil
		if blocks == nil {
			return nil
		}
		return json.Unmarshal(blocks, &m.Blocks)
	})
	if err != nil {
		return nil, fmt.Errorf("mails of messages: %w", err)
	}
	return subjects, nil
}

// BadData says whether an error is about what was to be stored, not about the database:
// trying again will not help.
func BadData(err error) bool {
	var pg *pgconn.PgError
	// SQLSTATE classes 22, data exception, and 23, integrity constraint violation.
	return errors.As(err, &pg) && (strings.HasPrefix(pg.Code, "22") || strings.HasPrefix(pg.Code, "23"))
}

// MailOut is what a mail to a customer is made of, beside its words.
type MailOut struct {
	MailID  string // fixed with the first try; empty before
	Raw     []byte // as it was written for the first try
	Begun   bool   // the server may have it
	At      time.Time
	Kind    conversation.UtteranceKind
	Lang    string
	Ref     string
	Name    string   // the customer's, empty where not known
	Subject string   // of the mail that it answers, empty where there is none
	Thread  []string // what it names, oldest first; the last is the mail that it answers
}

// OutMail is the mail of a message that is to be sent.
func OutMail(ctx context.Context, c Conn, messageID int64) (MailOut, error) {
	const sql = `
		SELECT coalesce(o.mail_id, ''), o.raw, coalesce(o.begun, false), m.at, s.kind, coalesce(c.language, 'en'), c.ref, coalesce(l.name, ''),
			coalesce(p.subject, ''), coalesce(p.thread, '{}')
		FROM messages m JOIN sends s ON s.message_id = m.id JOIN conversations c ON c.id = m.conversation_id
		JOIN leads l ON l.conversation_id = c.id
		LEFT JOIN mails_out o ON o.message_id = m.id
		LEFT JOIN LATERAL (SELECT i.subject, i.thread FROM messages t JOIN mails_in i ON i.message_id = t.id
			WHERE t.conversation_id = m.conversation_id AND t.direction = 'in' AND t.channel = 'email'
				AND t.address = m.address AND t.n < m.n ORDER BY t.n DESC LIMIT 1) p ON true
		WHERE m.id = $1`
	var o MailOut
	err := c.QueryRow(ctx, sql, messageID).Scan(&o.MailID, &o.Raw, &o.Begun, &o.At, &o.Kind, &o.Lang, &o.Ref, &o.Name, &o.Subject, &o.Thread)
	if errors.Is(err, pgx.ErrNoRows) {
		err = ErrNotFound
	}
	if err != nil {
		return o, fmt.Errorf("mail of message %d: %w", messageID, err)
	}
	return o, nil
}

// BeginMail fixes a mail's id and form with its first try, and notes that the server may
// have it from now on. What was fixed before stands.
func BeginMail(ctx context.Context, c Conn, messageID int64, mailID string, raw []byte) error {
	const sql = `INSERT INTO mails_out (message_id, mail_id, raw, begun) VALUES ($1, $2, $3, true)
		ON CONFLICT (message_id) DO UPDATE SET begun = true`
	if _, err := c.Exec(ctx, sql, messageID, mailID, raw); err != nil {
		return fmt.Errorf("begin mail of message %d: %w", messageID, err)
	}
	return nil
}

// MailNotTaken notes that the server does not have a mail after all.
func MailNotTaken(ctx context.Context, c Conn, messageID int64) error {
	if _, err := c.Exec(ctx, `UPDATE mails_out SET begun = false WHERE message_id = $1`, messageID); err != nil {
		return fmt.Errorf("mail of message %d: %w", messageID, err)
	}
	return nil
}

// MailTaken lets go of a mail's raw form once the server has it.
func MailTaken(ctx context.Context, c Conn, messageID int64) error {
	if _, err := c.Exec(ctx, `UPDATE mails_out SET raw = NULL WHERE message_id = $1`, messageID); err != nil {
		return fmt.Errorf("mail of message %d: %w", messageID, err)
	}
	return nil
}
