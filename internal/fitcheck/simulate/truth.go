// Package simulate tries the fit check on skylights that are known, because they are made
// up: a true curb or dome, the reading noise of a hand and a tape, and on purpose one of
// the mistakes that people make with them. What the check then says is counted against
// what was really done, so that a rule that nags about right numbers, or lets a wrong one
// through, shows up as a figure and not as a feeling.
//
// A run depends on its seed alone.
package simulate

import (
	"math"
	"math/rand/v2"
)

// pair is a width and a length in inches; a round outline has its diameter in both.
type pair [2]float64

func (p pair) plus(d float64) pair { return pair{p[0] + d, p[1] + d} }

// skylight is what is on the roof, as it truly is or as it was read. A size of 0 was not
// measured.
type skylight struct {
	round   bool
	unit    bool // a complete unit is wanted; otherwise a dome
	outside pair // of the curb, flashing and all
	inside  pair // of the curb, wood to wood
	frame   pair // inside of the old frame's flange
	diag    pair // over the outside of the curb
	plastic pair
	opening pair    // of the retainer
	retain  pair    // outside of the retainer
	slope   float64 // of the roof, inches of rise in 12; 0 where not told
	step    float64 // how finely the tape is read, in
}

// sizes are all pairs that were measured, to be read or spoiled alike.
func (s *skylight) sizes() []*pair {
	var ps []*pair
	for _, p := range []*pair{&s.outside, &s.inside, &s.frame, &s.diag, &s.plastic, &s.opening, &s.retain} {
		if p[0] > 0 {
			ps = append(ps, p)
		}
	}
	return ps
}

// rect says whether the sides differ by enough that swapping them shows.
func (s *skylight) oblong() bool {
	p := s.outside
	if !s.unit {
		p = s.plastic
	}
	return math.Abs(p[0]-p[1]) > 2
}

// draw makes a skylight without a mistake: a single wall of 2x lumber, dry, green or old,
// with flashing inside what is honestly part of it, nearly square; or a dome whose edge
// lies under its retainer as it should.
func draw(r *rand.Rand) *skylight {
	s := &skylight{round: r.Float64() < 0.2, unit: r.Float64() < 0.6}
	size := pair{sides(r), sides(r)}
	if s.round || r.Float64() < 0.25 {
		size[1] = size[0]
	}
	if s.unit {
		s.drawCurb(r, size)
	} else {
		s.drawDome(r, size)
	}
	if r.Float64() < 0.1 {
		s.alone()
	}
	return s
}

// sides are openings as they are built: between rafters, by the even inch, or any.
func sides(r *rand.Rand) float64 {
	between := []float64{14.5, 22.5, 30.5, 46.5}
	switch x := r.Float64(); {
	case x < 0.4:
		return between[r.IntN(len(between))]
	case x < 0.6:
		return float64(16 + 2*r.IntN(24))
	}
	return 14 + float64(r.IntN(50*8))/8
}

func (s *skylight) drawCurb(r *rand.Rand, inside pair) {
	wall := 3.0 // dressed dry 2x lumber on both sides
	switch x := r.Float64(); {
	case x < 0.15:
		wall = 3.125 // green
	case x < 0.2:
		wall = 3.25 // old, 1 5/8 in
	}
	flashing := r.Float64() * math.Min(0.25, 3.375-wall)
	s.inside, s.outside = inside, inside.plus(wall+flashing)
	if r.Float64() < 0.4 {
		s.frame = s.outside.plus(0.3 + 0.3*r.Float64())
	}
	if !s.round && r.Float64() < 0.6 {
		s.diag = diagonals(s.outside, (2*r.Float64()-1)*0.12)
	}
	if s.diag[0] > 0 && r.Float64() < 0.25 {
		s.inside = pair{}
	}
}

func (s *skylight) drawDome(r *rand.Rand, opening pair) {
	s.opening = opening
	s.plastic = opening.plus(1.2 + 1.6*r.Float64())
	if r.Float64() < 0.5 {
		s.retain = s.plastic.plus(0.5 + 0.75*r.Float64())
	}
}

// alone leaves the one size that the part needs, with nothing to check it against.
func (s *skylight) alone() {
	if s.unit {
		*s = skylight{round: s.round, unit: true, outside: s.outside}
		return
	}
	*s = skylight{round: s.round, plastic: s.plastic}
}

// diagonals of a curb whose corners are off the square by a skew in inches over its width.
func diagonals(p pair, skew float64) pair {
	w, l := p[0], p[1]
	sin := skew / w
	cross := 2 * w * l * sin
	return pair{math.Sqrt(w*w + l*l + cross), math.Sqrt(w*w + l*l - cross)}
}

// handSigma is the standard deviation of a lay reading on a roof, hook, sag and rough edge
// included: an eighth of an inch at 95 percent (common practice, no source).
const handSigma = 0.06

// read measures all sizes with a hand and a tape: to the sixteenth of an inch, by some
// to the eighth, by a few to the millimetre.
func (s *skylight) read(r *rand.Rand) {
	s.step = 1.0 / 16
	switch x := r.Float64(); {
	case x < 0.25:
		s.step = 1.0 / 8
	case x < 0.35:
		s.step = 1 / 25.4
	}
	for _, p := range s.sizes() {
		p[0] = s.mark(p[0] + handSigma*r.NormFloat64())
		if s.round {
			p[1] = p[0]
			continue
		}
		p[1] = s.mark(p[1] + handSigma*r.NormFloat64())
	}
}

// mark is the tape's mark nearest to a length.
func (s *skylight) mark(in float64) float64 { return math.Round(in/s.step) * s.step }
