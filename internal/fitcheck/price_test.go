package fitcheck

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func book() *PriceBook {
	return &PriceBook{
		Currency: "USD",
		Dome: &PartPrices{Base: 40_00, PerSquareFoot: 12_50,
			Layers:   map[int]Percent{1: 100, 2: 160, 3: 210},
			Material: map[string]Percent{MaterialAcrylic: 100, MaterialPolycarbonate: 130},
			Color:    map[string]Percent{ColorClear: 100, ColorWhite: 105, ColorBronze: 110},
			Minimum:  75_00, Crating: 60_00},
		Unit: &PartPrices{Base: 90_00, PerSquareFoot: 20_00,
			Layers:   map[int]Percent{1: 100, 2: 140, 3: 180},
			Material: map[string]Percent{MaterialAcrylic: 100, MaterialPolycarbonate: 125},
			Finish:   map[string]Percent{FinishMill: 100, FinishBronzeAnodized: 115, FinishBronzePowderCoat: 112},
			Minimum:  150_00, Crating: 80_00},
		Breaks: []QuantityBreak{{4, 5}, {10, 10}},
		Shipping: &ShippingPrices{Handling: 18_00, Oversize: 120_00, Quoted: []string{"AK", "HI"}, Bands: []Band{
			{UpToMiles: 300, Parcel: ParcelRate{12_00, 60}, Freight: FreightRate{180_00, classRates(95_00)}},
			{UpToMiles: 1200, Parcel: ParcelRate{15_00, 95}, Freight: FreightRate{240_00, classRates(140_00)}},
			{Parcel: ParcelRate{18_00, 130}, Freight: FreightRate{310_00, classRates(190_00)}},
		}},
	}
}

func classRates(perHundred Cents) []ClassRate {
	var rs []ClassRate
	for _, c := range densityClasses() {
		rs = append(rs, ClassRate{c.Class, perHundred * Cents(c.Class) / 100})
	}
	return rs
}

func priced() *Rules {
	r := DefaultRules()
	r.Prices, r.ShipFrom = book(), at(46.79, -92.10)
	return r
}

var (
	minneapolis = Job{Place: Place{State: "MN"}, Site: at(44.98, -93.27)}
	chosen      = Unit{Layers: 2, Material: MaterialAcrylic, Color: Color{Outer: ColorBronze, Inner: ColorClear}, Finish: FinishMill}
)

// Reckoned by hand: a 24 x 24 dome is 40.00 + 4 x 12.50 = 90.00; two layers 144.00; bronze
// 158.40. Its carton is 27 x 27 x 10 and 7,290 cubic in, 53 lb by volume: 12.00 + 53 x 0.60 =
// 43.80 to Minneapolis.
func TestEstimateByHand(t *testing.T) {
	for _, row := range []struct {
		name      string
		unit      Unit
		job       Job
		r         *UnitResult
		low, high int64
	}{
		{"all chosen", chosen, minneapolis, dome(24, 24), 202, 203},
		{"layers open: 99.00 + 48 lb to 207.90 + 53 lb", Unit{Material: MaterialAcrylic, Color: chosen.Color}, minneapolis, dome(24, 24), 139, 252},
		{"place not known: 3rd band 18.00 + 53 x 1.30", chosen, Job{}, dome(24, 24), 202, 246},
		{"the least charge: 75.00, 12.00 + 6 x 0.60", Unit{Layers: 1, Material: MaterialAcrylic, Color: Color{Outer: ColorClear}}, minneapolis, dome(8, 8), 90, 91},
		{"five, 5 percent off: 752.40 + 219.00", with(chosen, 5), minneapolis, dome(24, 24), 971, 972},
	} {
		e := estimate(&row.unit, &row.job, priced(), row.r)
		if e.Low != row.low || e.High != row.high {
			t.Errorf("%s: %d to %d, want %d to %d (%+v)", row.name, e.Low, e.High, row.low, row.high, e)
		}
	}
}

func with(u Unit, count int) Unit { u.Count = count; return u }

func TestNoEstimateSaysWhy(t *testing.T) {
	green := chosen
	green.Color = Color{Outer: ColorOther}
	for _, row := range []struct {
		name string
		unit Unit
		job  Job
		r    *UnitResult
		edit func(*Rules)
		want string
	}{
		{"no book", chosen, minneapolis, dome(24, 24), func(r *Rules) { r.Prices = nil }, "no price list"},
		{"no dome price", chosen, minneapolis, dome(24, 24), func(r *Rules) { r.Prices.Dome = nil }, "no price for a dome"},
		{"no unit price", chosen, minneapolis, unit(24, 24), func(r *Rules) { r.Prices.Unit = nil }, "no price for a complete unit"},
		{"another color", green, minneapolis, dome(24, 24), nil, "no price for color other"},
		{"no size", chosen, minneapolis, &UnitResult{Replace: ReplaceDome}, nil, "no size"},
		{"too far", chosen, Job{Site: at(25.76, -80.19)}, dome(24, 24), func(r *Rules) { r.Prices.Shipping.Bands = r.Prices.Shipping.Bands[:2] }, "this distance"},
		{"quoted state", chosen, Job{Place: Place{State: "HI"}}, dome(24, 24), nil, "quoted by a person"},
		{"no class", chosen, minneapolis, dome(60, 60), func(r *Rules) { r.Prices.Shipping.Bands[0].Freight.Classes = nil }, "freight price for class"},
		{"too many", with(chosen, 20_000), minneapolis, dome(24, 24), nil, "by a person"},
		{"nothing sold is priced", Unit{}, minneapolis, dome(24, 24), func(r *Rules) { r.Prices.Dome.Layers = map[int]Percent{7: 100} }, "any layers"},
	} {
		rules := priced()
		if row.edit != nil {
			row.edit(rules)
		}
		e := estimate(&row.unit, &row.job, rules, row.r)
		if e.Low != 0 || e.High != 0 || e.Lines == nil || len(e.Lines) != 0 || !strings.Contains(e.Reason, row.want) {
			t.Errorf("%s: %+v, want a reason with %q", row.name, e, row.want)
		}
	}
}

func TestWithoutShippingPricesALineSaysSo(t *testing.T) {
	rules := priced()
	rules.Prices.Shipping = nil
	e := estimate(&chosen, &minneapolis, rules, dome(24, 24))
	if last := e.Lines[len(e.Lines)-1]; last.What != "Shipping is not included" || e.Low != 158 || e.High != 159 {
		t.Errorf("%+v", e)
	}
}

func TestFreightBringsCrating(t *testing.T) {
	e := estimate(&chosen, &minneapolis, priced(), dome(60, 60))
	var what []string
	for _, l := range e.Lines {
		what = append(what, l.What)
	}
	if all := strings.Join(what, "; "); !strings.Contains(all, "Crating") || !strings.Contains(all, "Shipping by freight") {
		t.Errorf("lines: %s", all)
	}
}

func drawChosen(t *rapid.T) *Unit {
	u := drawUnit(t)
	u.Count = rapid.IntRange(0, 40).Draw(t, "count")
	u.Color.Outer = rapid.SampledFrom([]string{"", ColorClear, ColorWhite, ColorBronze}).Draw(t, "outer")
	if u.Color.Outer != "" {
		u.Color.Inner = rapid.SampledFrom([]string{"", ColorClear, ColorWhite, ColorBronze}).Draw(t, "inner")
	}
	u.Finish = rapid.SampledFrom([]string{"", FinishMill, FinishBronzeAnodized, FinishBronzePowderCoat}).Draw(t, "finish")
	return u
}

func TestEstimateAddsUp(t *testing.T) {
	rules := priced()
	rapid.Check(t, func(t *rapid.T) {
		rules.Prices.Allowance = Percent(rapid.IntRange(0, 20).Draw(t, "allowance"))
		job := &Job{Site: rapid.SampledFrom([]Site{{}, at(44.98, -93.27), at(25.76, -80.19)}).Draw(t, "site")}
		e := estimate(drawChosen(t), job, rules, drawPart(t, 120))
		var low, high int64
		for _, l := range e.Lines {
			low, high = low+l.Low, high+l.High
		}
		if e.Reason != "" || low != e.Low || high != e.High || e.Low <= 0 || e.High < e.Low {
			t.Fatalf("%+v: lines add up to %d and %d", e, low, high)
		}
	})
}

// Whatever is chosen at last, its price lies inside the range that was told before.
func TestChoosingStaysInsideTheRange(t *testing.T) {
	rules := priced()
	rapid.Check(t, func(t *rapid.T) {
		r := drawPart(t, 120)
		open := drawChosen(t)
		before := estimate(open, &Job{}, rules, r)
		done := *open
		if done.Layers == 0 {
			done.Layers = rapid.IntRange(1, 3).Draw(t, "chosen layers")
		}
		if done.Material == "" {
			done.Material = rapid.SampledFrom(choices[TopicMaterial]).Draw(t, "chosen material")
		}
		if done.Color.Outer == "" {
			done.Color.Outer = rapid.SampledFrom(rules.Sells.Colors).Draw(t, "chosen color")
		}
		if done.Color.Inner == "" && done.Layers > 1 {
			done.Color.Inner = rapid.SampledFrom(rules.Sells.Colors).Draw(t, "chosen inner color")
		}
		if done.Finish == "" {
			done.Finish = rapid.SampledFrom(rules.Sells.Finishes).Draw(t, "chosen finish")
		}
		job := &Job{Site: at(rapid.Float64Range(25, 49).Draw(t, "lat"), rapid.Float64Range(-124, -67).Draw(t, "lon"))}
		after := estimate(&done, job, rules, r)
		if after.Low < before.Low || after.High > before.High {
			t.Fatalf("%d to %d became %d to %d\n%+v\n%+v", before.Low, before.High, after.Low, after.High, before, after)
		}
	})
}
