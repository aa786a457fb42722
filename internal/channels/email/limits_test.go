package email_test

import (
	"bytes"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/intake-bot/internal/channels/email"
)

func nested(levels int) string {
	var b strings.Builder
	b.WriteString("From: dana@example.com\n")
	for i := range levels {
		fmt.Fprintf(&b, "Content-Type: multipart/mixed; boundary=b%d\n\n--b%d\n", i, i)
	}
	b.WriteString("Content-Type: text/plain\n\ndeep\n")
	return b.String()
}

func TestLimits(t *testing.T) {
	const head = "From: dana@example.com\nContent-Type: multipart/mixed; boundary=b\n\n"
	for _, f := range []struct {
		name, raw string
		limits    email.Limits
		err       error
		text      string
		cut       bool
	}{
		{"empty", "", email.Limits{}, email.ErrMalformed, "", false},
		{"no header at all", "just words", email.Limits{}, email.ErrMalformed, "", false},
		{"whole mail too large", head + strings.Repeat("x", 5000), email.Limits{Bytes: 1000}, email.ErrTooLarge, "", false},
		{"header too large", "Subject: " + strings.Repeat("x", 5000) + "\n\n", email.Limits{Header: 1000}, email.ErrMalformed, "", false},
		{"thousands of levels", nested(4000), email.Limits{}, nil, "", true},
		{"few levels", nested(8), email.Limits{}, nil, "deep", true}, // its boundaries never close
		{"thousands of parts", head + strings.Repeat("--b\n\nx\n", 5000), email.Limits{Parts: 3}, nil, "x\n\nx", true},
		{"long text", "From: a@example.com\n\n" + strings.Repeat("word ", 1000), email.Limits{Text: 9}, nil, "word word", true},
		{"no boundary", "From: a@example.com\nContent-Type: multipart/mixed\n\nhello\n", email.Limits{}, nil, "", true},
	} {
		m, err := email.Parse(strings.NewReader(f.raw), f.limits)
		if !errors.Is(err, f.err) || m.Text != f.text || m.Cut != f.cut {
			t.Errorf("%s: %q, cut %v, %v; want %q, %v, %v", f.name, m.Text, m.Cut, err, f.text, f.cut, f.err)
		}
	}
}

func TestReadersOwnErrorIsNotTheMails(t *testing.T) {
	broken := errors.New("disk")
	r := io.MultiReader(strings.NewReader("From: a@example.com\n\nhalf"), iotest.ErrReader(broken))
	if _, err := email.Parse(r, email.Limits{}); !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
}

func TestPhotoLimits(t *testing.T) {
	photo, err := os.ReadFile("testdata/dome.jpg")
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString("From: a@example.com\nContent-Type: multipart/mixed; boundary=b\n\n")
	for i := range 5 {
		data := append(bytes.Clone(photo), byte(i)) // each another picture
		fmt.Fprintf(&b, "--b\nContent-Type: image/jpeg; name=%d.jpg\nContent-Transfer-Encoding: base64\n\n%s\n", i, base64.StdEncoding.EncodeToString(data))
	}
	b.WriteString("--b--\n")
	m, err := email.Parse(strings.NewReader(b.String()), email.Limits{Photos: 3})
	if err != nil || len(m.Photos) != 3 || len(m.Attachments) != 2 || !m.Cut {
		t.Errorf("%d photos, %d others, cut %v, %v", len(m.Photos), len(m.Attachments), m.Cut, err)
	}
	if m.Photos[0].Width != 640 || m.Photos[0].Height != 480 || m.Photos[0].Type != "image/jpeg" {
		t.Errorf("%+v", m.Photos[0])
	}
}

func FuzzParse(f *testing.F) {
	files, err := filepath.Glob("testdata/mails/*.eml")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files {
		raw, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		if len(raw) < 5000 {
			f.Add(raw)
		}
	}
	f.Add([]byte(nested(40)))
	f.Fuzz(func(t *testing.T, raw []byte) {
		m, err := email.Parse(bytes.NewReader(raw), email.Limits{})
		if err != nil {
			return
		}
		for _, s := range []string{m.Subject, m.Name, m.From, m.ID, m.InReplyTo} {
			if strings.ContainsAny(s, "\r\n\x00") {
				t.Errorf("a line break in a field: %q", s)
			}
		}
		if strings.ContainsAny(m.Text, "\x00\uE000\uE001\uE002\uE003\uE004") || strings.ToValidUTF8(m.Text, "") != m.Text {
			t.Errorf("text %q", m.Text)
		}
		if m.Auto != (m.AutoWhy != "") {
			t.Error("auto without a reason, or the other way")
		}
	})
}
