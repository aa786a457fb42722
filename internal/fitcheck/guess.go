package fitcheck

import "math"

// guess is one way in which the numbers may have come about: what was done wrong, and
// where. Undoing it leaves numbers that should agree.
type guess struct {
	code  Code
	spot  spot    // where; diagonals and everywhere stand for more than a size
	side  int8    // 0 or 1, bothSides
	scale float64 // to inches; of asPrefix, the parts that the digit counts, 0 for inches after feet
	shift float64 // what was read too much
	wall  reach   // the wall that it supposes, zero for the usual one
	kind  guessKind
	// cost is -2 ln of how often it happens against "nothing wrong" (judgement, from the
	// trade's habit of which slips are common).
	cost float64
	// score is cost and misfit: -2 ln of how likely it is, up to a constant.
	score float64
}

type guessKind uint8

const (
	asWall     guessKind = iota // the wall is not a single one
	asFlare                     // outside over the flashing's foot
	asFrame                     // old frame measured for the curb
	asRetainer                  // retainer measured for the plastic
	asSwap
	asShift
	asScale
	asPrefix // the digit after the point counts inches, or parts of an inch
	asCopied // one side was written down for both
)

const (
	diagonals  = spots     // the pair of diagonals
	everywhere = spots + 1 // all sizes and diagonals
	allSizes   = spots + 2 // all sizes, not the diagonals
)

const bothSides int8 = -1

// eachGuess calls try for every mistake that could have been made with these readings.
func eachGuess(sh *sheet, try func(guess)) {
	wallGuesses(sh, try)
	facesGuesses(sh, try)
	for s := spot(0); s < spots; s++ {
		if sh.any(s) {
			sizeGuesses(sh, s, try)
		}
	}
	if sh.d[0] > 0 {
		shifts(diagonals, sh.d[0] > 0, sh.d[1] > 0, true, try)
		scales(diagonals, sh.d[1] > 0, try)
	}
	if sh.measured() > 1 {
		try(guess{code: TapeHookInch, spot: everywhere, side: bothSides, shift: 1, kind: asShift, cost: 5})
		try(guess{code: TapeHookInch, spot: allSizes, side: bothSides, shift: 1, kind: asShift, cost: 10})
	}
	at, cost := everywhere, 7.0
	if sh.measured() == 1 {
		at = sh.only()
	}
	if sh.looksLikeInches() {
		cost = 15
	}
	for _, m := range units {
		try(guess{code: m.code, spot: at, side: bothSides, scale: m.scale, kind: asScale, cost: cost})
	}
}

// looksLikeInches: sizes of ordinary skylights, most of them on a mark of a tape.
func (sh *sheet) looksLikeInches() bool {
	on, off := 0, 0
	count := func(ls [2]Length, large Length) (ordinary bool) {
		for _, l := range ls {
			switch {
			case l == 0:
			case l > large || l < oddLow*Inch:
				return false
			case l%Sixteenth == 0 || l%Millimetre == 0:
				on++
			default:
				off++
			}
		}
		return true
	}
	for s := range sh.exact {
		if !count(sh.exact[s], oddLarge*Inch) {
			return false
		}
	}
	return count(sh.diag, oddDiagonalHi*Inch) && on >= off
}

// only is the one thing that was measured.
func (sh *sheet) only() spot {
	for s := spot(0); s < spots; s++ {
		if sh.any(s) {
			return s
		}
	}
	return diagonals
}

// units are those that people measure in when they don't say so, and what one is in inches.
var units = [...]struct {
	code  Code
	scale float64
}{{FeetForInches, 12}, {MetricForInches, 1 / 2.54}, {MetricForInches, 1 / 25.4}}

func (sh *sheet) measured() int {
	n := 0
	for s := spot(0); s < spots; s++ {
		if sh.any(s) {
			n++
		}
	}
	if sh.d[0] > 0 {
		n++
	}
	return n
}

// walls other than a single 2x: outside less inside (dossier of lumber and drywall: dry
// and green 2x, 1 5/8 in boards of the 1950s; drywall of IRC 2021 Table R702.3.5).
var walls = [...]struct {
	code Code
	wall reach
	cost float64
}{
	{DrywallIncluded, reach{4, 4.5}, 4},      // 1/2 and 5/8 in
	{DrywallIncluded, reach{3.75, 4}, 7},     // 3/8 in
	{DrywallIncluded, reach{4.5, 4.75}, 8},   // 3/4 in liner
	{DoubledCurb, reach{6, 6.375}, 5},        // two 2x
	{DoubledCurb, reach{7, 7.5}, 8},          // and drywall
	{ThinCurb, reach{1.5, 1.75}, 5},          // 3/4 in board or plywood
	{FlashingIncluded, reach{3.375, 4.5}, 9}, // flare at the foot: 0.3 to 1.5 in
}

func wallGuesses(sh *sheet, try func(guess)) {
	if !sh.any(outside) || !sh.any(inside) {
		return
	}
	for _, w := range walls {
		g := guess{code: w.code, spot: inside, side: bothSides, wall: w.wall, cost: w.cost}
		if w.code != DrywallIncluded {
			g.spot = outside
		}
		if w.code == FlashingIncluded {
			g.kind = asFlare
		}
		try(g)
	}
}

// facesGuesses: another part's edge was measured than was meant.
func facesGuesses(sh *sheet, try func(guess)) {
	if sh.any(outside) && sh.any(frame) {
		try(guess{code: FrameMeasuredForCurb, spot: outside, side: bothSides, kind: asFrame, cost: 6})
	}
	if sh.any(plastic) && (sh.any(retainerIn) || sh.any(retainerOut)) {
		cost := 6.0
		if !sh.any(retainerOut) { // nothing that it reads like
			cost = 8
		}
		try(guess{code: RetainerMeasuredForPlastic, spot: plastic, side: bothSides, kind: asRetainer, cost: cost})
	}
}

func sizeGuesses(sh *sheet, s spot, try func(guess)) {
	w, l := sh.v[s][0], sh.v[s][1]
	// Sides that reading can't tell apart can't be seen to change places.
	if apart := math.Abs(w - l); w > 0 && l > 0 && within(apart, -1, 0, 3*sh.u[s][0]) == surelyOutside {
		try(guess{code: SidesSwapped, spot: s, side: bothSides, kind: asSwap, cost: 5})
	}
	shifts(s, w > 0, l > 0, sh.hookShows(), try)
	scales(s, w > 0 && l > 0, try)
	nominalGuesses(sh, s, try)
	writingGuesses(sh, s, try)
	shapeGuesses(sh, s, try)
}

// scales are one size, or one side of it, in another unit.
func scales(s spot, two bool, try func(guess)) {
	for _, m := range units {
		try(guess{code: m.code, spot: s, side: bothSides, scale: m.scale, kind: asScale, cost: 9})
		for side := int8(0); two && side < 2; side++ {
			try(guess{code: m.code, spot: s, side: side, scale: m.scale, kind: asScale, cost: 12})
		}
	}
}

// shifts are a tape begun at the one-inch mark, the next inch, and the next foot.
func shifts(s spot, first, second, hook bool, try func(guess)) {
	if hook {
		try(guess{code: TapeHookInch, spot: s, side: bothSides, shift: 1, kind: asShift, cost: 10})
	}
	for side := range int8(2) {
		if side == 0 && !first || side == 1 && !second {
			continue
		}
		for _, sign := range [...]float64{1, -1} {
			try(guess{code: TapeHookInch, spot: s, side: side, shift: sign, kind: asShift, cost: 12})
			try(guess{code: MisreadFoot, spot: s, side: side, shift: 12 * sign, kind: asShift, cost: 11})
		}
	}
}

// hookShows: of a gap or a grip alone an inch says nothing, since those vary by as much.
func (sh *sheet) hookShows() bool {
	return sh.measured() > 2 || sh.any(inside) || sh.d[0] > 0
}

// nominalGuesses: "24 x 48" is what the trade calls an opening of 22 1/2 x 46 1/2 between
// rafters, whose curb is 25 1/2 x 49 1/2 outside; "2 x 4" is the same in feet.
func nominalGuesses(sh *sheet, s spot, try func(guess)) {
	w, l := sh.v[s][0], sh.v[s][1]
	if sh.round[s] || w == 0 || l == 0 {
		return
	}
	switch {
	case max(w, l) <= 10 && w == math.Trunc(w) && l == math.Trunc(l):
		try(guess{code: NominalSize, spot: s, side: bothSides, scale: 12, kind: asScale, cost: 6})
		if off := nominalOff(s); off != 0 {
			try(guess{code: NominalSize, spot: s, side: bothSides, scale: 12, shift: off, kind: asScale, cost: 7})
		}
	case nominalOff(s) != 0 && min(w, l) >= 12 && math.Mod(w, 2) == 0 && math.Mod(l, 2) == 0:
		try(guess{code: NominalSize, spot: s, side: bothSides, shift: nominalOff(s), kind: asShift, cost: 6})
	}
}

// nominalOff is what the name of a curb's size is over its measure, rafters of 1 1/2 in
// standing on a module (spacings: IRC 2021 Tables R802.4.1); 0 for what
// has no such name.
func nominalOff(s spot) float64 {
	switch s {
	case outside:
		return -1.5
	case inside:
		return 1.5
	}
	return 0
}
