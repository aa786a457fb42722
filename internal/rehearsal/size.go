package rehearsal

import "example.com/intake-bot/internal/fitcheck"

// pair is a width and a length; a round outline has its diameter in both.
type pair [2]fitcheck.Length

func (p pair) known() bool { return p[0] > 0 }

func (p pair) plus(d fitcheck.Length) pair {
	if !p.known() {
		return p
	}
	return pair{p[0] + d, p[1] + d}
}

func inches(n float64) fitcheck.Length { return fitcheck.FromInches(n) }

// size is the pair as a value.
func (p pair) size(round bool) fitcheck.Size {
	if round {
		return fitcheck.Size{Diameter: p[0]}
	}
	return fitcheck.Size{Width: p[0], Length: p[1]}
}

// off is how far a pair is from another at its worse side.
func (p pair) off(q pair) fitcheck.Length {
	worst := fitcheck.Length(0)
	for i := range p {
		worst = max(worst, p[i]-q[i], q[i]-p[i])
	}
	return worst
}

// sizes are what somebody measured or would measure, by what is measured.
type sizes map[fitcheck.Topic]pair

func (s sizes) copied() sizes {
	out := make(sizes, len(s))
	for t, p := range s {
		out[t] = p
	}
	return out
}
