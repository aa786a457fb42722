package email_test

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/emersion/go-message"

	"example.com/intake-bot/internal/channels/email"
)

// bigMail is a 5 MB reply with three photos, quoted text and a signature.
func bigMail(tb testing.TB) []byte {
	tb.Helper()
	photo, err := os.ReadFile("testdata/dome.jpg")
	if err != nil {
		tb.Fatal(err)
	}
	var b bytes.Buffer
	b.WriteString("From: Dana Fields <dana@example.com>\r\nMessage-ID: <big@example.com>\r\nSubject: Re: dome\r\nMIME-Version: 1.0\r\n" +
		"Content-Type: multipart/mixed; boundary=big\r\n\r\n--big\r\nContent-Type: text/plain; charset=utf-8\r\n\r\n" +
		"It is 25 1/2 x 49 1/2, photos below.\r\n\r\nThanks,\r\nDana Fields\r\n218-555-0177\r\n\r\nOn Mon, Mar 2, 2026 at 9:00 AM Pinwheel <hello@pinwheel.example> wrote:\r\n" +
		strings.Repeat("> What is the curb, outside to outside?\r\n", 100))
	for i := range 3 {
		// A decoder reads the header alone, so what follows the small picture only fills.
		data := append(bytes.Clone(photo), bytes.Repeat([]byte{byte(i), 0x5a, 0xa5}, 1_220_000/3)...)
		fmt.Fprintf(&b, "--big\r\nContent-Type: image/jpeg; name=%d.jpg\r\nContent-Transfer-Encoding: base64\r\n\r\n", i)
		for text := base64.StdEncoding.EncodeToString(data); text != ""; {
			n := min(76, len(text))
			b.WriteString(text[:n] + "\r\n")
			text = text[n:]
		}
	}
	b.WriteString("--big--\r\n")
	return b.Bytes()
}

func BenchmarkParse5MB(b *testing.B) {
	raw := bigMail(b)
	b.SetBytes(int64(len(raw)))
	for b.Loop() {
		m, err := email.Parse(bytes.NewReader(raw), email.Limits{})
		if err != nil || len(m.Photos) != 3 {
			b.Fatal(len(m.Photos), err)
		}
	}
}

// BenchmarkWalk5MB is the floor: the library's own walk, each part read to its end.
func BenchmarkWalk5MB(b *testing.B) {
	raw := bigMail(b)
	b.SetBytes(int64(len(raw)))
	for b.Loop() {
		if err := walk(raw, io.Discard); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkParse5MBRatio takes the two in turn, so that a busy machine slows both.
func BenchmarkParse5MBRatio(b *testing.B) {
	raw := bigMail(b)
	var parse, bare time.Duration
	for b.Loop() {
		began := time.Now()
		if _, err := email.Parse(bytes.NewReader(raw), email.Limits{}); err != nil {
			b.Fatal(err)
		}
		half := time.Now()
		if err := walk(raw, io.Discard); err != nil {
			b.Fatal(err)
		}
		parse, bare = parse+half.Sub(began), bare+time.Since(half)
	}
	b.ReportMetric(float64(parse)/float64(bare), "ratio")
}

func walk(raw []byte, to io.Writer) error {
	e, err := message.Read(bytes.NewReader(raw))
	if err != nil {
		return err
	}
	return e.Walk(func(_ []int, part *message.Entity, err error) error {
		if err != nil || part.MultipartReader() != nil {
			return err
		}
		_, err = io.Copy(to, part.Body)
		return err
	})
}

func BenchmarkParseReply(b *testing.B) {
	raw, err := os.ReadFile("testdata/mails/interleaved.eml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := email.Parse(bytes.NewReader(raw), email.Limits{}); err != nil {
			b.Fatal(err)
		}
	}
}
