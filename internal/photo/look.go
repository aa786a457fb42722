package photo

import (
	"image"
	"slices"
)

// Look is what computation sees of a picture.
type Look struct {
	// Sharpness is the variance of the Laplacian of the brightness, 0 to 255, with the
	// longer side at 1024 pixels at most, in the second sharpest of sixteen fields: a sharp
	// photo of a plain roof has few sharp places, a blurred one none. It is reckoned as if
	// Light were 192, so that dusk alone doesn't count as blur.
	Sharpness float64
	// Light is the brightness that a tenth of the picture exceeds, 0 to 255.
	Light int
}

// Trouble is why a picture may be of little use.
type Trouble string

const (
	TooDark  Trouble = "too_dark"
	Blurred  Trouble = "blurred"
	TooSmall Trouble = "too_small"
)

// Thresholds, by judgement, checked in the tests on pictures made for it.
const (
	workSide     = 1024
	leastSharp   = 12
	leastLight   = 56
	leastSide    = 480 // longer side: a tape's figures can't be read below
	leastNarrow  = 240
	fieldsASide  = 4
	lightPercent = 90
)

func (l Look) troubles(width, height int) []Trouble {
	var all []Trouble
	if max(width, height) < leastSide || min(width, height) < leastNarrow {
		all = append(all, TooSmall)
	}
	if l.Light < leastLight {
		all = append(all, TooDark)
	}
	// A dark picture has no edges to judge by, one trouble is enough to ask about.
	if l.Sharpness < leastSharp && l.Light >= leastLight {
		all = append(all, Blurred)
	}
	return all
}

// grayOf is the brightness of a picture, shrunk to the side at which it is judged.
func grayOf(m *image.YCbCr) *image.Gray {
	w, h := fit(m.Rect.Dx(), m.Rect.Dy(), workSide)
	g := image.NewGray(image.Rect(0, 0, w, h))
	average(plane{g.Pix, g.Stride, w, h}, plane{m.Y, m.YStride, m.Rect.Dx(), m.Rect.Dy()})
	return g
}

func lookOf(g *image.Gray) Look {
	var fields []float64
	w, h := g.Rect.Dx(), g.Rect.Dy()
	for i := range fieldsASide {
		for j := range fieldsASide {
			fields = append(fields, laplacianVariance(g, image.Rect(
				i*w/fieldsASide, j*h/fieldsASide, (i+1)*w/fieldsASide, (j+1)*h/fieldsASide)))
		}
	}
	slices.Sort(fields)
	light := brighterThan(g, lightPercent)
	gain := 192 / float64(max(light, 32))
	return Look{Sharpness: fields[len(fields)-2] * gain * gain, Light: light}
}

// laplacianVariance is the variance of the four-neighbour Laplacian within a field.
func laplacianVariance(g *image.Gray, field image.Rectangle) float64 {
	field = field.Intersect(g.Rect.Inset(1))
	if field.Empty() {
		return 0
	}
	sum, squares := 0, 0
	for y := field.Min.Y; y < field.Max.Y; y++ {
		above, row, below := g.Pix[(y-1)*g.Stride:], g.Pix[y*g.Stride:], g.Pix[(y+1)*g.Stride:]
		for x := field.Min.X; x < field.Max.X; x++ {
			v := int(above[x]) + int(below[x]) + int(row[x-1]) + int(row[x+1]) - 4*int(row[x])
			sum += v
			squares += v * v
		}
	}
	n := float64(field.Dx() * field.Dy())
	mean := float64(sum) / n
	return float64(squares)/n - mean*mean
}

// brighterThan gives the brightness that percent of the pixels don't exceed.
func brighterThan(g *image.Gray, percent int) int {
	var counts [256]int
	for _, v := range g.Pix {
		counts[v]++
	}
	left := len(g.Pix) * percent / 100
	for v, n := range counts {
		if left -= n; left < 0 {
			return v
		}
	}
	return 255
}
