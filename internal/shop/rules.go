package shop

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Rules are what the fit check needs of the file. Where parcels start is the caller's to
// fill in (ShipFrom), who knows where a ZIP code lies.
func (f *File) Rules() *fitcheck.Rules {
	r := fitcheck.DefaultRules()
	g, p := f.Tolerances.CapGap, f.Tolerances.Grip
	r.Gap = fitcheck.GapRules{SoundLow: g.SoundFrom.length(), SoundHigh: g.SoundTo.length(),
		Loose: g.LooseOver.length(), Target: g.AimFor.length()}
	r.Grip = fitcheck.GripRules{Short: p.ShortUnder.length(), SoundLow: p.SoundFrom.length(),
		SoundHigh: p.SoundTo.length(), Long: p.LongOver.length()}
	r.Measure.Hand = f.Tolerances.Hand.length()
	r.Flashing = f.Tolerances.Flashing.length()
	r.Making = fitcheck.MakingRules{Step: f.Making.Step.length(),
		DomeMin: f.Making.Dome.Smallest.length(), DomeMax: f.Making.Dome.Largest.length(),
		UnitMin: f.Making.Unit.Smallest.length(), UnitMax: f.Making.Unit.Largest.length()}
	r.Sells = fitcheck.SellRules{Materials: slices.Clone(f.Sells.Materials), Layers: slices.Clone(f.Sells.Layers),
		Colors: slices.Clone(f.Sells.Colors), Finishes: slices.Clone(f.Sells.Finishes), States: slices.Clone(f.ShipsTo)}
	r.Ship = f.Shipping.rules()
	r.Prices = f.Prices.book()
	r.Stock = nil
	for _, s := range f.Stock {
		r.Stock = append(r.Stock, s.item())
	}
	return r
}

func (s StockItem) item() fitcheck.StockItem {
	return fitcheck.StockItem{
		Code: s.Code, Part: fitcheck.Replace(s.Part), Size: fitcheck.Size(s.Size),
		Profile: orElse(s.Profile, fitcheck.ProfileDome), Layers: s.Layers,
		Material: s.Material, Color: layerColors(s.Colors), Finish: s.Finish,
	}
}

// layerColors names the colors of one to three layers, from outside to inside.
func layerColors(colors []string) fitcheck.Color {
	switch len(colors) {
	case 1:
		return fitcheck.Color{Outer: colors[0]}
	case 2:
		return fitcheck.Color{Outer: colors[0], Inner: colors[1]}
	case 3:
		return fitcheck.Color{Outer: colors[0], Middle: colors[1], Inner: colors[2]}
	}
	return fitcheck.Color{}
}

// The defaults are the fit check's own, so that they stand in one place.
func defaultSells() Sells {
	s := fitcheck.DefaultRules().Sells
	return Sells{Materials: s.Materials, Layers: s.Layers, Colors: s.Colors, Finishes: s.Finishes}
}

func defaultTolerances() Tolerances {
	r := fitcheck.DefaultRules()
	return Tolerances{
		CapGap: CapGap{SoundFrom: Inches(r.Gap.SoundLow), SoundTo: Inches(r.Gap.SoundHigh),
			LooseOver: Inches(r.Gap.Loose), AimFor: Inches(r.Gap.Target)},
		Grip: Grip{ShortUnder: Inches(r.Grip.Short), SoundFrom: Inches(r.Grip.SoundLow),
			SoundTo: Inches(r.Grip.SoundHigh), LongOver: Inches(r.Grip.Long)},
		Flashing: Inches(r.Flashing),
		Hand:     Inches(r.Measure.Hand),
	}
}

func defaultMaking() Making {
	m := fitcheck.DefaultRules().Making
	return Making{Step: Inches(m.Step),
		Dome: Sides{Smallest: Inches(m.DomeMin), Largest: Inches(m.DomeMax)},
		Unit: Sides{Smallest: Inches(m.UnitMin), Largest: Inches(m.UnitMax)}}
}
