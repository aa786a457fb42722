package fitcheck

import (
	"strings"
	"testing"
)

// The least slope of every covering: at it nothing is said, an eighth in twelve below it
// there is one note that names the section (IRC 2021 R905, dossier 2.4).
func TestLeastSlopeOfEachCovering(t *testing.T) {
	for _, row := range []struct {
		source   string
		covering string
		least    float64 // rise in 12
	}{
		{"R905.2.2", CoveringShingles, 2},
		{"R905.3.2", CoveringTile, 2.5},
		{"R905.4.2", CoveringMetalShingles, 3},
		{"R905.5.2", CoveringRollRoofing, 1},
		{"R905.6.2", CoveringSlate, 4},
		{"R905.7.2", CoveringWoodShingles, 3},
		{"R905.8.2", CoveringWoodShingles, 3}, // shakes
		{"R905.9.1", CoveringBuiltUp, 0.25},
		{"R905.10.2", CoveringMetal, 3},
		{"R905.10.2", CoveringStandingSeam, 0.25},
		{"R905.11", CoveringMembrane, 0.25},
	} {
		for _, off := range []float64{-0.125, 0, 0.125} {
			f, n := covered(row.covering, row.least+off)
			switch {
			case off < 0 && (n != 1 || !strings.Contains(f.Source, row.source) || f.Numbers["low_in_12"] != row.least || f.Numbers["found_in_12"] != row.least+off):
				t.Errorf("%s at %v: %d notes, %+v", row.covering, row.least+off, n, f)
			case off >= 0 && n != 0:
				t.Errorf("%s at %v: %q", row.covering, row.least+off, f.Text)
			}
		}
	}
	for _, c := range Choices(TopicRoofCovering) {
		if _, listed := coverings[c]; listed == (c == CoveringOther) {
			t.Errorf("%s has a least slope: %v", c, listed)
		}
	}
}

// T25 of the dossier's vectors (IRC 2021 R905.2.2): asphalt shingles at 1:12 contradict
// themselves; staff ask, since the customer is not held up for what lies around the curb.
func TestT25ShinglesOnALowSlope(t *testing.T) {
	u := curbUnit(rect(25.5, 49.5), rect(22.5, 46.5))
	u.RoofCovering, u.RoofSlope = CoveringShingles, pitch(1)
	res := Check(Job{Use: UseHome, Units: []Unit{u}}, DefaultRules())
	r := res.Units[0]
	if r.Verdict != VerdictFits || said(r, true) != "slope_below_code note" {
		t.Errorf("%s with %q", r.Verdict, said(r, true))
	}
	if res.Cautions[len(res.Cautions)-1] != CautionLocalCodes {
		t.Errorf("cautions %v: the local office decides", res.Cautions)
	}
}

// "Flat" is a word, not a measure: it fits what is laid on low roofs, and no shingles.
func TestCoveringOfAFlatRoof(t *testing.T) {
	for covering, want := range map[string]int{CoveringMembrane: 0, CoveringBuiltUp: 0, CoveringStandingSeam: 0, CoveringOther: 0, "": 0,
		CoveringShingles: 1, CoveringTile: 1, CoveringRollRoofing: 1, CoveringMetal: 1} {
		if f, n := covered(covering, 0); n != want {
			t.Errorf("flat, %s: %d notes %q, want %d", covering, n, f.Text, want)
		}
	}
	if r := checkOne(Unit{RoofCovering: CoveringShingles}, UseHome); has(r, SlopeBelowCode, Note) {
		t.Errorf("no slope is known: %q", said(r, true))
	}
}

// covered is the note of a covering at a rise in 12, and how many there are.
func covered(what string, slope float64) (f Finding, n int) {
	u := Unit{RoofCovering: what, RoofSlope: pitch(slope)}
	for _, found := range checkOne(u, UseHome).Findings {
		if found.Topic == TopicRoofCovering && found.Code == SlopeBelowCode && found.Severity == Note {
			f, n = found, n+1
		}
	}
	return f, n
}
