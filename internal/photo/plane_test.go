package photo

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Shrinking keeps an even plane even, the overall brightness, and the bounds.
func TestAverageProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(1, 60).Draw(t, "w"), rapid.IntRange(1, 60).Draw(t, "h")
		tw, th := rapid.IntRange(1, w).Draw(t, "tw"), rapid.IntRange(1, h).Draw(t, "th")
		from := plane{rapid.SliceOfN(rapid.Uint8(), w*h, w*h).Draw(t, "pix"), w, w, h}
		to := plane{make([]uint8, tw*th), tw, tw, th}
		average(to, from)
		low, high := uint8(255), uint8(0)
		for _, v := range from.pix {
			low, high = min(low, v), max(high, v)
		}
		for _, v := range to.pix {
			if v < low || v > high {
				t.Fatalf("%d is outside %d to %d", v, low, high)
			}
		}
		if d := math.Abs(meanOf(from.pix) - meanOf(to.pix)); d > 2.5 {
			t.Fatalf("brightness moved by %.1f", d)
		}
	})
}

func meanOf(pix []uint8) float64 {
	sum := 0
	for _, v := range pix {
		sum += int(v)
	}
	return float64(sum) / float64(len(pix))
}

func TestAverageOfKnownPlanes(t *testing.T) {
	for _, c := range []struct {
		from     []uint8
		w, h     int
		tw, th   int
		expected []uint8
	}{
		{[]uint8{10, 20, 30, 40}, 2, 2, 1, 1, []uint8{25}},
		{[]uint8{0, 0, 90, 90}, 4, 1, 2, 1, []uint8{0, 90}},
		{[]uint8{0, 90, 180}, 3, 1, 2, 1, []uint8{30, 150}}, // thirds: (0*2+90)/3, (90+180*2)/3
		{[]uint8{7, 8, 9}, 3, 1, 3, 1, []uint8{7, 8, 9}},
	} {
		to := plane{make([]uint8, c.tw*c.th), c.tw, c.tw, c.th}
		average(to, plane{c.from, c.w, c.w, c.h})
		for i, v := range to.pix {
			if math.Abs(float64(v)-float64(c.expected[i])) > 1 {
				t.Errorf("%v becomes %v, want %v", c.from, to.pix, c.expected)
			}
		}
	}
}
