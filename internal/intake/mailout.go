package intake

import (
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// MailCarrier takes mails on their way; *email.Sender is one.
type MailCarrier interface {
	Send(ctx context.Context, from, to string, raw []byte) error
}

// EmailSender sends mail through the owner's server. A mail is written with its first
// try and kept until it is known what became of it, so that every try is the same mail.
type EmailSender struct {
	Pool    *pgxpool.Pool
	Carrier MailCarrier
	Address string        // the shop's, from which mail goes and to which it comes back
	Name    func() string // shown beside it
	// Foot stands below each mail; nil: nothing does.
	Foot func() string
	// Unsubscribe is the https address by which the receiver of a message opts out; nil, or
	// empty: there is none.
	Unsubscribe func(messageID int64) string
	// Picture draws how to measure a topic; nil: mail goes without.
	Picture func(topic fitcheck.Topic, language string) (email.Picture, error)
	// Step is that of the service's options; nil: nobody looks.
	Step func(Point)
}

func (s EmailSender) step(p Point) {
	if s.Step != nil {
		s.Step(p)
	}
}

// Send hands a mail over. Its provider's id is its Message-ID.
func (s EmailSender) Send(ctx context.Context, m Outgoing) (string, error) {
	out, err := db.OutMail(ctx, s.Pool, m.MessageID)
	if err != nil {
		return "", &Failure{Kind: Temporary, Code: "database", Err: err}
	}
	if out.Raw == nil {
		if err := s.write(m, &out); err != nil {
			return "", &Failure{Kind: Refused, Code: "not_written", Err: err}
		}
	}
	if err := db.BeginMail(ctx, s.Pool, m.MessageID, out.MailID, out.Raw); err != nil {
		return "", &Failure{Kind: Temporary, Code: "database", Err: err}
	}
	s.step(BeforeMailCall)
	err = s.Carrier.Send(ctx, s.Address, m.To.Address, out.Raw)
	s.step(AfterMailCall)
	if err != nil {
		return "", s.failure(ctx, m, err)
	}
	// Where this fails the raw mail stays a little longer, no more.
	_ = db.MailTaken(context.WithoutCancel(ctx), s.Pool, m.MessageID)
	return out.MailID, nil
}

// Find says whether a mail went. Mail servers can't be asked, but one that was never
// begun can't have gone.
func (s EmailSender) Find(ctx context.Context, m Outgoing) (string, bool, error) {
	out, err := db.OutMail(ctx, s.Pool, m.MessageID)
	if err != nil {
		return "", false, err
	}
	if out.Begun {
		return "", false, ErrCantTell
	}
	return "", false, nil
}

// failure says what the mail server's word means. A mail that it surely did not take is
// noted as not begun, so that it may be tried again after a crash too.
func (s EmailSender) failure(ctx context.Context, m Outgoing, err error) error {
	var said *email.SendError
	if !errors.As(err, &said) || said.Kind == email.SendUnknown {
		return &Failure{Kind: Uncertain, Code: "unknown", Err: err}
	}
	if note := db.MailNotTaken(context.WithoutCancel(ctx), s.Pool, m.MessageID); note != nil {
		err = errors.Join(err, note)
	}
	code := said.Stage
	if said.Code != 0 {
		code = strconv.Itoa(said.Code)
	}
	kind := Temporary
	switch {
	case said.Kind == email.SendPermanent && said.Stage == "recipient":
		kind = Unreachable
	case said.Kind == email.SendPermanent:
		kind = Refused
	}
	return &Failure{Kind: kind, Code: code, Err: err}
}

// write composes a mail: into the thread of what it answers, with the ref in its subject.
func (s EmailSender) write(m Outgoing, out *db.MailOut) error {
	out.MailID = email.NewID(s.domain())
	o := email.Outgoing{ID: out.MailID, From: email.Mailbox{Name: s.Name(), Address: s.Address},
		To: email.Mailbox{Name: out.Name, Address: m.To.Address}, Subject: email.ReplySubject(subjectOf(*out), out.Ref),
		Date: out.At, Cause: email.Answer, Language: out.Lang, Text: s.text(m.Text)}
	if n := len(out.Thread); n > 0 {
		o.InReplyTo, o.References = out.Thread[n-1], out.Thread
	}
	if m.Kind == conversation.Reminder {
		o.Cause = email.Reminder
		if s.Unsubscribe != nil {
			o.Unsubscribe = s.Unsubscribe(m.MessageID)
		}
	}
	if m.Picture != "" && s.Picture != nil {
		p, err := s.Picture(m.Picture, out.Lang)
		if err != nil {
			return fmt.Errorf("picture of %s: %w", m.Picture, err)
		}
		o.Pictures = append(o.Pictures, p)
	}
	raw, err := email.Compose(o)
	out.Raw = raw
	return err
}

func subjectOf(out db.MailOut) string {
	switch {
	case strings.TrimSpace(out.Subject) != "":
		return out.Subject
	case out.Lang == "es":
		return "Su tragaluz"
	}
	return "Your skylight"
}

func (s EmailSender) text(words string) string {
	if s.Foot == nil {
		return words
	}
	return words + "\n\n-- \n" + s.Foot()
}

func (s EmailSender) domain() string { return s.Address[strings.LastIndex(s.Address, "@")+1:] }
