package simulate

import (
	"math"
	"math/rand/v2"

	"example.com/intake-bot/internal/fitcheck"
)

// Mistake is one way of getting it wrong.
type Mistake struct {
	Name string
	// Codes are the findings that name it rightly: several where the same numbers can
	// come about in several ways, so that naming either is right.
	Codes []fitcheck.Code
	// spoil works it into a skylight before it is read, or reports false where it can't
	// happen to that one; after works it into what was read.
	spoil func(*rand.Rand, *skylight) bool
	after func(*rand.Rand, *skylight) bool
}

// Mistakes are those that the fit check names, in the order of its codes.
func Mistakes() []Mistake {
	return []Mistake{
		{Name: "inside taken between 1/2 or 5/8 in drywall", Codes: codes(fitcheck.DrywallIncluded), spoil: drywall(0.5, 0.625)},
		{Name: "inside taken between 3/8 in drywall", Codes: codes(fitcheck.DrywallIncluded, fitcheck.FlashingIncluded), spoil: drywall(0.375)},
		{Name: "outside taken over the foot of the flashing", Codes: codes(fitcheck.FlashingIncluded, fitcheck.DrywallIncluded, fitcheck.FrameMeasuredForCurb), spoil: flare},
		{Name: "the curb is doubled", Codes: codes(fitcheck.DoubledCurb), spoil: wall(6)},
		{Name: "the curb is of boards", Codes: codes(fitcheck.ThinCurb), spoil: wall(1.5)},
		{Name: "old frame taken for the curb", Codes: codes(fitcheck.FrameMeasuredForCurb), spoil: frameForCurb},
		{Name: "retainer taken for the plastic", Codes: codes(fitcheck.RetainerMeasuredForPlastic), spoil: retainerForPlastic},
		{Name: "the sides of one pair are swapped", Codes: codes(fitcheck.SidesSwapped), after: swap},
		{Name: "one pair is in feet", Codes: codes(fitcheck.FeetForInches), after: onePair(toFeet)},
		{Name: "one pair is in centimetres", Codes: codes(fitcheck.MetricForInches), after: onePair(toCentimetres)},
		{Name: "one pair is in millimetres", Codes: codes(fitcheck.MetricForInches), after: onePair(toMillimetres)},
		{Name: "all is in centimetres", Codes: codes(fitcheck.MetricForInches), after: allPairs(toCentimetres)},
		{Name: "all is in millimetres", Codes: codes(fitcheck.MetricForInches), after: allPairs(toMillimetres)},
		{Name: "one pair is read from the one-inch mark", Codes: codes(fitcheck.TapeHookInch, fitcheck.DrywallIncluded, fitcheck.FlashingIncluded,
			fitcheck.FrameMeasuredForCurb, fitcheck.RetainerMeasuredForPlastic), after: onePair(inchMore)},
		{Name: "all is read from the one-inch mark", Codes: codes(fitcheck.TapeHookInch), after: allPairs(inchMore)},
		{Name: "one side is off by a foot", Codes: codes(fitcheck.MisreadFoot), after: oneSide(12)},
		{Name: "one side is off by an inch", Codes: codes(fitcheck.TapeHookInch, fitcheck.MisreadFoot, fitcheck.CurbWallMismatch, fitcheck.DiagonalsImpossible), after: oneSide(1)},
		{Name: "the nominal size is given for the curb", Codes: codes(fitcheck.NominalSize, fitcheck.ThinCurb), after: nominal},
		{Name: "the curb is out of square", Codes: codes(fitcheck.OutOfSquare), spoil: skewed},
		{Name: "a diagonal is wrong", Codes: codes(fitcheck.DiagonalsImpossible, fitcheck.MisreadFoot, fitcheck.TapeHookInch, fitcheck.OutOfSquare), after: wrongDiagonal},
		{Name: "one side is copied for the other", Codes: codes(fitcheck.DiagonalsImpossible, fitcheck.CurbWallMismatch, fitcheck.MisreadFoot,
			fitcheck.CapGapLoose, fitcheck.WontCap, fitcheck.ImplausibleSize), after: copied},
		{Name: "48 3/4 is written 48.3", Codes: codes(fitcheck.NominalSize), spoil: onThreeQuarters, after: pointForFraction},
		{Name: "a round size is taken all the way around", Codes: codes(fitcheck.ImplausibleSize), after: roundBy(math.Pi)},
		{Name: "a round size is taken from the middle", Codes: codes(fitcheck.ImplausibleSize), after: roundBy(0.5)},
		{Name: "a length inside is taken level", Codes: codes(fitcheck.CurbWallMismatch), spoil: level},
		{Name: "the inside is given for the outside", Codes: codes(fitcheck.CurbWallMismatch), spoil: insideForOutside},
		{Name: "outside and inside change places", Codes: codes(fitcheck.CurbWallMismatch, fitcheck.SidesSwapped), after: facesSwapped},
		{Name: "the tape's case is left out inside", Codes: codes(fitcheck.CurbWallMismatch, fitcheck.DoubledCurb), spoil: tapeCase},
		{Name: "the plastic does not reach the retainer", Codes: codes(fitcheck.EdgeGripShort), spoil: tooSmall},
	}
}

func codes(cs ...fitcheck.Code) []fitcheck.Code { return cs }

func drywall(thick ...float64) func(*rand.Rand, *skylight) bool {
	return func(r *rand.Rand, s *skylight) bool {
		if !s.unit || s.inside[0] == 0 {
			return false
		}
		s.inside = s.inside.plus(-2 * thick[r.IntN(len(thick))])
		return true
	}
}

// flare adds what a flashing's foot stands out, more than it honestly adds at the top.
func flare(r *rand.Rand, s *skylight) bool {
	if !s.unit || s.inside[0] == 0 {
		return false
	}
	more := 0.7 + 0.8*r.Float64()
	s.outside = s.inside.plus(3 + more)
	if s.diag[0] > 0 {
		s.diag = diagonals(s.outside, 0)
	}
	return true
}

// wall builds the curb anew with a wall of its own, both sides together.
func wall(both float64) func(*rand.Rand, *skylight) bool {
	return func(r *rand.Rand, s *skylight) bool {
		if !s.unit || s.inside[0] == 0 {
			return false
		}
		s.outside = s.inside.plus(both + 0.2*r.Float64())
		if s.diag[0] > 0 {
			s.diag = diagonals(s.outside, 0)
		}
		if s.frame[0] > 0 {
			s.frame = s.outside.plus(0.4)
		}
		return true
	}
}

// frameForCurb gives the outside of the old frame as the curb: its flange and wall.
func frameForCurb(r *rand.Rand, s *skylight) bool {
	if !s.unit || s.frame[0] == 0 {
		return false
	}
	s.outside = s.frame.plus(0.12 + 0.13*r.Float64())
	s.diag = pair{}
	return true
}

// retainerForPlastic gives the outside of the retaining frame as the plastic's edge.
func retainerForPlastic(_ *rand.Rand, s *skylight) bool {
	if s.unit || s.retain[0] == 0 {
		return false
	}
	s.plastic = s.retain
	return true
}

func swap(r *rand.Rand, s *skylight) bool {
	if s.round || !s.oblong() {
		return false
	}
	p := onOf(r, s)
	if p == nil || p == &s.diag {
		return false
	}
	p[0], p[1] = p[1], p[0]
	return true
}

// onOf is one of the measured pairs; nil where there is nothing to hold it against.
func onOf(r *rand.Rand, s *skylight) *pair {
	ps := s.sizes()
	if len(ps) < 2 {
		return nil
	}
	return ps[r.IntN(len(ps))]
}

func onePair(f func(float64) float64) func(*rand.Rand, *skylight) bool {
	return func(r *rand.Rand, s *skylight) bool {
		p := onOf(r, s)
		if p == nil {
			return false
		}
		*p = pair{f(p[0]), f(p[1])}
		return true
	}
}

func allPairs(f func(float64) float64) func(*rand.Rand, *skylight) bool {
	return func(_ *rand.Rand, s *skylight) bool {
		for _, p := range s.sizes() {
			*p = pair{f(p[0]), f(p[1])}
		}
		return true
	}
}

// toFeet is what a person says who thinks in feet: to the twelfth, written to two places.
func toFeet(in float64) float64 { return math.Round(in/12*100) / 100 }

func toCentimetres(in float64) float64 { return math.Round(in*25.4) / 10 }

func toMillimetres(in float64) float64 { return math.Round(in * 25.4) }

func inchMore(in float64) float64 { return in + 1 }

func oneSide(by float64) func(*rand.Rand, *skylight) bool {
	return func(r *rand.Rand, s *skylight) bool {
		p := onOf(r, s)
		if p == nil || s.round || p[0] < 26 || p[1] < 26 {
			return false // of a round one the whole is off, as above
		}
		p[r.IntN(2)] += by * float64(1-2*r.IntN(2))
		return true
	}
}

// nominal gives the trade's name of the size for the curb's outside: the opening between
// rafters and its two walls, 22.5 x 46.5 inside, is "24 x 48".
func nominal(_ *rand.Rand, s *skylight) bool {
	if !s.unit || s.round || s.inside[0] == 0 {
		return false
	}
	up := pair{s.inside[0] + 1.5, s.inside[1] + 1.5}
	if !whole(up[0]) || !whole(up[1]) {
		return false
	}
	s.outside, s.diag = up, pair{}
	return true
}

func whole(in float64) bool { return math.Mod(in, 2) == 0 }

func skewed(r *rand.Rand, s *skylight) bool {
	if s.diag[0] == 0 {
		return false
	}
	for skew := 0.6; ; skew += 0.2 {
		s.diag = diagonals(s.outside, skew)
		if s.diag[0]-s.diag[1] > 0.8+0.8*r.Float64() {
			return true
		}
	}
}

func wrongDiagonal(r *rand.Rand, s *skylight) bool {
	if s.diag[0] == 0 {
		return false
	}
	s.diag[r.IntN(2)] += 2 + 8*r.Float64()
	s.diag[0], s.diag[1] = s.mark(s.diag[0]), s.mark(s.diag[1])
	return true
}

func copied(r *rand.Rand, s *skylight) bool {
	if s.round || !s.oblong() || len(s.sizes()) < 2 {
		return false
	}
	p, i := &s.plastic, r.IntN(2)
	if s.unit {
		p = &s.outside
	}
	p[i] = p[1-i]
	return true
}

func insideForOutside(_ *rand.Rand, s *skylight) bool {
	if !s.unit || s.inside[0] == 0 {
		return false
	}
	s.outside, s.diag, s.frame = s.inside, pair{}, pair{}
	return true
}

func facesSwapped(_ *rand.Rand, s *skylight) bool {
	if !s.unit || s.inside[0] == 0 || s.diag[0] > 0 {
		return false
	}
	s.inside, s.outside = s.outside, s.inside
	return true
}

// tapeCase leaves out the case's three or four inches where the tape was pushed into a
// corner, both ways.
func tapeCase(r *rand.Rand, s *skylight) bool {
	if !s.unit || s.inside[0] == 0 {
		return false
	}
	s.inside = s.inside.plus(-3.4 + 0.3*r.Float64())
	return true
}

func tooSmall(r *rand.Rand, s *skylight) bool {
	if s.unit || s.opening[0] == 0 {
		return false
	}
	s.plastic = s.opening.plus(0.4 * r.Float64())
	s.retain = pair{}
	return true
}
