package fitcheck

// What outside less inside of a curb is, both walls together. Lumber is dressed to
// 1 1/2 in dry, 1 9/16 green (PS 20, as reported by two tables of softwood sizes), and
// was 1 5/8 in the 1950s (lumber history).
const (
	singleWall = 3 * Inch
	oldWall    = 13 * Inch / 4
)

// squareNote and squareAsk are differences of the diagonals: a corner within 1/2 in in
// 20 ft (a remodelers' standard) makes 0.295 in on a 48 in curb.
const (
	squareNote = Inch / 4
	squareAsk  = Inch / 2
)

// diagonalLine is how far the mean diagonal may be from what the sides give: with
// 0.06 in to a reading it is off by 0.25 in three times in a thousand (computed).
const diagonalLine = Inch / 2
