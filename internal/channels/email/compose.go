package email

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"net/mail"
	"strings"
	"time"

	"github.com/emersion/go-message"
)

// Mailbox is an address with the name shown beside it.
type Mailbox struct{ Name, Address string }

// Cause says why a mail is sent; it becomes Auto-Submitted, RFC 3834 section 5, by which
// other programs know not to answer.
type Cause string

const (
	Answer   Cause = "auto-replied"   // to a mail that a person sent
	Reminder Cause = "auto-generated" // on our own account
)

// Outgoing is a mail to be written. None of its fields can break out of its place: every
// header value goes through one function that makes it one line, ids and addresses
// through one that knows their form.
type Outgoing struct {
	ID         string // Message-ID without brackets: NewID
	From, To   Mailbox
	Subject    string
	InReplyTo  string
	References []string
	Date       time.Time
	Cause      Cause
	Language   string // BCP 47, "en"
	Text       string
	Pictures   []Picture
	// Unsubscribe is an https address that opts the person out at a POST; set it where
	// the mail is not a direct answer. RFC 8058.
	Unsubscribe string
}

// Picture is shown in the HTML form, below the text.
type Picture struct {
	ID   string // unlike any other in the mail; letters, digits, '.', '_', '-'
	Type string // "image/png"
	Name string
	Alt  string
	Data []byte
}

// ErrOutgoing is why a mail can't be written.
var ErrOutgoing = errors.New("mail can't be written")

// Compose writes the mail: plain text with a light HTML twin. What it returns is sent,
// and sent again, as it is, so that every try has the same Message-ID and bytes.
func Compose(o Outgoing) ([]byte, error) {
	h, err := o.header()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	h.SetContentType("multipart/alternative", nil)
	w, err := message.CreateWriter(&b, h)
	if err != nil {
		return nil, fmt.Errorf("compose: %w", err)
	}
	if err := writePart(w, textHeader("text/plain"), []byte(crlf(o.Text))); err != nil {
		return nil, err
	}
	if err := o.writeHTML(w); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, fmt.Errorf("compose: %w", err)
	}
	return b.Bytes(), nil
}

// header is written bottom up: the library puts each new field on top.
func (o Outgoing) header() (message.Header, error) {
	var h message.Header
	from, err := field(o.From)
	if err != nil {
		return h, fmt.Errorf("%w: from", err)
	}
	to, err := field(o.To)
	if err != nil {
		return h, fmt.Errorf("%w: to", err)
	}
	if !validID(o.ID) || o.Date.IsZero() || (o.Cause != Answer && o.Cause != Reminder) {
		return h, fmt.Errorf("%w: id, date or cause", ErrOutgoing)
	}
	if err := o.setUnsubscribe(&h); err != nil {
		return h, err
	}
	h.Set("Mime-Version", "1.0")
	if validWord(o.Language) {
		set(&h, "Content-Language", o.Language)
	}
	h.Set("Auto-Submitted", string(o.Cause))
	// Exchange heeds this one in place of Auto-Submitted. From memory.
	h.Set("X-Auto-Response-Suppress", "OOF, AutoReply")
	setIDs(&h, "References", o.References)
	setIDs(&h, "In-Reply-To", []string{o.InReplyTo})
	setIDs(&h, "Message-Id", []string{o.ID})
	h.Set("Date", o.Date.Format(time.RFC1123Z))
	set(&h, "Subject", o.Subject)
	h.Set("To", to)
	h.Set("From", from)
	return h, nil
}

func (o Outgoing) setUnsubscribe(h *message.Header) error {
	if o.Unsubscribe == "" {
		return nil
	}
	if !strings.HasPrefix(o.Unsubscribe, "https://") || strings.ContainsAny(o.Unsubscribe, "<> \r\n\t") || len(o.Unsubscribe) > 900 {
		return fmt.Errorf("%w: unsubscribe address", ErrOutgoing)
	}
	h.Set("List-Unsubscribe-Post", "List-Unsubscribe=One-Click")
	h.Set("List-Unsubscribe", "<"+o.Unsubscribe+">")
	return nil
}

// set is the one way by which words get into a header: as one line, encoded.
func set(h *message.Header, key, words string) {
	h.SetText(key, clip(oneLine(words), maxField/2))
}

// field writes an address; the library quotes or encodes the name.
func field(m Mailbox) (string, error) {
	a, err := mail.ParseAddress(m.Address)
	if err != nil || a.Name != "" || a.Address != m.Address || oneLine(m.Address) != m.Address || len(m.Address) > 254 {
		return "", fmt.Errorf("%w: address", ErrOutgoing)
	}
	// The standard library leaves a backslash as it is in an encoded name, which RFC 2047
	// section 5 does not allow there; a fuzz run found it.
	name := strings.ReplaceAll(clip(oneLine(m.Name), 200), `\`, "/")
	return (&mail.Address{Name: name, Address: a.Address}).String(), nil
}

func setIDs(h *message.Header, key string, ids []string) {
	var good []string
	for _, id := range ids {
		if validID(id) {
			good = append(good, "<"+id+">")
		}
	}
	if len(good) > 0 {
		h.Set(key, strings.Join(good, " "))
	}
}

func (o Outgoing) writeHTML(w *message.Writer) error {
	page := []byte(crlf(twin(o.Text, o.Language, o.Pictures)))
	if len(o.Pictures) == 0 {
		return writePart(w, textHeader("text/html"), page)
	}
	var h message.Header
	h.SetContentType("multipart/related", map[string]string{"type": "text/html"})
	related, err := w.CreatePart(h)
	if err != nil {
		return fmt.Errorf("compose: %w", err)
	}
	if err := writePart(related, textHeader("text/html"), page); err != nil {
		return err
	}
	for _, p := range o.Pictures {
		ph, err := p.header()
		if err != nil {
			return err
		}
		if err := writePart(related, ph, p.Data); err != nil {
			return err
		}
	}
	if err := related.Close(); err != nil {
		return fmt.Errorf("compose: %w", err)
	}
	return nil
}

func (p Picture) header() (message.Header, error) {
	var h message.Header
	if !validWord(p.ID) || (p.Type != "image/png" && p.Type != "image/jpeg") {
		return h, fmt.Errorf("%w: picture", ErrOutgoing)
	}
	name := clip(oneLine(p.Name), 100)
	h.SetContentDisposition("inline", map[string]string{"filename": name})
	h.Set("Content-Id", "<"+p.ID+">")
	h.Set("Content-Transfer-Encoding", "base64")
	h.SetContentType(p.Type, map[string]string{"name": name})
	return h, nil
}

func textHeader(kind string) message.Header {
	var h message.Header
	h.Set("Content-Transfer-Encoding", "quoted-printable")
	h.SetContentType(kind, map[string]string{"charset": "utf-8"})
	return h
}

func writePart(w *message.Writer, h message.Header, body []byte) error {
	part, err := w.CreatePart(h)
	if err != nil {
		return fmt.Errorf("compose: %w", err)
	}
	if _, err := io.Copy(part, bytes.NewReader(body)); err != nil {
		return fmt.Errorf("compose: %w", err)
	}
	if err := part.Close(); err != nil {
		return fmt.Errorf("compose: %w", err)
	}
	return nil
}

func crlf(s string) string {
	s = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\x00", "").Replace(strings.ToValidUTF8(s, "\uFFFD"))
	return strings.ReplaceAll(strings.TrimRight(s, "\n")+"\n", "\n", "\r\n")
}
