package email

import (
	"bytes"
	"errors"
	"io"
	"mime"
	"strings"
	"unicode/utf8"

	"github.com/emersion/go-message"
	"golang.org/x/text/encoding/charmap"
)

// place says where a part stands.
type place struct {
	attached bool // within a mail that is attached
	choices  *choices
	report   bool // within a delivery report
	digest   bool // right within a digest, where a part without a type is a mail
}

// choices are the forms in which a multipart/alternative says the same.
type choices struct{ plain, html []textPart }

type textPart struct {
	body string
	html bool
}

// walker goes through a mail's parts once and keeps what is of use.
type walker struct {
	limits   Limits
	parts    int
	textRead int // bytes of text so far; all parts together get twice the limit of one
	cut      bool
	top      *choices
	inner    *choices // of attached mails
	images   []Photo
	files    []Attachment
	status   []byte // message/delivery-status
	returned message.Header
	calendar bool
	kind     string // media type of the whole mail
}

// walk visits a part and all in it. Depth is capped: the reader under it takes time in
// proportion to depth times size.
func (w *walker) walk(e *message.Entity, depth int, at place) {
	w.parts++
	if depth > w.limits.Depth || w.parts > w.limits.Parts {
		w.cut = true
		return
	}
	kind, params, err := e.Header.ContentType()
	kind = strings.ToLower(kind)
	switch {
	case at.digest && !e.Header.Has("Content-Type"):
		kind, params = "message/rfc822", nil // RFC 2046 section 5.1.5
	case err != nil:
		kind, params = "text/plain", nil // RFC 2045 section 5.2
	}
	at.digest = kind == "multipart/digest"
	if depth == 1 {
		w.kind = kind
		if kind == "multipart/report" && params["report-type"] != "" {
			w.kind += ";" + strings.ToLower(params["report-type"])
		}
	}
	switch {
	case strings.HasPrefix(kind, "multipart/"):
		w.multipart(e, depth, kind, at)
	case kind == "message/rfc822" || kind == "message/global":
		w.mail(e, depth, at)
	default:
		w.leaf(e, kind, params, at)
	}
}

func (w *walker) multipart(e *message.Entity, depth int, kind string, at place) {
	if kind == "multipart/alternative" && at.choices == nil {
		at.choices = &choices{}
		defer w.choose(at)
	}
	if kind == "multipart/report" {
		at.report = true
	}
	mr := e.MultipartReader()
	if mr == nil {
		return
	}
	for w.parts <= w.limits.Parts {
		part, err := mr.NextPart()
		if errors.Is(err, io.EOF) {
			return
		}
		if part == nil {
			w.cut = true // cut off, or no boundary at all
			return
		}
		w.walk(part, depth+1, at)
	}
	w.cut = true
}

// choose takes plain text where it says something, else HTML.
func (w *walker) choose(at place) {
	c := at.choices
	into := w.into(at)
	blank := strings.TrimSpace(join(c.plain)) == ""
	if blank && len(c.html) > 0 {
		into.html = append(into.html, c.html...)
		into.plain = append(into.plain, c.html...)
		return
	}
	into.plain = append(into.plain, c.plain...)
	into.html = append(into.html, c.html...)
}

// into is where chosen text goes: plain is the reading order, html is kept beside it to
// tell where pictures stand.
func (w *walker) into(at place) *choices {
	if at.attached || at.report {
		if w.inner == nil {
			w.inner = &choices{}
		}
		return w.inner
	}
	if w.top == nil {
		w.top = &choices{}
	}
	return w.top
}

// mail walks a mail within the mail: its photos are the sender's to send, its words
// are somebody else's.
func (w *walker) mail(e *message.Entity, depth int, at place) {
	inner, err := message.ReadWithOptions(e.Body, &message.ReadOptions{MaxHeaderBytes: w.limits.Header})
	if inner == nil {
		w.cut = w.cut || err != nil
		return
	}
	if at.report && w.returned.Len() == 0 {
		w.returned = inner.Header
	}
	w.walk(inner, depth+1, place{attached: true, report: at.report})
}

func (w *walker) leaf(e *message.Entity, kind string, params map[string]string, at place) {
	name := fileName(e.Header, params)
	disposition, _, _ := e.Header.ContentDisposition()
	attachment := strings.EqualFold(disposition, "attachment")
	switch {
	case kind == "message/delivery-status":
		w.status = w.read(e.Body, 64<<10)
	case kind == "text/rfc822-headers" || kind == "message/rfc822-headers":
		w.headers(e.Body)
	case kind == "text/calendar":
		w.calendar = true
		w.file(e, kind, name)
	case (kind == "text/plain" || kind == "text/html") && !attachment:
		w.textPart(e, kind, params, at)
	case strings.HasPrefix(kind, "image/") || pictureName(name):
		w.image(e, kind, name, !attachment)
	default:
		w.file(e, kind, name)
	}
}

func (w *walker) headers(body io.Reader) {
	text := append(w.read(body, 64<<10), "\r\n\r\n"...)
	e, _ := message.Read(bytes.NewReader(text))
	if e != nil && w.returned.Len() == 0 {
		w.returned = e.Header
	}
}

func (w *walker) textPart(e *message.Entity, kind string, params map[string]string, at place) {
	raw := w.read(e.Body, min(w.limits.Text, max(2*w.limits.Text-w.textRead, 0)))
	w.textRead += len(raw)
	body := readable(raw, params["charset"])
	if kind == "text/plain" && strings.EqualFold(params["format"], "flowed") {
		body = unflow(body, strings.EqualFold(params["delsp"], "yes"))
	}
	p := textPart{body: body, html: kind == "text/html"}
	if at.choices != nil {
		if p.html {
			at.choices.html = append(at.choices.html, p)
		} else {
			at.choices.plain = append(at.choices.plain, p)
		}
		return
	}
	into := w.into(at)
	into.plain = append(into.plain, p)
	if p.html {
		into.html = append(into.html, p)
	}
}

// readable makes UTF-8 of what is not: a part that names no charset, or a wrong one, is
// most often Windows-1252 (seen in practice).
func readable(b []byte, charset string) string {
	if !utf8.Valid(b) && !strings.EqualFold(charset, "utf-8") && message.CharsetReader != nil {
		if d, err := charmap.Windows1252.NewDecoder().Bytes(b); err == nil {
			b = d
		}
	}
	return cleanMarks(strings.ReplaceAll(strings.ToValidUTF8(string(b), "\uFFFD"), "\x00", ""))
}

// read takes at most limit bytes and skips the rest. A broken encoding yields what
// came before it.
func (w *walker) read(r io.Reader, limit int) []byte {
	b, err := io.ReadAll(io.LimitReader(r, int64(limit)+1))
	if err != nil || len(b) > limit {
		w.cut = true
	}
	return b[:min(len(b), limit)]
}

func (w *walker) file(e *message.Entity, kind, name string) {
	n, err := io.Copy(io.Discard, e.Body)
	w.cut = w.cut || err != nil
	w.files = append(w.files, Attachment{Name: name, Type: kind, Size: int(n)})
}

func fileName(h message.Header, params map[string]string) string {
	name := params["name"]
	if _, p, err := h.ContentDisposition(); err == nil && p["filename"] != "" {
		name = p["filename"]
	}
	if decoded, err := (&mime.WordDecoder{}).DecodeHeader(name); err == nil {
		name = decoded
	}
	name = oneLine(name)
	if i := strings.LastIndexAny(name, `/\`); i >= 0 {
		name = name[i+1:] // never a path
	}
	return clip(name, 200)
}

func join(parts []textPart) string {
	var b strings.Builder
	for _, p := range parts {
		b.WriteString(p.body)
		b.WriteString("\n\n")
	}
	return b.String()
}
