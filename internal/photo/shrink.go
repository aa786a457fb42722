package photo

import (
	"image"

	"golang.org/x/image/draw"
)

// shrink draws a picture on white with its longer side at most side; it never enlarges.
func shrink(m image.Image, side int) *image.RGBA {
	from := m.Bounds()
	w, h := fit(from.Dx(), from.Dy(), side)
	if rgba, ok := m.(*image.RGBA); ok && w == from.Dx() && h == from.Dy() {
		return rgba
	}
	to := image.NewRGBA(image.Rect(0, 0, w, h))
	op := draw.Src
	if see, ok := m.(interface{ Opaque() bool }); !ok || !see.Opaque() {
		draw.Draw(to, to.Rect, image.White, image.Point{}, draw.Src)
		op = draw.Over
	}
	scalerFor(from.Dx(), w).Scale(to, to.Rect, m, from, op, nil)
	return to
}

// scalerFor takes the fast way where each new pixel covers at most two old ones a
// side, of which it looks at two; else the one that looks at all.
func scalerFor(from, to int) draw.Scaler {
	if from <= 2*to {
		return draw.ApproxBiLinear
	}
	return draw.BiLinear
}

func fit(w, h, side int) (int, int) {
	long := max(w, h)
	if long <= side {
		return w, h
	}
	return max(1, w*side/long), max(1, h*side/long)
}
