package drawing

import (
	"math"

	"github.com/tdewolff/canvas"
)

// heightViews shows the height of the curb on a flat roof and on a slope.
func heightViews(p *page, y float64, language string) float64 {
	p.write("view", inset, y+20, wordCut.in(language), lookView)
	f := &figure{p: p, cx: p.w / 2, top: y + 32 + domeHigh, focus: pieceCurb}
	f.section()
	f.labels(language)
	x := f.cx + ringHalf + 15
	p.sight(f.cx+curbHalf, f.y(0), x, f.y(0))
	p.face(x-11, f.y(0), x+11, f.y(0))
	p.face(x-11, f.y(roofLow), x+11, f.y(roofLow))
	p.tape(x, f.y(roofLow), x, f.y(0))
	p.badge(x+23, f.y(roofLow)-7, "1")
	p.badge(x+23, f.y(0), "2")
	p.wrong(f.cx+ringHalf+22, f.y(ringHigh+14), f.cx+ringHalf-3, f.y(ringHigh))
	return slopeView(p, f.y(deckLow)+34, language)
}

// slopeView shows the curb on a tilted roof: the tape stands square to the roof.
func slopeView(p *page, y float64, language string) float64 {
	p.write("view", inset, y, wordSlope.in(language), lookView)
	const tilt = 17.0 // degrees
	m := canvas.Identity.Translate(p.w/2, y+106).Rotate(tilt)
	tilted := func(part string, path *canvas.Path, pen pen) { p.draw(part, path.Transform(m), pen) }
	const half, high = 62.0, 44.0
	tilted("deck", rect(-230, 0, 230, 9), pen{fill: wood, line: woodLine, width: 1})
	tilted("roof", rect(-230, -4, 230, 0), pen{fill: shingle})
	tilted("curb", rect(-half, -4-high, half, -4), pen{fill: wood, line: woodLine, width: 1.2})
	dome := &canvas.Path{}
	dome.MoveTo(-half+8, -4-high-7)
	dome.CubeTo(-half+12, -high-46, half-12, -high-46, half-8, -4-high-7)
	dome.Close()
	tilted("plastic", dome, pen{fill: paled(plastic, 0.4), line: paled(pane, 0.3), width: 1.2})
	tilted("frame", rect(-half-6, -4-high-7, half+6, -4-high+3), pen{fill: metal, line: metalInk, width: 1})
	at := func(x, y float64) (float64, float64) { q := m.Dot(canvas.Point{X: x, Y: y}); return q.X, q.Y }
	foot, head := -4.0, -4-high
	x0, y0 := at(half+16, foot)
	x1, y1 := at(half+16, head)
	for _, level := range [...]float64{foot, head} {
		ax, ay := at(half+4, level)
		bx, by := at(half+28, level)
		p.face(ax, ay, bx, by)
	}
	p.tape(x0, y0, x1, y1)
	bx, by := at(half+40, foot-4)
	p.badge(bx, by, "1")
	bx, by = at(half+40, head)
	p.badge(bx, by, "2")
	drop := 230 * math.Sin(tilt*math.Pi/180)
	p.draw("paper", rect(-1, y+106+drop-6, p.w+1, y+300), pen{fill: paper})
	return y + 106 + drop + 14
}
