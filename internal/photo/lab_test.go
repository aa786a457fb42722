package photo

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"slices"
	"strings"
	"testing"
	"time"
)

func open(t testing.TB, file []byte) Photo {
	t.Helper()
	p, err := NewLab(Limits{}).Open(context.Background(), bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestOpenKinds(t *testing.T) {
	m := scene(640, 480, 1)
	for _, c := range []struct {
		file []byte
		kind Kind
		w, h int
	}{
		{asJPEG(t, m, 90), JPEG, 640, 480}, {asPNG(t, m), PNG, 640, 480},
		{read(t, "small.heic"), HEIC, 320, 240}, {read(t, "turned.heic"), HEIC, 240, 320},
		{read(t, "exif6.heic"), HEIC, 320, 240}, // its Exif tag doesn't count
		{read(t, "small.webp"), WebP, 320, 240},
	} {
		p := open(t, c.file)
		if p.Kind != c.kind || p.Width != c.w || p.Height != c.h {
			t.Errorf("%s: opened as %s, %d x %d, want %d x %d", c.kind, p.Kind, p.Width, p.Height, c.w, c.h)
		}
		if p.SHA256 != sha256.Sum256(c.file) {
			t.Errorf("%s: another hash", c.kind)
		}
		checkJPEG(t, p.JPEG, p.Width, p.Height)
	}
}

// The picture from a HEIC is that of the same scene, with no stray pixel, least of all
// in the first row, where the decoder leaves some.
func TestHEICPixels(t *testing.T) {
	want := planesOf(scene(320, 240, 5))
	m, err := decode(Header{Kind: HEIC}, read(t, "small.heic"))
	if err != nil {
		t.Fatal(err)
	}
	got, sum := shrink(m, 320), 0
	for i, v := range got.Y {
		d := max(int(v), int(want.Y[i])) - min(int(v), int(want.Y[i]))
		if sum += d; d > 100 {
			t.Errorf("pixel %d, %d is off by %d", i%320, i/320, d)
		}
	}
	if off := float64(sum) / float64(len(got.Y)); off > 6 {
		t.Errorf("off by %.1f on average", off)
	}
}

func checkJPEG(t *testing.T, file []byte, w, h int) {
	t.Helper()
	m, err := jpeg.Decode(bytes.NewReader(file))
	if err != nil || m.Bounds().Dx() != w || m.Bounds().Dy() != h {
		t.Errorf("stored picture: %v %v, want %d x %d", m.Bounds(), err, w, h)
	}
}

func read(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestShrinks(t *testing.T) {
	for _, c := range []struct{ w, h, toW, toH int }{
		{3000, 2000, 2048, 1365}, {2000, 3000, 1365, 2048}, {2048, 100, 2048, 100}, {6000, 70, 2048, 23}, {9000, 1, 2048, 1},
	} {
		p := open(t, asPNG(t, image.NewGray(image.Rect(0, 0, c.w, c.h))))
		if p.Width != c.toW || p.Height != c.toH {
			t.Errorf("%d x %d becomes %d x %d", c.w, c.h, p.Width, p.Height)
		}
		thumb, err := jpeg.DecodeConfig(bytes.NewReader(p.Thumb))
		if err != nil || max(thumb.Width, thumb.Height) != 320 {
			t.Errorf("thumbnail %d x %d %v", thumb.Width, thumb.Height, err)
		}
	}
}

// The corner of the upright picture that is red, by the meaning of the tag (TIFF 6.0).
func TestTurnsUpright(t *testing.T) {
	upright := image.NewRGBA(image.Rect(0, 0, 160, 96))
	for i := range upright.Pix {
		upright.Pix[i] = 255
	}
	for y := range 32 {
		for x := range 48 {
			upright.SetRGBA(x, y, color.RGBA{255, 0, 0, 255})
		}
	}
	for orientation := 1; orientation <= 8; orientation++ {
		stored := lieDown(upright, orientation)
		p := open(t, withExif(asJPEG(t, stored, 95), byte(orientation)))
		m, err := jpeg.Decode(bytes.NewReader(p.JPEG))
		if err != nil || p.Width != 160 || p.Height != 96 {
			t.Fatalf("orientation %d: %d x %d %v", orientation, p.Width, p.Height, err)
		}
		red := func(x, y int) bool { _, g, _, _ := m.At(x, y).RGBA(); return g < 0x4000 }
		if !red(8, 8) || red(150, 8) || red(8, 88) || red(150, 88) || !red(40, 8) || red(8, 40) {
			t.Errorf("orientation %d is not upright", orientation)
		}
	}
}

// lieDown stores an upright picture as a camera held that way would: each place of the
// sensor sees what TIFF's table of the tag says.
func lieDown(up *image.RGBA, orientation int) *image.RGBA {
	w, h := up.Rect.Dx(), up.Rect.Dy()
	sw, sh := w, h
	if orientation >= 5 {
		sw, sh = h, w
	}
	stored := image.NewRGBA(image.Rect(0, 0, sw, sh))
	for row := range sh {
		for column := range sw {
			x, y := column, row // where row 0 and column 0 lie in the upright picture:
			switch orientation {
			case 2: // top, right
				x = w - 1 - column
			case 3: // bottom, right
				x, y = w-1-column, h-1-row
			case 4: // bottom, left
				y = h - 1 - row
			case 5: // left, top
				x, y = row, column
			case 6: // right, top
				x, y = w-1-row, column
			case 7: // right, bottom
				x, y = w-1-row, h-1-column
			case 8: // left, bottom
				x, y = row, h-1-column
			}
			stored.SetRGBA(column, row, up.RGBAAt(x, y))
		}
	}
	return stored
}

func TestStripsMetadata(t *testing.T) {
	file := withExif(asJPEG(t, scene(640, 480, 2), 90), 6)
	if !bytes.Contains(file, []byte("SecretCameraName")) {
		t.Fatal("the test's own picture has no metadata")
	}
	p := open(t, file)
	for _, out := range [][]byte{p.JPEG, p.Thumb} {
		for _, trace := range []string{"Secret", "Exif", "http://ns.adobe.com", "ICC_PROFILE", "\xFF\xE1", "\xFF\xED", "\xFF\xFE"} {
			if at := bytes.Index(out[:bytes.Index(out, []byte{0xFF, 0xDA})], []byte(trace)); at >= 0 {
				t.Errorf("%q left at %d", trace, at)
			}
		}
	}
	if p.Width != 480 || p.Height != 640 {
		t.Errorf("not turned: %d x %d", p.Width, p.Height)
	}
}

func TestTransparentIsOnWhite(t *testing.T) {
	p := open(t, asPNG(t, image.NewNRGBA(image.Rect(0, 0, 100, 100))))
	m, err := jpeg.Decode(bytes.NewReader(p.JPEG))
	if err != nil {
		t.Fatal(err)
	}
	if r, _, _, _ := m.At(50, 50).RGBA(); r < 0xF000 {
		t.Errorf("transparent became %x", r)
	}
}

func TestRefuses(t *testing.T) {
	whole := asJPEG(t, scene(640, 480, 3), 90)
	for _, c := range []struct {
		name string
		file []byte
		why  Why
	}{
		{"nothing", nil, WhyEmpty}, {"text", []byte("hello there, here is my photo"), WhyOther},
		{"GIF", []byte("GIF89a\x01\x00\x01\x00"), WhyAnimated}, {"PDF", []byte("%PDF-1.7\n"), WhyDocument},
		{"office file", []byte("PK\x03\x04aaaaaaaa"), WhyDocument}, {"MP4", []byte("\x00\x00\x00\x18ftypmp42\x00\x00\x00\x00isom"), WhyVideo},
		{"QuickTime", []byte("\x00\x00\x00\x14ftypqt  \x00\x00\x00\x00qt  "), WhyVideo}, {"AVI", []byte("RIFF\x00\x00\x00\x00AVI LIST"), WhyVideo},
		{"3GP", []byte("\x00\x00\x00\x14ftyp3gp4\x00\x00\x00\x003gp4"), WhyVideo},
		{"WebM", []byte("\x1A\x45\xDF\xA3aaaaaaaaaa"), WhyVideo}, {"AVIF", []byte("\x00\x00\x00\x18ftypavif\x00\x00\x00\x00mif1"), WhyOther},
		{"SVG", []byte("<?xml version='1.0'?><svg xmlns='http://www.w3.org/2000/svg'/>"), WhyOther},
		{"TIFF", []byte("II*\x00\x08\x00\x00\x00aaaa"), WhyOther}, {"page named photo.jpg", []byte("<html><body>"), WhyOther},
		{"cut JPEG", whole[:len(whole)/2], WhyBroken}, {"JPEG's first bytes", whole[:20], WhyBroken},
		{"cut PNG", asPNG(t, scene(100, 100, 1))[:60], WhyBroken}, {"cut WebP", read(t, "small.webp")[:40], WhyBroken},
		{"cut HEIC", read(t, "small.heic")[:600], WhyBroken}, {"HEIC of zeros", append([]byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic"), make([]byte, 500)...), WhyBroken},
		{"animated PNG", apng(t), WhyAnimated}, {"animated WebP", animatedWebP(), WhyAnimated},
		{"PNG bomb", bombPNG(60_000, 60_000), WhyTooLarge}, {"JPEG bomb", bombJPEG(65_000, 65_000), WhyTooLarge},
		{"WebP bomb", bombWebP(16_000, 16_000), WhyTooLarge}, {"HEIC bomb", bombHEIC(t), WhyTooLarge},
		{"tracking dot", asPNG(t, image.NewGray(image.Rect(0, 0, 1, 1))), WhyUnderSize},
		{"PNG without size", bombPNG(0, 10), WhyBroken},
	} {
		_, err := NewLab(Limits{}).Open(context.Background(), bytes.NewReader(c.file))
		var refused *Refused
		if !errors.As(err, &refused) || refused.Why != c.why {
			t.Errorf("%s: %v, want %s", c.name, err, c.why)
		}
	}
}

func TestRefusesTooManyBytes(t *testing.T) {
	lab := NewLab(Limits{Bytes: 1000})
	_, err := lab.Open(context.Background(), bytes.NewReader(asJPEG(t, scene(640, 480, 1), 90)))
	var refused *Refused
	if !errors.As(err, &refused) || refused.Why != WhyTooLarge {
		t.Error(err)
	}
}

type brokenReader struct{}

func (brokenReader) Read([]byte) (int, error) { return 0, errors.New("line dropped") }

func TestReadErrorIsNoRefusal(t *testing.T) {
	_, err := NewLab(Limits{}).Open(context.Background(), brokenReader{})
	var refused *Refused
	if err == nil || errors.As(err, &refused) || !strings.Contains(err.Error(), "line dropped") {
		t.Error(err)
	}
}

// While one costly picture is being decoded another waits, and gives up with its context.
func TestCostlyOneAtATime(t *testing.T) {
	lab := NewLab(Limits{})
	lab.costly <- struct{}{}
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Millisecond)
	defer cancel()
	if _, err := lab.Open(ctx, bytes.NewReader(read(t, "small.heic"))); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("a second HEIC: %v", err)
	}
	if _, err := lab.Open(context.Background(), bytes.NewReader(asJPEG(t, scene(320, 240, 1), 80))); err != nil {
		t.Errorf("a small JPEG waits too: %v", err)
	}
	<-lab.costly
	if _, err := lab.Open(context.Background(), bytes.NewReader(read(t, "small.heic"))); err != nil {
		t.Errorf("HEIC after it: %v", err)
	}
}

func TestSameFileSamePhoto(t *testing.T) {
	file := asJPEG(t, scene(800, 600, 4), 85)
	a, b := open(t, file), open(t, file)
	if !bytes.Equal(a.JPEG, b.JPEG) || !bytes.Equal(a.Thumb, b.Thumb) || a.Likeness != b.Likeness || !slices.Equal(a.Troubles, b.Troubles) {
		t.Error("two openings differ")
	}
}

func pngChunk(kind string, body []byte) []byte {
	b := binary.BigEndian.AppendUint32(nil, uint32(len(body)))
	b = append(append(b, kind...), body...)
	return binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[4:]))
}

func bombPNG(w, h uint32) []byte {
	head := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, w), h)
	head = append(head, 8, 0, 0, 0, 0)
	b := append([]byte("\x89PNG\r\n\x1a\n"), pngChunk("IHDR", head)...)
	return append(append(b, pngChunk("IDAT", []byte{0x78, 1, 0, 0, 0xFF, 0xFF})...), pngChunk("IEND", nil)...)
}

func apng(t *testing.T) []byte {
	b := asPNG(t, scene(100, 100, 1))
	const afterHeader = 8 + 25
	return slices.Concat(b[:afterHeader], pngChunk("acTL", make([]byte, 8)), b[afterHeader:])
}

func bombJPEG(w, h uint16) []byte {
	b := []byte{0xFF, 0xD8, 0xFF, 0xC0, 0, 17, 8, byte(h >> 8), byte(h), byte(w >> 8), byte(w), 3,
		1, 0x22, 0, 2, 0x11, 0, 3, 0x11, 0}
	return append(b, 0xFF, 0xDA, 0, 12, 3, 1, 0, 2, 0, 3, 0, 0, 63, 0, 1, 2, 3, 0xFF, 0xD9)
}

func webpX(flags byte, w, h uint32) []byte {
	body := []byte{flags, 0, 0, 0, byte(w - 1), byte((w - 1) >> 8), byte((w - 1) >> 16), byte(h - 1), byte((h - 1) >> 8), byte((h - 1) >> 16)}
	b := append([]byte("RIFF\x40\x00\x00\x00WEBPVP8X\x0A\x00\x00\x00"), body...)
	return append(b, make([]byte, 40)...)
}

func animatedWebP() []byte { return webpX(2, 100, 100) }

func bombWebP(w, h uint32) []byte { return webpX(0, w, h) }

// bombHEIC is a good file whose size properties say 20000 x 20000.
func bombHEIC(t *testing.T) []byte {
	b := bytes.Clone(read(t, "small.heic"))
	at := bytes.Index(b, []byte("ispe"))
	if at < 0 {
		t.Fatal("no ispe")
	}
	binary.BigEndian.PutUint32(b[at+8:], 20_000)
	binary.BigEndian.PutUint32(b[at+12:], 20_000)
	return b
}
