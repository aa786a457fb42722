package main

import (
	"context"
	"io"
	"maps"
	"net/http"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	office "example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/db"
)

var completeMail = map[string]string{
	"IMAP_ADDRESS": "imap.example.com", "IMAP_USER": "Hello@Pinwheel.example", "IMAP_PASSWORD": "secret1",
	"SMTP_ADDRESS": "smtp.example.com:587", "SMTP_SECURITY": "starttls", "SMTP_USER": "hello", "SMTP_PASSWORD": "secret2",
}

func TestMailSettings(t *testing.T) {
	for _, c := range []struct {
		what   string
		change map[string]string
		wrong  string
	}{
		{"complete", nil, ""},
		{"no mailbox", map[string]string{"IMAP_ADDRESS": ""}, "IMAP_ADDRESS is not set"},
		{"no server to send", map[string]string{"SMTP_ADDRESS": ""}, "SMTP_ADDRESS is not set"},
		{"neither password nor token", map[string]string{"IMAP_PASSWORD": ""}, "set one of IMAP_PASSWORD and IMAP_TOKEN_COMMAND"},
		{"both", map[string]string{"SMTP_TOKEN_COMMAND": "token"}, "set one of SMTP_PASSWORD and SMTP_TOKEN_COMMAND"},
		{"a token", map[string]string{"SMTP_TOKEN_COMMAND": "token --for mail", "SMTP_PASSWORD": ""}, ""},
		{"nobody", map[string]string{"SMTP_USER": ""}, "SMTP_USER is not set"},
		{"no address", map[string]string{"IMAP_USER": "hello"}, "MAIL_ADDRESS is not a plain mail address"},
		{"neither yes nor no", map[string]string{"MAIL_CHECK_DKIM": "maybe"}, "MAIL_CHECK_DKIM is neither yes nor no"},
	} {
		vars := maps.Clone(completeMail)
		maps.Copy(vars, c.change)
		s, err := readMailSettings(environmentOf(vars, nil))
		switch {
		case c.wrong == "" && err != nil, c.wrong != "" && (err == nil || !strings.Contains(err.Error(), c.wrong)):
			t.Errorf("%s: %v, want %q", c.what, err, c.wrong)
		case err != nil && strings.Contains(err.Error(), "secret"):
			t.Errorf("%s: the error tells the secret: %v", c.what, err)
		case err == nil && (s.address != "hello@pinwheel.example" || s.imap.server != "imap.example.com:993" || s.smtp.server != "smtp.example.com:587" ||
			s.imap.security != email.ImplicitTLS || s.smtp.security != email.StartTLS):
			t.Errorf("%s: %+v", c.what, s)
		}
	}
	if s, err := readMailSettings(environmentOf(nil, nil)); err != nil || s.address != "" {
		t.Errorf("a shop without mail: %+v, %v", s, err)
	}
}

// The program as it is served answers mail, and goes on where it was killed.
func TestServedByMail(t *testing.T) {
	const shopMail, password = "hello@pinwheel.example", "not a real one"
	post, err := office.New(office.Config{Address: shopMail, Password: password})
	if err != nil {
		t.Fatal(err)
	}
	if err := post.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { post.Close() })
	s := serveIn(t)
	s.kill()
	s.env = append(s.env, "IMAP_ADDRESS="+post.IMAP(), "IMAP_SECURITY=insecure", "IMAP_USER="+shopMail, "IMAP_PASSWORD="+password,
		"SMTP_ADDRESS="+post.SMTP(), "SMTP_SECURITY=insecure", "SMTP_USER="+shopMail, "SMTP_PASSWORD="+password)
	write := func(l office.Letter) []office.Mail {
		t.Helper()
		l.From = email.Mailbox{Name: "Dana Fields", Address: "dana@example.com"}
		before := len(post.To("dana@example.com"))
		if _, err := post.Write(l); err != nil {
			t.Fatal(err)
		}
		s.start() // it finds the mail when it looks first
		ctx, cancel := context.WithTimeout(t.Context(), 30*time.Second)
		defer cancel()
		mails, err := post.WaitTo(ctx, "dana@example.com", before+1)
		if err != nil {
			t.Fatal(err)
		}
		s.untilSent(before + 1) // killed sooner, nobody could know whether it went
		s.kill()
		return mails
	}
	mails := write(office.Letter{Subject: "Cracked dome", Text: "Hi, my skylight dome cracked"})
	mails = write(office.Letter{Text: "how do I measure that?", Answers: &mails[0]})
	if len(mails) != 2 || !strings.Contains(string(mails[1].Raw), "In-Reply-To: <") {
		t.Errorf("%d mails; the last is\n%s", len(mails), mails[len(mails)-1].Raw)
	}
}

// untilSent waits until so many messages are known to be sent.
func (s *served) untilSent(n int) {
	s.t.Helper()
	pool, err := db.Open(s.t.Context(), s.database)
	if err != nil {
		s.t.Fatal(err)
	}
	defer pool.Close()
	for sent, end := 0, time.Now().Add(20*time.Second); sent < n; time.Sleep(10 * time.Millisecond) {
		if err := pool.QueryRow(s.t.Context(), `SELECT count(*) FROM sends WHERE state = 'sent'`).Scan(&sent); err != nil {
			s.t.Fatal(err)
		}
		if time.Now().After(end) {
			s.t.Fatalf("%d of %d sent", sent, n)
		}
	}
}

// Metrics are served at an address of their own, and tell nothing of customers.
func TestServedMetrics(t *testing.T) {
	s := serveIn(t)
	s.kill()
	address := freeAddress(t)
	s.env = append(s.env, "METRICS_LISTEN="+address)
	s.start()
	if _, err := s.carrier.Text(t.Context(), "+12185550160", "Dana Fields, my dome is cracked"); err != nil {
		t.Fatal(err)
	}
	s.untilSent(1)
	res, err := http.Get("http://" + address + "/metrics")
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	body, err := io.ReadAll(res.Body)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{`intake_messages_received_total{channel="sms"} 1`, "intake_database_up 1", `intake_leads{status="open"} 1`, "intake_text_segments_budget 20000"} {
		if !strings.Contains(string(body), line) {
			t.Errorf("no %s in\n%s", line, body)
		}
	}
	for _, private := range []string{"Dana", "5550160", "cracked"} {
		if strings.Contains(string(body), private) {
			t.Errorf("the metrics tell %q", private)
		}
	}
	if res, err := http.Get(s.url + "/metrics"); err != nil || res.StatusCode != http.StatusNotFound {
		t.Errorf("the public address gives metrics: %v, %v", res, err)
	}
}
