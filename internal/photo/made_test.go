package photo

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"math/rand/v2"
	"testing"
)

// Pictures made for the tests: a dome in its frame on a shingle roof, a like scene for
// every seed.

func scene(w, h int, seed uint64) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	random := rand.New(rand.NewPCG(seed, 1))
	shingle := max(w/40, 4)
	tone := make([]float64, 4096)
	for i := range tone {
		tone[i] = 90 + 60*random.Float64()
	}
	cx, cy := float64(w)*(0.35+0.3*random.Float64()), float64(h)*(0.35+0.3*random.Float64())
	rx, ry := float64(w)*(0.15+0.15*random.Float64()), float64(h)*(0.15+0.15*random.Float64())
	slant := 80*random.Float64() - 40
	for y := range h {
		for x := range w {
			row := y / shingle
			v := tone[(row*131+(x+row%2*shingle/2)/shingle)%4096]
			if y%shingle < max(shingle/8, 1) {
				v *= 0.5
			}
			dx, dy := math.Abs(float64(x)-cx)/rx, math.Abs(float64(y)-cy)/ry
			switch d := math.Max(dx, dy); {
			case d < 0.85:
				v = 215 - 40*dx*dx - 20*dy
			case d < 1:
				v = 55
			}
			v += slant*(float64(x)/float64(w)-0.5) + 6*random.Float64()
			m.SetRGBA(x, y, color.RGBA{byteOf(v), byteOf(v * 0.97), byteOf(v * 0.92), 255})
		}
	}
	return m
}

func byteOf(v float64) uint8 { return uint8(math.Max(0, math.Min(255, v))) }

func dimmed(m *image.RGBA, factor float64) *image.RGBA {
	to := image.NewRGBA(m.Rect)
	for i, v := range m.Pix {
		to.Pix[i] = byteOf(float64(v) * factor)
		if i%4 == 3 {
			to.Pix[i] = 255
		}
	}
	return to
}

// blurred is three box blurs a side, near a Gaussian of the same radius.
func blurred(m *image.RGBA, radius int) *image.RGBA {
	for range 3 {
		m = boxBlur(boxBlur(m, radius, 0), radius, 1)
	}
	return m
}

func boxBlur(m *image.RGBA, radius, down int) *image.RGBA {
	to := image.NewRGBA(m.Rect)
	length, lines, step, next := m.Rect.Dx(), m.Rect.Dy(), 4, m.Stride
	if down == 1 {
		length, lines, step, next = lines, length, m.Stride, 4
	}
	for line := range lines {
		for channel := range 4 {
			at, sum, n := line*next+channel, 0, 0
			for i := -radius; i < length; i++ {
				if in := i + radius; in < length {
					sum, n = sum+int(m.Pix[at+in*step]), n+1
				}
				if out := i - radius - 1; out >= 0 {
					sum, n = sum-int(m.Pix[at+out*step]), n-1
				}
				if i >= 0 {
					to.Pix[at+i*step] = uint8(sum / n)
				}
			}
		}
	}
	return to
}

func asJPEG(t testing.TB, m image.Image, quality int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: quality}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func asPNG(t testing.TB, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// withExif puts an Exif segment with orientation, a position and a camera's name behind
// the first marker of a JPEG.
func withExif(file []byte, orientation byte) []byte {
	tiff := []byte("MM\x00*\x00\x00\x00\x08\x00\x03" +
		"\x01\x0F\x00\x02\x00\x00\x00\x10\x00\x00\x00\x32" + // make: 16 letters at 50
		"\x01\x12\x00\x03\x00\x00\x00\x01\x00" + string([]byte{orientation}) + "\x00\x00" +
		"\x88\x25\x00\x04\x00\x00\x00\x01\x00\x00\x00\x42" + // position at 66
		"\x00\x00\x00\x00" + "SecretCameraName" +
		"\x00\x01\x00\x01\x00\x02\x00\x00\x00\x02N\x00\x00\x00\x00\x00\x00\x00")
	body := append([]byte("Exif\x00\x00"), tiff...)
	segment := append([]byte{0xFF, 0xE1, byte((len(body) + 2) >> 8), byte(len(body) + 2)}, body...)
	return append(append(append([]byte{}, file[:2]...), segment...), file[2:]...)
}
