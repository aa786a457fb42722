package photo

import (
	"image"
	"math/bits"
)

// Likeness is a difference hash: for each of 8 x 8 places one bit, whether the picture
// grows darker there from left to right. Shrinking, recompressing and a change of light
// leave nearly all bits as they are.
type Likeness uint64

// alikeBits is how many bits may differ between two copies of one picture. Unrelated
// pictures differ in some 32. By judgement, checked in the tests.
const alikeBits = 5

// Alike reports whether two hashes are of one picture. An even surface has no likeness
// and is like nothing.
func (a Likeness) Alike(b Likeness) bool {
	return a.tells() && b.tells() && bits.OnesCount64(uint64(a^b)) <= alikeBits
}

func (a Likeness) tells() bool {
	const least = 6 // bits of either kind
	n := bits.OnesCount64(uint64(a))
	return n >= least && n <= 64-least
}

func likenessOf(g *image.Gray) Likeness {
	const across, down = 9, 8
	var hash Likeness
	for y := range down {
		last := 0
		for x := range across {
			v := mean(g, x, y, across, down)
			if x > 0 {
				hash <<= 1
				if v+8 < last { // half a step, so that noise on a plain field is no change
					hash |= 1
				}
			}
			last = v
		}
	}
	return hash
}

// mean is the brightness of one of across x down cells, in sixteenths.
func mean(g *image.Gray, cx, cy, across, down int) int {
	w, h := g.Rect.Dx(), g.Rect.Dy()
	x0, x1 := cx*w/across, max((cx+1)*w/across, cx*w/across+1)
	y0, y1 := cy*h/down, max((cy+1)*h/down, cy*h/down+1)
	sum, n := 0, 0
	for y := y0; y < min(y1, h); y++ {
		for _, v := range g.Pix[y*g.Stride+x0 : y*g.Stride+min(x1, w)] {
			sum += int(v)
			n++
		}
	}
	if n == 0 {
		return 0
	}
	return 16 * sum / n
}
