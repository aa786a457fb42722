package photo

import (
	"bytes"
	"image"
	"time"

	"github.com/bep/imagemeta"
)

// orientation reads which way up the camera was held: Exif tag 274 (TIFF 6.0, page 36),
// 1 to 8; 1 where it isn't said. A HEIC decoder turns the picture itself (ISO/IEC
// 23008-12: irot and imir count, the Exif tag does not).
func orientation(kind Kind, file []byte) int {
	formats := map[Kind]imagemeta.ImageFormat{JPEG: imagemeta.JPEG, PNG: imagemeta.PNG, WebP: imagemeta.WebP}
	format, ok := formats[kind]
	if !ok {
		return 1
	}
	found := 1
	_, err := imagemeta.Decode(imagemeta.Options{
		R:               bytes.NewReader(file),
		ImageFormat:     format,
		Sources:         imagemeta.EXIF,
		LimitNumTags:    1000,
		LimitTagSize:    1000,
		Timeout:         time.Second,
		ShouldHandleTag: func(tag imagemeta.TagInfo) bool { return tag.Tag == "Orientation" && tag.Namespace == "IFD0" },
		HandleTag: func(tag imagemeta.TagInfo) error {
			if n, ok := tag.Value.(uint16); ok && n >= 1 && n <= 8 {
				found = int(n)
			}
			return imagemeta.ErrStopWalking
		},
	})
	if err != nil {
		return 1 // metadata that can't be read says nothing
	}
	return found
}

// turn makes upright what was stored in one of the eight orientations.
func turn(m *image.YCbCr, orientation int) *image.YCbCr {
	if orientation <= 1 || orientation > 8 {
		return m
	}
	w, h := m.Rect.Dx(), m.Rect.Dy()
	to := newPlanes(w, h)
	if orientation >= 5 {
		to = newPlanes(h, w)
	}
	cw, ch := (w+1)/2, (h+1)/2
	turnPlane(to.Y, to.YStride, plane{m.Y, m.YStride, w, h}, orientation)
	turnPlane(to.Cb, to.CStride, plane{m.Cb, m.CStride, cw, ch}, orientation)
	turnPlane(to.Cr, to.CStride, plane{m.Cr, m.CStride, cw, ch}, orientation)
	return to
}

// turnPlane walks the new plane: each step to the right there is always the same step
// in the old one.
func turnPlane(to []uint8, stride int, from plane, orientation int) {
	w, h := from.w, from.h
	if orientation >= 5 {
		w, h = h, w
	}
	at := func(x, y int) int {
		fx, fy := source(orientation, x, y, from.w, from.h)
		return fy*from.stride + fx
	}
	right := at(1, 0) - at(0, 0)
	for y := range h {
		i := at(0, y)
		row := to[y*stride:][:w]
		for x := range row {
			row[x] = from.pix[i]
			i += right
		}
	}
}

// source tells which stored pixel shows at x, y of the upright picture.
func source(orientation, x, y, w, h int) (int, int) {
	switch orientation {
	case 2:
		return w - 1 - x, y
	case 3:
		return w - 1 - x, h - 1 - y
	case 4:
		return x, h - 1 - y
	case 5:
		return y, x
	case 6:
		return y, h - 1 - x
	case 7:
		return w - 1 - y, h - 1 - x
	case 8:
		return w - 1 - y, x
	}
	return x, y
}
