package email_test

import (
	"bytes"
	"errors"
	"io"
	"mime"
	"net/mail"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
)

func answer() email.Outgoing {
	return email.Outgoing{
		ID:         "a1@pinwheel.example",
		From:       email.Mailbox{Name: "Pinwheel Dome Supply", Address: "hello@pinwheel.example"},
		To:         email.Mailbox{Name: "Dana Fields", Address: "dana@example.com"},
		Subject:    "Re: Cracked dome [R7KQ4]",
		InReplyTo:  "m1@example.com",
		References: []string{"m0@example.com", "m1@example.com"},
		Date:       time.Date(2026, 3, 2, 9, 30, 0, 0, time.FixedZone("CST", -6*3600)),
		Cause:      email.Answer,
		Language:   "en",
		Text:       "Hello Dana,\n\nthree things:\n- the curb, outside to outside: 25½ × 49½?\n- how many\n\n.\nFrom here it goes on.\nhttps://pinwheel.example/p?a=1&b=2.",
	}
}

func TestCompose(t *testing.T) {
	raw, err := email.Compose(answer())
	if err != nil {
		t.Fatal(err)
	}
	m, err := mail.ReadMessage(bytes.NewReader(raw))
	if err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]string{
		"From":           `"Pinwheel Dome Supply" <hello@pinwheel.example>`,
		"To":             `"Dana Fields" <dana@example.com>`,
		"Subject":        "Re: Cracked dome [R7KQ4]",
		"Message-Id":     "<a1@pinwheel.example>",
		"In-Reply-To":    "<m1@example.com>",                  // RFC 5322 section 3.6.4
		"References":     "<m0@example.com> <m1@example.com>", // RFC 5322 section 3.6.4
		"Date":           "Mon, 02 Mar 2026 09:30:00 -0600",
		"Auto-Submitted": "auto-replied", // RFC 3834 section 5
		"Mime-Version":   "1.0",
	} {
		if got := m.Header.Get(key); got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
	for line := range strings.SplitSeq(string(raw), "\r\n") {
		if len(line) > 998 || strings.ContainsAny(line, "\r\n") { // RFC 5322 section 2.1.1
			t.Errorf("line of %d bytes, or with half a line break", len(line))
		}
	}
	read, err := email.Parse(bytes.NewReader(raw), email.Limits{})
	if err != nil || read.Text != answer().Text || read.AutoWhy != email.AutoSubmitted {
		t.Errorf("reads %q, %s, %v", read.Text, read.AutoWhy, err)
	}
	for _, part := range []string{"<li>how many</li>", `<a href=3D"https://pinwheel.example/p?a=3D1&amp;b=3D2">`} {
		if !strings.Contains(strings.ReplaceAll(string(raw), "=\r\n", ""), part) {
			t.Errorf("HTML lacks %s:\n%s", part, raw)
		}
	}
}

func TestReminderCanBeUnsubscribed(t *testing.T) {
	o := answer()
	o.Cause, o.Unsubscribe = email.Reminder, "https://pinwheel.example/u/abc"
	raw, err := email.Compose(o)
	if err != nil {
		t.Fatal(err)
	}
	m, err := mail.ReadMessage(bytes.NewReader(raw))
	if err != nil {
		t.Fatal(err)
	}
	// RFC 2369 section 3.2, RFC 8058 section 3.
	if m.Header.Get("List-Unsubscribe") != "<https://pinwheel.example/u/abc>" ||
		m.Header.Get("List-Unsubscribe-Post") != "List-Unsubscribe=One-Click" || m.Header.Get("Auto-Submitted") != "auto-generated" {
		t.Errorf("%v", m.Header)
	}
}

func TestPicturesInline(t *testing.T) {
	photo, err := os.ReadFile("testdata/dome.jpg")
	if err != nil {
		t.Fatal(err)
	}
	o := answer()
	o.Pictures = []email.Picture{{ID: "tape-1@pinwheel.example", Type: "image/jpeg", Name: "tape.jpg", Alt: `where "to" put <the> tape`, Data: photo}}
	raw, err := email.Compose(o)
	if err != nil {
		t.Fatal(err)
	}
	m, err := email.Parse(bytes.NewReader(raw), email.Limits{})
	if err != nil || len(m.Photos) != 1 || !bytes.Equal(m.Photos[0].Data, photo) || m.Photos[0].ContentID != "tape-1@pinwheel.example" {
		t.Errorf("%d photos, %v", len(m.Photos), err)
	}
}

func TestComposeRefuses(t *testing.T) {
	for name, change := range map[string]func(*email.Outgoing){
		"no address":            func(o *email.Outgoing) { o.To.Address = "" },
		"line break in address": func(o *email.Outgoing) { o.To.Address = "dana@example.com\r\nBcc: x@example.com" },
		"two addresses":         func(o *email.Outgoing) { o.To.Address = "dana@example.com, x@example.com" },
		"name in address":       func(o *email.Outgoing) { o.To.Address = "Dana <dana@example.com>" },
		"no id":                 func(o *email.Outgoing) { o.ID = "" },
		"id with a break":       func(o *email.Outgoing) { o.ID = "a@b>\r\nBcc: x@example.com" },
		"no date":               func(o *email.Outgoing) { o.Date = time.Time{} },
		"no cause":              func(o *email.Outgoing) { o.Cause = "" },
		"unsubscribe by http":   func(o *email.Outgoing) { o.Unsubscribe = "http://pinwheel.example/" },
		"unsubscribe breaks":    func(o *email.Outgoing) { o.Unsubscribe = "https://a.example/>\r\nBcc: x@example.com" },
		"picture id":            func(o *email.Outgoing) { o.Pictures = []email.Picture{{ID: "a\r\nb", Type: "image/png"}} },
		"picture type":          func(o *email.Outgoing) { o.Pictures = []email.Picture{{ID: "a", Type: "text/html"}} },
	} {
		o := answer()
		change(&o)
		if raw, err := email.Compose(o); !errors.Is(err, email.ErrOutgoing) {
			t.Errorf("%s: %v\n%s", name, err, raw)
		}
	}
}

// ours are the fields that a mail of ours has, in its header.
var ours = []string{"Auto-Submitted", "Content-Language", "Content-Type", "Date", "From", "In-Reply-To", "Message-Id",
	"Mime-Version", "References", "Subject", "To", "X-Auto-Response-Suppress"}

// Whatever words come in, they stay in their fields.
func FuzzHeaderInjection(f *testing.F) {
	f.Add("Hello\r\nBcc: all@example.com", "Dana\nBcc: x@example.com", "en\r\n\r\n<script>", "a@b>\r\nBcc: y@example.com", "text\r\n.\r\nMAIL FROM:<x@example.com>")
	f.Add("=?utf-8?Q?a=0D=0ABcc:_x@example.com?=", `"`, "\u2028", "<a@b> <c@d>", "\r\r\n\n")
	f.Add(strings.Repeat("ñ", 1000), strings.Repeat("(", 300), "", "", "")
	f.Fuzz(func(t *testing.T, subject, name, language, id, text string) {
		o := answer()
		o.Subject, o.To.Name, o.Language, o.References, o.InReplyTo, o.Text = subject, name, language, []string{id}, id, text
		raw, err := email.Compose(o)
		if err != nil {
			t.Fatal(err)
		}
		m, err := mail.ReadMessage(bytes.NewReader(raw))
		if err != nil {
			t.Fatalf("%v\n%q", err, raw)
		}
		for key, values := range m.Header {
			if !slices.Contains(ours, key) || len(values) != 1 { // an odd id or language is left out
				t.Fatalf("field %s, %d times, in\n%q", key, len(values), raw)
			}
		}
		to, err := m.Header.AddressList("To")
		if err != nil || len(to) != 1 || to[0].Address != "dana@example.com" {
			t.Fatalf("to %v, %v, in\n%q", to, err, raw)
		}
		checkParts(t, m)
	})
}

// checkParts: two parts, no third smuggled in.
func checkParts(t *testing.T, m *mail.Message) {
	t.Helper()
	_, params, err := mime.ParseMediaType(m.Header.Get("Content-Type"))
	if err != nil {
		t.Fatal(err)
	}
	body, err := io.ReadAll(m.Body)
	if err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(body, []byte("--"+params["boundary"])); n != 3 {
		t.Fatalf("%d boundaries in\n%q", n, body)
	}
}

func TestThread(t *testing.T) {
	long := []string{"first@example.com"}
	for range 50 {
		long = append(long, "later@example.com")
	}
	for _, f := range []struct {
		name   string
		parent email.Message
		reply  string
		refs   int
		first  string
	}{
		// RFC 5322 section 3.6.4.
		{"first mail", email.Message{ID: "m1@example.com"}, "m1@example.com", 1, "m1@example.com"},
		{"with references", email.Message{ID: "m3@example.com", References: []string{"m1@example.com", "m2@example.com"}}, "m3@example.com", 3, "m1@example.com"},
		{"only in reply to", email.Message{ID: "m2@example.com", InReplyTo: "m1@example.com"}, "m2@example.com", 2, "m1@example.com"},
		{"no id", email.Message{References: []string{"m1@example.com"}}, "", 1, "m1@example.com"},
		{"odd ids are left out", email.Message{ID: "m2@example.com", References: []string{"no id", "a@b c"}}, "m2@example.com", 1, "m2@example.com"},
		{"long chain", email.Message{ID: "last@example.com", References: long}, "last@example.com", 21, "first@example.com"},
	} {
		reply, refs := email.Thread(f.parent)
		if reply != f.reply || len(refs) != f.refs || refs[0] != f.first {
			t.Errorf("%s: %q, %q", f.name, reply, refs)
		}
	}
}

func TestReplySubject(t *testing.T) {
	for _, f := range []struct{ subject, ref, want string }{
		{"Cracked dome", "R7KQ4", "Re: Cracked dome [R7KQ4]"},
		{"Re: Cracked dome [R7KQ4]", "R7KQ4", "Re: Cracked dome [R7KQ4]"},
		{"RE: Fwd: re[2]: Cracked dome", "R7KQ4", "Re: Cracked dome [R7KQ4]"},
		{"", "R7KQ4", "Re: [R7KQ4]"},
		{"Regarding: a dome", "", "Re: Regarding: a dome"},
		{"a\r\nBcc: x", "", "Re: a Bcc: x"},
	} {
		if got := email.ReplySubject(f.subject, f.ref); got != f.want {
			t.Errorf("%q: %q, want %q", f.subject, got, f.want)
		}
	}
}
