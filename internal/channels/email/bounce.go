package email

import (
	"bufio"
	"bytes"
	"regexp"
	"strings"

	"github.com/emersion/go-message"
	"github.com/emersion/go-message/textproto"
)

// Bounce is a report on the delivery of a mail that was sent earlier: RFC 3464.
type Bounce struct {
	Action     string // "failed", "delayed", "delivered", "relayed", "expanded"; "" where not said
	Status     string // RFC 3463, such as "5.1.1"; "" where not said
	Recipient  string
	OriginalID string // Message-ID of the mail that the report is about; "" where not said
	Diagnostic string // the other server's words; not for customers
}

// Failed reports whether the mail will never arrive.
func (b Bounce) Failed() bool {
	return b.Action == "failed" || (b.Action == "" && strings.HasPrefix(b.Status, "5"))
}

var (
	statusCode = regexp.MustCompile(`\b[245]\.\d{1,3}\.\d{1,3}\b`)
	idInText   = regexp.MustCompile(`(?im)^[> \t]*Message-ID:\s*<([^<>\s]{3,255})>`)
)

// bounce reads a report. Of several recipients the one that fared worst counts. Programs
// that know no RFC 3464 are told by the field that names who failed.
func (w *walker) bounce(h message.Header) *Bounce {
	failed := oneLine(h.Get("X-Failed-Recipients"))
	if w.status == nil && failed == "" {
		return nil
	}
	b := worst(reports(w.status))
	if b == nil {
		b = &Bounce{Action: "failed", Recipient: strings.ToLower(failed)}
	}
	b.OriginalID = messageID(w.returned, "Message-Id")
	if b.OriginalID == "" && w.top != nil {
		if m := idInText.FindStringSubmatch(join(w.top.plain)); m != nil {
			b.OriginalID = m[1]
		}
	}
	if b.OriginalID == "" {
		if ids := messageIDs(h, "In-Reply-To"); len(ids) > 0 {
			b.OriginalID = ids[0]
		}
	}
	return b
}

// reports reads the groups of fields, one for each recipient, after that of the mail:
// RFC 3464 section 2.1.
func reports(status []byte) []Bounce {
	r := bufio.NewReader(bytes.NewReader(append(bytes.TrimSpace(status), "\r\n\r\n"...)))
	var all []Bounce
	for len(all) < 100 {
		h, err := textproto.ReadHeader(r)
		if err != nil || h.Len() == 0 {
			return all
		}
		f := message.Header{Header: h}
		if !f.Has("Final-Recipient") && !f.Has("Action") {
			continue
		}
		all = append(all, Bounce{
			Action:     strings.ToLower(firstWord(f.Get("Action"))),
			Status:     statusCode.FindString(f.Get("Status")),
			Recipient:  typed(f, "Final-Recipient", "Original-Recipient"),
			Diagnostic: clip(typed(f, "Diagnostic-Code"), 500),
		})
	}
	return all
}

func worst(all []Bounce) *Bounce {
	order := []string{"failed", "delayed", "expanded", "relayed", "delivered"}
	for _, action := range order {
		for i := range all {
			if all[i].Action == action {
				return &all[i]
			}
		}
	}
	if len(all) > 0 {
		return &all[0]
	}
	return nil
}

// typed takes the value after its type, "rfc822; dana@example.com".
func typed(h message.Header, keys ...string) string {
	for _, key := range keys {
		v := oneLine(h.Get(key))
		if _, after, ok := strings.Cut(v, ";"); ok {
			v = strings.TrimSpace(after)
		}
		if v != "" {
			return strings.Trim(v, "<>")
		}
	}
	return ""
}

func firstWord(s string) string {
	f := strings.Fields(s)
	if len(f) == 0 {
		return ""
	}
	return f[0]
}
