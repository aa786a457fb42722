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
		m, err = heic.Decode(r)
	}
	if err != nil {
		return nil, refuse(WhyBroken, h.Kind, err)
	}
	if m.Bounds().Empty() {
		return nil, refuse(WhyBroken, h.Kind, errNoSize)
	}
	return m, nil
}
