package demo

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
)

// drawPhoto makes a picture that stands for a customer's: a domed square on a roof. It
// is drawn so that no photo of anybody's house is needed; each number gives another view.
func drawPhoto(number int) ([]byte, error) {
	const w, h = 960, 720
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			img.SetRGBA(x, y, pixel(x+number*180, y+number*40, w, h))
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, &jpeg.Options{Quality: 85}); err != nil {
		return nil, fmt.Errorf("draw a photo: %w", err)
	}
	return out.Bytes(), nil
}

func pixel(x, y, w, h int) color.RGBA {
	inside := func(margin int) bool { return x > margin && x < w-margin && y > margin*h/w && y < h-margin*h/w }
	shade := uint8((x/24*7 + y/12*13) % 40)
	switch {
	case inside(300): // the dome, lighter to its middle
		dx, dy := x-w/2, y-h/2
		light := uint8(max(0, 90-(dx*dx+dy*dy)/400))
		return color.RGBA{150 + light, 165 + light, 150 + light, 255}
	case inside(270): // its frame
		return color.RGBA{120, 118, 110, 255}
	default: // shingles
		return color.RGBA{70 + shade, 66 + shade, 64 + shade, 255}
	}
}
