package drawing

// diagonalViews shows the curb from above with both tapes, and one corner close up.
func diagonalViews(p *page, y float64, language string) float64 {
	v := &plan{p: p, cx: p.w / 2, cy: y + 44 + ringHalf - deeper}
	v.roof()
	v.curb()
	p.write("view", inset, y+20, wordAbove.in(language), lookView)
	x, d := coverHalf, coverHalf-deeper
	p.pointed(v.cx-x, v.cy+d, v.cx+x, v.cy-d)
	p.pointed(v.cx-x, v.cy-d, v.cx+x, v.cy+d)
	for i, c := range [...]spot{{-x, -d}, {x, d}, {-x, d}, {x, -d}} {
		p.corner(v.cx+c.x, v.cy+c.level, c.x/x, c.level/d, 14)
		p.badge(v.cx+c.x+c.x/x*17, v.cy+c.level+c.level/d*10, string(rune('1'+i)))
	}
	return cornerView(p, v.cy+ringHalf-deeper+46, language)
}

// corner marks an outside corner with an angle.
func (p *page) corner(x, y, sx, sy, long float64) {
	for _, w := range [...]pen{{line: white, width: 4.5}, {line: red, width: 2.2}} {
		p.draw("face", poly(false, x-sx*long, y, x, y, x, y-sy*long), w)
	}
}

// cornerView shows where the tape ends: on the outside of the flashing, not on the inside.
func cornerView(p *page, y float64, language string) float64 {
	p.write("view", inset, y, wordClose.in(language), lookView)
	const wide, high, board = 200.0, 104.0, 58.0
	left, top := inset, y+10
	right, bottom := left+wide, top+high
	cx, cy := left+34, top+26 // the outside corner
	p.draw("roof", rect(left, top, right, bottom), pen{fill: paled(roofing, 0.72)})
	p.draw("flashing", poly(true, cx, cy, right, cy, right, bottom, cx, bottom), pen{fill: lead})
	p.draw("curb", poly(true, cx+6, cy+6, right, cy+6, right, bottom, cx+6, bottom), pen{fill: wood, line: woodLine, width: 1.2})
	p.draw("opening", rect(cx+board, cy+board, right, bottom), pen{fill: ground, line: woodLine, width: 1.2})
	p.draw("joint", line(cx+6, cy+board, cx+board, cy+board), pen{line: woodLine, width: 1})
	const far = 190.0 // the other end lies out of sight
	p.pointed(cx, cy, cx+far, cy+far*(coverHalf-deeper)/coverHalf)
	p.draw("paper", rect(left-1, bottom, p.w, bottom+70), pen{fill: paper})
	p.draw("paper", rect(right, top-1, p.w, bottom+1), pen{fill: paper})
	p.corner(cx, cy, -1, -1, 22)
	p.badge(cx-15, cy-9, "1")
	p.wrong(cx+26, cy+board+5, cx+board, cy+board)
	return bottom + 26
}
