package intake

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"regexp"
	"strings"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/db"
)

// MailSettings are what the service has to know of the shop's own mail.
type MailSettings struct {
	// Own are the shop's addresses: mail from there is our own, come back.
	Own []string
	// AuthServer is the name by which the receiving server signs what it found out about
	// senders; empty: its word is not asked for.
	AuthServer string
	// LookupTXT lets signatures be checked here as well; nil: they are not.
	LookupTXT email.LookupTXT
}

// rawKept bounds what is kept of a mail as it came.
const rawKept = 256 << 10

// TakeMail keeps one mail for good, with the job that answers it where a person wrote
// it. It is a Watcher's Store: an error means that the database failed, never that the
// mail is odd, and the same mail again changes nothing.
func (s *Service) TakeMail(ctx context.Context, in email.Incoming) error {
	ctx, cancel := context.WithTimeout(ctx, jobTimeout) // of a database that went silent
	defer cancel()
	m, err := guarded("mail", func() (email.Message, error) { return email.Parse(bytes.NewReader(in.Raw), email.Limits{}) })
	kept := db.MailIn{MailID: m.ID, Sender: addressOrNone(m.From), Subject: m.Subject, Size: max(in.Size, int64(len(in.Raw))),
		Raw: in.Raw[:min(len(in.Raw), rawKept)], Key: mailKey(m, in.Raw)}
	if err != nil {
		s.log.WarnContext(ctx, "a mail can't be read; it is kept for a person", "key", kept.Key, "error", err.Error())
		kept.Kind = db.MailUnreadable
		return s.keepMail(ctx, kept, nil)
	}
	kept.Kind, kept.Why = kindOfMail(m, s.opts.Mail.Own)
	s.opts.Metrics.mails.WithLabelValues(string(kept.Kind)).Inc()
	switch kept.Kind {
	case db.MailBounce:
		return s.keepMail(ctx, kept, m.Bounce)
	case db.MailMessage:
		if err = s.receiveMail(ctx, in, m, kept); db.BadData(err) {
			// No odd mail may hold up those behind it.
			s.log.ErrorContext(ctx, "a mail could not be kept as a message; it is kept for a person", "key", kept.Key, "error", err.Error())
			return s.keepMail(ctx, db.MailIn{Key: kept.Key, Kind: db.MailUnreadable, Size: kept.Size, Raw: kept.Raw}, nil)
		}
		return err
	}
	return s.keepMail(ctx, kept, nil)
}

func addressOrNone(a string) string {
	if len(a) > 320 {
		return ""
	}
	return a
}

// mailKey tells mails apart by Message-ID and content. What servers write on top on the
// way is no part of it, so that one mail that comes twice is one.
func mailKey(m email.Message, raw []byte) string {
	_, body, found := bytes.Cut(raw, []byte("\r\n\r\n"))
	if !found {
		if _, body, found = bytes.Cut(raw, []byte("\n\n")); !found {
			body = raw
		}
	}
	h := sha256.New()
	fmt.Fprintf(h, "%q %q %q %q\n", m.ID, m.From, m.Subject, m.Date)
	h.Write(body)
	return hex.EncodeToString(h.Sum(nil))
}

// addressForm is what the database takes for a mail address.
var addressForm = regexp.MustCompile(`^[^@\s]+@[^@\s]+$`)

// kindOfMail says what a mail is, most certain first.
func kindOfMail(m email.Message, own []string) (kind db.MailKind, why string) {
	switch {
	case m.Bounce != nil:
		return db.MailBounce, ""
	case m.FromOwn(own...):
		return db.MailOwn, ""
	case m.Auto:
		return db.MailAuto, string(m.AutoWhy)
	case !addressForm.MatchString(m.From) || len(m.From) > 320:
		return db.MailUnreadable, "" // nobody could be answered
	}
	return db.MailMessage, ""
}

// keepMail keeps a mail that is no message of a talk. A report that one of ours will
// never arrive is acted on as a carrier's would be.
func (s *Service) keepMail(ctx context.Context, kept db.MailIn, report *email.Bounce) error {
	err := pgx.BeginFunc(ctx, s.opts.Pool, func(tx pgx.Tx) error {
		again, err := db.KeepMail(ctx, tx, kept, 0)
		s.opts.Step(BeforeMailCommit)
		if err != nil || again || report == nil || report.OriginalID == "" {
			return err
		}
		return s.keepReport(ctx, tx, *report)
	})
	if err = s.kept(err); err != nil {
		return fmt.Errorf("take mail %s: %w", kept.Key, err)
	}
	s.opts.Step(AfterMailCommit)
	return nil
}

// keepReport ties a report to the mail that it is about, by the Message-ID, which only
// its recipient and the servers on the way know.
func (s *Service) keepReport(ctx context.Context, tx pgx.Tx, b email.Bounce) error {
	st := Status{Channel: conversation.Email, ID: b.OriginalID, Word: "report", Code: b.Status, At: s.now()}
	if b.Action != "" {
		st.Word = b.Action
	}
	if len(st.Word) > 64 || len(st.ID) > 255 {
		return nil // no program's words; the raw mail is kept
	}
	if b.Failed() {
		st.Kind = Unreachable
		if st.Code == "" {
			st.Code = "bounced"
		}
	}
	return s.keepStatus(ctx, tx, st)
}

// receiveMail takes in what a person wrote.
func (s *Service) receiveMail(ctx context.Context, in email.Incoming, m email.Message, kept db.MailIn) error {
	kept.Standing = s.standing(in, m)
	kept.Blocks = blocksOf(m.Blocks)
	if _, refs := email.Thread(m); len(refs) > 0 {
		kept.Thread = refs
	}
	message := Inbound{Channel: conversation.Email, ID: kept.Key, From: m.From, Text: s.wordsOf(m), Photos: filesOf(in, m),
		At: in.Received, Name: m.Name, Subject: m.Subject, Unproven: kept.Standing == db.Unproven,
		also: func(ctx context.Context, tx pgx.Tx, k db.Kept) error {
			_, err := db.KeepMail(ctx, tx, kept, k.MessageID)
			return err
		}}
	if message.At.IsZero() || message.At.After(s.now()) {
		message.At = s.now()
	}
	_, err := s.Receive(ctx, message)
	return err
}

// wordsOf are a mail's new words. A mail without any that asks in its subject to be
// stopped is a stop all the same.
func (s *Service) wordsOf(m email.Message) string {
	if strings.TrimSpace(m.Text) == "" && s.opts.Brain.Keyword(m.Subject) != "" {
		return m.Subject
	}
	return m.Text
}

// standing says whether the sender's domain stands behind a mail, by those who could
// know.
func (s *Service) standing(in email.Incoming, m email.Message) db.Standing {
	set := s.opts.Mail
	if set.AuthServer != "" && m.Proven(set.AuthServer) {
		return db.Proven
	}
	if set.LookupTXT != nil && !in.TooLarge {
		if ok, err := email.SignedBy(bytes.NewReader(in.Raw), m.From, set.LookupTXT); err == nil && ok {
			return db.Proven
		}
	}
	if set.AuthServer == "" && set.LookupTXT == nil {
		return db.Unchecked
	}
	return db.Unproven
}

// blocksOf are the pieces of a mail that answers in between what it quotes; none where
// nothing that is quoted asks for anything.
func blocksOf(blocks []email.Block) []conversation.Block {
	asked := false
	out := make([]conversation.Block, 0, len(blocks))
	for _, b := range blocks {
		topics := reading.Asks(b.Quoted)
		asked = asked || len(topics) > 0
		out = append(out, conversation.Block{Asked: topics, Text: b.Text})
	}
	if !asked || len(out) < 2 {
		return nil
	}
	return out
}

// filesOf are the photos of a mail, and those other files that were likely sent as one.
func filesOf(in email.Incoming, m email.Message) []db.PhotoSource {
	var files []db.PhotoSource
	for _, p := range m.Photos {
		files = append(files, db.PhotoSource{Source: "mail", ContentType: p.Type, File: p.Data})
	}
	for _, a := range m.Attachments {
		if why := whyNoPhoto(a.Type); why != "" {
			files = append(files, db.PhotoSource{Source: "mail", ContentType: a.Type, Refused: why})
		}
	}
	if in.TooLarge {
		files = append(files, db.PhotoSource{Source: "mail", Refused: conversation.PhotoTooLarge})
	}
	return files
}

// whyNoPhoto is the kind word for an attachment; empty for what mail programs add by
// themselves, such as a visiting card.
func whyNoPhoto(contentType string) conversation.PhotoLook {
	kind, _, _ := strings.Cut(strings.ToLower(contentType), "/")
	switch {
	case kind == "video":
		return conversation.PhotoVideo
	case kind == "image":
		return conversation.PhotoOther
	case contentType == "application/pdf", strings.Contains(contentType, "officedocument"), strings.Contains(contentType, "opendocument"),
		contentType == "application/msword", contentType == "application/zip":
		return conversation.PhotoDocument
	}
	return ""
}
