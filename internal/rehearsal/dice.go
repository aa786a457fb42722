package rehearsal

import "math/rand/v2"

// dice is the chance in one customer's life.
type dice struct{ *rand.Rand }

func newDice(seed uint64, customer int) dice {
	return dice{rand.New(rand.NewPCG(seed, uint64(customer)))}
}

// chance is true in a share p of all cases.
func (d dice) chance(p float64) bool { return d.Float64() < p }

// between is a whole number from low to high, both included.
func (d dice) between(low, high int) int { return low + d.IntN(high-low+1) }

// pick draws one of several, each as likely; the zero value where there are none.
func pick[T any](d dice, from ...T) T {
	if len(from) == 0 {
		var none T
		return none
	}
	return from[d.IntN(len(from))]
}

// weighted is one of several that are not equally likely.
type weighted[T any] struct {
	weight int
	what   T
}

func draw[T any](d dice, from []weighted[T]) T {
	total := 0
	for _, w := range from {
		total += w.weight
	}
	at := d.IntN(total)
	for _, w := range from[:len(from)-1] {
		if at -= w.weight; at < 0 {
			return w.what
		}
	}
	return from[len(from)-1].what
}
