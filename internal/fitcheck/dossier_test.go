package fitcheck

import (
	"math"
	"testing"
)

// Measuring mistakes and what shows them (common practice unless a source is named).
func mistakes() []fact {
	unit := curbUnit
	diag := func(u Unit, a, b float64) Unit { u.CurbDiagonals = diagonalsOf(a, b); return u }
	framed := func(u Unit, s Size) Unit { u.FrameInside = s; return u }
	return []fact{
		{"T1: 2x lumber is 1 1/2 in dressed (PS 20): inside 45, outside 48", unit(rect(48, 48), rect(45, 45)), VerdictFits, ""},
		{"green 2x is 1 9/16 (PS 20)", unit(rect(48.125, 48.125), rect(45, 45)), VerdictFits, ""},
		{"1950s boards of 1 5/8 (lumber history)", unit(rect(48.25, 48.25), rect(45, 45)), VerdictFits, ""},
		{"T2: 5/8 drywall (IRC 2021 Table R702.3.5)", unit(rect(48, 48), rect(43.75, 43.75)), VerdictConfirm, "drywall_included ask"},
		{"1/2 drywall", unit(rect(48, 48), rect(44, 44)), VerdictConfirm, "drywall_included ask"},
		{"3/8 drywall or a flare: can't be told apart", unit(rect(48.75, 48.75), rect(45, 45)), VerdictConfirm, "drywall_included ask, flashing_included ask"},
		{"outside 48, inside 46.9: no wall makes 1.1", unit(rect(48, 48), rect(46.9, 46.9)), VerdictRemeasure, "curb_wall_mismatch ask"},
		{"outside 45, inside 48: changed places", unit(rect(45, 45), rect(48, 48)), VerdictRemeasure, "curb_wall_mismatch ask"},
		{"inside given twice", unit(rect(48, 48), rect(48, 48)), VerdictRemeasure, "curb_wall_mismatch ask"},
		{"doubled with drywall", unit(rect(29.5, 53.5), rect(22.5, 46.5)), VerdictConfirm, "doubled_curb ask"},
		{"one side a foot off", unit(rect(37.5, 49.5), rect(22.5, 46.5)), VerdictRemeasure, "misread_foot ask"},
		{"one side an inch off", unit(rect(26.5, 49.5), rect(22.5, 46.5)), VerdictRemeasure, "tape_hook_inch ask"},
		{"T9: all from the one-inch mark", diag(unit(rect(49, 49), Size{}), 68.882, 68.882), VerdictRemeasure, "tape_hook_inch ask"},
		{"T10: 36 x 60 has diagonals of 69.971", diag(unit(rect(36, 60), Size{}), 69.971, 69.971), VerdictFits, ""},
		{"T8: 68 and 67 3/4 on 48 x 48", diag(unit(rect(48, 48), Size{}), 68, 67.75), VerdictFits, "out_of_square note"},
		{"a diagonal shorter than a side", diag(unit(rect(48, 48), Size{}), 47, 47), VerdictRemeasure, "diagonals_impossible ask"},
		{"a diagonal as long as both sides", diag(unit(rect(48, 48), Size{}), 96, 96), VerdictRemeasure, "diagonals_impossible ask"},
		{"a side copied for the other", diag(unit(rect(25.5, 25.5), rect(22.5, 46.5)), 55.6875, 55.6875), VerdictRemeasure, "curb_wall_mismatch ask, diagonals_impossible note"},
		{"a side copied, the diagonals alone tell", diag(unit(rect(49.5, 49.5), Size{}), 55.6875, 55.6875), VerdictRemeasure, "diagonals_impossible ask"},
		{"a side of the plastic copied", domeUnit(rect(26, 26), rect(24, 48)), VerdictRemeasure, "implausible_size ask"},
		{"48.3 alone: decimals, 48 3/8 or 48 3/16", unit(rect(48.3, 48.3), Size{}), VerdictConfirm, "nominal_size ask"},
		{"48.3 that its inside bears out", unit(rect(48.3, 48.3), rect(45.375, 45.375)), VerdictFits, "nominal_size note"},
		{"48.3 for 48 3/4, as its inside tells", unit(rect(48.3, 48.3), rect(45.75, 45.75)), VerdictRemeasure, "nominal_size ask"},
		{"36.3 for 36 3/4, round", unit(round(36.3), round(33.75)), VerdictRemeasure, "nominal_size ask"},
		{"4.6 for 4 ft 6, as its inside tells", unit(rect(4.6, 4.6), rect(51, 51)), VerdictRemeasure, "feet_for_inches ask"},
		{"around for across, round, alone: or centimetres", unit(round(150.75), Size{}), VerdictConfirm, "implausible_size ask, metric_for_inches ask, too_large_to_make stop"},
		{"from the middle, round", unit(round(24), round(45)), VerdictRemeasure, "implausible_size ask"},
		{"level for along the roof at 6 in 12", changed(unit(rect(25.5, 49.5), rect(22.5, 41.625)), func(u *Unit) { u.RoofSlope = pitch(6) }), VerdictRemeasure, "curb_wall_mismatch ask"},
		{"two readings of a side an inch apart", unit(Size{Sides: []Length{51 * Inch / 2, 99 * Inch / 2, 53 * Inch / 2, 99 * Inch / 2}}, rect(22.5, 46.5)), VerdictConfirm, "out_of_square ask, flashing_included note"},
		{"T17: 2 x 4 is a name, or feet", unit(rect(2, 4), Size{}), VerdictConfirm, "nominal_size ask, feet_for_inches ask, too_small_to_make stop"},
		{"24 x 48 on an opening of 22 1/2 x 46 1/2: a name, or boards", unit(rect(24, 48), rect(22.5, 46.5)), VerdictConfirm, "thin_curb ask, nominal_size ask"},
		{"feet and decimals", unit(rect(2.125, 4.125), Size{}), VerdictConfirm, "feet_for_inches ask, too_small_to_make stop"},
		{"one size in feet", unit(rect(2.125, 4.125), rect(22.5, 46.5)), VerdictRemeasure, "feet_for_inches ask"},
		{"T18: 122 is 48.03 in centimetres", unit(rect(122, 122), Size{}), VerdictConfirm, "metric_for_inches ask, too_large_to_make stop"},
		{"1219 is 48 in millimetres", unit(rect(1219, 1219), rect(45, 45)), VerdictRemeasure, "metric_for_inches ask"},
		{"all in centimetres", unit(rect(64.8, 125.7), rect(57.2, 118.1)), VerdictConfirm, "metric_for_inches ask"},
		{"the old frame measured for the curb", framed(unit(rect(26.0625, 50.0625), rect(22.5, 46.5)), rect(25.875, 49.875)), VerdictRemeasure, "frame_measured_for_curb ask, flashing_included ask"},
		{"a frame that can't cap a curb that its inside bears out", framed(unit(rect(25.5, 49.5), rect(22.5, 46.5)), rect(25, 49)), VerdictNoFit, "wont_cap stop"},
		{"a frame that can't cap, or was itself measured", framed(unit(rect(25.5, 49.5), Size{}), rect(25, 49)), VerdictNoFit, "frame_measured_for_curb ask, wont_cap stop"},
		{"round, doubled", unit(round(51), round(45)), VerdictConfirm, "doubled_curb ask"},
		{"round, single", unit(round(48), round(45)), VerdictFits, ""},
		{"round, a foot off", unit(round(60), round(45)), VerdictRemeasure, "misread_foot ask"},
		{"too large", unit(rect(150, 150), rect(147, 147)), VerdictNoFit, "implausible_size ask, too_large_to_make stop, area_over_code note"},
		{"24 x 48 alone may be a name", unit(rect(24, 48), Size{}), VerdictConfirm, "nominal_size note"},
		{"24 x 48 that the diagonals bear out is none", diag(unit(rect(24, 48), Size{}), 53.6875, 53.6875), VerdictFits, ""},
		{"unusually slim", unit(rect(13, 95), rect(10, 92)), VerdictConfirm, "implausible_size ask"},
		{"T27: plastic 48.5 in an opening of 48.5 falls through", domeUnit(rect(48.5, 48.5), rect(48.5, 48.5)), VerdictNoFit, "edge_grip_short stop"},
		{"the retainer measured for the plastic", changed(domeUnit(rect(27.5, 51.5), rect(24, 48)), func(u *Unit) { u.RetainerOutside = rect(27.5, 51.5) }), VerdictRemeasure, "retainer_measured_for_plastic ask, edge_grip_long note"},
	}
}

func TestMistakes(t *testing.T) { testFacts(t, UseHome, mistakes()) }

// What two guesses share is asked in one question, and what would settle it is named.
func TestRivalsAndWhatSettles(t *testing.T) {
	r := checkOne(curbUnit(rect(48.75, 48.75), rect(45, 45)), UseHome)
	a, b := r.Findings[0], r.Findings[1]
	if a.Rival != b.Code || b.Rival != a.Code || len(a.Settle) != 2 {
		t.Errorf("rivals %q and %q, settled by %v", a.Rival, b.Rival, a.Settle)
	}
	r = checkOne(curbUnit(rect(48, 48), rect(44, 44)), UseHome)
	if f := r.Findings[0]; f.Rival != "" || len(f.Settle) != 1 || f.Settle[0] != TopicCurbInside {
		t.Errorf("drywall: rival %q, settled by %v", f.Rival, f.Settle)
	}
	u := curbUnit(rect(48, 48), rect(46.9, 46.9))
	u.CurbDiagonals = diagonalsOf(67.875, 67.875)
	if f := checkOne(u, UseHome).Findings[0]; len(f.Settle) != 1 || f.Settle[0] != TopicCurbInside {
		t.Errorf("an outside that its diagonals bear out: settled by %v", f.Settle)
	}
}

// Geometry of the diagonals: dossier check vectors, computed from the parallelogram law.
func TestSkew(t *testing.T) {
	for _, row := range []struct {
		w, l, a, b   float64
		overW, overL float64 // (d1² − d2²) / 4L and / 4W
	}{
		{48, 48, 68, 67.75, 0.177, 0.177},
		{36, 60, 70.25, 69.75, 0.292, 0.486},
	} {
		u := curbUnit(rect(row.w, row.l), Size{})
		u.CurbDiagonals = diagonalsOf(row.a, row.b)
		sh := readSheet(&u, &Job{}, DefaultRules())
		if got := sh.skew(0).Inches(); math.Abs(got-row.overW) > 0.0005 {
			t.Errorf("%vx%v over the width: %.4f, want %.3f", row.w, row.l, got, row.overW)
		}
		if got := sh.skew(1).Inches(); math.Abs(got-row.overL) > 0.0005 {
			t.Errorf("%vx%v over the length: %.4f, want %.3f", row.w, row.l, got, row.overL)
		}
	}
}

// Expansion of property tables (ASTM D696 data sheets), over 100 K.
func TestThermalMovement(t *testing.T) {
	for _, row := range []struct {
		source   string
		in       float64
		material string
		kelvin   float64
		want     float64
	}{
		{"T6: acrylic 72 in against aluminium", 72, MaterialAcrylic, 100, 0.372},
		{"acrylic 48 in", 48, MaterialAcrylic, 100, 0.248},
		{"polycarbonate 72 in", 72, MaterialPolycarbonate, 100, 0.318},
		{"polycarbonate 48 in", 48, MaterialPolycarbonate, 100, 0.212},
		{"acrylic 48 in, the hot side", 48, MaterialAcrylic, hotKelvin, 0.110},
		{"acrylic 72 in, the cold side", 72, MaterialAcrylic, coldKelvin, 0.206},
		{"not chosen: as acrylic", 48, "", 100, 0.248},
	} {
		if got := movement(FromInches(row.in), row.material, row.kelvin).Inches(); math.Abs(got-row.want) > 0.0006 {
			t.Errorf("%s: %.4f in, want %.3f", row.source, got, row.want)
		}
	}
	if free := expansionPolycarbonate * 48 * 100; math.Abs(free-0.324) > 0.0005 {
		t.Errorf("T7: polycarbonate 48 in, free: %.4f, want 0.324", free)
	}
	// The glazier's 1/16 in a foot: 51.5 in less 0.268 is 51.23, to the sixteenth 51 3/16.
	if got := roundDown(pocketSheet(FromInches(51.5), MaterialAcrylic), Sixteenth); got != FromInches(51.1875) {
		t.Errorf("sheet for a pocket of 51 1/2: %s, want 51 3/16", got.Tape())
	}
}

func TestCodeFlags(t *testing.T) {
	dome := func(side, r float64) Unit {
		return changed(domeUnit(rect(side, side), rect(side-2, side-2)), func(u *Unit) { u.DomeRise = rise(r) })
	}
	curb := func(height, slope float64) Unit {
		return changed(curbUnit(rect(25.5, 49.5), rect(22.5, 46.5)), func(u *Unit) { u.CurbHeight, u.RoofSlope = high(height), pitch(slope) })
	}
	flat := func(slope float64) Unit {
		return changed(curb(6, slope), func(u *Unit) { u.Profile = ProfileFlat })
	}
	testFacts(t, UseHome, []fact{
		{"T3, IBC 2021 §2610.3: 48 in rises 4.8", dome(48, 4.8), VerdictFits, ""},
		{"48 in, 4.75", dome(48, 4.75), VerdictFits, "rise_below_code note"},
		{"24 in rises 3, not 2.4", dome(24, 2.9375), VerdictFits, "rise_below_code note"},
		{"24 in, 3", dome(24, 3), VerdictFits, ""},
		{"72 in, 7.2", dome(72, 7.2), VerdictFits, ""},
		{"72 in, 7.125", dome(72, 7.125), VerdictFits, "rise_below_code note"},
		{"T4, IRC 2021 R308.6.8: slope 2:12, curb 3 1/2", curb(3.5, 2), VerdictFits, "curb_below_code note"},
		{"slope 2:12, curb 4", curb(4, 2), VerdictFits, ""},
		{"T5: slope 4:12 on a house, curb 3 1/2", curb(3.5, 4), VerdictFits, ""},
		{"slope 3:12 on a house", curb(3.5, 3), VerdictFits, ""},
		{"IBC 2021 §2610.4: 120 x 120 inside is 100 sq ft", curbUnit(rect(123, 123), rect(120, 120)), VerdictNoFit, "implausible_size ask, too_large_to_make stop"},
		{"IBC 2021 §2610.3: flat plastic at 4:12", flat(4), VerdictFits, ""},
		{"flat plastic at 3:12", flat(3), VerdictFits, "slope_below_code note"},
		{"a dome higher than half a ball", dome(48, 25), VerdictConfirm, "implausible_size ask"},
	})
	if r := checkOne(curb(3.5, 4), UseCommercial); !has(r, CurbBelowCode, Note) {
		t.Errorf("IBC 2021 §2610.2: a commercial roof at 4:12, curb 3 1/2: %q", said(r, true))
	}
	if r := checkOne(curbUnit(rect(125, 125), rect(122, 122)), UseHome); !has(r, AreaOverCode, Note) {
		t.Errorf("122 x 122 in is 103.4 sq ft: %q", said(r, true))
	}
}

func TestUseAgainstSize(t *testing.T) {
	vent := domeUnit(rect(14, 14), Size{})
	vent.Style = ""
	for _, row := range []struct {
		use  string
		unit Unit
		want Severity
	}{
		{UseHome, vent, Ask},
		{UseRV, vent, ""},
		{UseHome, curbUnit(rect(17.5, 17.5), rect(14.5, 14.5)), ""},
		{UseManufacturedHome, curbUnit(rect(51, 51), rect(48, 48)), Note},
		{UseManufacturedHome, curbUnit(rect(17.5, 17.5), rect(14.5, 14.5)), ""},
		{UseManufacturedHome, curbUnit(rect(25.5, 51), rect(22.5, 48)), ""},
	} {
		r := checkOne(row.unit, row.use)
		got := Severity("")
		for _, f := range r.Findings {
			if f.Code == ImplausibleSize {
				got = f.Severity
			}
		}
		if got != row.want {
			t.Errorf("%s with %v: %q, want %q", row.use, row.unit.CurbInside, got, row.want)
		}
	}
}

// A sheet that its opening bears out was not misread, however near to a foot's difference it lies to another's.
func TestSheetBorneOut(t *testing.T) {
	dome := func(w, l, ow, ol float64) Unit {
		return Unit{Style: StyleCurbMount, Want: WantDomeOnly, FrameCondition: ConditionGood, PlasticSize: rect(w, l), RetainerOpening: rect(ow, ol)}
	}
	for _, row := range []struct {
		second Unit
		want   Code
	}{
		{dome(25.25, 37.25, 23.5, 35.5), ""},
		{dome(25.25, 37.25, 23.5, 34.5), MisreadFoot},
		{Unit{Style: StyleCurbMount, Want: WantDomeOnly, FrameCondition: ConditionGood, PlasticSize: rect(25.25, 37.25)}, MisreadFoot},
	} {
		r := Check(Job{Units: []Unit{dome(37.25, 37.25, 35.5, 35.5), row.second}}, DefaultRules()).Units[1]
		if row.want == "" && has(r, MisreadFoot, Note) || row.want != "" && !has(r, row.want, Note) {
			t.Errorf("%v: %q, want %q", row.second.PlasticSize, said(r, true), row.want)
		}
	}
}

func TestUnitsOfOneBuilding(t *testing.T) {
	a := curbUnit(rect(25.5, 49.5), rect(22.5, 46.5))
	for _, row := range []struct {
		second Unit
		want   Code
	}{
		{a, ""},
		{curbUnit(rect(25.5, 37.5), rect(22.5, 34.5)), MisreadFoot},
		{curbUnit(rect(26.5, 49.5), rect(23.5, 46.5)), TapeHookInch},
		{curbUnit(rect(49.5, 25.5), rect(46.5, 22.5)), SidesSwapped},
		{curbUnit(rect(33.5, 49.5), rect(30.5, 46.5)), ""},
	} {
		r := Check(Job{Units: []Unit{a, row.second}}, DefaultRules()).Units[1]
		if row.want == "" && said(r, true) != "" || row.want != "" && !has(r, row.want, Note) || r.Verdict != VerdictFits {
			t.Errorf("%v after %v: %s with %q, want %q", row.second.CurbOutside, a.CurbOutside, r.Verdict, said(r, true), row.want)
		}
	}
}
