package fitcheck

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func dome(w, l float64) *UnitResult {
	return &UnitResult{Replace: ReplaceDome, Order: &Order{PlasticSize: &Size{Width: FromInches(w), Length: FromInches(l)}}}
}

func roundDome(d float64) *UnitResult {
	return &UnitResult{Replace: ReplaceDome, Order: &Order{PlasticSize: &Size{Diameter: FromInches(d)}}}
}

func unit(w, l float64) *UnitResult {
	return &UnitResult{Replace: ReplaceUnit, Order: &Order{FrameInside: &Size{Width: FromInches(w), Length: FromInches(l)}}}
}

// The thirteen tiers, at each boundary: the lower bound is inside its tier. Source: the
// freight classification's Docket 2025-1, in effect since 19 July 2025.
func TestFreightClassByDensity(t *testing.T) {
	tiers := DefaultShipRules().Classes
	for _, row := range []struct{ density, class float64 }{
		{0.5, 400}, {0.999, 400}, {1, 300}, {1.999, 300}, {2, 250}, {3.999, 250}, {4, 175}, {5.999, 175},
		{6, 125}, {7.999, 125}, {8, 100}, {9.999, 100}, {10, 92.5}, {11.999, 92.5}, {12, 85}, {14.999, 85},
		{15, 70}, {22.499, 70}, {22.5, 65}, {29.999, 65}, {30, 60}, {34.999, 60}, {35, 55}, {49.999, 55},
		{50, 50}, {500, 50},
	} {
		if got := classOf(row.density, tiers); got != row.class {
			t.Errorf("class of %v lb/ft³ = %v, want %v", row.density, got, row.class)
		}
	}
	if len(tiers) != 13 {
		t.Errorf("%d tiers, want 13", len(tiers))
	}
}

// Published limits, each as it stands and one past it.
func TestParcelLimits(t *testing.T) {
	r := DefaultShipRules()
	for _, row := range []struct {
		name   string
		box    carton
		lb     float64
		by     string
		extra  extra
		source string
	}{
		{"plain", carton{24, 24, 8}, 20, ShipParcel, extraNone, "worked example 24x24x8: L+G 88"},
		{"handling by volume", carton{36, 36, 10}, 20, ShipParcel, extraHandling, "T15, worked example 36x36x10: 12,960 in³"},
		{"at the handling length", carton{48, 10, 10}, 20, ShipParcel, extraNone, "trade notices 2025–26: over 48 in"},
		{"over the handling length", carton{49, 10, 10}, 20, ShipParcel, extraHandling, "same"},
		{"at the handling width", carton{40, 30, 8}, 20, ShipParcel, extraNone, "same: second side over 30 in"},
		{"over the handling width", carton{40, 31, 8}, 20, ShipParcel, extraHandling, "same"},
		{"at the handling volume", carton{36, 24, 12}, 20, ShipParcel, extraNone, "same: over 10,368 in³"},
		{"at the handling weight", carton{24, 24, 8}, 50, ShipParcel, extraNone, "from memory: over 50 lb"},
		{"over the handling weight", carton{24, 24, 8}, 50.1, ShipParcel, extraHandling, "from memory: over 50 lb"},
		{"at the oversize length", carton{96, 8, 8}, 20, ShipParcel, extraHandling, "question page: over 96 in"},
		{"over the oversize length", carton{97, 8, 8}, 20, ShipParcel, extraOversize, "same"},
		{"at the oversize girth", carton{34, 34, 14}, 20, ShipParcel, extraHandling, "largest square carton for 130 in, depth 14"},
		{"over the oversize girth", carton{35, 34, 14}, 20, ShipParcel, extraOversize, "same: 131 in"},
		{"at the oversize volume", carton{40, 27, 16}, 20, ShipParcel, extraHandling, "trade notices: over 17,280 in³"},
		{"over the oversize volume", carton{33, 33, 16}, 20, ShipParcel, extraOversize, "same: 17,424 in³"},
		{"at the oversize weight", carton{24, 24, 8}, 110, ShipParcel, extraHandling, "trade notices: over 110 lb"},
		{"over the oversize weight", carton{24, 24, 8}, 110.1, ShipParcel, extraOversize, "same"},
		{"largest square carton", carton{45, 45, 14}, 40, ShipParcel, extraOversize, "largest square carton, depth 14: L+G 163"},
		{"one more", carton{46, 46, 14}, 40, ShipFreight, extraNone, "same: 166"},
		{"at the girth", carton{65, 40, 10}, 40, ShipParcel, extraOversize, "size pages: L+G 165"},
		{"over the girth", carton{66, 40, 10}, 40, ShipFreight, extraNone, "same: 166"},
		{"at the length", carton{108, 14, 14}, 40, ShipParcel, extraOversize, "size pages: 108 in"},
		{"over the length", carton{109, 10, 10}, 40, ShipFreight, extraNone, "same"},
		{"at the weight", carton{24, 24, 8}, 150, ShipParcel, extraOversize, "size pages: 150 lb"},
		{"over the weight", carton{24, 24, 8}, 150.1, ShipFreight, extraNone, "same"},
		{"52 x 52 x 14", carton{52, 52, 14}, 45, ShipFreight, extraNone, "T13, worked example: L+G 184"},
	} {
		s := shipment{box: row.box, lb: row.lb}
		s.judge(&r)
		if s.by != row.by || s.extra != row.extra {
			t.Errorf("%s: by %s extra %d, want %s %d (%s)", row.name, s.by, s.extra, row.by, row.extra, row.source)
		}
	}
}

// Worked figures: length plus girth, volume, and dimensional weight by 139.
func TestCartonFigures(t *testing.T) {
	for _, row := range []struct {
		box                carton
		girth, volume, dim int
	}{
		{carton{52, 52, 14}, 184, 37_856, 273},
		{carton{36, 36, 10}, 128, 12_960, 94},
		{carton{24, 24, 8}, 88, 4_608, 34},
		{carton{45, 45, 14}, 163, 28_350, 204},
		{carton{34, 34, 14}, 130, 16_184, 117},
		{carton{49, 49, 8}, 163, 19_208, 139},
		{carton{38, 38, 8}, 130, 11_552, 84},
	} {
		if g, v, d := row.box.lengthPlusGirth(), row.box.volume(), row.box.dimensionalLb(139); g != row.girth || v != row.volume || d != row.dim {
			t.Errorf("%v: girth %d volume %d dim %d, want %d %d %d", row.box, g, v, d, row.girth, row.volume, row.dim)
		}
	}
	if d := (carton{24, 24, 8}).dimensionalLb(166); d != 28 {
		t.Errorf("24x24x8 by 166 = %d, want 28", d)
	}
}

// T14: 45 lb in 52 x 52 x 14 is 2.054 lb/ft³ and class 250, 43 lb class 300; on a pallet of
// 5 in and 45 lb more, 3.027 and class 250.
func TestFreightClassOfTheWorkedExample(t *testing.T) {
	r := DefaultShipRules()
	box := carton{52, 52, 14}
	if c := r.freightClass(box, 45); c != 250 {
		t.Errorf("45 lb: class %v, want 250", c)
	}
	if c := r.freightClass(box, 43); c != 300 {
		t.Errorf("43 lb: class %v, want 300", c)
	}
	r.Packing.PalletIn, r.Packing.PalletLb = 5, 45
	if c := r.freightClass(box, 45); c != 250 {
		t.Errorf("on a pallet: class %v, want 250", c)
	}
}

// Weight is flat area times thickness times density. Sources: materials databases for
// densities, arithmetic for the rest; pounds a square foot by thickness.
func TestSheetWeight(t *testing.T) {
	for _, row := range []struct {
		side, thick, want float64
		material          string
	}{
		{52, 0.125, 14.53, MaterialAcrylic},
		{52, 0.1875, 21.80, MaterialAcrylic},
		{12, 0.118, 0.731, MaterialAcrylic},
		{12, 0.125, 0.774, MaterialAcrylic},
		{12, 0.150, 0.929, MaterialAcrylic},
		{12, 0.1875, 1.161, MaterialAcrylic},
		{12, 0.236, 1.461, MaterialAcrylic},
		{12, 0.250, 1.548, MaterialAcrylic},
		{12, 0.125, 0.774 * 1.0084, MaterialPolycarbonate},
	} {
		r := DefaultShipRules()
		r.Sheets.Thickness = []SheetThickness{{MaxLength, FromInches(row.thick)}}
		p := part{ReplaceDome, FromInches(row.side), FromInches(row.side), false}
		got := p.weightLb(choice{1, row.material}, &r)
		if math.Abs(got-row.want) > 0.01 {
			t.Errorf("%v in square of %v in %s: %.3f lb, want %.3f", row.side, row.thick, row.material, got, row.want)
		}
		if two := p.weightLb(choice{2, row.material}, &r); math.Abs(two-2*got) > 1e-9 {
			t.Errorf("two layers weigh %v, one %v", two, got)
		}
	}
}

func TestShipOne(t *testing.T) {
	for _, row := range []struct {
		name   string
		unit   Unit
		r      *UnitResult
		by     string
		carton [3]float64
		class  float64
	}{
		// The contract's example of a unit: 25 7/8 x 49 7/8 inside goes as 54 x 30 x 14.
		{"unit", Unit{Layers: 2}, unit(25.875, 49.875), ShipParcel, [3]float64{54, 30, 14}, 0},
		{"small dome", Unit{Layers: 2}, dome(20, 20), ShipParcel, [3]float64{23, 23, 9}, 0},
		{"flat sheet", Unit{Layers: 1, Profile: ProfileFlat}, dome(20, 20), ShipParcel, [3]float64{23, 23, 3}, 0},
		{"rise as measured", Unit{Layers: 1, DomeRise: &Height{Height: 7 * Inch}}, dome(49, 49), ShipFreight, [3]float64{52, 52, 10}, 300},
		{"round", Unit{Layers: 1}, roundDome(24), ShipParcel, [3]float64{27, 27, 9}, 0},
		{"no order", Unit{}, &UnitResult{Replace: ReplaceUnit}, ShipStaff, [3]float64{}, 0},
		{"no side", Unit{}, &UnitResult{Replace: ReplaceDome, Order: &Order{PlasticSize: &Size{Width: Foot}}}, ShipStaff, [3]float64{}, 0},
		{"range that travels alike", Unit{Layers: 1}, ranged(20, 22), ShipParcel, [3]float64{25, 25, 9}, 0},
		{"range that does not", Unit{Layers: 1}, ranged(40, 52), ShipStaff, [3]float64{55, 55, 16}, 0},
	} {
		s := shipOne(&row.unit, &Job{}, DefaultRules(), row.r)
		class := 0.0
		if s.FreightClass != nil {
			class = *s.FreightClass
		}
		if s.By != row.by || s.CartonIn != row.carton || class != row.class {
			t.Errorf("%s: %s %v class %v, want %s %v class %v", row.name, s.By, s.CartonIn, class, row.by, row.carton, row.class)
		}
	}
}

func ranged(low, high float64) *UnitResult {
	lo, hi := Size{Width: FromInches(low), Length: FromInches(low)}, Size{Width: FromInches(high), Length: FromInches(high)}
	return &UnitResult{Replace: ReplaceDome, Order: &Order{PlasticSize: &hi, Estimated: true, Low: &lo, High: &hi}}
}

func TestShipWordsNameNoCarrier(t *testing.T) {
	for _, side := range []float64{12, 30, 34, 40, 60, 100} {
		s := shipOne(&Unit{Count: 3}, &Job{Place: Place{State: "AK"}}, DefaultRules(), dome(side, side))
		b, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		f, _ := oversizeParcel(&Unit{}, DefaultRules(), dome(side, side))
		for _, name := range []string{"UPS", "FedEx", "USPS", "DHL"} {
			if strings.Contains(string(b)+f.Text+f.Source, name) {
				t.Errorf("%v in names a carrier: %s %s", side, b, f.Text)
			}
		}
		if s.Pieces != 3 {
			t.Errorf("pieces %d, want 3", s.Pieces)
		}
	}
}

func drawUnit(t *rapid.T) *Unit {
	u := &Unit{Layers: rapid.IntRange(0, 3).Draw(t, "layers"),
		Material: rapid.SampledFrom([]string{"", MaterialAcrylic, MaterialPolycarbonate}).Draw(t, "material"),
		Profile:  rapid.SampledFrom([]string{"", ProfileDome, ProfilePyramid, ProfileFlat}).Draw(t, "profile")}
	if rapid.Bool().Draw(t, "rise known") {
		u.DomeRise = &Height{Height: Length(rapid.Int64Range(0, int64(30*Inch)).Draw(t, "rise"))}
	}
	return u
}

func drawPart(t *rapid.T, sides int64) *UnitResult {
	side := func(name string) float64 { return float64(rapid.Int64Range(8*16, sides*16).Draw(t, name)) / 16 }
	switch rapid.IntRange(0, 2).Draw(t, "kind") {
	case 0:
		return unit(side("width"), side("length"))
	case 1:
		return roundDome(side("diameter"))
	}
	return dome(side("width"), side("length"))
}

func grown(t *rapid.T, r *UnitResult) *UnitResult {
	more := func(name string) Length { return Length(rapid.Int64Range(0, 16*48).Draw(t, name)) * Sixteenth }
	o := *r.Order
	for _, s := range []**Size{&o.FrameInside, &o.PlasticSize} {
		if *s == nil {
			continue
		}
		g := **s
		if g.Diameter > 0 {
			g.Diameter += more("more")
		} else {
			g.Width, g.Length = g.Width+more("wider"), g.Length+more("longer")
		}
		*s = &g
	}
	return &UnitResult{Replace: r.Replace, Order: &o}
}

func TestBiggerNeverShipsLighter(t *testing.T) {
	rules := DefaultRules()
	rapid.Check(t, func(t *rapid.T) {
		u, r := drawUnit(t), drawPart(t, 120)
		a, b := shipOne(u, &Job{}, rules, r), shipOne(u, &Job{}, rules, grown(t, r))
		if b.WeightLb < a.WeightLb || b.BilledLb < a.BilledLb || a.By == ShipFreight && b.By != ShipFreight {
			t.Fatalf("%+v grew into %+v", a, b)
		}
	})
}

// What is printed agrees with itself: the billed weight covers weight and volume, and the
// class follows from weight and carton.
func TestShipAgreesWithItself(t *testing.T) {
	rules := DefaultRules()
	rapid.Check(t, func(t *rapid.T) {
		s := shipOne(drawUnit(t), &Job{}, rules, drawPart(t, 160))
		volume := s.CartonIn[0] * s.CartonIn[1] * s.CartonIn[2]
		if float64(s.BilledLb) < s.WeightLb || float64(s.BilledLb) < volume/139 {
			t.Fatalf("billed too little: %+v", s)
		}
		if s.CartonIn[0] < s.CartonIn[1] || s.CartonIn[1] < s.CartonIn[2] {
			t.Fatalf("sides out of order: %+v", s)
		}
		if (s.By == ShipFreight) != (s.FreightClass != nil) {
			t.Fatalf("class and way differ: %+v", s)
		}
		if s.FreightClass != nil && *s.FreightClass != classOf(s.WeightLb/(volume/1728), rules.Ship.Classes) {
			t.Fatalf("class %v doesn't follow: %+v", *s.FreightClass, s)
		}
	})
}
