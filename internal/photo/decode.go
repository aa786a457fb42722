package photo

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"

	"github.com/gen2brain/heic"
	"golang.org/x/image/webp"
)

// decode reads the pixels of an admitted file. Decoders are other people's code and
// run on a stranger's bytes: should one panic, the file is broken and the program lives.
func decode(h Header, file []byte) (m image.Image, err error) {
	defer func() {
		if p := recover(); p != nil {
			m, err = nil, refuse(WhyBroken, h.Kind, fmt.Errorf("decoder gave up: %v", p))
		}
	}()
	r := bytes.NewReader(file)
	switch h.Kind {
	case JPEG:
		m, err = jpeg.Decode(r)
	case PNG:
		m, err = png.Decode(r)
	case WebP:
		m, err = webp.Decode(r)
	default:
		if m, err = heic.Decode(r); err == nil && heic.Dynamic() != nil {
			mend(m)
		}
	}
	if err != nil {
		return nil, refuse(WhyBroken, h.Kind, err)
	}
	if m.Bounds().Empty() {
		return nil, refuse(WhyBroken, h.Kind, errNoSize)
	}
	return m, nil
}

// mend repairs the start of a HEIC's first row: the sandboxed decoder (v0.4.5) gives its
// memory back before the picture is read, which writes 24 bytes of bookkeeping over the
// beginning. The row below is nearly the same there.
func mend(m image.Image) {
	const spoiled = 32
	switch m := m.(type) {
	case *image.YCbCr:
		copyRow(m.Y, m.YStride, min(spoiled, m.YStride))
	case *image.Gray:
		copyRow(m.Pix, m.Stride, min(spoiled, m.Stride))
	case *image.NRGBA:
		copyRow(m.Pix, m.Stride, min(spoiled, m.Stride))
	case *image.RGBA:
		copyRow(m.Pix, m.Stride, min(spoiled, m.Stride))
	}
}

func copyRow(pix []uint8, stride, n int) {
	if len(pix) >= stride+n {
		copy(pix[:n], pix[stride:stride+n])
	}
}
