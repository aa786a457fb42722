package fitcheck

import "testing"

// The lines of the outside contract, on them and a sixteenth beyond. Sizes that agree are
// silent.
func contractLines() []fact {
	curb := curbUnit(rect(25.5, 49.5), rect(22.5, 46.5))
	framed := func(gap float64) Unit {
		return changed(curb, func(u *Unit) { u.FrameInside = rect(25.5+gap, 49.5+gap) })
	}
	flashed := func(more float64) Unit { return curbUnit(rect(25.5+more, 49.5+more), rect(22.5, 46.5)) }
	// 3-4-5: sides of 36 x 48 make diagonals of exactly 60.
	square := func(a, b float64) Unit {
		return changed(curbUnit(rect(36, 48), Size{}), func(u *Unit) { u.CurbDiagonals = diagonalsOf(a, b) })
	}
	grip := func(g float64) Unit { return domeUnit(rect(24+2*g, 36+2*g), rect(24, 36)) }
	return []fact{
		{"a single wall", curb, VerdictFits, ""},
		{"gap 1/4, sound", framed(0.25), VerdictFits, ""},
		{"gap 3/8, sound", framed(0.375), VerdictFits, ""},
		{"gap 1/2, sound", framed(0.5), VerdictFits, ""},
		{"gap 3/16, tight below 1/4", framed(0.1875), VerdictConfirm, "cap_gap_tight ask"},
		{"gap 9/16, a note", framed(0.5625), VerdictFits, "cap_gap_loose note"},
		{"gap 3/4, still a note", framed(0.75), VerdictFits, "cap_gap_loose note"},
		{"gap 13/16, loose above 3/4", framed(0.8125), VerdictConfirm, "cap_gap_loose ask"},
		{"gap under nothing", framed(-0.125), VerdictNoFit, "wont_cap stop"},
		{"flashing 3/8 in all, honest", flashed(0.375), VerdictFits, ""},
		{"flashing 7/16 in all", flashed(0.4375), VerdictConfirm, "flashing_included ask"},
		{"flashing 1/2 in all", flashed(0.5), VerdictConfirm, "flashing_included ask"},
		{"diagonals alike", square(60, 60), VerdictFits, ""},
		{"diagonals 3/16 apart", square(60.09375, 59.90625), VerdictFits, ""},
		{"diagonals 1/4 apart, a note", square(60.125, 59.875), VerdictFits, "out_of_square note"},
		{"diagonals 1/2 apart, still a note", square(60.25, 59.75), VerdictFits, "out_of_square note"},
		{"diagonals 9/16 apart, an ask", square(60.28125, 59.71875), VerdictConfirm, "out_of_square ask"},
		{"mean diagonal 1/4 off", square(60.25, 60.25), VerdictFits, ""},
		{"grip 1/2, sound but for the cold", grip(0.5), VerdictFits, "expansion_clearance note"},
		{"grip 3/4, sound", grip(0.75), VerdictFits, ""},
		{"grip 1 1/2, sound", grip(1.5), VerdictFits, ""},
		{"grip 7/16, a note", grip(0.4375), VerdictFits, "edge_grip_short note, expansion_clearance note"},
		{"grip 3/8, a note", grip(0.375), VerdictFits, "edge_grip_short note, expansion_clearance note"},
		{"grip 5/16, short under 3/8", grip(0.3125), VerdictConfirm, "edge_grip_short ask"},
		{"grip 1 9/16, a note", grip(1.5625), VerdictFits, "edge_grip_long note"},
		{"grip 2, still a note", grip(2), VerdictFits, "edge_grip_long note"},
		{"the plastic falls through", grip(0), VerdictNoFit, "edge_grip_short stop"},
		{"sides swapped", curbUnit(rect(25.5, 49.5), rect(46.5, 22.5)), VerdictConfirm, "sides_swapped ask"},
		{"doubled curb", curbUnit(rect(28.5, 52.5), rect(22.5, 46.5)), VerdictConfirm, "doubled_curb ask"},
		{"thin curb", curbUnit(rect(24.25, 48.25), rect(22.75, 46.75)), VerdictConfirm, "thin_curb ask"},
		{"the contract's example", curbUnit(rect(25.5, 49.5), rect(21.5, 45.5)), VerdictConfirm, "drywall_included ask"},
	}
}

func TestContractLines(t *testing.T) {
	testFacts(t, UseHome, contractLines())
	square := func(a, b float64) Unit {
		return changed(curbUnit(rect(36, 48), Size{}), func(u *Unit) { u.CurbDiagonals = diagonalsOf(a, b) })
	}
	if r := checkOne(square(60.5625, 60.5625), UseHome); !has(r, DiagonalsImpossible, Ask) || r.Verdict != VerdictRemeasure {
		t.Errorf("mean diagonal 9/16 off: %s with %q", r.Verdict, said(r, true))
	}
	if r := checkOne(square(60.5, 60.5), UseHome); has(r, DiagonalsImpossible, Ask) {
		t.Errorf("mean diagonal 1/2 off: %s with %q", r.Verdict, said(r, true))
	}
}

func has(r UnitResult, c Code, s Severity) bool {
	for _, f := range r.Findings {
		if f.Code == c && f.Severity == s {
			return true
		}
	}
	return false
}

func TestPassThrough(t *testing.T) {
	bulge := func(spare float64) Unit {
		return changed(domeUnit(rect(26, 50), rect(24, 48)), func(u *Unit) { u.BulgeBase = rect(24-spare, 48-spare) })
	}
	testFacts(t, UseHome, []fact{
		{"bulge not known: it passes", domeUnit(rect(26, 50), rect(24, 48)), VerdictFits, ""},
		{"1/4 to spare (common practice)", bulge(0.25), VerdictFits, ""},
		{"3/16 to spare, surely passes", bulge(0.1875), VerdictFits, "wont_pass_opening note"},
		{"1/16 to spare, can't tell", bulge(0.0625), VerdictConfirm, "wont_pass_opening ask"},
		{"none to spare", bulge(0), VerdictNoFit, "wont_pass_opening stop"},
		{"larger than the opening, perhaps by the hook's inch", bulge(-0.5), VerdictNoFit, "tape_hook_inch ask, wont_pass_opening stop"},
	})
}

func TestVerdictsOfWhatIsMissing(t *testing.T) {
	alone := curbUnit(rect(25.5, 49.5), Size{})
	for _, row := range []struct {
		name    string
		unit    Unit
		verdict Verdict
		missing Topic
	}{
		{"unit, outside alone", alone, VerdictConfirm, TopicCurbInside},
		{"unit, outside and diagonals", changed(alone, func(u *Unit) { u.CurbDiagonals = diagonalsOf(55.6875, 55.6875) }), VerdictFits, ""},
		{"unit, one side", curbUnit(Size{Length: 99 * Inch / 2}, rect(22.5, 46.5)), VerdictIncomplete, TopicCurbOutside},
		{"unit, a lone number", curbUnit(Size{One: 99 * Inch / 2}, Size{}), VerdictIncomplete, TopicCurbOutside},
		{"unit, nothing", curbUnit(Size{}, Size{}), VerdictIncomplete, TopicCurbOutside},
		{"dome, plastic alone", domeUnit(rect(26, 50), Size{}), VerdictConfirm, TopicRetainerOpening},
		{"dome, opening alone", domeUnit(Size{}, rect(24, 48)), VerdictIncomplete, TopicPlasticSize},
		{"round: one number is the diameter", changed(domeUnit(Size{One: 26 * Inch}, round(24)), func(u *Unit) { u.Outline = OutlineRound }), VerdictFits, ""},
	} {
		r := checkOne(row.unit, UseHome)
		if r.Verdict != row.verdict {
			t.Errorf("%s: %s, want %s", row.name, r.Verdict, row.verdict)
		}
		for _, topic := range []Topic{TopicCurbOutside, TopicCurbInside, TopicPlasticSize, TopicRetainerOpening} {
			listed := false
			for _, m := range r.Missing {
				listed = listed || m == topic
			}
			if listed != (topic == row.missing) {
				t.Errorf("%s: missing %v, want of the measures only %q", row.name, r.Missing, row.missing)
			}
		}
	}
}

// Choices are listed as missing and change no verdict.
func TestMissingChoices(t *testing.T) {
	u := curbUnit(rect(25.5, 49.5), rect(22.5, 46.5))
	if got := checkOne(u, UseHome).Missing; len(got) != 4 || got[0] != TopicLayers || got[3] != TopicFinish {
		t.Errorf("nothing chosen: missing %v", got)
	}
	u.Layers, u.Material, u.Finish, u.Color = 2, MaterialAcrylic, FinishMill, Color{Outer: ColorBronze}
	if got := checkOne(u, UseHome).Missing; len(got) != 1 || got[0] != TopicColor {
		t.Errorf("inner color of two layers: missing %v", got)
	}
	u.Color.Inner = ColorClear
	if r := checkOne(u, UseHome); len(r.Missing) != 0 || r.Verdict != VerdictFits {
		t.Errorf("all chosen: %s, missing %v", r.Verdict, r.Missing)
	}
}

// A round dome may stand on a square curb: two sides given for the curb are sides then.
func TestRoundDomeOnSquareCurb(t *testing.T) {
	u := Unit{Style: StyleCurbMount, Want: WantCompleteUnit, Outline: OutlineRound, PlasticSize: round(26),
		CurbOutside: rect(25.5, 25.5), CurbInside: rect(22.5, 22.5)}
	r := checkOne(u, UseHome)
	if r.Verdict != VerdictFits || said(r, false) != "" || r.Order.FrameInside == nil || r.Order.FrameInside.Width != FromInches(25.875) {
		t.Errorf("%s %q %+v", r.Verdict, said(r, false), r.Order.FrameInside)
	}
	// Two readings of one diameter are one, and the larger counts.
	u = domeUnit(rect(26, 26.125), rect(24, 24))
	u.Outline = OutlineRound
	if r = checkOne(u, UseHome); r.Verdict != VerdictFits || r.Order.PlasticSize == nil || r.Order.PlasticSize.Diameter != FromInches(26.125) {
		t.Errorf("%s %q %+v", r.Verdict, said(r, false), r.Order.PlasticSize)
	}
	u.PlasticSize = rect(26, 27)
	if r = checkOne(u, UseHome); !has(r, OutOfSquare, Ask) {
		t.Errorf("diameters an inch apart: %q", said(r, true))
	}
}

// One direction just past a line, while the other vouches for it, is told to staff only.
func TestDirectionsVouchForEachOther(t *testing.T) {
	framed := func(gapW, gapL float64) Unit {
		return changed(curbUnit(rect(25.5, 49.5), rect(22.5, 46.5)), func(u *Unit) { u.FrameInside = rect(25.5+gapW, 49.5+gapL) })
	}
	testFacts(t, UseHome, []fact{
		{"3/16 and 3/8", framed(0.1875, 0.375), VerdictFits, "cap_gap_tight note"},
		{"1/8 and 3/8: past what reading explains", framed(0.125, 0.375), VerdictConfirm, "cap_gap_tight ask"},
		{"13/16 and 5/8", framed(0.8125, 0.625), VerdictFits, "cap_gap_loose note"},
		{"flashing 7/16 one way", curbUnit(rect(25.9375, 49.75), rect(22.5, 46.5)), VerdictFits, "flashing_included note"},
	})
}

// Read to the inch, numbers that agree prove nothing; read to half an inch they still do.
func TestRoughReadings(t *testing.T) {
	for _, row := range []struct {
		unit       Unit
		resolution Length
		want       Verdict
	}{
		{curbUnit(rect(26, 50), rect(23, 47)), Sixteenth, VerdictFits},
		{curbUnit(rect(26, 50), rect(23, 47)), Inch / 2, VerdictFits},
		{curbUnit(rect(26, 50), rect(23, 47)), Inch, VerdictConfirm},
		{domeUnit(rect(26, 50), rect(24, 48)), Inch / 2, VerdictFits},
		{domeUnit(rect(26, 50), rect(24, 48)), 2 * Inch, VerdictConfirm},
	} {
		r := Check(Job{Units: []Unit{row.unit}, Resolution: row.resolution}, DefaultRules()).Units[0]
		if r.Verdict != row.want || has(r, NominalSize, Ask) != (row.want == VerdictConfirm) {
			t.Errorf("read to %s in: %s %q, want %s", row.resolution.Tape(), r.Verdict, said(r, true), row.want)
		}
	}
}
