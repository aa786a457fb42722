package fitcheck

import (
	"math"
	"testing"
)

// JCGM 106:2012, 8.3 and ISO 14253-1:2017, clause 5: with limits 10 and 20 and a guard
// band of 1.645 standard uncertainties at each, only what lies inside by the band is proven
// to conform, and only what lies outside by it is proven not to.
func TestDecisionRule(t *testing.T) {
	const u = 1.0
	for _, row := range []struct {
		x    float64
		want conformity
	}{
		{15, surelyInside}, {10 + oneSided, surelyInside}, {20 - oneSided, surelyInside},
		{10 + oneSided - 1e-9, cantTell}, {10, cantTell}, {20, cantTell}, {10 - oneSided, cantTell}, {20 + oneSided, cantTell},
		{10 - oneSided - 1e-9, surelyOutside}, {20 + oneSided + 1e-9, surelyOutside}, {0, surelyOutside},
	} {
		if got := within(row.x, 10, 20, u); got != row.want {
			t.Errorf("%v: %v, want %v", row.x, got, row.want)
		}
	}
	// Without uncertainty the limits themselves decide (JCGM 106:2012, 8.2, simple acceptance).
	if within(10, 10, 20, 0) != surelyInside || within(math.Nextafter(10, 0), 10, 20, 0) != surelyOutside {
		t.Error("no uncertainty: the limit itself must decide")
	}
	// A window narrower than both bands proves nothing inside it.
	if within(0, -1, 1, u) != cantTell {
		t.Error("a narrow window: nothing inside can be proven")
	}
}

// JCGM 106:2012, 7.3: a value at the limit of acceptance conforms with 95 % probability.
func TestGuardBandKeepsTheRisk(t *testing.T) {
	p := 0.5 * (1 + math.Erf(oneSided/math.Sqrt2))
	if math.Abs(p-0.95) > 0.0005 {
		t.Errorf("probability at the band: %.4f", p)
	}
}

// Reading to a mark is a rectangular distribution: 1/16 in makes 0.018 (JCGM 100:2008,
// 4.3.7); with a hand good to 1/8 in at 95 % it is 0.065.
func TestUncertainty(t *testing.T) {
	m := MeasureRules{Hand: Inch / 8}
	if u := (MeasureRules{}).uncertainty(25*Inch, Sixteenth); math.Abs(u-0.018) > 0.0005 {
		t.Errorf("mark alone: %.4f", u)
	}
	if u := m.uncertainty(25*Inch, Sixteenth); math.Abs(u-0.065) > 0.0005 {
		t.Errorf("mark and hand: %.4f", u)
	}
	for _, row := range []struct {
		written string
		in      Length
		want    Length
	}{
		{"25", 25 * Inch, Sixteenth}, {"25 1/2", 51 * Inch / 2, Sixteenth}, {"25 9/16", 25*Inch + 9*Sixteenth, Sixteenth},
		{"25 17/32", 25*Inch + 17*Inch/32, Inch / 32}, {"25 3/64", 25*Inch + 3*Sixtyfourth, Sixtyfourth},
		{"648 mm", 648 * Millimetre, Millimetre}, {"48.3", FromInches(48.3), Inch / 4}, {"25.57", FromInches(25.57), Sixteenth},
	} {
		if got := inferResolution(row.in); got != row.want {
			t.Errorf("%s: %v nm, want %v", row.written, int64(got), int64(row.want))
		}
	}
}
