package fitcheck

import "math"

// shapeGuesses are sizes that were taken in the wrong way across: around a round one or
// from its middle, level and not along the roof, one side for both (common practice).
func shapeGuesses(sh *sheet, s spot, try func(guess)) {
	if sh.round[s] {
		cost := 9.0
		if sh.measured() == 1 {
			cost = 7
		}
		try(guess{code: ImplausibleSize, spot: s, side: bothSides, scale: 1 / math.Pi, kind: asScale, cost: cost})
		try(guess{code: ImplausibleSize, spot: s, side: bothSides, scale: 2, kind: asScale, cost: cost + 2})
		return
	}
	ofCurb := s == outside || s == inside
	for side := int8(0); ofCurb && sh.along > levelShows && side < 2; side++ {
		if sh.v[s][side] > 0 {
			try(guess{code: CurbWallMismatch, spot: s, side: side, scale: sh.along, kind: asScale, cost: 9})
		}
	}
	if sh.exact[s][0] > 0 && sh.exact[s][0] == sh.exact[s][1] && sh.measured() > 1 {
		for side := int8(0); side < 2; side++ {
			g := guess{code: sh.copiedCode(s), spot: s, side: side, kind: asCopied, cost: 11}
			if told := g.told(sh); told == 0 || told >= oddLow && told <= oddHigh && math.Abs(told-sh.v[s][side]) > copiedShows {
				try(g)
			}
		}
	}
}

// levelShows is how much longer a length is along the roof than level, from where on it
// shows: a rise of 2 in 12 makes 1.014.
const levelShows = 1.01

// copiedShows is how far the lost side must lie from the copied one, in inches: curbs that
// are nearly square are not worth the thought.
const copiedShows = 2

// copiedCode names what a side that was written twice breaks.
func (sh *sheet) copiedCode(s spot) Code {
	switch {
	case s == outside && sh.any(inside), s == inside && sh.any(outside):
		return CurbWallMismatch
	case s == outside && sh.d[0] > 0:
		return DiagonalsImpossible
	}
	return ImplausibleSize
}

// otherSide is what the side that was lost would be: by the diagonals, else by the curb's
// other face; 0 where nothing tells.
func (g *guess) otherSide(sh *sheet) (in, u float64) {
	kept := sh.v[g.spot][1-g.side]
	if g.spot == outside && sh.d[0] > 0 {
		mean := sh.d[0] * sh.d[0]
		if sh.d[1] > 0 {
			mean = (mean + sh.d[1]*sh.d[1]) / 2
		}
		in = math.Sqrt(max(mean-kept*kept, 1)) // 1: no side, and odd by itself
		return in, math.Hypot(sh.du[0]*math.Sqrt(mean)/in, sh.u[g.spot][0]*kept/in)
	}
	return 0, 0
}

// told is what the lost side is in words: also by the curb's other face.
func (g *guess) told(sh *sheet) float64 {
	if in, _ := g.otherSide(sh); in > 0 {
		return in
	}
	switch {
	case g.spot == outside && sh.v[inside][g.side] > 0:
		return sh.v[inside][g.side] + singleWall.Inches()
	case g.spot == inside && sh.v[outside][g.side] > 0:
		return sh.v[outside][g.side] - singleWall.Inches()
	}
	return 0
}

// shapeFinding speaks of a size that was taken in the wrong way across.
func (g *guess) shapeFinding(sh *sheet, f *Finding) {
	if g.kind == asCopied {
		f.Slip = SlipCopied
		g.copiedFinding(sh, f)
		return
	}
	read, meant := g.example(sh)
	f.Numbers = Numbers{"expected_in": meant[0], "found_in": read[0]}
	f.Text = capital(g.about()) + " reads " + tape(read[0]) + " in, so was that taken "
	switch {
	case g.code == CurbWallMismatch:
		f.Slip = SlipLevel
		f.Source = "geometry: a length along the roof is its level length times √(1 + (rise / run)²)"
		f.Text += "level, where along the roof it would be " + tape(meant[0]) + "?"
	case g.scale < 1:
		f.Slip = SlipAround
		f.Source = "geometry: around a circle is 3.1416 times straight across"
		f.Text += "all the way around, where straight across would be " + tape(meant[0]) + "?"
	default:
		f.Slip = SlipFromMiddle
		f.Text += "from the middle to the edge, where straight across would be " + tape(meant[0]) + "?"
	}
}

func (g *guess) copiedFinding(sh *sheet, f *Finding) {
	read := sh.v[g.spot][g.side]
	f.Numbers = Numbers{"found_in": read}
	f.Text = capital(g.about()) + " reads the same " + tape(read) + " in as the other side, "
	if told := g.told(sh); told > 0 {
		f.Numbers["expected_in"] = told
		f.Text += "where the rest makes it about " + tape(told) + ", so was one side written down twice?"
		return
	}
	f.Text += "which the other sizes speak against, so was one side written down twice?"
}

func (g *guess) shapeClause() string {
	switch {
	case g.kind == asCopied:
		return "one side of " + partName(g.spot.topic()) + " was written down twice"
	case g.code == CurbWallMismatch:
		return g.about() + " was taken level and not along the roof"
	case g.scale < 1:
		return g.about() + " was taken all the way around"
	}
	return g.about() + " was taken from the middle to the edge"
}
