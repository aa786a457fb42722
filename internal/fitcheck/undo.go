package fitcheck

import "math"

// undo is the sheet as it would have been read without the mistake, and the relations
// that then hold.
func (g *guess) undo(sh *sheet, rel relations) (fixed sheet, _ relations) {
	fixed = *sh
	switch g.kind {
	case asWall:
		rel.wall = g.wall
	case asFlare:
		fixed.fromInside()
		rel.wall = reach{-math.MaxFloat64, math.MaxFloat64}
	case asFrame:
		// The frame stands on the curb with a sound gap, and the tape lay on its metal.
		rel.wall = reach{rel.wall.low + rel.gap.low, rel.wall.high + rel.gap.high + 0.25}
		rel.gap = reach{-0.375, 0}
	case asRetainer:
		rel.rim = reach{-0.125, 0.125} // two readings of one edge
		rel.grip = reach{1.5, 7}
		if !sh.any(retainerOut) {
			rel.grip.low = 4
		}
	case asSwap:
		fixed.v[g.spot][0], fixed.v[g.spot][1] = sh.v[g.spot][1], sh.v[g.spot][0]
		fixed.u[g.spot][0], fixed.u[g.spot][1] = sh.u[g.spot][1], sh.u[g.spot][0]
	case asPrefix:
		g.rewrite(&fixed)
	case asCopied:
		fixed.v[g.spot][g.side], fixed.u[g.spot][g.side] = g.otherSide(sh)
	default:
		g.correctAll(&fixed)
	}
	return fixed, rel
}

// extra is what a guess leaves open of its own: a flare, of the wall that was read; one
// diagonal taken for wrong, how far the two still lie apart beyond a lean; another unit for
// what looks like inches, that a smaller unit makes any diagonal agree better.
func (g *guess) extra(sh, fixed *sheet) float64 {
	switch {
	case g.kind == asFlare:
		return sh.pairMisfit(outside, inside, g.wall, 0.5)
	case g.spot == diagonals && g.side != bothSides && fixed.d[1] > 0:
		off := max(math.Abs(fixed.d[0]-fixed.d[1])-squareAsk.Inches(), 0)
		return off * off / (fixed.du[0]*fixed.du[0] + fixed.du[1]*fixed.du[1])
	case g.spot == everywhere && g.kind == asScale && g.scale < 1 && sh.looksLikeInches():
		return sh.diagonalMisfit() - fixed.diagonalMisfit()
	}
	return 0
}

// fromInside puts the outside where a single wall with honest flashing would have it.
func (sh *sheet) fromInside() {
	const mid, u = 3.1875, 0.11 // the middle of 3 to 3 3/8 in, and a rectangle's width of it
	for side := range 2 {
		if in := sh.v[inside][side]; in > 0 && sh.v[outside][side] > 0 {
			sh.v[outside][side], sh.u[outside][side] = in+mid, math.Hypot(sh.u[inside][side], u)
		}
	}
}

// correctAll takes every reading that the guess is about back to what it should have been.
func (g *guess) correctAll(sh *sheet) {
	from, to := g.spot, g.spot+1
	if g.spot >= everywhere {
		from, to = 0, spots
	}
	for s := from; s < min(to, spots); s++ {
		for side := range sh.v[s] {
			if sh.v[s][side] > 0 && (g.side == bothSides || int(g.side) == side) {
				sh.v[s][side], sh.u[s][side] = g.correct(sh.v[s][side], sh.u[s][side])
			}
		}
	}
	if g.spot != everywhere && g.spot != diagonals {
		return
	}
	for i := range sh.d {
		if sh.d[i] > 0 && (g.side == bothSides || int(g.side) == i) {
			sh.d[i], sh.du[i] = g.correct(sh.d[i], sh.du[i])
		}
	}
}

// correct takes one reading back to what it should have been. In another unit the hand
// errs as in inches, but the number is written more or less finely: to a hundredth of a
// foot, a whole centimetre or a tenth.
func (g *guess) correct(v, u float64) (float64, float64) {
	switch {
	case g.kind == asShift:
		return v - g.shift, u
	case !unitSlip(g.code): // the same tape, another way across
		return v * g.scale, u * g.scale
	}
	fine := 1 / 25.4
	switch {
	case g.scale == 12:
		fine = 0.5
	case v == math.Trunc(v):
		fine = max(g.scale, fine)
	}
	return v*g.scale - g.shift, math.Hypot(0.06, fine/math.Sqrt(12))
}

// judge scores a guess against the sheet.
func (g *guess) judge(sh *sheet, rel *relations) {
	fixed, r := g.undo(sh, *rel)
	for s := range fixed.v {
		if fixed.v[s][0] < 0 || fixed.v[s][1] < 0 {
			g.score = math.MaxFloat64
			return
		}
	}
	g.score = g.cost + fixed.misfit(&r) + g.extra(sh, &fixed)
}
