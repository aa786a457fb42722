package drawing

import (
	"github.com/tdewolff/canvas"
)

// The skylight that all lessons are drawn on, in units from its middle. It is not to
// scale: what a tape must touch is thick enough to be seen on a phone. From inside out,
// as parts really lie: the bulge passes the retainer's opening, the sheet lies in the
// frame under the retainer, and the frame caps the curb with its flashing.
const (
	footHalf   = 76.0  // foot of the bulge
	openHalf   = 84.0  // inner face of the curb's wood
	holeHalf   = 93.0  // inner edge of the retainer
	curbHalf   = 106.0 // outer face of the curb's wood
	coverHalf  = 109.0 // outer face of the flashing on it
	sheetHalf  = 114.0 // edge of the plastic
	flangeIn   = 115.0 // inner face of the frame's flange
	flangeOut  = 121.0
	ringInside = 123.0 // retainer's leg
	ringHalf   = 129.0 // outer edge of the retainer

	plateHigh  = 6.0 // levels above the curb's top
	lipHigh    = 11.0
	ringHigh   = 17.0
	domeHigh   = 76.0
	flangeLow  = -24.0
	ringLow    = -5.0
	roofLow    = -62.0
	deckLow    = -74.0
	liningDeep = 26.0 // from the curb's top down to where the drywall begins
)

// piece is a part of the skylight that a lesson is about.
type piece int

const (
	pieceNone piece = iota
	pieceRoof
	pieceCurb
	pieceFrame
	piecePlastic
	pieceRetainer
)

// figure draws the skylight: cx is its middle, top the height of the curb's top.
type figure struct {
	p       *page
	cx, top float64
	lift    float64 // the frame and all on it, taken up off the curb
	open    float64 // the retainer, taken up off the plastic
	lining  bool    // drywall inside the curb
	focus   piece
}

// y is the height on the page of a level above the curb's top.
func (f *figure) y(level float64) float64 { return f.top - level }

// pen paints a piece; all but the one in focus stand back.
func (f *figure) pen(of piece, p pen) pen {
	if f.focus == pieceNone || of == f.focus || of == pieceRoof {
		return p
	}
	p.fill, p.line = paled(p.fill, 0.45), paled(p.line, 0.45)
	return p
}

// pair draws a shape on the right and its mirror image on the left; points are given as
// distance from the middle and level above the curb's top.
func (f *figure) pair(part string, of piece, pen pen, spots ...float64) {
	for i, side := range [...]string{".left", ".right"} {
		sign := float64(2*i - 1)
		xy := make([]float64, 0, len(spots))
		for j := 0; j+1 < len(spots); j += 2 {
			xy = append(xy, f.cx+sign*spots[j], f.y(spots[j+1]))
		}
		f.p.draw(part+side, poly(true, xy...), f.pen(of, pen))
	}
}

// section is the view of the skylight cut through its middle.
func (f *figure) section() {
	f.roof()
	f.curb()
	f.frame()
	f.sheet()
	f.retainer()
}

func (f *figure) roof() {
	edge := f.cx // to the edge of the picture
	f.pair("deck", pieceRoof, pen{fill: wood, line: woodLine, width: 1}, openHalf, roofLow-3, edge, roofLow-3, edge, deckLow, openHalf, deckLow)
	f.pair("roof", pieceRoof, pen{fill: shingle}, coverHalf, roofLow, edge, roofLow, edge, roofLow-5, coverHalf, roofLow-5)
}

func (f *figure) curb() {
	f.pair("curb", pieceCurb, pen{fill: wood, line: woodLine, width: 1.4}, openHalf, 0, curbHalf, 0, curbHalf, roofLow-3, openHalf, roofLow-3)
	for _, x := range [...]float64{openHalf + 6, openHalf + 11.5, openHalf + 16.5} {
		f.pair("grain", pieceCurb, pen{line: woodLine, width: 0.6}, x, -4, x+1, -30, x, roofLow+3, x+1, -30)
	}
	f.pair("flashing", pieceCurb, pen{fill: lead}, curbHalf, -1, coverHalf, -1, coverHalf, roofLow, curbHalf, roofLow)
	f.pair("flashing.foot", pieceCurb, pen{fill: lead}, coverHalf, roofLow+2.5, coverHalf+30, roofLow+2.5, coverHalf+30, roofLow, coverHalf, roofLow)
	if f.lining {
		low, far := deckLow-8, openHalf-9
		f.pair("drywall", pieceRoof, pen{fill: white, line: faint, width: 1}, openHalf, -liningDeep, far, -liningDeep, far, low, openHalf, low)
	}
}

func (f *figure) frame() {
	u := f.lift
	f.pair("frame", pieceFrame, pen{fill: metal, line: metalInk, width: 1.2},
		openHalf, u, flangeIn, u, flangeIn, u+flangeLow, flangeOut, u+flangeLow, flangeOut, u+plateHigh, openHalf, u+plateHigh)
}

func (f *figure) sheet() {
	low, high := f.y(f.lift+plateHigh), f.y(f.lift+lipHigh)
	crown := f.y(f.lift + domeHigh)
	thick := low - high
	p := &canvas.Path{}
	p.MoveTo(f.cx-sheetHalf, low)
	p.LineTo(f.cx-sheetHalf, high)
	p.LineTo(f.cx-footHalf, high)
	p.CubeTo(f.cx-footHalf+6, crown+16, f.cx-40, crown, f.cx, crown)
	p.CubeTo(f.cx+40, crown, f.cx+footHalf-6, crown+16, f.cx+footHalf, high)
	p.LineTo(f.cx+sheetHalf, high)
	p.LineTo(f.cx+sheetHalf, low)
	in := footHalf - thick
	p.LineTo(f.cx+in, low)
	p.CubeTo(f.cx+in-6, crown+16+thick, f.cx+38, crown+thick, f.cx, crown+thick)
	p.CubeTo(f.cx-38, crown+thick, f.cx-in+6, crown+16+thick, f.cx-in, low)
	p.Close()
	f.p.draw("plastic", p, f.pen(piecePlastic, pen{fill: plastic, line: pane, width: 1.4}))
}

func (f *figure) retainer() {
	u := f.lift + f.open
	f.pair("retainer", pieceRetainer, pen{fill: steel, line: metalInk, width: 1.2},
		holeHalf, u+lipHigh, ringInside, u+lipHigh, ringInside, u+ringLow, ringHalf, u+ringLow, ringHalf, u+ringHigh, holeHalf, u+ringHigh)
}
