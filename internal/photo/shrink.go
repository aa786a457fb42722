package photo

import (
	"image"
	"image/color"

	"golang.org/x/image/draw"
)

// Everything after decoding works on brightness and two color planes (4:2:0), the form
// in which cameras store pictures: nothing is converted there and back.

// shrink gives a picture with its longer side at most side; it never enlarges.
func shrink(m image.Image, side int) *image.YCbCr {
	from := m.Bounds()
	w, h := fit(from.Dx(), from.Dy(), side)
	planes, ok := m.(*image.YCbCr)
	if !ok {
		return planesOf(drawOnWhite(m, w, h))
	}
	to := newPlanes(w, h)
	average(plane{to.Y, to.YStride, w, h},
		plane{planes.Y[planes.YOffset(from.Min.X, from.Min.Y):], planes.YStride, from.Dx(), from.Dy()})
	cw, ch := colorSize(planes)
	at := planes.COffset(from.Min.X, from.Min.Y)
	average(plane{to.Cb, to.CStride, (w + 1) / 2, (h + 1) / 2}, plane{planes.Cb[at:], planes.CStride, cw, ch})
	average(plane{to.Cr, to.CStride, (w + 1) / 2, (h + 1) / 2}, plane{planes.Cr[at:], planes.CStride, cw, ch})
	return to
}

func fit(w, h, side int) (int, int) {
	long := max(w, h)
	if long <= side {
		return w, h
	}
	return max(1, w*side/long), max(1, h*side/long)
}

func newPlanes(w, h int) *image.YCbCr {
	return image.NewYCbCr(image.Rect(0, 0, w, h), image.YCbCrSubsampleRatio420)
}

// colorSize counts the columns and rows of a picture's color planes.
func colorSize(m *image.YCbCr) (int, int) {
	r := m.Rect
	last := m.COffset(r.Max.X-1, r.Max.Y-1) - m.COffset(r.Min.X, r.Min.Y)
	if m.CStride == 0 {
		return 1, 1
	}
	first := m.COffset(r.Max.X-1, r.Min.Y) - m.COffset(r.Min.X, r.Min.Y)
	return first + 1, (last-first)/m.CStride + 1
}

// drawOnWhite is for what is no camera's usual picture: PNG, gray, transparent.
func drawOnWhite(m image.Image, w, h int) *image.RGBA {
	to := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(to, to.Rect, image.White, image.Point{}, draw.Src)
	draw.BiLinear.Scale(to, to.Rect, m, m.Bounds(), draw.Over, nil)
	return to
}

func planesOf(m *image.RGBA) *image.YCbCr {
	w, h := m.Rect.Dx(), m.Rect.Dy()
	to := newPlanes(w, h)
	for y := range h {
		for x := range w {
			p := m.Pix[m.PixOffset(x, y):][:3:3]
			luma, cb, cr := color.RGBToYCbCr(p[0], p[1], p[2])
			to.Y[to.YOffset(x, y)] = luma
			if x%2 == 0 && y%2 == 0 {
				at := to.COffset(x, y)
				to.Cb[at], to.Cr[at] = cb, cr
			}
		}
	}
	return to
}
