package fitcheck

import "math"

// reach is an interval in inches.
type reach struct{ low, high float64 }

func (s reach) off(x float64) float64 { return max(s.low-x, x-s.high, 0) }

// relations are what the sizes of a sound skylight have to do with each other, per
// direction in total (common practice unless said otherwise).
type relations struct {
	wall reach // outside less inside of the curb
	gap  reach // old frame's inside less outside of the curb
	grip reach // plastic less the opening that it lies around
	rim  reach // retainer's outside less plastic
}

func soundRelations(rules *Rules) relations {
	return relations{
		wall: reach{singleWall.Inches(), (singleWall + rules.Flashing).Inches()},
		gap:  reach{rules.Gap.SoundLow.Inches(), rules.Gap.Loose.Inches()},
		grip: reach{2 * rules.Grip.Short.Inches(), 2 * rules.Grip.Long.Inches()},
		rim:  reach{0.375, 6},
	}
}

// misfit is how badly the readings go together: the sum of squares of how far each
// relation is outside its reach, in standard uncertainties of what was read. It is 0
// where all that is known agrees.
func (sh *sheet) misfit(rel *relations) float64 {
	sum := sh.pairMisfit(outside, inside, rel.wall, 0) +
		sh.pairMisfit(frame, outside, rel.gap, 0.25) +
		sh.pairMisfit(plastic, retainerIn, rel.grip, 0.5) +
		sh.pairMisfit(retainerOut, plastic, rel.rim, 0.5) +
		sh.pairMisfit(retainerOut, retainerIn, reach{1, 10}, 0.5) +
		sh.pairMisfit(retainerIn, bulge, reach{0, 6}, 0.5)
	return sum + sh.diagonalMisfit() + sh.groupMisfit() + sh.odd()
}

// pairMisfit holds two sizes against each other: each side's difference against a reach,
// and the two differences against each other, since walls, gaps and lips are the same all
// around; uneven is what they may differ by.
func (sh *sheet) pairMisfit(a, b spot, s reach, uneven float64) float64 {
	if sh.round[a] != sh.round[b] {
		return 0
	}
	var sum, vv float64
	var diff [2]float64
	n := 0
	for side := range 2 {
		x, y := sh.v[a][side], sh.v[b][side]
		if x == 0 || y == 0 {
			continue
		}
		v := sh.u[a][side]*sh.u[a][side] + sh.u[b][side]*sh.u[b][side]
		diff[side] = x - y
		off := s.off(diff[side])
		sum += off * off / v
		vv += v
		n++
	}
	if n == 2 {
		if off := math.Abs(diff[0]-diff[1]) - uneven; off > 0 {
			sum += off * off / vv
		}
	}
	return sum
}

// diagonalResidual is what the sides' diagonal is over the mean of the read ones: for
// any parallelogram d1² + d2² = 2(w² + l²) (parallelogram law). One diagonal alone says
// less, since a curb may lean.
func (sh *sheet) diagonalResidual() (r, u float64, ok bool) {
	w, l := sh.v[outside][0], sh.v[outside][1]
	if sh.d[0] == 0 || w == 0 || l == 0 {
		return 0, 0, false
	}
	side := math.Sqrt(w*w + l*l)
	us := math.Hypot(w*sh.u[outside][0], l*sh.u[outside][1]) / side
	if sh.d[1] == 0 {
		const lean = 0.15 // half of what a corner within 1/2 in in 20 ft makes of 48 in
		return side - sh.d[0], math.Sqrt(us*us + sh.du[0]*sh.du[0] + lean*lean), true
	}
	mean := math.Sqrt((sh.d[0]*sh.d[0] + sh.d[1]*sh.d[1]) / 2)
	return side - mean, math.Hypot(us, sh.du[0]), true
}

func (sh *sheet) diagonalMisfit() float64 {
	r, u, ok := sh.diagonalResidual()
	if !ok {
		return 0
	}
	return r * r / (u * u)
}

// groupMisfit holds the dome against its curb, roughly: the plastic is about as large as
// the curb, whichever way its sides were named.
func (sh *sheet) groupMisfit() float64 {
	a, b := sh.first(plastic, retainerIn, retainerOut), sh.first(outside, frame, inside)
	if a < 0 || b < 0 || sh.round[a] != sh.round[b] {
		return 0
	}
	sum := 0.0
	for _, f := range [...]func(x, y float64) float64{lower, higher} {
		off := (reach{-7, 7}).off(f(sh.v[a][0], sh.v[a][1]) - f(sh.v[b][0], sh.v[b][1]))
		sum += off * off
	}
	return sum
}

func lower(x, y float64) float64 {
	if y == 0 {
		return x
	}
	return min(x, y)
}

func higher(x, y float64) float64 { return max(x, y) }

// first is the first of some spots that was measured whole, -1 for none.
func (sh *sheet) first(ss ...spot) spot {
	for _, s := range ss {
		if sh.v[s][0] > 0 && (sh.round[s] || sh.v[s][1] > 0) {
			return s
		}
	}
	return -1
}

// What skylights measure: hardly any is under 8 in or over 10 ft, and few over 8 ft
// (common practice). The weights say how hardly.
const (
	oddLow, oddHigh, oddLarge     = 8, 120, 96
	oddWeight, largeWeight        = 12, 4
	oddDiagonalLow, oddDiagonalHi = 11, 170
)

// odd weighs readings that are out of the ordinary by themselves.
func (sh *sheet) odd() float64 {
	sum := 0.0
	for s := range sh.v {
		for _, x := range sh.v[s] {
			switch {
			case x == 0:
			case x < oddLow || x > oddHigh:
				sum += oddWeight
			case x > oddLarge:
				sum += largeWeight
			}
		}
	}
	for _, d := range sh.d {
		if d > 0 && (d < oddDiagonalLow || d > oddDiagonalHi) {
			sum += oddWeight
		}
	}
	return sum
}
