package fitcheck

import (
	"slices"
	"strings"
	"testing"
)

// in makes a rectangle of decimal inches, round a diameter.
func rect(w, l float64) Size { return Size{Width: FromInches(w), Length: FromInches(l)} }

func round(d float64) Size { return Size{Diameter: FromInches(d)} }

func diagonalsOf(a, b float64) Diagonals { return Diagonals{FromInches(a), FromInches(b)} }

func high(in float64) Height { return Height{FromInches(in)} }

func rise(in float64) *Height { h := high(in); return &h }

func pitch(rise float64) *Slope { return &Slope{FromInches(rise), 12 * Inch} }

// curb is a whole unit's usual case: outside and inside in inches.
func curbUnit(outside, inside Size) Unit {
	return Unit{Style: StyleCurbMount, Want: WantCompleteUnit, CurbOutside: outside, CurbInside: inside}
}

// domeUnit is a dome's usual case: plastic and opening.
func domeUnit(plastic, opening Size) Unit {
	return Unit{Style: StyleCurbMount, FrameCondition: ConditionGood, Want: WantDomeOnly, PlasticSize: plastic, RetainerOpening: opening}
}

func checkOne(u Unit, use string) UnitResult {
	return Check(Job{Use: use, Units: []Unit{u}}, DefaultRules()).Units[0]
}

// graver are the findings that ask or stop, as "code severity", in order, and with notes
// those of the measurements too.
func said(r UnitResult, notes bool) string {
	var out []string
	for _, f := range r.Findings {
		if f.Severity == Note && (!notes || !ofMeasurement(f.Code)) {
			continue
		}
		out = append(out, string(f.Code)+" "+string(f.Severity))
	}
	return strings.Join(out, ", ")
}

// ofMeasurement leaves out what is advice on choices, places and parcels.
func ofMeasurement(c Code) bool {
	return !slices.Contains([]Code{HurricaneRegion, SnowRegion, ExtremeClimate, ImpactAdvised,
		SingleLayerHeatedSpace, RareColor, OversizeParcel}, c)
}

type fact struct {
	source  string
	unit    Unit
	verdict Verdict
	said    string // codes and severities, notes included
}

func testFacts(t *testing.T, use string, facts []fact) {
	t.Helper()
	for _, f := range facts {
		r := checkOne(f.unit, use)
		if r.Verdict != f.verdict || said(r, true) != f.said {
			t.Errorf("%s: %s with %q, want %s with %q", f.source, r.Verdict, said(r, true), f.verdict, f.said)
		}
	}
}

// with changes a unit and returns it.
func changed(u Unit, f func(*Unit)) Unit { f(&u); return u }
