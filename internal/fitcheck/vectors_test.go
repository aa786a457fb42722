package fitcheck

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if math.Abs(got-want) > by {
		t.Errorf("%s: %.4f, want %.4f", what, got, want)
	}
}

// T11: a round cap of base radius a and rise h has R = (a² + h²) / 2h, area π (a² + h²) and
// λ = 1 + (h/a)² times its plan's area (geometry). Blowing it thins the sheet to 1/λ in the
// mean and leaves its mass, so what we weigh, the flat blank, is the dome's.
func TestBlownDomeWeighsWhatItsBlankDid(t *testing.T) {
	rules := DefaultShipRules()
	for _, row := range []struct{ a, h, radius, area, times, mean float64 }{
		{24, 4.8, 62.40, 1881.9, 1.040, 0.962},
		{24, 9.6, 34.80, 2099.1, 1.160, 0.862},
		{24, 12, 30.00, 2261.9, 1.250, 0.800},
		{24, 24, 24.00, 3619.1, 2.000, 0.500},
	} {
		radius := (row.a*row.a + row.h*row.h) / (2 * row.h)
		area := 2 * math.Pi * radius * row.h // Archimedes: a cap is as large as its band of the cylinder
		times := area / (math.Pi * row.a * row.a)
		near(t, "R", radius, row.radius, 0.005)
		near(t, "area", area, row.area, 0.05)
		near(t, "λ", times, row.times, 0.0005)
		near(t, "mean thickness", 1/times, row.mean, 0.0005)
		p := part{ReplaceDome, FromInches(2 * row.a), FromInches(2 * row.a), true}
		thick := rules.Sheets.thickness(p.long).Inches() / times
		near(t, "weight", p.weightLb(choice{1, MaterialAcrylic}, &rules), area*thick*0.0430, 0.001)
	}
}

// T16: 40 lb a square foot of ground snow is 28 on a flat roof with all factors 1 and 33.6
// over an unheated space (ASCE 7-10 eq. 7.3-1); on 4 x 4 ft 448 lb.
func TestSnowLoad(t *testing.T) {
	near(t, "T16", flatRoofSnow(40, 1, 1, 1), 28, 1e-9)
	near(t, "unheated", flatRoofSnow(40, 1, unheatedRoof, 1), 33.6, 1e-9)
	for _, row := range []struct {
		use  string
		want float64
	}{{UseHome, 448}, {UseOutbuilding, 537.6}, {"", 448}} {
		n := snowNumbers(&Job{Use: row.use}, dome(48, 48))
		near(t, row.use+" area", n["area_sqft"], 16, 1e-9)
		near(t, row.use+" load", n["load_lb_at_40_psf"], row.want, 1e-9)
	}
	if n := snowNumbers(&Job{}, &UnitResult{Replace: ReplaceUnit}); n != nil {
		t.Errorf("no size, and yet %v", n)
	}
}

// T20 and the table of IECC-R 2021 R402.1.2: what a unit without a label counts for is too
// much in any zone, unless all of a dwelling are 15 sq ft or less.
func TestEnergyRating(t *testing.T) {
	for _, row := range []struct {
		name string
		zone int
		u    float64
		sqFt float64
		want bool
	}{
		{"T20: zone 4, 1.05, 16 sq ft", 4, 1.05, 16, true},
		{"12 sq ft are exempt", 4, 1.05, 12, false},
		{"15 are exempt too (R402.3.3)", 4, 1.05, 15, false},
		{"zone 4 allows 0.55", 4, 0.55, 16, false},
		{"zone 4, 0.56", 4, 0.56, 16, true},
		{"zone 2 allows 0.65", 2, 0.65, 16, false},
		{"zone 1 allows 0.75", 1, 0.75, 16, false},
		{"zone 1, 0.90: three layers without a label", 1, unlabelledU(3), 16, true},
		{"zone 8", 8, unlabelledU(2), 16, true},
		{"not known: as the mildest", anyZone, 0.75, 16, false},
		{"not known, one layer", anyZone, unlabelledU(1), 16, true},
	} {
		if got := overEnergy(row.zone, row.u, row.sqFt); got != row.want {
			t.Errorf("%s: %v", row.name, got)
		}
	}
	near(t, "one layer (WAC 51-11R-30314)", unlabelledU(1), 1.52, 1e-9)
	near(t, "two layers", unlabelledU(2), 1.05, 1e-9)
	curb := curbUnit(rect(48, 48), rect(45, 45))
	small := curbUnit(rect(25.5, 49.5), rect(22.5, 46.5)) // 9 sq ft
	for _, row := range []struct {
		name string
		job  Job
		want bool
	}{
		{"16 sq ft over a house", Job{Use: UseHome, Units: []Unit{curb}}, true},
		{"9 sq ft", Job{Use: UseHome, Units: []Unit{small}}, false},
		{"9 sq ft twice", Job{Use: UseHome, Units: []Unit{small, small}}, true},
		{"two of 9 sq ft", Job{Use: UseHome, Units: []Unit{with(small, 2)}}, true},
		{"over a barn", Job{Use: UseOutbuilding, Units: []Unit{curb}}, false},
		{"a dome in its old frame is a repair (R504.2)", Job{Use: UseHome, Units: []Unit{domeUnit(rect(48, 48), rect(46, 46))}}, false},
	} {
		got := false
		for _, c := range Check(row.job, DefaultRules()).Cautions {
			got = got || c == CautionEnergy
		}
		if got != row.want {
			t.Errorf("%s: %v", row.name, got)
		}
	}
}

// T26: 150 3/4 in around is 47.985 across (geometry).
func TestAroundForAcross(t *testing.T) {
	u := curbUnit(round(150.75), round(45))
	r := checkOne(u, UseHome)
	f := r.Findings[0]
	if f.Code != ImplausibleSize || f.Severity != Ask || f.Slip != SlipAround || r.Verdict != VerdictRemeasure {
		t.Fatalf("%s with %q", r.Verdict, said(r, true))
	}
	near(t, "across", f.Numbers["expected_in"], 47.985, 0.0005)
}

// A length along the roof is longer than level: 48 in at 4:12, 6:12 and 12:12 (geometry).
func TestLevelForAlong(t *testing.T) {
	for _, row := range []struct{ rise, along float64 }{{4, 50.60}, {6, 53.67}, {12, 67.88}} {
		u := curbUnit(rect(33.5, row.along+3), rect(30.5, 48))
		u.RoofSlope = pitch(row.rise)
		f := checkOne(u, UseHome).Findings[0]
		if f.Code != CurbWallMismatch && f.Rival != CurbWallMismatch || row.rise > 4 && f.Slip != SlipLevel {
			t.Errorf("%v in 12: %q", row.rise, f.Text)
			continue
		}
		if f.Slip == SlipLevel {
			near(t, "along the roof", f.Numbers["expected_in"], row.along, 0.005)
		}
	}
}

// Outside less inside of every wall in the tables of lumber (PS 20, as reported) and
// drywall (IRC 2021 Table R702.3.5), both sides together.
func TestWallTable(t *testing.T) {
	for _, row := range []struct {
		wall string
		in   float64
		want string // what is asked
	}{
		{"3/4 in board or plywood", 1.5, "thin_curb ask"},
		{"single 2x, dry", 3, ""},
		{"single 2x, green", 3.125, ""},
		{"single old 1 5/8 in", 3.25, ""},
		{"2x and 3/8 in drywall, or a flare", 3.75, "drywall_included ask, flashing_included ask"},
		{"2x and 1/2 in drywall, or full-sawn 2 in", 4, "drywall_included ask"},
		{"2x and 5/8 in drywall", 4.25, "drywall_included ask"},
		{"2x and 3/4 in liner", 4.5, "drywall_included ask"},
		{"double 2x", 6, "doubled_curb ask"},
		{"double 2x and 1/2 in drywall", 7, "doubled_curb ask"},
	} {
		if got := said(checkOne(curbUnit(rect(30.25+row.in, 46.75+row.in), rect(30.25, 46.75)), UseHome), false); got != row.want {
			t.Errorf("%s, rectangular: %q, want %q", row.wall, got, row.want)
		}
		if got := said(checkOne(curbUnit(round(30.5+row.in), round(30.5)), UseHome), false); got != row.want {
			t.Errorf("%s, round: %q, want %q", row.wall, got, row.want)
		}
	}
}

// Curbs on openings between rafters 16 and 24 in apart (IRC 2021 Tables R802.4.1) with
// 1 1/2 in lumber: an opening of n s - 1 1/2, outside of n s + 1 1/2. All of them fit.
func TestRafterModule(t *testing.T) {
	for _, s := range []float64{16, 24} {
		for n := 1.0; n <= 3; n++ {
			u := curbUnit(rect(n*s+1.5, n*s+1.5), rect(n*s-1.5, n*s-1.5))
			if r := checkOne(u, UseHome); r.Verdict != VerdictFits || said(r, true) != "" {
				t.Errorf("%v bays of %v: %s %q", n, s, r.Verdict, said(r, true))
			}
		}
	}
}
