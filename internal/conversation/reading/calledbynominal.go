package reading

import "example.com/intake-bot/internal/fitcheck"

// nearNominal is how far a nominal size lies from what is measured of the same skylight at the most: a "2x4"
// has a box of 25 1/2 x 49 1/2 outside and of 22 1/2 x 46 1/2 inside. Common practice, no source.
const nearNominal = 3 * fitcheck.Inch

// kindOfNominal is the one kind that two whole numbers of feet call by its nominal size: "the 2x4 bronze over
// clear"; 0 where none or several may be meant.
func (r *reader) kindOfNominal(a, b fitcheck.Length) int {
	if max(a, b) > 10*fitcheck.Inch || a%fitcheck.Inch != 0 || b%fitcheck.Inch != 0 {
		return 0
	}
	return r.kindNear(12*a, 12*b, nearNominal)
}

// trueSizeAfter: what was measured follows what a kind is called by: "the 2x4 is 25 1/2 x 49 1/2".
func (r *reader) trueSizeAfter(end int) bool {
	for i := end; i < end+6 && i < len(r.toks); i++ {
		if a, b, _, ok := r.pairSides(i); ok {
			return min(a, b) > 10*fitcheck.Inch
		}
		joins := r.markAt(i, ':') || r.markAt(i, '=') || r.markAt(i, '-')
		if !joins && r.toks[i].kind != wordToken || r.wordAt(i, "and", "or", "not", "y", "o", "no", "plus") {
			return false
		}
	}
	return false
}

// forNominal: "22 1/2 x 46 1/2 for the 2x4": what a kind is called by ends what is said of it.
func (r *reader) forNominal(first, end int) bool {
	before := first - 1 - number(r.wordAt(first-1, "the", "el", "la"))
	return r.wordAt(before, "for", "on", "para") &&
		(end >= len(r.toks) || r.toks[end].kind == markToken || r.wordAt(end, "and", "y"))
}
