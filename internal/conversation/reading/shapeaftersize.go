package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// shapesAfterSizes: "36 1/4 round and 25 1/4 x 25 1/4 square": two shapes, each right after a size, are two
// kinds, those of such a shape where they are known.
func (r *reader) shapesAfterSizes() {
	if len(r.refs) > 0 || r.asksAnything() {
		return
	}
	var found []unitRef
	var seen []string
	for i := range r.toks {
		look := lookOf[r.toks[i].text]
		if r.toks[i].kind != wordToken || look == "" {
			continue
		}
		if lookSort[look] != 1 || i == 0 ||
			r.toks[i-1].kind != numToken && r.unitAt(i-1) == noUnit || !r.endsLook(i) ||
			i+1 < len(r.toks) && r.toks[i+1].kind == numToken || slices.Contains(seen, look) {
			return
		}
		unit := len(seen) + 1
		if r.Units > 1 {
			if unit = max(r.Names[r.toks[i].text], r.lookKnown(i)); unit == 0 {
				return
			}
		}
		seen = append(seen, look)
		found = append(found, unitRef{i, i, []int{unit}})
	}
	if len(found) < 2 || !r.commaOrAnd(found[0].last+1) {
		return
	}
	r.refs = found
	for k, ref := range found {
		shape := fitcheck.Choice(fitcheck.OutlineRectangle)
		if seen[k] == "round" {
			shape = fitcheck.OutlineRound
		}
		r.fact(fitcheck.TopicOutline, ref.units[0], shape, ref.first, ref.last)
		from := r.sentenceFirst(ref.first)
		if k > 0 {
			from = max(from, found[k-1].last+1)
		}
		for i := from; i < ref.first; i++ {
			if r.wordAt(i, "one", "a", "uno", "un") && r.Units < 2 {
				r.fact(fitcheck.TopicCount, ref.units[0], fitcheck.Whole(1), i, i)
				r.use(i, i)
			}
		}
	}
}

// commaOrAnd: a list goes on at the token.
func (r *reader) commaOrAnd(i int) bool {
	return i < len(r.toks) && r.toks[i].kind == markToken || r.wordAt(i, "and", "y", "then")
}

// shapedRef: what a kind is called by is the shape right after its size.
func (r *reader) shapedRef(ref unitRef) bool {
	return ref.first > 0 && ref.first == ref.last && lookOf[r.toks[ref.first].text] != "" &&
		(r.toks[ref.first-1].kind == numToken || r.unitAt(ref.first-1) != noUnit)
}
