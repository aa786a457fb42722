package drawing

import (
	"image"
	"image/color"

	"github.com/tdewolff/canvas"
)

// page is one picture or one sheet of paper: marks in the order in which they cover
// each other. Its origin is the upper left corner and y runs down. Units are CSS pixels
// for pictures and millimetres for paper.
type page struct {
	w, h  float64
	marks []mark
}

// mark is a shape, a line of text, or a photo; one of path, text and photo is set.
type mark struct {
	part string // what it shows, such as "tape" or "curb.left"
	path *canvas.Path
	pen  pen
	text string
	x, y float64 // baseline of a text at its alignment, upper left of a photo
	look look
	photo
}

// photo is a picture of so many units in width.
type photo struct {
	img   image.Image
	width float64
}

// pen says how a shape is filled and outlined; a zero color paints nothing. Dashes are
// in widths of the line.
type pen struct {
	fill, line color.RGBA
	width      float64
	dashes     []float64
}

// look says how a text is set. Size is the height of its letters' em.
type look struct {
	size   float64
	bold   bool
	color  color.RGBA
	align  canvas.TextAlign
	turned bool // reads upward
}

func (p *page) draw(part string, path *canvas.Path, pen pen) {
	p.marks = append(p.marks, mark{part: part, path: path, pen: pen})
}

// write sets one line of text as it is; what strangers wrote goes through clean first.
func (p *page) write(part string, x, y float64, s string, l look) {
	if s == "" {
		return
	}
	p.marks = append(p.marks, mark{part: part, text: s, x: x, y: y, look: l})
}

func (p *page) paste(part string, x, y, width float64, img image.Image) {
	p.marks = append(p.marks, mark{part: part, x: x, y: y, photo: photo{img, width}})
}

// rect is the rectangle between two corners.
func rect(x0, y0, x1, y1 float64) *canvas.Path {
	return canvas.Rectangle(x1-x0, y1-y0).Translate(x0, y0)
}

func rounded(x0, y0, x1, y1, r float64) *canvas.Path {
	return canvas.RoundedRectangle(x1-x0, y1-y0, r).Translate(x0, y0)
}

func circle(x, y, r float64) *canvas.Path { return canvas.Circle(r).Translate(x, y) }

// poly joins points given as x, y, x, y …
func poly(closed bool, xy ...float64) *canvas.Path {
	p := &canvas.Path{}
	p.MoveTo(xy[0], xy[1])
	for i := 2; i+1 < len(xy); i += 2 {
		p.LineTo(xy[i], xy[i+1])
	}
	if closed {
		p.Close()
	}
	return p
}

func line(x0, y0, x1, y1 float64) *canvas.Path { return poly(false, x0, y0, x1, y1) }
