// Package drawingtest compares pictures in tests.
package drawingtest

import (
	"bytes"
	"image"
	"image/png"
	"testing"
)

// Alike compares two PNGs pixel by pixel, but for a thousandth of them: at edges other
// processors round otherwise, and how pixels are packed may change with the compiler's
// library.
func Alike(t testing.TB, a, b []byte) bool {
	t.Helper()
	p, q := Pixels(t, a), Pixels(t, b)
	if p.Bounds() != q.Bounds() {
		return false
	}
	off := 0
	for y := range p.Bounds().Dy() {
		for x := range p.Bounds().Dx() {
			r, g, u, _ := p.At(x, y).RGBA()
			s, h, v, _ := q.At(x, y).RGBA()
			if max(r, s)-min(r, s)+max(g, h)-min(g, h)+max(u, v)-min(u, v) > 0x3000 {
				off++
			}
		}
	}
	return off*1000 <= p.Bounds().Dx()*p.Bounds().Dy()
}

// Pixels decodes a PNG.
func Pixels(t testing.TB, b []byte) image.Image {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return img
}
