package drawing

import "github.com/tdewolff/canvas"

// side draws the heights from the side, to scale: the curb on the roof, the dome over it.
func (m *measured) side(p *page, y float64) float64 {
	p.write("view", inset, y+14, wordSide.in(m.language), lookView)
	curb, rise := m.curbHigh.inches(), m.domeHigh.inches()
	wide, known := m.wide()
	if !known {
		wide = 3 * (curb + rise)
	}
	if wide <= 0 {
		wide = 1
	}
	room := p.w - 2*inset - 4*rowDeep
	const tallest = 120.0
	scale := room / wide
	if curb+rise > 0 {
		scale = min(scale, tallest/(curb+rise))
	}
	half := max(wide*scale, 2*thinnest) / 2
	cx, limit := inset+room/2, y+20
	riseHigh, curbHigh := max(rise*scale, 2), curb*scale
	top := limit + max(10, m.roomOver(m.domeHigh, riseHigh), m.roomOver(m.curbHigh, curbHigh)-riseHigh)
	joint := top + riseHigh
	floor := joint + curbHigh
	m.domeSide(p, cx, m.domeHalf(half, scale), top, joint, known)
	m.curbSide(p, cx, half, joint, floor, known)
	m.ground(p, cx, m.domeHalf(half, scale), floor)
	x := cx + room/2 + 22
	if m.domeHigh != nil {
		m.high(p, m.domeHigh, cx+half, x, top, joint, limit)
	}
	if m.curbHigh != nil {
		m.high(p, m.curbHigh, cx+half, x+rowDeep, joint, floor, limit)
	}
	return floor + 16
}

func (m *measured) domeSide(p *page, cx, half, top, joint float64, known bool) {
	if m.domeHigh == nil {
		return
	}
	dome := &canvas.Path{}
	dome.MoveTo(cx-half, joint)
	dome.CubeTo(cx-half*0.9, top-(joint-top)/3, cx+half*0.9, top-(joint-top)/3, cx+half, joint)
	dome.Close()
	p.draw("dome", dome, sidePen(pen{fill: plastic, line: pane, width: 1.8}, m.domeHigh.doubtful, known))
}

func (m *measured) curbSide(p *page, cx, half, joint, floor float64, known bool) {
	if m.curbHigh != nil {
		p.draw("curb", rect(cx-half, joint, cx+half, floor), sidePen(pen{fill: wood, line: woodLine, width: 1.6}, m.curbHigh.doubtful, known))
	}
}

// ground is what the measured thing stands on: the roof, or the flat lip of the plastic.
func (m *measured) ground(p *page, cx, half, floor float64) {
	if m.curbHigh != nil {
		p.draw("roof", rect(inset, floor, p.w-inset, floor+5), pen{fill: shingle})
		return
	}
	p.draw("lip", rect(cx-half-9, floor, cx+half+9, floor+4), pen{fill: plastic, line: pane, width: 1.4})
}

// sidePen dashes what is only as wide as somebody guessed, and marks what is doubtful.
func sidePen(o pen, doubtful, known bool) pen {
	if !known {
		o.dashes = []float64{4, 3}
	}
	if doubtful {
		o.line, o.width, o.dashes = red, 3.2, []float64{2.2, 1.6}
	}
	return o
}

func (m *measured) high(p *page, h *height, from, x, y0, y1, limit float64) {
	for _, y := range [...]float64{y0, y1} {
		p.draw("witness", line(from+2, y, x+5, y), pen{line: faint, width: 0.7})
	}
	p.upright(x, y0, y1, m.heightOf(h), limit, y1+40)
}

func (m *measured) heightOf(h *height) dimension {
	return dimension{h.letter + "  " + inches(h.high), m.check(h.doubtful), true}
}

// roomOver is how much room the words of a height need over its dimension line, where
// they don't fit along it.
func (m *measured) roomOver(h *height, high float64) float64 {
	if h == nil {
		return 0
	}
	if w := m.heightOf(h).width(); high < w+wordRoom {
		return w + 10
	}
	return 0
}

// wide is the width that the heights stand on, in inches: of the curb, else of what lies
// on it.
func (m *measured) wide() (float64, bool) {
	for _, os := range [...][]outline{m.box, m.dome} {
		for i := range os {
			if w := largest(os[i].across); w > 0 {
				return w, true
			}
		}
	}
	return 0, false
}

// domeHalf is half the dome's width on the page, where it is known and no wider than what
// it stands on.
func (m *measured) domeHalf(half, scale float64) float64 {
	for i := len(m.dome) - 1; i >= 0; i-- { // the bulge comes last, the sheet first
		if w := largest(m.dome[i].across); w > 0 {
			return min(w*scale/2, half)
		}
	}
	return half
}

func (h *height) inches() float64 {
	if h == nil {
		return 0
	}
	return h.high.Inches()
}
