package fitcheck

// meant is the sheet with a gross slip undone (another unit, a foot, swapped sides): what
// the wrong number would break is no news.
func (d *diagnosis) meant(sh *sheet) *sheet {
	if !d.found || !d.best.gross() {
		return sh
	}
	return d.corrected(sh)
}

// corrected is the sheet as it would be without any slip of reading or writing.
func (d *diagnosis) corrected(sh *sheet) *sheet {
	if !d.found || d.best.kind < asSwap {
		return sh
	}
	fixed, _ := d.best.undo(sh, relations{})
	if d.eitherSide {
		fixed.v[d.best.spot], fixed.u[d.best.spot] = [2]float64{}, [2]float64{}
	}
	fixed.settleExact()
	return &fixed
}

// judged is one unit on the estimator's desk: what was read, what was meant by it, and
// what the part needs.
type judged struct {
	u     *Unit
	sh    *sheet // as read
	work  *sheet // as meant
	slip  *diagnosis
	n     need
	rules *Rules
}

// lines draws the contract's lines through what was meant; the diagonals' through what
// was read.
func (j *judged) lines(fs []Finding) []Finding {
	d, sh, work := j.slip, j.sh, j.work
	if d.clash {
		fs = wallMismatch(fs, sh, j.rules)
	}
	if !d.found || d.best.kind != asFrame || !sh.any(inside) { // else the gap is that of the frame to itself
		fs = gapLines(fs, work, j.rules)
	}
	fs = j.domeLines(fs)
	fs = diagonalLines(fs, sh)
	if !d.found || d.best.kind >= asSwap {
		fs = flashingLine(fs, d.corrected(sh), j.rules)
	}
	fs = nominalNote(fs, sh, j.n, d)
	fs = fractionLine(fs, sh, j.n, d)
	fs = roughLine(fs, sh, j.n, j.rules)
	if !d.found || !unitSlip(d.best.code) {
		fs = oddLines(fs, j.u, work, j.n)
	}
	fs = j.explained(fs)
	fs = edgeFirst(fs, d)
	if d.clash {
		fs = otherwise(fs, sh, j.rules)
	}
	return fs
}

// explained leaves to staff what follows from the mistake that is asked about already: the
// diagonals of sides that were read wrong, and the grip of an edge that is not the plastic's.
func (j *judged) explained(fs []Finding) []Finding {
	if !j.slip.found {
		return fs
	}
	asked := j.slip.best.code
	for i := 1; i < len(fs); i++ {
		f := &fs[i]
		switch {
		case f.Code == DiagonalsImpossible && f.Severity == Ask && j.diagonalsExplained():
			if asked == DiagonalsImpossible {
				return append(fs[:i], fs[i+1:]...) // said already, of the side that is wrong
			}
			f.Severity = Note
			f.Text = "Sides as read make diagonals of about " + tape(f.Numbers["expected_in"]) + " in, but they read " + tape(f.Numbers["found_in"]) + "."
		case f.Code == EdgeGripLong && asked == RetainerMeasuredForPlastic:
			f.Severity = Note
			f.Text = "The plastic would reach " + tape(f.Numbers["grip_in"]) + " in under the retaining frame on each side, more than frames have room for."
		}
	}
	return fs
}

// diagonalsExplained says whether a gross slip of a size, once undone, leaves nothing to
// say of the diagonals.
func (j *judged) diagonalsExplained() bool {
	g := &j.slip.best
	if g.spot >= spots || !g.gross() && g.kind != asFlare && !j.slip.contested {
		return false
	}
	fixed, _ := g.undo(j.sh, relations{})
	fixed.settleExact()
	return len(diagonalLines(nil, &fixed)) == 0
}

// domeLines are those of the plastic and the frame that holds it.
func (j *judged) domeLines(fs []Finding) []Finding {
	fs = gripLines(fs, j.work, j.rules)
	fs = rimLine(fs, j.work, j.slip)
	fs = passLines(fs, j.work)
	if !j.slip.found {
		fs = bulgeLines(fs, j.sh)
	}
	if j.work == j.sh { // of a number that was read wrong, hundredths of an inch tell nothing
		fs = thermalLine(fs, j.u, j.sh, j.rules)
	}
	return fs
}

// gross says whether the guess is about a number that is off by so much that nothing
// can be judged by it.
func (g *guess) gross() bool {
	return g.kind >= asSwap && g.code != TapeHookInch
}

// settleExact makes the exact lengths those of the corrected readings.
func (sh *sheet) settleExact() {
	for s := range sh.v {
		for side, x := range sh.v[s] {
			sh.exact[s][side] = FromInches(x)
		}
	}
}

// otherwise: the numbers contradict each other, no known mistake tells how, and no line
// speaks of it either; then it is said which sizes don't go together.
func otherwise(fs []Finding, sh *sheet, rules *Rules) []Finding {
	rel := soundRelations(rules)
	for i := range fs {
		if fs[i].Severity != Note {
			return fs
		}
	}
	for _, p := range [...]struct {
		a, b   spot
		within reach
	}{{retainerOut, plastic, rel.rim}, {retainerOut, retainerIn, reach{1, 10}}, {plastic, retainerIn, rel.grip},
		{frame, outside, rel.gap}, {retainerIn, bulge, reach{0, 6}}} {
		if sh.pairMisfit(p.a, p.b, p.within, 0.5) > 2*leastCost {
			return append(fs, contradictionOf(p.a, p.b))
		}
	}
	if a, b := sh.first(plastic, retainerIn, retainerOut), sh.first(outside, frame, inside); sh.groupMisfit() > 2*leastCost {
		return append(fs, contradictionOf(a, b))
	}
	return fs
}

func contradictionOf(a, b spot) Finding {
	return Finding{Code: ImplausibleSize, Severity: Ask, Topic: a.topic(), Source: sourcePractice, clash: true,
		Settle: []Topic{a.topic(), b.topic()},
		Text:   "The sizes of " + partName(a.topic()) + " and " + partName(b.topic()) + " can't both be right, so could you measure them again?"}
}

// wallMismatch: no usual wall makes this difference.
func wallMismatch(fs []Finding, sh *sheet, rules *Rules) []Finding {
	rel := soundRelations(rules)
	if sh.pairMisfit(outside, inside, rel.wall, 0) <= 2*leastCost {
		return fs
	}
	wall := sh.differences(outside, inside)
	low, high, mean := wall.low(), wall.high(), wall.mean().Inches()
	f := Finding{Code: CurbWallMismatch, Severity: Ask, Topic: TopicCurbInside, Source: sourceWall,
		Numbers: Numbers{"expected_in": singleWall.Inches(), "found_in": mean},
		Settle:  []Topic{TopicCurbInside, TopicCurbOutside}}
	r, ur, ok := sh.diagonalResidual()
	switch {
	case ok && within(r, 0, 0, ur) == surelyOutside:
		f.Topic, f.Settle = TopicCurbOutside, []Topic{TopicCurbOutside} // off in both comparisons
	case ok:
		f.Settle = []Topic{TopicCurbInside} // the diagonals bear the outside out
	}
	band := oneSided * wall.u
	switch {
	case high.Inches() < -band:
		f.Text = "The curb's inside reads larger than its outside, so did the two change places?"
	case low.Inches() < -band:
		f.Text = "One way the curb's inside reads larger than its outside, so could you measure both again?"
	case max(mean, -mean) <= band:
		f.Text = "The curb's outside and inside read the same, so was one face measured twice?"
	case (high-low).Inches() > 2*band && low.Tape() == "0":
		f.Text = "Outside and inside of the curb are alike one way and differ by " + high.Tape() + " inches the other, so could you measure them again?"
	case (high - low).Inches() > 2*band:
		f.Text = "Outside and inside of the curb differ by " + low.Tape() + " inches one way and " + high.Tape() +
			" the other, so could you measure them again?"
	default:
		f.Text = "Outside and inside of the curb differ by " + tape(mean) + " in where a wood wall makes 3, so could you measure them again?"
	}
	return append(fs, f)
}

// edgeFirst: plastic that hardly reaches under its frame, or that reads like the frame's
// outside, is likelier to be the wrong edge, or a broken piece, than an inch misread.
func edgeFirst(fs []Finding, d *diagnosis) []Finding {
	if !d.found || d.best.code != TapeHookInch {
		return fs
	}
	for i := range fs {
		if c := fs[i].Code; (c == EdgeGripShort || c == RetainerMeasuredForPlastic) && fs[i].Severity != Note {
			f := fs[i]
			copy(fs[1:i+1], fs[:i])
			fs[0] = f
			break
		}
	}
	return fs
}
