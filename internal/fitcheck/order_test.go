package fitcheck

import "testing"

// Order sizes of a unit: the largest reading, what the curb is out of square, and the gap
// of 3/8, rounded up to the eighth (common practice).
func TestOrderUnit(t *testing.T) {
	skewed := curbUnit(rect(48.125, 48.125), Size{})
	skewed.CurbDiagonals = diagonalsOf(68.1846, 67.9346)
	for _, row := range []struct {
		name string
		unit Unit
		want Size
	}{
		{"the contract's example", curbUnit(rect(25.5, 49.5), rect(22.5, 46.5)), rect(25.875, 49.875)},
		{"rounded up", curbUnit(rect(25.5625, 49.5), rect(22.5, 46.5)), rect(26, 49.875)},
		{"the larger of each two sides", curbUnit(Size{Sides: []Length{FromInches(25.5), FromInches(49.5), FromInches(25.625), FromInches(49.625)}}, rect(22.5, 46.5)), rect(26, 50)},
		{"out of square by 0.177", skewed, rect(48.75, 48.75)},
		{"round", curbUnit(round(48), round(45)), round(48.375)},
		{"drywall on the inside changes nothing", curbUnit(rect(25.5, 49.5), rect(21.5, 45.5)), rect(25.875, 49.875)},
	} {
		o := checkOne(row.unit, UseHome).Order
		if o.FrameInside == nil || o.FrameInside.Width != row.want.Width || o.FrameInside.Length != row.want.Length ||
			o.FrameInside.Diameter != row.want.Diameter || o.PlasticSize != nil || o.Estimated {
			t.Errorf("%s: %+v, want %+v", row.name, o.FrameInside, row.want)
		}
	}
}

// Nothing is ordered by numbers that contradict each other, can't fit, or may be in
// another unit.
func TestOrderWithheld(t *testing.T) {
	for _, u := range []Unit{
		curbUnit(rect(37.5, 49.5), rect(22.5, 46.5)),
		curbUnit(rect(122, 122), Size{}),
		curbUnit(rect(2.125, 4.125), Size{}),
		domeUnit(rect(48.5, 48.5), rect(48.5, 48.5)),
		curbUnit(Size{}, Size{}),
	} {
		if o := checkOne(u, UseHome).Order; o == nil || o.FrameInside != nil || o.PlasticSize != nil || o.Stock != nil {
			t.Errorf("%v: ordered %+v", u.CurbOutside, o)
		}
	}
}

// Indirect numbers give a range that is marked as not to be ordered by.
func TestOrderEstimated(t *testing.T) {
	for _, row := range []struct {
		name      string
		unit      Unit
		low, high Size
	}{
		{"inside of the curb: 3 to 3 5/8 of wall and flashing, 1/4 to 1/2 of gap", curbUnit(Size{}, rect(22.5, 46.5)), rect(25.75, 49.75), rect(26.625, 50.625)},
		{"old frame", changed(curbUnit(Size{}, Size{}), func(u *Unit) { u.FrameInside = rect(25.875, 49.875) }), rect(25.75, 49.75), rect(26, 50)},
		{"opening: a grip of 1/2 to 1 1/2", domeUnit(Size{}, rect(24, 48)), rect(25, 49), rect(27, 51)},
		{"opening and outside of the retainer: no more than moves freely in it",
			changed(domeUnit(Size{}, rect(24, 48)), func(u *Unit) { u.RetainerOutside = rect(26.5, 50.5) }), rect(25, 49), rect(26.3125, 50.1875)},
		{"round opening", domeUnit(Size{}, round(24)), round(25), round(27)},
	} {
		r := checkOne(row.unit, UseHome)
		o := r.Order
		if !o.Estimated || o.FrameInside != nil || o.PlasticSize != nil || o.Low == nil || o.High == nil || r.Verdict != VerdictIncomplete {
			t.Errorf("%s: %+v, %s", row.name, o, r.Verdict)
			continue
		}
		if !sameSize(*o.Low, row.low) || !sameSize(*o.High, row.high) {
			t.Errorf("%s: %+v to %+v, want %+v to %+v", row.name, o.Low, o.High, row.low, row.high)
		}
	}
}

func sameSize(a, b Size) bool {
	return a.Width == b.Width && a.Length == b.Length && a.Diameter == b.Diameter
}

func coarse(width, length float64) Size {
	s := rect(width, length)
	s.Resolution = Inch / 2
	return s
}

// A stock unit is taken where its gap is surely inside the window, up to loose, with the
// reading error counted in (JCGM 106:2012, 8.3.3: guarded acceptance).
func TestStock(t *testing.T) {
	rules := DefaultRules()
	rules.Stock = []StockItem{
		{Code: "U-26", Part: ReplaceUnit, Size: rect(26, 50)},
		{Code: "U-25-7", Part: ReplaceUnit, Size: rect(25.875, 49.875), Finish: FinishMill},
		{Code: "U-R48", Part: ReplaceUnit, Size: round(48.375)},
		{Code: "D-26", Part: ReplaceDome, Size: rect(26, 50), Layers: 2},
	}
	for _, row := range []struct {
		name string
		unit Unit
		want string
	}{
		{"gap of 3/8 is the aim", curbUnit(rect(25.5, 49.5), rect(22.5, 46.5)), "U-25-7"},
		{"what would be made to size, however coarsely the tape was read", curbUnit(coarse(25.5, 49.5), rect(22.5, 46.5)), "U-25-7"},
		{"another finish: the next best", changed(curbUnit(rect(25.5, 49.5), rect(22.5, 46.5)), func(u *Unit) { u.Finish = FinishBronzeAnodized }), "U-26"},
		{"gaps of 1/8 and 1/4 may be tight", curbUnit(rect(25.75, 49.75), rect(22.625, 46.625)), ""},
		{"a gap of 3/4 may be loose", curbUnit(rect(25.125, 49.125), rect(22, 46)), ""},
		{"round", curbUnit(round(48), round(45)), "U-R48"},
		{"dome of the old size", domeUnit(rect(26, 50), rect(24, 48)), "D-26"},
		{"dome within reading error", domeUnit(rect(26.0625, 50), rect(24, 48)), "D-26"},
		{"dome of another size", domeUnit(rect(26.25, 50), rect(24, 48)), ""},
		{"other layers", changed(domeUnit(rect(26, 50), rect(24, 48)), func(u *Unit) { u.Layers = 1 }), ""},
	} {
		got := ""
		if o := Check(Job{Units: []Unit{row.unit}}, rules).Units[0].Order; o.Stock != nil {
			got = *o.Stock
		}
		if got != row.want {
			t.Errorf("%s: %q, want %q", row.name, got, row.want)
		}
	}
}
