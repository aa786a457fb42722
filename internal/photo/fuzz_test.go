package photo

import (
	"bytes"
	"context"
	"errors"
	"testing"
)

// Whatever the bytes: an answer, within bounds, or a refusal.
func FuzzReadHeader(f *testing.F) {
	for _, seed := range seeds(f) {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, file []byte) {
		h, err := ReadHeader(file)
		var refused *Refused
		if err != nil && !errors.As(err, &refused) {
			t.Fatalf("not a refusal: %v", err)
		}
		if err == nil && (h.Width <= 0 || h.Height <= 0 || h.Kind.whyNot() != "" || h.memory() <= 0) {
			t.Fatalf("%+v", h)
		}
		orientation(h.Kind, file)
	})
}

// The whole way, with limits that keep a try short; HEIC has its own, slow decoder.
func FuzzOpen(f *testing.F) {
	for _, seed := range seeds(f) {
		f.Add(seed)
	}
	lab := NewLab(Limits{Bytes: 1 << 16, Pixels: 1 << 16, Side: 128, Thumb: 32})
	f.Fuzz(func(t *testing.T, file []byte) {
		if KindOf(file) == HEIC {
			t.Skip()
		}
		p, err := lab.Open(context.Background(), bytes.NewReader(file))
		var refused *Refused
		if err != nil && !errors.As(err, &refused) {
			t.Fatalf("not a refusal: %v", err)
		}
		if err == nil && (max(p.Width, p.Height) > 128 || len(p.JPEG) == 0 || len(p.Thumb) == 0) {
			t.Fatalf("%d x %d", p.Width, p.Height)
		}
	})
}

func seeds(f *testing.F) [][]byte {
	small := scene(80, 60, 1)
	return [][]byte{withExif(asJPEG(f, small, 60), 6), asPNG(f, small), read(f, "small.webp"), read(f, "small.heic"),
		read(f, "turned.heic"), bombPNG(60_000, 60_000), animatedWebP(), bombJPEG(100, 100), []byte("GIF89a")}
}
