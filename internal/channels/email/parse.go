package email

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/emersion/go-message"
	_ "github.com/emersion/go-message/charset" // charsets beside UTF-8
)

// Parse takes one mail apart. Errors: ErrTooLarge, ErrMalformed, or the reader's own. A
// mail that is broken only in part is read as far as it goes, with Cut set.
func Parse(r io.Reader, l Limits) (Message, error) {
	l = l.orDefault()
	bounded := &boundedReader{r: r, left: l.Bytes}
	e, err := message.ReadWithOptions(bounded, &message.ReadOptions{MaxHeaderBytes: l.Header})
	if e == nil || e.Header.Len() == 0 {
		return Message{}, readError(bounded, err)
	}
	var m Message
	readHeader(&m, e.Header)
	w := &walker{limits: l}
	w.walk(e, 1, place{})
	if bounded.err != nil {
		return Message{}, readError(bounded, bounded.err)
	}
	w.fill(&m)
	m.Bounce = w.bounce(e.Header)
	m.AutoWhy = autoWhy(e.Header, m, w)
	m.Auto = m.AutoWhy != ""
	return m, nil
}

func readError(b *boundedReader, err error) error {
	switch {
	case errors.Is(b.err, ErrTooLarge):
		return ErrTooLarge
	case b.err != nil:
		return fmt.Errorf("read mail: %w", b.err)
	case errors.Is(err, io.EOF):
		return fmt.Errorf("%w: empty or cut in its header", ErrMalformed)
	}
	return fmt.Errorf("%w: header", ErrMalformed)
}

// boundedReader notes the reader's own errors apart from those of the mail's form.
type boundedReader struct {
	r    io.Reader
	left int64
	err  error
}

func (b *boundedReader) Read(p []byte) (int, error) {
	if b.left <= 0 {
		b.err = ErrTooLarge
		return 0, b.err
	}
	n, err := b.r.Read(p[:min(int64(len(p)), b.left)])
	b.left -= int64(n)
	if err != nil && !errors.Is(err, io.EOF) {
		b.err = err
	}
	return n, err
}

// fill makes the message's text and photos from the parts.
func (w *walker) fill(m *Message) {
	n := strip(w.text(), m.Name)
	m.Blocks, m.Forwarded = n.blocks, n.forwarded
	texts := make([]string, len(n.blocks))
	for i, b := range n.blocks {
		texts[i] = b.Text
	}
	m.Text = strings.Join(texts, "\n\n")
	if f := w.attached(); f != "" {
		m.Forwarded = strings.TrimSpace(m.Forwarded + "\n\n" + f)
	}
	m.Photos, m.Attachments = w.photos(n)
	m.Cut = w.cut
}
