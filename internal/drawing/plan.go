package drawing

import "github.com/tdewolff/canvas"

// deeper is by how much the plan is less deep than wide, on each side of the middle.
const deeper = 40.0

// plan draws the skylight as seen from above, on the same middle and to the same
// widths as the section over it; cy is its middle's height.
type plan struct {
	p      *page
	cx, cy float64
}

// ring is the area between two half widths.
func (v *plan) ring(part string, outer, inner, r float64, pen pen) {
	path := v.outline(outer, r)
	if inner > 0 {
		path = path.Append(v.outline(inner, max(r-(outer-inner), 0)).Reverse())
	}
	v.p.draw(part, path, pen)
}

func (v *plan) outline(half, r float64) *canvas.Path {
	x0, y0, x1, y1 := v.cx-half, v.cy-half+deeper, v.cx+half, v.cy+half-deeper
	if r <= 0 {
		return rect(x0, y0, x1, y1)
	}
	return rounded(x0, y0, x1, y1, r)
}

func (v *plan) roof() {
	v.p.draw("roof", rect(0, v.cy-ringHalf+deeper-14, v.p.w, v.cy+ringHalf-deeper+26), pen{fill: paled(roofing, 0.72)})
}

// curb is the box alone: four boards around the opening, flashing outside.
func (v *plan) curb() {
	v.ring("flashing", coverHalf, curbHalf, 0, pen{fill: lead})
	v.ring("curb", curbHalf, openHalf, 0, pen{fill: wood, line: woodLine, width: 1.2})
	v.ring("opening", openHalf, 0, 0, pen{fill: ground, line: woodLine, width: 1.2})
	in, out := openHalf-deeper, curbHalf-deeper
	for _, x := range [...]float64{-1, 1} { // the end boards run through
		for _, y := range [...]float64{-1, 1} {
			v.p.draw("joint", line(v.cx+x*openHalf, v.cy+y*in, v.cx+x*curbHalf, v.cy+y*in), pen{line: woodLine, width: 0.9})
			v.p.draw("grain", line(v.cx-60, v.cy+y*(in+out)/2+y*2, v.cx+60, v.cy+y*(in+out)/2), pen{line: woodLine, width: 0.5})
		}
	}
}

// sheet is the plastic with its flat lip and the foot of its bulge.
func (v *plan) sheet() {
	v.ring("plastic", sheetHalf, 0, 3, pen{fill: plastic, line: pane, width: 1.8})
	v.bulge()
}

func (v *plan) bulge() {
	v.ring("bulge", footHalf, 0, 20, pen{fill: paled(plastic, 0.35), line: pane, width: 1.6})
	v.ring("shine", footHalf-15, 0, 18, pen{line: white, width: 2.4})
	v.ring("shine", footHalf-31, 0, 12, pen{line: white, width: 1.6})
}

// retainer is the metal that holds the plastic down, with its screws.
func (v *plan) retainer() {
	v.ring("plastic", holeHalf, 0, 0, pen{fill: plastic})
	v.bulge()
	v.ring("retainer", ringHalf, holeHalf, 0, pen{fill: steel, line: metalInk, width: 1.4})
	mid := (ringHalf + holeHalf) / 2
	for _, s := range [...]float64{-1, 1} {
		for _, x := range [...]float64{-66, 0, 66} {
			v.screw(v.cx+x, v.cy+s*(mid-deeper))
		}
		for _, y := range [...]float64{-30, 30} {
			v.screw(v.cx+s*mid, v.cy+y)
		}
		for _, t := range [...]float64{-1, 1} {
			v.p.draw("joint", line(v.cx+s*holeHalf, v.cy+t*(holeHalf-deeper), v.cx+s*ringHalf, v.cy+t*(ringHalf-deeper)), pen{line: metalInk, width: 0.9})
		}
	}
}

func (v *plan) screw(x, y float64) {
	v.p.draw("screw", circle(x, y, 3), pen{fill: white, line: metalInk, width: 0.9})
	v.p.draw("screw", line(x-1.6, y-1.6, x+1.6, y+1.6), pen{line: metalInk, width: 0.9})
}

// under is the frame turned over: its down-turned flange, seen from below.
func (v *plan) under() {
	v.ring("frame", flangeOut, flangeIn, 0, pen{fill: steel, line: metalInk, width: 1.4})
	v.ring("plate", flangeIn, openHalf, 0, pen{fill: paled(metal, 0.3), line: metalInk, width: 1})
	v.ring("plastic", openHalf, 0, 0, pen{fill: paled(plastic, 0.3), line: metalInk, width: 1})
}
