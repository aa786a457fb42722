package intake

import (
	"bytes"
	"context"
	"io"
	"strings"
	"testing"

	"github.com/emersion/go-message/mail"
)

// hands is a mail server that keeps what it gets.
type hands struct{ raw [][]byte }

func (h *hands) Send(_ context.Context, _, _ string, raw []byte) error {
	h.raw = append(h.raw, raw)
	return nil
}

func TestMailToStaff(t *testing.T) {
	server := &hands{}
	mailer := StaffMailer{Carrier: server, Address: "hello@pinwheel.example", Name: func() string { return "Pinwheel Dome Supply" }}
	m := AlertMail{ID: "told-1-R7KQ4-ready", To: "kim@pinwheel.example", Subject: "Lead R7KQ4: ready\r\nBcc: all@example.com",
		Text: "Ready.\n\nÁna, Duluth\n", PDF: []byte("%PDF-1.7"), PDFName: "lead-R7KQ4.pdf", Date: noon}
	for range 2 {
		if err := mailer.Mail(t.Context(), m); err != nil {
			t.Fatal(err)
		}
	}
	r, err := mail.CreateReader(bytes.NewReader(server.raw[0]))
	if err != nil {
		t.Fatal(err)
	}
	id, _ := r.Header.MessageID()
	subject, _ := r.Header.Subject()
	if id != "told-1-R7KQ4-ready@pinwheel.example" || r.Header.Get("Auto-Submitted") != "auto-generated" || r.Header.Get("Bcc") != "" || !strings.Contains(subject, "Bcc:") {
		t.Errorf("id %q, subject %q, header %v", id, subject, r.Header)
	}
	var parts []string
	for {
		p, err := r.NextPart()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		b, err := io.ReadAll(p.Body)
		if err != nil {
			t.Fatal(err)
		}
		parts = append(parts, string(b))
	}
	if len(parts) != 2 || !strings.Contains(parts[0], "Ána, Duluth") || parts[1] != "%PDF-1.7" {
		t.Errorf("parts %q", parts)
	}
}
