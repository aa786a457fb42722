package drawing

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"

	"golang.org/x/image/draw"
)

const (
	photosBeside  = 4
	photoRows     = 2
	photoHigh     = 40.0 // millimetres
	photoPixels   = 480  // the longer side on the sheet: about 200 to the inch
	photoMost     = 50_000_000
	photoMostByte = 32 << 20
)

// photoBlock shows the first photos small, four beside each other.
func photoBlock(photos []SheetPhoto, w float64) block {
	b := block{heading: heading("Photos", w), noun: "photos"}
	shown := min(len(photos), photosBeside*photoRows)
	b.cut = len(photos) - shown
	for at := 0; at < shown; at += photosBeside {
		r := photoRow(photos[at:min(at+photosBeside, shown)], w)
		if at > 0 {
			r.rank = rankPhotos
		}
		b.rows = append(b.rows, r)
	}
	return b
}

func photoRow(photos []SheetPhoto, w float64) row {
	const gap, caption = 4.0, 4.4
	wide := (w - gap*(photosBeside-1)) / photosBeside
	pics := make([]image.Image, len(photos))
	for i := range photos {
		pics[i], _ = thumbnail(photos[i].Data) // one that can't be opened gets an empty frame
	}
	return row{items: len(photos), h: photoHigh + caption + 1, ink: func(p *page, x, y float64) {
		for i := range photos {
			p.frame(pics[i], x, y, wide)
			p.write("photo", x, y+photoHigh+3.4, fit(photos[i].caption(), wide, lookSmall), lookSmall)
			x += wide + gap
		}
	}}
}

func (f *SheetPhoto) caption() string {
	s := fmt.Sprintf("message %d", f.Message)
	if f.Of != "" {
		s = topicWords(f.Of) + ", " + s
	}
	return s
}

// frame sets a photo into a box of a width and the height of all photos.
func (p *page) frame(img image.Image, x, y, wide float64) {
	p.draw("frame", rect(x, y, x+wide, y+photoHigh), pen{fill: ground, line: hair, width: 0.25})
	if img == nil {
		p.write("photo", x+3, y+photoHigh/2, fit("can't be shown here", wide-6, lookSmall), lookSmall)
		return
	}
	size := img.Bounds().Size()
	ratio := float64(size.X) / float64(size.Y)
	w := min(wide, photoHigh*ratio)
	p.paste("photo", x+(wide-w)/2, y+(photoHigh-w/ratio)/2, w, img)
}

var errPhoto = errors.New("photo is no JPEG or PNG of a sound size")

// thumbnail opens a photo in bounded memory and makes it small.
func thumbnail(data []byte) (image.Image, error) {
	open, header := jpeg.Decode, jpeg.DecodeConfig
	if bytes.HasPrefix(data, []byte("\x89PNG")) {
		open, header = png.Decode, png.DecodeConfig
	}
	c, err := header(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("photo's size: %w", err)
	}
	if len(data) > photoMostByte || c.Width < 1 || c.Height < 1 || c.Width*c.Height > photoMost {
		return nil, errPhoto
	}
	img, err := open(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("photo's pixels: %w", err)
	}
	scale := min(1, photoPixels/float64(max(c.Width, c.Height)))
	small := image.NewRGBA(image.Rect(0, 0, max(1, int(float64(c.Width)*scale)), max(1, int(float64(c.Height)*scale))))
	draw.Draw(small, small.Bounds(), image.White, image.Point{}, draw.Src)
	draw.ApproxBiLinear.Scale(small, small.Bounds(), img, img.Bounds(), draw.Over, nil)
	return small, nil
}
