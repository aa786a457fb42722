package intake

import (
	"bytes"
	"context"
	"fmt"
	"strings"

	"github.com/emersion/go-message/mail"
)

// StaffMailer mails people of staff through the owner's server. A mail has the same id
// and bytes at each try, so that mail programs show one that came twice as one.
type StaffMailer struct {
	Carrier MailCarrier
	Address string        // the shop's, from which mail goes
	Name    func() string // shown beside it
}

// Mail sends a mail to one of staff.
func (s StaffMailer) Mail(ctx context.Context, m AlertMail) error {
	raw, err := s.compose(m)
	if err != nil {
		return fmt.Errorf("mail to staff: %w", err)
	}
	if err := s.Carrier.Send(ctx, s.Address, m.To, raw); err != nil {
		return fmt.Errorf("mail to staff: %w", err)
	}
	return nil
}

func (s StaffMailer) compose(m AlertMail) ([]byte, error) {
	var h mail.Header
	h.SetDate(m.Date)
	h.SetSubject(strings.Join(strings.Fields(m.Subject), " "))
	h.SetAddressList("From", []*mail.Address{{Name: s.Name(), Address: s.Address}})
	h.SetAddressList("To", []*mail.Address{{Address: m.To}})
	h.SetMessageID(m.ID + "@" + s.Address[strings.LastIndex(s.Address, "@")+1:])
	h.Set("Auto-Submitted", "auto-generated") // RFC 3834: nobody's robot answers
	var b bytes.Buffer
	w, err := mail.CreateWriter(&b, h)
	if err != nil {
		return nil, err
	}
	if err := writeText(w, m.Text); err != nil {
		return nil, err
	}
	if m.PDF != nil {
		var ah mail.AttachmentHeader
		ah.SetContentType("application/pdf", nil)
		ah.SetFilename(m.PDFName)
		a, err := w.CreateAttachment(ah)
		if err != nil {
			return nil, err
		}
		if _, err := a.Write(m.PDF); err != nil {
			return nil, err
		}
		if err := a.Close(); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func writeText(w *mail.Writer, text string) error {
	var ih mail.InlineHeader
	ih.SetContentType("text/plain", map[string]string{"charset": "utf-8"})
	t, err := w.CreateSingleInline(ih)
	if err != nil {
		return err
	}
	if _, err := t.Write([]byte(strings.ReplaceAll(text, "\n", "\r\n"))); err != nil {
		return err
	}
	return t.Close()
}
