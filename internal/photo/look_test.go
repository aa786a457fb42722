package photo

import (
	"image"
	"image/color"
	"slices"
	"testing"

	"golang.org/x/image/draw"
)

func TestTroubles(t *testing.T) {
	big := scene(1100, 825, 7)
	flat := image.NewRGBA(big.Rect)
	draw.Draw(flat, flat.Rect, image.NewUniform(color.Gray{128}), image.Point{}, draw.Src)
	for _, c := range []struct {
		name string
		m    image.Image
		want []Trouble
	}{
		{"sharp", big, nil},
		{"another", scene(825, 1100, 8), nil},
		{"sharp and dull", dimmed(big, 0.45), nil},
		{"a little soft", blurred(big, 1), nil},
		{"shaken", blurred(big, 5), []Trouble{Blurred}},
		{"out of focus", blurred(big, 9), []Trouble{Blurred}},
		{"night", dimmed(big, 0.15), []Trouble{TooDark}},
		{"lens covered", dimmed(big, 0.02), []Trouble{TooDark}},
		{"a wall", flat, []Trouble{Blurred}},
		{"thumbnail", scene(300, 200, 7), []Trouble{TooSmall}},
		{"strip", scene(2000, 200, 7), []Trouble{TooSmall}},
		{"smallest", scene(480, 360, 7), nil},
	} {
		p := open(t, asJPEG(t, c.m, 88))
		t.Logf("%s: sharpness %.0f, light %d", c.name, p.Look.Sharpness, p.Look.Light)
		if !slices.Equal(p.Troubles, c.want) {
			t.Errorf("%s: %v, want %v", c.name, p.Troubles, c.want)
		}
	}
}

// More blur is never sharper, and less light never lighter.
func TestLookIsMonotonous(t *testing.T) {
	m := scene(800, 600, 9)
	last := Look{Sharpness: 1e9, Light: 255}
	for _, radius := range []int{0, 1, 2, 4} {
		look := lookOf(grayOf(planesOf(blurred(m, radius))))
		if look.Sharpness > last.Sharpness {
			t.Errorf("radius %d: sharpness %.1f after %.1f", radius, look.Sharpness, last.Sharpness)
		}
		last = look
	}
	last.Light = 255
	for _, factor := range []float64{1, 0.7, 0.4, 0.2, 0.1, 0} {
		look := lookOf(grayOf(planesOf(dimmed(m, factor))))
		if look.Light > last.Light {
			t.Errorf("factor %.1f: light %d after %d", factor, look.Light, last.Light)
		}
		last = look
	}
}

func TestLikeness(t *testing.T) {
	m := scene(1200, 900, 11)
	first := open(t, asJPEG(t, m, 92)).Likeness
	for name, file := range map[string][]byte{
		"again": asJPEG(t, m, 92), "recompressed": asJPEG(t, m, 30), "as PNG": asPNG(t, m),
		"shrunk": asJPEG(t, shrink(m, 640), 80), "shrunk much": asJPEG(t, shrink(m, 320), 70),
		"darker": asJPEG(t, dimmed(m, 0.6), 85), "a little soft": asJPEG(t, blurred(m, 2), 85),
	} {
		if !first.Alike(open(t, file).Likeness) {
			t.Errorf("%s: not alike (%064b, %064b)", name, first, open(t, file).Likeness)
		}
	}
	for seed := uint64(12); seed < 40; seed++ {
		if other := open(t, asJPEG(t, scene(400, 300, seed), 85)).Likeness; first.Alike(other) {
			t.Errorf("scene %d is alike", seed)
		}
	}
	if first.Alike(open(t, asJPEG(t, m.SubImage(image.Rect(300, 220, 900, 680)), 90)).Likeness) {
		t.Error("a close-up is alike")
	}
	flat := likenessOf(image.NewGray(image.Rect(0, 0, 100, 100)))
	if flat.Alike(flat) {
		t.Error("an even surface is like another")
	}
}
