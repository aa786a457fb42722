package reading

import "example.com/intake-bot/internal/fitcheck"

var sizeNameLinks = wordsOf(`is are in to be should gets get with es son en de con van va`)

// roundedSize is how far a size that calls a kind may lie from what was measured: people leave the
// fractions out.
const roundedSize = fitcheck.Inch

// calledBySize is the kind that is called by its size at a token, and where that ends; 0 for none:
// "25x25 clear, the other white", "the 28x52 are white", "white for the 25 x 49". Beside what it
// tells it measures nothing.
func (r *reader) calledBySize(i int) (unit, last int) {
	if r.Units < 2 || len(r.Sizes) == 0 || !r.pairAt(i) {
		return 0, i
	}
	a, b, end, ok := r.pairSides(i)
	if !ok || r.unitAt(end) != noUnit || r.by(end) {
		return 0, i
	}
	if unit := r.kindOfNominal(a, b); unit > 0 && (r.choiceBegins(end) || r.trueSizeAfter(end) || r.forNominal(i, end)) {
		return unit, end - 1
	}
	if r.askedSize() != "none" {
		return 0, i
	}
	unit = r.kindNear(a, b, roundedSize)
	if unit == 0 {
		unit = r.kindOfNominal(a, b)
	}
	for r.wordAt(end, "one", "ones", "size", "sizes", "s") || r.noun(end) {
		end++
	}
	if unit == 0 || !r.namedBySize(i, end) {
		return 0, i
	}
	return unit, end - 1
}

// namedBySize: a choice of the shop's stands with the size, and nothing that says what it measures.
func (r *reader) namedBySize(first, end int) bool {
	for i := r.clauseStart(first); i <= r.clauseEnd(end-1) && i < len(r.toks); i++ {
		if h := r.labelFrom(i); h != nil && isName(h) && !r.colorAt(i) {
			return false // "the box is 25 x 49"; but "25 x 49 clear"
		}
	}
	before := first - 1
	if r.wordAt(before, "the", "el", "la", "los", "las") {
		before--
	}
	ends := r.stopAt(end) || r.wordAt(end, "and", "y")
	if ends && (r.wordAt(before, "for", "on", "in", "para", "en") || covers(r.choices, before)) {
		from := r.clauseStart(first)
		return r.choiceBegins(from + number(r.wordAt(from, "and", "y")))
	}
	for r.among(end, sizeNameLinks) || r.markAt(end, ':') || r.markAt(end, '-') || r.markAt(end, '=') {
		end++
	}
	return r.choiceBegins(end) || r.wholeSaid(end) > 0 && r.wordAt(end+1, "layer", "layers", "capa", "capas")
}

// kindNear is the one kind of which a size lies nearest to two sides, 0 where none or several do.
func (r *reader) kindNear(a, b, best fitcheck.Length) int {
	found := 0
	for unit, sizes := range r.Sizes {
		for _, s := range sizes {
			d := min(max(abs(s.Width-a), abs(s.Length-b)), max(abs(s.Width-b), abs(s.Length-a)))
			switch {
			case d >= best && !(d == best && found > 0):
			case d == best && found != unit:
				found = -1 // of two kinds alike
			default:
				found, best = unit, d
			}
		}
	}
	return max(found, 0)
}
