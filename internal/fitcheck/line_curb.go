package fitcheck

import "math"

// oneInTen is the coverage factor that keeps the risk at one limit to 10 %.
const oneInTen = 1.28

// gapLines: how the old frame caps the curb, per direction in total.
func gapLines(fs []Finding, sh *sheet, rules *Rules) []Finding {
	gap := sh.differences(frame, outside)
	if gap.n == 0 {
		return fs
	}
	g := &rules.Gap
	f := Finding{Topic: TopicFrameInside, Source: sourcePractice, Settle: []Topic{TopicCurbOutside, TopicFrameInside}}
	low, high := gap.low(), gap.high()
	switch {
	case low < 0:
		f.Code, f.Severity = WontCap, Stop
		f.Numbers = Numbers{"gap_in": low.Inches()}
		f.Text = "The old frame's inside reads " + atLeastAMark(-low) + " in less than the curb's outside that it sits over, so could you measure both again?"
		return append(fs, f)
	case low < g.SoundLow:
		f.Code, f.Severity = CapGapTight, gap.below(g.SoundLow, oneInTen)
		f.Numbers = Numbers{"gap_in": low.Inches(), "low_in": g.SoundLow.Inches()}
		f.Text = "The old frame leaves the curb only " + low.Tape() + " in of room, both sides together, where at least " + g.SoundLow.Tape() +
			" is usual, so is the curb's outside right?"
		if low < Sixteenth {
			f.Text = "The old frame leaves the curb no room at all, where at least " + g.SoundLow.Tape() + " in, both sides together, is usual, so is the curb's outside right?"
		}
		fs = append(fs, f)
	}
	if high <= g.SoundHigh {
		return fs
	}
	f.Code, f.Severity = CapGapLoose, Note
	f.Numbers = Numbers{"gap_in": high.Inches(), "high_in": g.Loose.Inches()}
	f.Text = "The old frame leaves the curb " + high.Tape() + " in of room, both sides together, a little more than the usual " + g.SoundHigh.Tape() + "."
	if high > g.Loose {
		f.Severity = gap.above(g.Loose, oneInTen)
		f.Text = "The old frame leaves the curb " + high.Tape() + " in of room, both sides together, more than the " + g.Loose.Tape() +
			" that is still sound, so is the curb's outside right?"
	}
	return append(fs, f)
}

// differences are one size less another, on the sides that both were read on.
type differences struct {
	of [2]Length
	n  int
	u  float64 // standard uncertainty of one, the larger, in inches
}

func (sh *sheet) differences(a, b spot) (d differences) {
	for side := range 2 {
		if sh.both(a, b, side) {
			d.of[d.n] = sh.exact[a][side] - sh.exact[b][side]
			d.u = max(d.u, math.Hypot(sh.u[a][side], sh.u[b][side]))
			d.n++
		}
	}
	return d
}

func (d *differences) low() Length {
	if d.n == 2 {
		return min(d.of[0], d.of[1])
	}
	return d.of[0]
}

func (d *differences) high() Length {
	if d.n == 2 {
		return max(d.of[0], d.of[1])
	}
	return d.of[0]
}

func (d *differences) mean() Length { return (d.of[0] + d.of[1]) / Length(max(d.n, 1)) }

// above is how grave it is that a difference lies above a line. Walls and gaps are the
// same both ways, so each direction vouches for the other: a customer is asked where all
// are past the line, or one is past it by more than reading explains; else staff are told.
func (d *differences) above(line Length, k float64) Severity {
	if d.n == 2 && d.low() > line || (d.high()-line).Inches() > k*d.u {
		return Ask
	}
	return Note
}

func (d *differences) below(line Length, k float64) Severity {
	if d.n == 2 && d.high() < line || (line-d.low()).Inches() > k*d.u {
		return Ask
	}
	return Note
}

// flashingLine: what the outside is over the inside and a single wood wall.
func flashingLine(fs []Finding, sh *sheet, rules *Rules) []Finding {
	wall := sh.differences(outside, inside)
	line := singleWall + rules.Flashing
	// Where the two ways together are less than a wall, they contradict each other and no
	// flare explains them.
	if wall.n == 0 || wall.high() <= line || wall.mean() < singleWall || wall.mean() > oldWall+3*Inch/2 {
		return fs
	}
	g := guess{code: FlashingIncluded, spot: outside, side: bothSides, kind: asFlare}
	f := g.finding(sh)
	f.Settle = []Topic{TopicCurbOutside}
	if f.Severity = wall.above(line, oneSided); f.Severity == Note {
		f.Text = "Outside and inside of the curb differ by " + wall.high().Tape() + " inches one way, a little more than wood and flashing usually make."
	}
	return append(fs, f)
}

// diagonalLines: whether the diagonals can be those of the sides, and how far the curb is
// out of square.
func diagonalLines(fs []Finding, sh *sheet) []Finding {
	a, b := sh.diag[0], sh.diag[1]
	r, _, ok := sh.diagonalResidual()
	if ok {
		fs = impossibleDiagonals(fs, sh, r)
	}
	if b == 0 {
		return spreadLine(fs, sh)
	}
	apart := max(a-b, b-a)
	if apart < squareNote {
		return spreadLine(fs, sh)
	}
	f := Finding{Code: OutOfSquare, Severity: Note, Topic: TopicCurbDiagonals, Settle: []Topic{TopicCurbDiagonals},
		Source:  "remodelers' standard: a corner within 1/2 in in 20 ft, reported by a construction FAQ; common practice",
		Numbers: Numbers{"difference_in": apart.Inches()},
		Text:    "The two diagonals differ by " + apart.Tape() + " in, so the curb is a little out of square."}
	if ok {
		f.Numbers["out_of_square_in"] = max(sh.skew(0), sh.skew(1)).Inches()
	}
	if apart > squareAsk {
		f.Severity = Ask
		f.Text = "The two diagonals differ by " + apart.Tape() + " in, which is far out of square, so could you measure both again from corner to corner?"
	}
	return append(fs, f)
}

// impossibleDiagonals: a diagonal is longer than either side and shorter than both
// together, and the mean of the two follows from the sides.
func impossibleDiagonals(fs []Finding, sh *sheet, r float64) []Finding {
	w, l := sh.exact[outside][0], sh.exact[outside][1]
	line := diagonalLine
	if sh.diag[1] == 0 {
		line += squareAsk / 2 // one alone also tells of a curb that leans
	}
	impossible := math.Abs(r) > line.Inches()
	for _, d := range sh.diag {
		impossible = impossible || d > 0 && (d <= max(w, l) || d >= w+l)
	}
	if !impossible {
		return fs
	}
	want := math.Hypot(w.Inches(), l.Inches())
	return append(fs, Finding{Code: DiagonalsImpossible, Severity: Ask, Topic: TopicCurbDiagonals, Source: sourceDiagonal,
		Settle:  []Topic{TopicCurbDiagonals, TopicCurbOutside},
		Numbers: Numbers{"expected_in": math.Round(want*1e4) / 1e4, "found_in": math.Round((want-r)*1e4) / 1e4},
		Text: "Sides of " + w.Tape() + " x " + l.Tape() + " in make diagonals of about " + tape(want) + ", but they read " +
			tape(want-r) + ", so could you measure the sides and both diagonals again?"})
}

// spreadLine: a side, or a diameter, that was read more than once.
func spreadLine(fs []Finding, sh *sheet) []Finding {
	for s := spot(0); s < spots; s++ {
		if sh.twist[s] < squareNote {
			continue
		}
		f := Finding{Code: OutOfSquare, Severity: Note, Topic: s.topic(), Settle: []Topic{s.topic()}, Source: sourcePractice,
			Numbers: Numbers{"difference_in": sh.twist[s].Inches()},
			Text:    "The readings of " + partName(s.topic()) + " differ by " + sh.twist[s].Tape() + " in where they should be alike, and the larger ones count."}
		if sh.twist[s] > squareAsk {
			f.Severity = Ask
			f.Text = "The readings of " + partName(s.topic()) + " differ by " + sh.twist[s].Tape() + " in where they should be alike, so could you measure them again?"
		}
		fs = append(fs, f)
	}
	return fs
}
