package email_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
)

// want is what a mail in testdata must give. Fields that are missing are not looked at.
type want struct {
	Source       string          `json:"source"` // where the check value comes from
	Text         *string         `json:"text"`
	Blocks       []wantBlock     `json:"blocks"`
	ForwardedHas string          `json:"forwarded_has"`
	Photos       *int            `json:"photos"`
	Attachments  []string        `json:"attachments"`
	Auto         *string         `json:"auto"`
	Bounce       *wantBounce     `json:"bounce"`
	Cut          *bool           `json:"cut"`
	From         string          `json:"from"`
	Name         string          `json:"name"`
	ID           string          `json:"id"`
	Date         string          `json:"date"`
	To           []string        `json:"to"`
	InReplyTo    string          `json:"in_reply_to"`
	References   []string        `json:"references"`
	Subject      string          `json:"subject"`
	Proven       map[string]bool `json:"proven"`
}

type wantBlock struct {
	Quoted string `json:"quoted"`
	Text   string `json:"text"`
}

type wantBounce struct {
	Action    string `json:"action"`
	Status    string `json:"status"`
	Recipient string `json:"recipient"`
	Original  string `json:"original"`
}

func TestMails(t *testing.T) {
	files, err := filepath.Glob("testdata/mails/*.eml")
	if err != nil || len(files) < 60 {
		t.Fatalf("%d mails, %v", len(files), err)
	}
	for _, file := range files {
		w := readWant(t, strings.TrimSuffix(file, ".eml")+".json")
		t.Run(strings.TrimSuffix(filepath.Base(file), ".eml")+", "+w.Source, func(t *testing.T) {
			raw, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			m, err := email.Parse(bytes.NewReader(raw), email.Limits{})
			if err != nil {
				t.Fatal(err)
			}
			w.check(t, m)
			// On the wire lines end in CRLF; a file that was saved may have LF alone.
			crlf, err := email.Parse(bytes.NewReader(bytes.ReplaceAll(raw, []byte("\n"), []byte("\r\n"))), email.Limits{})
			if err != nil || crlf.Text != m.Text || len(crlf.Photos) != len(m.Photos) || crlf.AutoWhy != m.AutoWhy {
				t.Errorf("with CRLF it reads otherwise: %q, %v", crlf.Text, err)
			}
		})
	}
}

// The examples of the standards are all among the mails. RFC 2048, on how types are
// registered, has no mail in it; those of RFC 2047 section 8 are in TestRFC2047Section8.
func TestMailsHoldTheExamplesOfTheStandards(t *testing.T) {
	files, err := filepath.Glob("testdata/mails/*.json")
	if err != nil {
		t.Fatal(err)
	}
	var sources []string
	for _, file := range files {
		sources = append(sources, readWant(t, file).Source)
	}
	for _, example := range []string{
		"RFC 2045 sections 4 and 5.1", "RFC 2045 section 5.2", "RFC 2045 section 6.7", "RFC 2045 section 6.8",
		"RFC 2046 section 4.2", "RFC 2046 section 5.1.1", "RFC 2046 section 5.1.4", "RFC 2046 section 5.1.5", "RFC 2046 section 5.2.1",
		"RFC 2046 section 5.2.2.2", "RFC 2046 section 5.2.3", "RFC 2047 section 8", "RFC 2049 appendix A",
		"RFC 3464 appendix E.1", "RFC 3464 appendix E.2", "RFC 3464 appendix E.3", "RFC 3464 appendix E.4",
		"RFC 3834 section 2", "RFC 3834 section 5", "RFC 3834 section 5.1",
		"RFC 5322 appendix A.1.1", "RFC 5322 appendix A.1.2", "RFC 5322 appendix A.1.3", "RFC 5322 appendix A.2", "RFC 5322 appendix A.3",
		"RFC 5322 appendix A.4", "RFC 5322 appendix A.5", "RFC 5322 appendix A.6.1", "RFC 5322 appendix A.6.2", "RFC 5322 appendix A.6.3",
	} {
		if !slices.ContainsFunc(sources, func(s string) bool { return strings.HasPrefix(s, example) }) {
			t.Errorf("no mail is of %s", example)
		}
	}
}

// The table of RFC 2047 section 8, in a subject, where it shows as it does in a comment.
func TestRFC2047Section8(t *testing.T) {
	for encoded, shown := range map[string]string{
		"=?ISO-8859-1?Q?a?=":                      "a",
		"=?ISO-8859-1?Q?a?= b":                    "a b",
		"=?ISO-8859-1?Q?a?= =?ISO-8859-1?Q?b?=":   "ab",
		"=?ISO-8859-1?Q?a?=  =?ISO-8859-1?Q?b?=":  "ab",
		"=?ISO-8859-1?Q?a?=\n =?ISO-8859-1?Q?b?=": "ab",
		"=?ISO-8859-1?Q?a_b?=":                    "a b",
		"=?ISO-8859-1?Q?a?= =?ISO-8859-2?Q?_b?=":  "a b",
		"=?ISO-8859-1?B?SWYgeW91IGNhbiByZWFkIHRoaXMgeW8=?=\n =?ISO-8859-2?B?dSB1bmRlcnN0YW5kIHRoZSBleGFtcGxlLg==?=": "If you can read this you understand the example.",
	} {
		m, err := email.Parse(strings.NewReader("From: dana@example.com\nSubject: "+encoded+"\n\nx\n"), email.Limits{})
		if err != nil || m.Subject != shown {
			t.Errorf("%q shows as %q, %v; want %q", encoded, m.Subject, err, shown)
		}
	}
}

func readWant(t *testing.T, file string) want {
	t.Helper()
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var w want
	d := json.NewDecoder(bytes.NewReader(b))
	d.DisallowUnknownFields()
	if err := d.Decode(&w); err != nil {
		t.Fatal(err)
	}
	if w.Source == "" {
		t.Error("no source")
	}
	return w
}

func (w want) check(t *testing.T, m email.Message) {
	t.Helper()
	if w.Text != nil && m.Text != *w.Text {
		t.Errorf("text\n%q, want\n%q", m.Text, *w.Text)
	}
	if w.Auto != nil && (string(m.AutoWhy) != *w.Auto || m.Auto != (*w.Auto != "")) {
		t.Errorf("auto %q, want %q", m.AutoWhy, *w.Auto)
	}
	if w.Photos != nil && len(m.Photos) != *w.Photos {
		t.Errorf("%d photos, want %d", len(m.Photos), *w.Photos)
	}
	if w.Cut != nil && m.Cut != *w.Cut {
		t.Errorf("cut %v", m.Cut)
	}
	if !strings.Contains(m.Forwarded, w.ForwardedHas) {
		t.Errorf("forwarded %q lacks %q", m.Forwarded, w.ForwardedHas)
	}
	w.checkHeader(t, m)
	w.checkParts(t, m)
}

func (w want) checkHeader(t *testing.T, m email.Message) {
	t.Helper()
	for _, f := range []struct{ name, got, want string }{
		{"from", m.From, w.From}, {"name", m.Name, w.Name}, {"id", m.ID, w.ID}, {"subject", m.Subject, w.Subject},
		{"in reply to", m.InReplyTo, w.InReplyTo}, {"date", m.Date.Format(time.RFC3339), w.Date},
	} {
		if f.want != "" && f.got != f.want {
			t.Errorf("%s %q, want %q", f.name, f.got, f.want)
		}
	}
	if w.To != nil && !slices.Equal(m.To, w.To) {
		t.Errorf("to %q, want %q", m.To, w.To)
	}
	if w.References != nil && !slices.Equal(m.References, w.References) {
		t.Errorf("references %q, want %q", m.References, w.References)
	}
	for server, proven := range w.Proven {
		if m.Proven(server) != proven {
			t.Errorf("proven by %q: %v, want %v", server, !proven, proven)
		}
	}
}

func (w want) checkParts(t *testing.T, m email.Message) {
	t.Helper()
	if w.Blocks != nil {
		var got []wantBlock
		for _, b := range m.Blocks {
			got = append(got, wantBlock(b))
		}
		if !slices.Equal(got, w.Blocks) {
			t.Errorf("blocks %+v, want %+v", got, w.Blocks)
		}
	}
	if w.Attachments != nil {
		var got []string
		for _, a := range m.Attachments {
			got = append(got, a.Name)
		}
		if !slices.Equal(got, w.Attachments) {
			t.Errorf("attachments %q, want %q", got, w.Attachments)
		}
	}
	if (w.Bounce == nil) != (m.Bounce == nil) {
		t.Errorf("bounce %+v, want %+v", m.Bounce, w.Bounce)
	} else if b := m.Bounce; b != nil {
		if got := (wantBounce{b.Action, b.Status, b.Recipient, b.OriginalID}); got != *w.Bounce {
			t.Errorf("bounce %+v, want %+v", got, *w.Bounce)
		}
	}
}
