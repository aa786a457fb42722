package standin

import (
	"bytes"
	"fmt"
	"io"
	"net/mail"
	"strings"

	"github.com/emersion/go-message"

	"example.com/intake-bot/internal/channels/email"
)

// File is a picture or another file that a person attaches.
type File struct {
	Name, Type string
	Data       []byte
}

// Letter is what a person writes.
type Letter struct {
	From    email.Mailbox
	Subject string
	Text    string
	Files   []File
	Answers *Mail // the shop's mail that it answers, quoted below the text; nil: a new one
}

// Write has a person write to the shop, as mail programs do, and returns the Message-ID.
func (o *Office) Write(l Letter) (string, error) {
	id := email.NewID("example.com")
	var h message.Header
	if l.Answers != nil {
		if err := l.answer(&h); err != nil {
			return "", err
		}
	}
	h.Set("Mime-Version", "1.0")
	h.Set("Message-Id", "<"+id+">")
	h.Set("Date", o.cfg.Now().Format("Mon, 02 Jan 2006 15:04:05 -0700"))
	h.SetText("Subject", l.Subject)
	h.Set("To", o.cfg.Address)
	h.Set("From", (&mail.Address{Name: l.From.Name, Address: l.From.Address}).String())
	var b bytes.Buffer
	if err := write(&b, h, l); err != nil {
		return "", fmt.Errorf("write a letter: %w", err)
	}
	return id, o.Put(l.From.Address, b.Bytes())
}

// answer threads the letter and quotes what it answers.
func (l *Letter) answer(h *message.Header) error {
	m, err := email.Parse(bytes.NewReader(l.Answers.Raw), email.Limits{})
	if err != nil {
		return fmt.Errorf("quote a mail: %w", err)
	}
	reply, refs := email.Thread(m)
	for i := range refs {
		refs[i] = "<" + refs[i] + ">"
	}
	h.Set("References", strings.Join(refs, " "))
	h.Set("In-Reply-To", "<"+reply+">")
	if l.Subject == "" {
		l.Subject = email.ReplySubject(m.Subject, "")
	}
	l.Text += fmt.Sprintf("\n\nOn %s %s <%s> wrote:\n\n> %s\n", m.Date.Format("Mon, Jan 2, 2006 at 3:04 PM"), m.Name, m.From,
		strings.ReplaceAll(m.Text, "\n", "\n> "))
	return nil
}

func write(b *bytes.Buffer, h message.Header, l Letter) error {
	h.SetContentType("multipart/mixed", nil)
	w, err := message.CreateWriter(b, h)
	if err != nil {
		return err
	}
	var text message.Header
	text.Set("Content-Transfer-Encoding", "quoted-printable")
	text.SetContentType("text/plain", map[string]string{"charset": "utf-8"})
	if err := part(w, text, []byte(l.Text)); err != nil {
		return err
	}
	for _, f := range l.Files {
		var fh message.Header
		fh.Set("Content-Transfer-Encoding", "base64")
		fh.SetContentDisposition("attachment", map[string]string{"filename": f.Name})
		fh.SetContentType(f.Type, map[string]string{"name": f.Name})
		if err := part(w, fh, f.Data); err != nil {
			return err
		}
	}
	return w.Close()
}

func part(w *message.Writer, h message.Header, body []byte) error {
	p, err := w.CreatePart(h)
	if err != nil {
		return err
	}
	if _, err := io.Copy(p, bytes.NewReader(body)); err != nil {
		return err
	}
	return p.Close()
}
