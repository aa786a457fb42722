package simulate

import "math"

// guard is three standard deviations of the difference of two readings: a line that is
// passed by more than this shows in the numbers, whatever the hand did.
const guard = 0.25

// shows says whether the numbers, as read, are past some line that the contract draws by
// so much that a careful person with a calculator could see it. It knows nothing of causes.
func (s *skylight) shows() bool {
	return s.implausible() || s.wallShows() || s.diagonalsShow() || s.frameShows() || s.gripShows() || s.retainerShows()
}

func (s *skylight) implausible() bool {
	for _, p := range s.sizes() {
		if min(p[0], p[1]) < 8 || max(p[0], p[1]) > 170 {
			return true
		}
	}
	return false
}

// wallShows: a single wall is 3 in for both sides, and flashing may add 3/8.
func (s *skylight) wallShows() bool {
	return s.unit && s.outside[0] > 0 && s.inside[0] > 0 && beyond(s.outside, s.inside, 3, 3.375)
}

// frameShows: the cap gap of the old frame, tight under 1/4 and loose over 3/4.
func (s *skylight) frameShows() bool {
	return s.unit && s.frame[0] > 0 && beyond(s.frame, s.outside, 0.25, 0.75)
}

// gripShows: plastic less opening, for both edges together, short under 3/4 and long over 4.
func (s *skylight) gripShows() bool {
	return !s.unit && s.opening[0] > 0 && beyond(s.plastic, s.opening, 0.75, 4)
}

// retainerShows: the retaining frame stands out over the plastic that it holds, half an inch
// for both sides at the least (common practice, no source).
func (s *skylight) retainerShows() bool {
	return !s.unit && s.retain[0] > 0 && beyond(s.retain, s.plastic, 0.5, math.Inf(1))
}

func beyond(a, b pair, low, high float64) bool {
	for i := range a {
		if d := a[i] - b[i]; d < low-guard || d > high+guard {
			return true
		}
	}
	return false
}

// diagonalsShow: their mean more than 1/2 in from what the sides give, or each other.
func (s *skylight) diagonalsShow() bool {
	if s.diag[0] == 0 {
		return false
	}
	mean := math.Sqrt((s.diag[0]*s.diag[0] + s.diag[1]*s.diag[1]) / 2)
	off := math.Hypot(s.outside[0], s.outside[1]) - mean
	return math.Abs(off) > 0.5+guard || math.Abs(s.diag[0]-s.diag[1]) > 0.5+guard
}
