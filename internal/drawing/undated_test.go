package drawing

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"io"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

// A PDF says nothing of when it was made, and its table still leads to every object.
func TestPDFHasNoTime(t *testing.T) {
	d, err := HowTo(fitcheck.TopicCurbInside, "en")
	if err != nil {
		t.Fatal(err)
	}
	b, err := d.PDF()
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(b, []byte("Date")) {
		t.Error("a date is left")
	}
	at, _, _, err := positions(b)
	if err != nil || len(at) < 5 {
		t.Fatalf("positions %v: %v", at, err)
	}
	fonts := 0
	for i, pos := range at {
		if name := fmt.Sprintf("%d 0 obj\n", i+1); !bytes.HasPrefix(b[pos:], []byte(name)) {
			t.Errorf("object %d is not at %d", i+1, pos)
		}
		if font := fontIn(b[pos:]); font != nil {
			fonts++
			soundFont(t, font)
		}
	}
	if fonts != 2 {
		t.Errorf("%d fonts, want regular and bold", fonts)
	}
}

// fontIn is the font program of an object, nil where it has none.
func fontIn(object []byte) []byte {
	object, _, _ = bytes.Cut(object, []byte("endobj"))
	_, stream, ok := bytes.Cut(object, []byte("stream\n"))
	if !ok {
		return nil
	}
	z, err := zlib.NewReader(bytes.NewReader(stream))
	if err != nil {
		return nil
	}
	if font, err := io.ReadAll(z); err == nil && bytes.HasPrefix(font, []byte{0, 1, 0, 0}) {
		return font
	}
	return nil
}

func soundFont(t *testing.T, font []byte) {
	t.Helper()
	if sum := checksum(font); sum != 0xB1B0AFBA {
		t.Errorf("the font adds up to %x", sum)
	}
	row := bytes.Index(font, []byte("head"))
	table := font[binary.BigEndian.Uint32(font[row+8:]):]
	if at := binary.BigEndian.Uint64(table[28:]); at != 0 {
		t.Errorf("the font was changed at %d", at)
	}
}

func TestNotAPDF(t *testing.T) {
	for _, s := range []string{"", "%PDF", "\nstartxref\n", "\nstartxref\nx\n", "xref\n\nstartxref\n3\n", "a\nxref\n0 9\nq\n5 \ntrailer\n\nstartxref\n2\n"} {
		if _, err := undated([]byte(s)); err == nil {
			t.Errorf("%q was taken for a PDF", s)
		}
	}
	if unmodified([]byte{0, 1, 0, 0, 0, 9, 0, 0, 0, 0, 0, 0, 'h', 'e', 'a', 'd'}) {
		t.Error("half a font was taken for one")
	}
}
