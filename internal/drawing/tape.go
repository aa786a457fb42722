package drawing

import (
	"math"

	"github.com/tdewolff/canvas"
)

const (
	bandWide  = 13.0 // a drawn tape, in units of a picture
	tickEvery = 6.0
	tickShort = 3.5
	tickLong  = 6.5
	headLong  = 10.0 // arrow at each end
)

// tape lays a measuring tape from one point to another: it ends where the two faces are,
// to the hair.
func (p *page) tape(x0, y0, x1, y1 float64) { p.band(x0, y0, x1, y1, 0) }

// pointed is a tape that runs from a corner to a corner: square ends would stand over.
func (p *page) pointed(x0, y0, x1, y1 float64) { p.band(x0, y0, x1, y1, headLong) }

func (p *page) band(x0, y0, x1, y1, cut float64) {
	long := math.Hypot(x1-x0, y1-y0)
	ux, uy := (x1-x0)/long, (y1-y0)/long
	at := func(along, across float64) (x, y float64) {
		return x0 + ux*along - uy*across, y0 + uy*along + ux*across
	}
	shape := func(closed bool, spots ...float64) *canvas.Path {
		xy := make([]float64, 0, len(spots))
		for i := 0; i+1 < len(spots); i += 2 {
			x, y := at(spots[i], spots[i+1])
			xy = append(xy, x, y)
		}
		return poly(closed, xy...)
	}
	half := bandWide / 2
	p.draw("tape", shape(true, 0, 0, cut, -half, long-cut, -half, long, 0, long-cut, half, cut, half), pen{fill: yellow, line: ink, width: 1})
	n := 0
	for along := headLong + tickEvery/2; along < long-headLong-1; along += tickEvery {
		tick := tickShort
		if n++; n%4 == 0 {
			tick = tickLong
		}
		p.draw("tick", shape(false, along, half, along, half-tick), pen{line: ink, width: 0.8})
	}
	p.draw("tape.head", shape(true, 0, 0, headLong, -half+1.5, headLong, half-1.5), pen{fill: ink})
	p.draw("tape.head", shape(true, long, 0, long-headLong, -half+1.5, long-headLong, half-1.5), pen{fill: ink})
}

// face is the line along a face that is measured.
func (p *page) face(x0, y0, x1, y1 float64) {
	p.draw("face", line(x0, y0, x1, y1), pen{line: white, width: 4.5})
	p.draw("face", line(x0, y0, x1, y1), pen{line: red, width: 2.2})
}

// sight carries a face on, from one view to the other.
func (p *page) sight(x0, y0, x1, y1 float64) {
	p.draw("sight", line(x0, y0, x1, y1), pen{line: red, width: 1.1, dashes: []float64{3, 3}})
}

// badge is a number in a ring: where the tape begins and ends.
func (p *page) badge(x, y float64, n string) {
	p.draw("badge", circle(x, y, 9), pen{fill: white, line: red, width: 2})
	p.write("badge", x, y+4.7, n, look{size: 13, bold: true, color: red, align: canvas.Center})
}

// wrong says "not here": a cross beside a face and a pointer that touches it.
func (p *page) wrong(x, y, faceX, faceY float64) {
	const r = 4.2
	p.draw("wrong", line(x, y, faceX, faceY), pen{line: ink, width: 1.6})
	p.draw("wrong", circle(faceX, faceY, 2.4), pen{fill: ink})
	p.draw("wrong", circle(x, y, 9), pen{fill: white, line: ink, width: 1.8})
	p.draw("wrong", line(x-r, y-r, x+r, y+r), pen{line: ink, width: 2.4})
	p.draw("wrong", line(x-r, y+r, x+r, y-r), pen{line: ink, width: 2.4})
}
