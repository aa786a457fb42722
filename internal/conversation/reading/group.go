package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	sidesNamed     = wordsOf(`left right top bottom upper lower front back corner side edge end`)
	byAfter        = wordsOf(`stop off is longer bigger wider`)
	hesitations    = wordsOf(`uh um uhh umm er hmm eh ah este`)
	rangeLinks     = wordsOf(`to or thru through o hasta`)
	gapLinks       = wordsOf(`and y e then the its it is on n nd el es de by i got other also with con`)
	changeArticles = wordsOf(`the that my from el la`)
)

// gap is what stands between two lengths.
type gap uint8

const (
	farGap   gap = iota // other words
	byGap               // "x", "by"
	weakGap             // a comma, "and", nothing
	rangeGap            // "to", "-", "or"
	fixGap              // "sorry", "no", "I mean", "..."
	sumGap              // "plus"
)

// gapBetween tells what stands between two neighbouring lengths.
func (r *reader) gapBetween(a, b *quantity) gap {
	g := weakGap
	for i := a.last + 1; i < b.first && g != farGap; i++ {
		g = r.gapAt(i, g, a, b)
	}
	return g
}

// gapAt is what the token makes of the gap before it.
func (r *reader) gapAt(i int, g gap, a, b *quantity) gap {
	t := &r.toks[i]
	switch {
	case r.by(i):
		return byGap
	case t.mark('+') || t.is("plus", "minus", "mas", "menos") || t.is("over", "under") && a.frac && a.num < a.den:
		return sumGap
	case t.mark('.') && r.markAt(i+1, '.') && a.side == noSide && b.side == noSide:
		return g.unlessWeak(fixGap)
	case r.among(i, hesitations), g == byGap && r.labelKind(i, "fix"): // "25 1/2 by, hold on, 49 1/2"
		return g
	case r.labelKind(i, "fix") || t.is("son", "sino"):
		return fixGap
	case g == byGap && (t.is("a", "the") || r.roughAt(i)):
		return g
	case t.is("to") && r.among(i-1, sidesNamed): // "upper left to lower right 62"
		return g
	case t.is("than"):
		return farGap
	case t.mark('-') || r.among(i, rangeLinks), t.is("a") && r.out.Language == "es":
		return g.unlessWeak(rangeGap)
	case r.passesGap(i, g, a, b):
		return g
	}
	return farGap
}

// unlessWeak is the gap, or the other where only weak words stand in it.
func (g gap) unlessWeak(other gap) gap {
	if g == weakGap {
		return other
	}
	return g
}

// passesGap: a token that changes nothing between two lengths.
func (r *reader) passesGap(i int, g gap, a, b *quantity) bool {
	t := &r.toks[i]
	switch {
	case t.mark('\n') && (r.roundAfter(b) || r.roundAfter(a)):
		return false // two diameters, a line each
	case r.among(i, gapLinks), t.kind == markToken && strings.IndexByte(",/&\n.;:|", t.text[0]) >= 0:
		return true
	case t.is("nose", "dot", "money", "button"): // "25 1/2 on the nose by 49 1/2"
		return g == byGap || r.byAhead(i, b.first)
	case r.labelKind(i, "face") && r.byAhead(i, b.first):
		return true
	}
	return r.roughAt(i) || r.labelKind(i, "axis") || t.kind == wordToken && t.word != nil && t.word.filler
}

// roundAfter: the length is called a round thing's right after it.
func (r *reader) roundAfter(q *quantity) bool {
	i := q.last + 1
	for r.wordAt(i, "in", "inch", "inches") {
		i++
	}
	if i >= len(r.toks) || r.labelAt[i] < 0 {
		return false
	}
	l := &r.labels[r.labelAt[i]]
	return l.is("shape", "round") || l.is("shape", "diameter")
}

// byAhead: "25 1/2 on the outside by 49 1/2".
func (r *reader) byAhead(i, end int) bool { return r.by(end-1) && i < end-1 }

func (r *reader) labelKind(i int, kind string) bool {
	if r.labelAt[i] < 0 {
		return false
	}
	_, ok := r.labels[r.labelAt[i]].has(kind)
	return ok
}

// group joins the lengths that belong together.
func (r *reader) group(qs []quantity) []measure {
	var ms []measure
	for i := 0; i < len(qs); {
		n, s := r.groupAt(qs, i)
		m := measure{shape: s, parts: qs[i : i+n], first: qs[i].first, last: qs[i+n-1].last}
		m.shaped = [2]int{-1, -1}
		if n == 1 && r.rangeAhead(&qs[i]) {
			m.shape = ranged
		}
		m.orphan = n == 1 && qs[i].side == noSide && r.firstSideLacks(m.first)
		m.fixed = i > 0 && (r.changeTo(&qs[i-1], &qs[i]) || r.gapBetween(&qs[i-1], &qs[i]) == fixGap)
		i += n
		if r.lumber(&m) {
			r.use(m.first, m.last)
			continue
		}
		ms = append(ms, m)
	}
	return ms
}

// firstSideLacks: a "by" stands before the length, and no length before that: "x 49", "wide by 49"; not
// "it's longer by 2 inches".
func (r *reader) firstSideLacks(first int) bool {
	if first < 2 {
		return false
	}
	if r.wordAt(first-1, "by") {
		return !r.among(first-2, byAfter)
	}
	return r.by(first-1) && !r.wordAt(first-1, "por", "times")
}

// groupAt tells how many lengths from the i-th on make one measure, and of what shape.
func (r *reader) groupAt(qs []quantity, i int) (int, shape) {
	if r.fourInTurn(qs, i) {
		return 4, fourSides
	}
	if n, s := r.rangeAt(qs, i); n > 0 {
		return n, s
	}
	if i+1 >= len(qs) {
		return 1, lone
	}
	a, b := &qs[i], &qs[i+1]
	if r.deniedHere(a) {
		return 1, lone // "isn't 4, it's 6"
	}
	if len(qs) == 2 && a.side == someSide && b.side == someSide && r.acrossFrom(a, b) {
		return 1, lone
	}
	switch r.gapBetween(a, b) {
	case byGap:
		return r.crossAt(qs, i)
	case weakGap:
		if r.withAndWithout(a, b) {
			return 2, broken
		}
		return r.listAt(qs, i)
	case sumGap:
		return 2, broken
	}
	return 1, lone
}

// crossAt groups two lengths with a "by" between, and what follows them.
func (r *reader) crossAt(qs []quantity, i int) (int, shape) {
	a, b := &qs[i], &qs[i+1]
	if b.side == height && a.side != height {
		return 1, lone
	}
	if i+2 >= len(qs) {
		return 2, pair
	}
	c := &qs[i+2]
	switch gap := r.gapBetween(b, c); {
	case gap == sumGap && c.side != height:
		return 3, broken // "22 x 46 plus 1 1/2 for the lip"
	case gap == byGap && i+3 < len(qs) && r.crossesBack(qs[i:i+4]):
		return 4, fourSides
	case c.side != noSide:
		return 2, pair
	case gap == byGap:
		return 3, broken
	case gap == rangeGap && r.littleMore(b, c):
		return 3, ranged // 25 x 48-49
	case gap == weakGap && b.bare && c.bare && r.adjacent(b, c):
		return 3, broken // 25 x 49 12
	}
	return 2, pair
}

// crossesBack: all four in turn, "37 5/8 x 37 1/2 x 37 5/8 x 37 5/16".
func (r *reader) crossesBack(qs []quantity) bool {
	return r.gapBetween(&qs[2], &qs[3]) == byGap && qs[0].closeTo(&qs[2]) && qs[1].closeTo(&qs[3])
}

// fourInTurn: "four sides, clockwise from north: 25 7/16, 49 1/2, 25 3/8, 49 9/16": only where
// the turn begins is named.
func (r *reader) fourInTurn(qs []quantity, i int) bool {
	if i+4 > len(qs) || qs[i].side != someSide || !qs[i].closeTo(&qs[i+2]) || !qs[i+1].closeTo(&qs[i+3]) {
		return false
	}
	for k := i + 1; k < i+4; k++ {
		if qs[k].side != noSide || r.gapBetween(&qs[k-1], &qs[k]) != weakGap {
			return false
		}
	}
	return true
}

// closeTo: two readings of opposite sides, which are alike within an inch.
func (q *quantity) closeTo(o *quantity) bool { return abs(q.length()-o.length()) <= fitcheck.Inch }

// littleMore: the second number is a little more than the first, as the end of a range is.
func (r *reader) littleMore(a, b *quantity) bool {
	l, m := a.length(), b.length()
	return m > l && m-l <= l/4
}

// deniedHere: a "not" stands right before the length, and no second side after it.
func (r *reader) deniedHere(q *quantity) bool {
	i := q.first - 1
	return i >= 0 && r.labelKind(i, "not") && !r.by(q.last+1)
}

// rangeAt finds "24 to 26", "24-26", "between 24 and 26".
func (r *reader) rangeAt(qs []quantity, i int) (int, shape) {
	if i+1 >= len(qs) {
		return 0, lone
	}
	a, b := &qs[i], &qs[i+1]
	g := r.gapBetween(a, b)
	if r.changeTo(a, b) {
		return 0, lone
	}
	between := a.first > 0 && r.wordAt(a.first-1, "between", "entre", "btwn", "from")
	if g != rangeGap && !(between && g == weakGap) {
		return 0, lone
	}
	n := 2
	for i+n < len(qs) && r.gapBetween(&qs[i+n-1], &qs[i+n]) == byGap {
		n++
	}
	for i+n < len(qs) && r.gapBetween(&qs[i+n-1], &qs[i+n]) == rangeGap {
		n++
	}
	return n, ranged
}

// rangeAhead: "6 to 8 depending on the side": what follows is a number too, though
// not one that was taken for a length.
func (r *reader) rangeAhead(q *quantity) bool {
	i := q.last + 1
	if r.wordAt(q.first-1, "between", "entre", "btwn") && r.wordAt(i, "and", "y", "to") && r.wholeAt(i+1) > 0 && !r.used(i+1) {
		return true // "between 4 and 6 depending where"
	}
	if !r.wordAt(i, "to", "or", "o", "hasta") && !r.markAt(i, '-') {
		return false
	}
	return r.wholeAt(i+1) > q.num/max(q.den, 1) && !r.used(i+1) &&
		!r.wordAt(i+2, "inside", "photos", "minutes", "days")
}

// changeTo: "change 48 to 48 1/8".
func (r *reader) changeTo(a, b *quantity) bool {
	i := a.first - 1
	for r.among(i, changeArticles) {
		i--
	}
	return r.wordAt(i, "change", "changed", "correct", "cambia", "cambie") && r.wordAt(b.first-1, "to", "a", "por")
}

func (r *reader) adjacent(a, b *quantity) bool { return a.last+1 == b.first }

// listAt groups lengths that follow one another with a comma, "and" or nothing.
func (r *reader) listAt(qs []quantity, i int) (int, shape) {
	n := r.listLength(qs, i)
	a, b := &qs[i], &qs[i+1]
	if n == 2 && a.bare && a.num <= 12*a.den && r.adjacent(a, b) && !b.bare && b.side == noSide {
		return 1, lone // "two 46 1/2 square domes"
	}
	if n == 1 && a.bare && r.adjacent(a, b) && b.bare && i+3 < len(qs) && r.gapBetween(b, &qs[i+2]) == byGap {
		return 4, broken // 25 12 x 49 12
	}
	switch {
	case n >= 3 && widthAndLength(a, b) && !(n == 4 && opposite(qs[i:i+4])):
		return 2, pair // "short side 16, long side 24, short side 14, long side 22"
	case n >= 4 && r.askedTwoSizes() && walls(a.length()-qs[i+2].length(), b.length()-qs[i+3].length()):
		return 2, pair // "25 1/2, 49 1/2, 23, 47": the sheet and the opening
	case n >= 4:
		return 4, fourSides
	case n == 3 && a.side == noSide && qs[i+2].side == noSide:
		return 3, broken
	case n == 1:
		return 1, lone
	}
	return 2, pair
}

// listLength is how many lengths from the i-th on are listed, without those of a "25 x 49" that follows.
func (r *reader) listLength(qs []quantity, i int) int {
	n := 1
	for ; i+n < len(qs); n++ {
		a, b := &qs[i+n-1], &qs[i+n]
		if r.gapBetween(a, b) != weakGap || i+n+1 < len(qs) && r.gapBetween(b, &qs[i+n+1]) == byGap {
			break
		}
		if !listed(a, b) && !(len(qs) == 2 && r.otherWayFrom(a, b)) {
			break
		}
	}
	return n
}

// widthAndLength: one of two is called the width, the other the length.
func widthAndLength(a, b *quantity) bool {
	return a.side == width && b.side == length || a.side == length && b.side == width
}

// otherWayFrom: "22 inches and the other way 46 and a quarter".
func (r *reader) otherWayFrom(a, b *quantity) bool {
	return a.side == noSide && b.side == someSide && r.wordsIn(a.last+1, b.last+1, "other", "otro") &&
		r.wordsIn(a.last+1, b.last+1, "way", "direction", "side", "lado")
}

// listed: two neighbours of a list are both called sides or both not, and not the same.
func listed(a, b *quantity) bool {
	if a.side == height || b.side == height {
		return false
	}
	if a.side == noSide || b.side == noSide {
		return a.side == b.side
	}
	return a.side != b.side || a.side == someSide
}

// opposite: four sides of one skylight, each told twice and nearly the same: "24 wide 48
// long and 24 1/8 wide 48 1/8 long".
func opposite(qs []quantity) bool {
	for a := range 2 {
		for b := 2; b < 4; b++ {
			if qs[a].side == qs[b].side && !qs[a].closeTo(&qs[b]) {
				return false
			}
		}
	}
	return true
}
