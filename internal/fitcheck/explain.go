package fitcheck

// Sources of what the diagnosis knows.
const (
	sourcePractice = "common practice"
	sourceWall     = "PS 20 dressed lumber 1 1/2 in, as reported by two tables of softwood sizes; common practice"
	sourceDrywall  = "IRC 2021 Table R702.3.5 (drywall 3/8, 1/2, 5/8 in); PS 20 dressed lumber 1 1/2 in, as reported by two tables of softwood sizes"
	sourceDiagonal = "geometry: diagonals of a parallelogram; common practice"
)

// explain turns a diagnosis into findings: the best guess, and the one that the numbers
// can't tell from it.
func (d *diagnosis) explain(sh *sheet) []Finding {
	if !d.found {
		return nil
	}
	fs := []Finding{d.best.finding(sh)}
	fs[0].Settle = d.settle
	if d.tied {
		fs[0].Text = d.tiedText(fs[0].Text)
	}
	if d.contested {
		fs = append(fs, d.rival.finding(sh))
		fs[0].Rival, fs[1].Rival = fs[1].Code, fs[0].Code
		fs[1].Settle = d.settle
		lead := "The numbers go together only if "
		if sh.measured() == 1 {
			lead = "Such a size is likely only if "
		}
		fs[0].Text = lead + d.best.clause() + ", or if " + d.rival.clause() + ", so which of the two is it?"
	}
	for i := range fs {
		fs[i].clash = d.best.spot < everywhere && d.best.kind >= asSwap && fs[i].Code != SidesSwapped && sh.measured() > 1
	}
	return fs
}

func (g *guess) finding(sh *sheet) Finding {
	f := Finding{Code: g.code, Severity: Ask, Source: sourcePractice, Topic: g.topics(sh)[0]}
	switch g.code {
	case DrywallIncluded, FlashingIncluded, DoubledCurb, ThinCurb:
		g.wallFinding(sh, &f)
	case FrameMeasuredForCurb:
		side := sh.sharedSide(outside, frame)
		f.Numbers = Numbers{"found_in": sh.v[outside][side], "frame_inside_in": sh.v[frame][side]}
		f.Text = "The curb's outside reads " + tape(sh.v[outside][side]) + " in and the inside of the old frame that caps it " +
			tape(sh.v[frame][side]) + ", so was the frame measured and not the curb under it?"
	case RetainerMeasuredForPlastic:
		g.retainerFinding(sh, &f)
	case CurbWallMismatch, DiagonalsImpossible, ImplausibleSize:
		g.shapeFinding(sh, &f)
	case SidesSwapped:
		v := sh.v[g.spot]
		f.Numbers = Numbers{"width_in": v[0], "length_in": v[1]}
		f.Text = "Width and length of " + g.about() + " seem to have changed places against the other sizes, so is " +
			tape(v[1]) + " in its width and " + tape(v[0]) + " its length?"
	default:
		g.readingFinding(sh, &f)
	}
	return f
}

// wallFinding speaks of outside less inside. A sound wall is 3 in (PS 20).
func (g *guess) wallFinding(sh *sheet, f *Finding) {
	found := sh.wall()
	f.Source = sourceWall
	f.Numbers = Numbers{"expected_in": singleWall.Inches(), "found_in": found}
	lead := "Your curb is " + tape(found) + " in larger outside than inside"
	switch g.code {
	case DrywallIncluded:
		f.Source = sourceDrywall
		f.Text = lead + " where bare wood makes 3, so did the tape inside touch drywall or boards rather than the wood itself?"
	case FlashingIncluded:
		f.Text = lead + " where wood alone makes 3, so was the outside measured at the very top, above where the flashing flares out?"
	case DoubledCurb:
		f.Numbers["expected_in"] = 2 * singleWall.Inches()
		f.Text = lead + ", which is what walls two boards thick make, so is the curb doubled, or was the length of the tape's own case left out inside?"
		f.Numbers["wall_in"] = found / 2
	case ThinCurb:
		f.Numbers["expected_in"] = singleWall.Inches() / 2
		f.Text = lead + ", which is what thin boards or plywood make, so are its walls that thin?"
		f.Numbers["wall_in"] = found / 2
	}
}

// wall is outside less inside, the mean of the sides that are known.
func (sh *sheet) wall() float64 {
	sum, n := 0.0, 0.0
	for side := range 2 {
		if sh.both(outside, inside, side) {
			sum += sh.v[outside][side] - sh.v[inside][side]
			n++
		}
	}
	return sum / max(n, 1)
}

// sharedSide is a side that both were read on.
func (sh *sheet) sharedSide(a, b spot) int {
	if sh.both(a, b, 0) {
		return 0
	}
	return 1
}

func (g *guess) retainerFinding(sh *sheet, f *Finding) {
	by := retainerOut
	if !sh.any(retainerOut) {
		by = retainerIn
	}
	side := sh.sharedSide(plastic, by)
	f.Numbers = Numbers{"found_in": sh.v[plastic][side], by.topic().name(): sh.v[by][side]}
	f.Text = "The plastic reads " + tape(sh.v[plastic][side]) + " in and " + partName(by.topic()) + " " +
		tape(sh.v[by][side]) + ", so was the metal frame measured and not the edge of the plastic itself?"
}

// name is the topic as the name of a number in inches.
func (t Topic) name() string { return string(t) + "_in" }

// readingFinding speaks of a number that was read or written wrong.
func (g *guess) readingFinding(sh *sheet, f *Finding) {
	read, meant := g.example(sh)
	f.Numbers = Numbers{"expected_in": meant[0], "found_in": read[0]}
	switch g.code {
	case NominalSize:
		if g.kind == asPrefix {
			g.fractionFinding(sh, f)
			break
		}
		f.Text = plainNumber(read[0]) + " x " + plainNumber(read[1]) + " for " + g.about() +
			" looks like the name of a size, so what does a tape show, to the sixteenth of an inch?"
	case FeetForInches, MetricForInches:
		f.Text = g.unitQuestion(sh, read, meant)
	case MisreadFoot:
		f.Text = g.reads() + tape(read[0]) + " in where the other sizes suggest " + tape(meant[0]) +
			", so could it have been read a foot off?"
	case TapeHookInch:
		if g.side != bothSides {
			f.Text = g.reads() + tape(read[0]) + " in where the other sizes suggest " + tape(meant[0]) +
				", so could it have been read an inch off?"
			break
		}
		f.Text = g.reads() + "an inch more than the rest allows"
		if g.spot >= everywhere {
			f.Text = "The numbers go together only if each reads an inch too much"
		}
		f.Text += ", so was the tape begun at its one-inch mark and the inch not taken off?"
	}
}

// reads begins a sentence about what was read.
func (g *guess) reads() string {
	if g.spot == diagonals && g.side == bothSides {
		return "The diagonals read "
	}
	return capital(g.about()) + " reads "
}

// unitQuestion asks which unit a number is in. Of all sizes it names the first.
func (g *guess) unitQuestion(sh *sheet, read, meant [2]float64) string {
	would := ", which would be " + join(meant, tape) + " in"
	switch {
	case g.kind == asPrefix:
		return g.reads() + join(read, plainNumber) + ", so is that feet and inches" + would + "?"
	case g.spot >= everywhere:
		first := sh.first(outside, plastic, inside, frame, retainerIn, retainerOut, bulge)
		if first < 0 {
			break
		}
		return capital(partName(first.topic())) + " reads " + join(read, plainNumber) + ", so are all sizes in " + unitName(g.scale) +
			", which would make it " + join(meant, tape) + " in?"
	}
	return g.reads() + join(read, plainNumber) + ", so is that in " + unitName(g.scale) + would + g.feetToo(sh) + "?"
}

// example is what was read and what would be meant: both sides of one size, or the one
// side that the guess is about.
func (g *guess) example(sh *sheet) (read, meant [2]float64) {
	fixed, _ := g.undo(sh, relations{})
	s := g.spot
	if s >= everywhere {
		s = sh.first(outside, plastic, inside, frame, retainerIn, retainerOut, bulge)
	}
	switch {
	case s == diagonals:
		read, meant = sh.d, fixed.d
	case s >= 0:
		read, meant = sh.v[s], fixed.v[s]
	}
	if g.side == 1 || read[0] == 0 {
		read, meant = [2]float64{read[1]}, [2]float64{meant[1]}
	} else if g.side == 0 {
		read[1], meant[1] = 0, 0
	}
	return read, meant
}

// join writes one or two numbers: "25 1/2 x 49 1/2".
func join(v [2]float64, write func(float64) string) string {
	if v[1] == 0 {
		return write(v[0])
	}
	return write(v[0]) + " x " + write(v[1])
}

func capital(s string) string { return string(s[0]-'a'+'A') + s[1:] }

// tiedText speaks of several readings where the numbers don't tell which one is wrong.
func (d *diagnosis) tiedText(text string) string {
	lead := "One of the readings of " + listParts(d.settle)
	if len(d.settle) == 1 {
		lead = "One of the two readings of " + partName(d.settle[0])
	}
	off := "an inch"
	switch {
	case d.best.code == SidesSwapped && len(d.settle) > 1:
		return "Width and length of " + listParts(d.settle) + " are not in the same order, so which side is the width?"
	case d.best.code == MisreadFoot:
		off = "a foot"
	case d.best.code != TapeHookInch:
		return text
	}
	return lead + " seems to be " + off + " off, so could you measure them again?"
}

// listParts names up to three parts: "the plastic, the curb's outside and the diagonals".
func listParts(ts []Topic) string {
	if len(ts) > 3 {
		return "these sizes"
	}
	names := partName(ts[0])
	for i, t := range ts[1:] {
		if i == len(ts)-2 {
			names += " and " + partName(t)
		} else {
			names += ", " + partName(t)
		}
	}
	return names
}
