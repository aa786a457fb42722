package fitcheck

import (
	"math"
	"math/rand/v2"
	"testing"
)

// A tape begun at its one-inch mark adds an inch to all four readings, which the diagonals
// show by (w + l) / d - 1: 0.414 in for a square, 0.265 for one three times as long as
// wide. Held against a line of 1/4 in and a hand's 0.06 in to a reading, 97, 95, 86 and 57
// in a hundred can be seen (computed); the diagnosis does no worse.
func TestTapeHookInchIsSeen(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	sixteenths := func(in float64) float64 { return math.Round((in+0.06*r.NormFloat64())*16) / 16 }
	for _, row := range []struct {
		times, seen float64
	}{{1, 0.96}, {1.5, 0.94}, {2, 0.9}, {3, 0.72}} {
		const n = 2000
		seen, nagged := 0, 0
		for range n {
			w, l := 30.0, 30*row.times
			d := math.Hypot(w, l)
			read := func(more float64) Unit {
				u := curbUnit(rect(sixteenths(w+more), sixteenths(l+more)), Size{})
				u.CurbDiagonals = diagonalsOf(sixteenths(d+more), sixteenths(d+more))
				return u
			}
			if has(checkOne(read(1), UseHome), TapeHookInch, Ask) {
				seen++
			}
			if checkOne(read(0), UseHome).Verdict != VerdictFits {
				nagged++
			}
		}
		if share := float64(seen) / n; share < row.seen {
			t.Errorf("1 : %v: seen in %.3f, want %.2f", row.times, share, row.seen)
		}
		if nagged > n/100 {
			t.Errorf("1 : %v: %d of %d right curbs are asked about", row.times, nagged, n)
		}
		t.Logf("1 : %v: seen %d, nagged %d of %d", row.times, seen, nagged, n)
	}
}
