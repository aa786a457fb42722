package simulate

import (
	"math"
	"math/rand/v2"
)

// onThreeQuarters moves a curb to where its outside ends in 3/4 both ways.
func onThreeQuarters(_ *rand.Rand, s *skylight) bool {
	if !s.unit || s.inside[0] == 0 {
		return false
	}
	s.diag, s.frame = pair{}, pair{}
	for i := range s.outside {
		by := math.Floor(s.outside[i]) + 0.75 - s.outside[i]
		s.outside[i], s.inside[i] = s.outside[i]+by, s.inside[i]+by
	}
	return true
}

// pointForFraction writes what was read as 48 3/4 as 48.3; read as another mark it stays.
func pointForFraction(_ *rand.Rand, s *skylight) bool {
	for i, x := range s.outside {
		if x-math.Floor(x) != 0.75 {
			return false
		}
		s.outside[i] = math.Floor(x) + 0.3
	}
	return true
}

// roundBy takes one size of a round skylight in another way than straight across.
func roundBy(times float64) func(*rand.Rand, *skylight) bool {
	return func(r *rand.Rand, s *skylight) bool {
		p := onOf(r, s)
		if p == nil || !s.round {
			return false
		}
		x := s.mark(p[0] * times)
		*p = pair{x, x}
		return true
	}
}

// level takes the inside of a curb on a steep roof level in one direction.
func level(r *rand.Rand, s *skylight) bool {
	if !s.unit || s.round || s.inside[0] == 0 {
		return false
	}
	s.slope = 5 + float64(r.IntN(8))
	s.inside[r.IntN(2)] /= math.Hypot(1, s.slope/12)
	return true
}
