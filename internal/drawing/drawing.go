package drawing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image/png"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/pdf"
	"github.com/tdewolff/canvas/renderers/rasterizer"
	"github.com/tdewolff/canvas/renderers/svg"
)

// Drawing is a finished picture or sheet. It never changes once made, and may be
// rendered by several goroutines at once. The zero value renders to an error.
type Drawing struct {
	pages []page
	title string  // what it shows, for readers who can't see it
	unit  float64 // millimetres on paper for one unit of the pages
	gap   float64 // between pages that are shown below each other
}

// MaxWidth is the widest picture that PNG makes, in pixels.
const MaxWidth = 2400

// maxPixels bounds the memory of one PNG (four bytes a pixel).
const maxPixels = 24_000_000

// Title says in a few words what the drawing shows, as an alternative text.
func (d Drawing) Title() string { return d.title }

// Pages is the number of pages that the PDF has.
func (d Drawing) Pages() int { return len(d.pages) }

// SVG is the drawing as a scalable picture whose texts are texts. Several pages stand
// below each other. It loads nothing from elsewhere.
func (d Drawing) SVG() (out []byte, err error) {
	defer mishap("svg", &err)
	c, err := paint(d.pages, d.gap)
	if err != nil {
		return nil, fmt.Errorf("drawing svg: %w", err)
	}
	var b bytes.Buffer
	r := svg.New(&b, c.W, c.H, &svg.Options{ImageEncoding: canvas.Lossy})
	b.WriteString("<title>")
	if err := xml.EscapeText(&b, []byte(d.title)); err != nil {
		return nil, fmt.Errorf("drawing svg: %w", err)
	}
	b.WriteString("</title>")
	c.RenderTo(r)
	if err := r.Close(); err != nil {
		return nil, fmt.Errorf("drawing svg: %w", err)
	}
	return setWidths(b.Bytes()), nil
}

// PNG is the drawing as a picture of so many pixels in width, from 1 to MaxWidth.
// Several pages stand below each other.
func (d Drawing) PNG(width int) (out []byte, err error) {
	defer mishap("png", &err)
	if width < 1 || width > MaxWidth {
		return nil, fmt.Errorf("drawing png: width %d is not from 1 to %d pixels", width, MaxWidth)
	}
	c, err := paint(d.pages, d.gap)
	if err != nil {
		return nil, fmt.Errorf("drawing png: %w", err)
	}
	scale := float64(width) / c.W
	if float64(width)*c.H*scale > maxPixels {
		return nil, fmt.Errorf("drawing png: %d pixels in width make it too large", width)
	}
	img := rasterizer.Draw(c, canvas.DPMM(scale), nil)
	var b bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.DefaultCompression}).Encode(&b, flat(img)); err != nil {
		return nil, fmt.Errorf("drawing png: %w", err)
	}
	return b.Bytes(), nil
}

// PDF is the drawing on paper, a page each.
func (d Drawing) PDF() (out []byte, err error) {
	defer mishap("pdf", &err)
	if len(d.pages) == 0 {
		return nil, errors.New("drawing pdf: nothing was drawn")
	}
	var b bytes.Buffer
	var r *pdf.PDF
	for i := range d.pages {
		c, err := paint(d.pages[i:i+1], 0)
		if err != nil {
			return nil, fmt.Errorf("drawing pdf: %w", err)
		}
		w, h := c.W*d.unit, c.H*d.unit
		if r == nil {
			r = pdf.New(&b, w, h, &pdf.Options{Compress: true, SubsetFonts: true, ImageEncoding: canvas.Lossy})
			r.SetInfo(d.title, "", "", "", "")
		} else {
			r.NewPage(w, h)
		}
		c.RenderViewTo(r, canvas.Identity.Scale(d.unit, d.unit))
	}
	if err := r.Close(); err != nil {
		return nil, fmt.Errorf("drawing pdf: %w", err)
	}
	return undated(b.Bytes())
}

// mishap turns a panic of the graphics library, which has some for shapes and fonts that
// it can't handle, into an error: a picture that fails must not take a server down.
func mishap(form string, err *error) {
	if r := recover(); r != nil {
		*err = fmt.Errorf("drawing %s: %v", form, r)
	}
}
