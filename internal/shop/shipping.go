package shop

import (
	"fmt"
	"maps"
	"strconv"

	"example.com/intake-bot/internal/fitcheck"
)

// Shipping has the limits of parcels and freight, and how the shop packs. The defaults
// are published ones; whole numbers are inches, pounds or cubic inches of a closed carton.
type Shipping struct {
	// Parcel bounds what travels as a parcel at all; what is larger goes by freight.
	Parcel ParcelLimits `yaml:"parcel"`
	// Oversize is above which a parcel is charged as oversize.
	Oversize OversizeLimits `yaml:"oversize"`
	// Handling is above which a parcel is charged for additional handling.
	Handling HandlingLimits `yaml:"handling"`
	// DimDivisor is cubic inches to a pound of dimensional weight.
	DimDivisor int `yaml:"dim_divisor" least:"1" most:"1000"`
	// Classes are the freight classes by density, the lightest first.
	Classes []Class `yaml:"classes"`
	// Packing is how the shop packs.
	Packing Packing `yaml:"packing"`
	// Sheets are what the parts are made of.
	Sheets Sheets `yaml:"sheets"`
}

// ParcelLimits bound a parcel; one at the limit still is one.
type ParcelLimits struct {
	// MostPounds is the weight.
	MostPounds float64 `yaml:"most_pounds" least:"1" most:"10000"`
	// Longest is the longest side.
	Longest int `yaml:"longest" least:"1" most:"1000"`
	// LengthPlusGirth is the longest side and twice the sum of the others.
	LengthPlusGirth int `yaml:"length_plus_girth" least:"1" most:"10000"`
}

// OversizeLimits are those above which a parcel is charged as oversize.
type OversizeLimits struct {
	// OverPounds, OverLength, OverLengthPlusGirth, OverCubic: any one of them is enough.
	OverPounds          float64 `yaml:"over_pounds" least:"1" most:"10000"`
	OverLength          int     `yaml:"over_length" least:"1" most:"1000"`
	OverLengthPlusGirth int     `yaml:"over_length_plus_girth" least:"1" most:"10000"`
	OverCubic           int     `yaml:"over_cubic" least:"1" most:"10000000"`
	// LeastBilled is the least weight that such a parcel is billed for.
	LeastBilled int `yaml:"least_billed_pounds" least:"0" most:"10000"`
}

// HandlingLimits are those above which additional handling is charged.
type HandlingLimits struct {
	// OverPounds, OverLength, OverWidth (the second longest side), OverCubic: any one of
	// them is enough.
	OverPounds float64 `yaml:"over_pounds" least:"1" most:"10000"`
	OverLength int     `yaml:"over_length" least:"1" most:"1000"`
	OverWidth  int     `yaml:"over_width" least:"1" most:"1000"`
	OverCubic  int     `yaml:"over_cubic" least:"1" most:"10000000"`
}

// Class is one freight class; it holds from its density on.
type Class struct {
	// Density is in pounds a cubic foot.
	Density float64 `yaml:"density" least:"0" most:"1000"`
	// Class is its number, like 92.5.
	Class float64 `yaml:"class" least:"1" most:"1000" required:"the number of the class, like 92.5"`
}

// Packing is how the shop packs. Lengths are in inches, allowances for both sides together.
type Packing struct {
	// Around and Above are the carton over the part's sides and height.
	Around Inches `yaml:"around"`
	Above  Inches `yaml:"above"`
	// LayerGap is what each layer after the first adds to the height.
	LayerGap Inches `yaml:"layer_gap"`
	// FrameWall is the outside of a unit's frame over its inside, FrameDepth its height
	// below the plastic.
	FrameWall  Inches `yaml:"frame_wall"`
	FrameDepth Inches `yaml:"frame_depth"`
	// CartonPounds is carton and padding, in pounds a square foot of the carton's surface.
	CartonPounds float64 `yaml:"carton_pounds_per_square_foot" least:"0" most:"10"`
	// PalletHeight and PalletPounds are those of a pallet; 0 where the carton itself is
	// handed over.
	PalletHeight int     `yaml:"pallet_height" least:"0" most:"48"`
	PalletPounds float64 `yaml:"pallet_pounds" least:"0" most:"500"`
}

// Sheets are what the parts are made of.
type Sheets struct {
	// Thickness by the longer side of the plastic, the smallest first.
	Thickness []Thickness `yaml:"thickness"`
	// PoundsPerCubicInch is the density by material.
	PoundsPerCubicInch map[string]float64 `yaml:"pounds_per_cubic_inch" keys:"material"`
	// FramePounds is a unit's frame with its retainer, in pounds a foot of its girth.
	FramePounds float64 `yaml:"frame_pounds_per_foot" least:"0" most:"100"`
}

// Thickness is the sheet of parts whose longer side is at most UpTo.
type Thickness struct {
	// UpTo is the longest side that it holds for; the last one leaves it out.
	UpTo Inches `yaml:"up_to"`
	// Thickness of the sheet.
	Thickness Inches `yaml:"thickness" required:"how thick the sheet is, like 1/8"`
}

func (s Shipping) rules() fitcheck.ShipRules {
	r := fitcheck.ShipRules{
		Parcel: fitcheck.ParcelLimits{MaxLb: s.Parcel.MostPounds, MaxLengthIn: s.Parcel.Longest, MaxLengthPlusGirth: s.Parcel.LengthPlusGirth},
		Oversize: fitcheck.OversizeLimits{OverLb: s.Oversize.OverPounds, OverLengthIn: s.Oversize.OverLength,
			OverLengthPlusGirth: s.Oversize.OverLengthPlusGirth, OverCubicIn: s.Oversize.OverCubic, MinBilledLb: s.Oversize.LeastBilled},
		Handling: fitcheck.HandlingLimits{OverLb: s.Handling.OverPounds, OverLengthIn: s.Handling.OverLength,
			OverWidthIn: s.Handling.OverWidth, OverCubicIn: s.Handling.OverCubic},
		DimDivisor: s.DimDivisor,
		Packing: fitcheck.Packing{Around: s.Packing.Around.length(), Above: s.Packing.Above.length(),
			LayerGap: s.Packing.LayerGap.length(), FrameWall: s.Packing.FrameWall.length(), FrameDepth: s.Packing.FrameDepth.length(),
			CartonLbPerFt: s.Packing.CartonPounds, PalletIn: s.Packing.PalletHeight, PalletLb: s.Packing.PalletPounds},
		Sheets: fitcheck.Sheets{LbPerCubicIn: maps.Clone(s.Sheets.PoundsPerCubicInch), FrameLbPerFt: s.Sheets.FramePounds},
	}
	for _, c := range s.Classes {
		r.Classes = append(r.Classes, fitcheck.DensityClass{Density: c.Density, Class: c.Class})
	}
	for _, t := range s.Sheets.Thickness {
		upTo := t.UpTo.length()
		if upTo == 0 {
			upTo = fitcheck.MaxLength
		}
		r.Sheets.Thickness = append(r.Sheets.Thickness, fitcheck.SheetThickness{UpTo: upTo, Thickness: t.Thickness.length()})
	}
	return r
}

// defaultShipping are the fit check's own defaults, so that they stand in one place.
func defaultShipping() Shipping {
	r := fitcheck.DefaultShipRules()
	p, o, h, k := r.Parcel, r.Oversize, r.Handling, r.Packing
	s := Shipping{
		Parcel: ParcelLimits{MostPounds: p.MaxLb, Longest: p.MaxLengthIn, LengthPlusGirth: p.MaxLengthPlusGirth},
		Oversize: OversizeLimits{OverPounds: o.OverLb, OverLength: o.OverLengthIn, OverLengthPlusGirth: o.OverLengthPlusGirth,
			OverCubic: o.OverCubicIn, LeastBilled: o.MinBilledLb},
		Handling:   HandlingLimits{OverPounds: h.OverLb, OverLength: h.OverLengthIn, OverWidth: h.OverWidthIn, OverCubic: h.OverCubicIn},
		DimDivisor: r.DimDivisor,
		Packing: Packing{Around: Inches(k.Around), Above: Inches(k.Above), LayerGap: Inches(k.LayerGap), FrameWall: Inches(k.FrameWall),
			FrameDepth: Inches(k.FrameDepth), CartonPounds: k.CartonLbPerFt, PalletHeight: k.PalletIn, PalletPounds: k.PalletLb},
		Sheets: Sheets{PoundsPerCubicInch: r.Sheets.LbPerCubicIn, FramePounds: r.Sheets.FrameLbPerFt},
	}
	for _, c := range r.Classes {
		s.Classes = append(s.Classes, Class{Density: c.Density, Class: c.Class})
	}
	for _, t := range r.Sheets.Thickness {
		upTo := Inches(t.UpTo)
		if t.UpTo == fitcheck.MaxLength {
			upTo = 0
		}
		s.Sheets.Thickness = append(s.Sheets.Thickness, Thickness{UpTo: upTo, Thickness: Inches(t.Thickness)})
	}
	return s
}

func (f *File) checkShipping(b *binder) {
	for i := 1; i < len(f.Shipping.Classes); i++ {
		if f.Shipping.Classes[i].Density <= f.Shipping.Classes[i-1].Density {
			b.wrongAt(fmt.Sprintf("shipping.classes[%d].density", i+1), "is not more than the one before: write the lightest first")
		}
	}
	sheets := f.Shipping.Sheets.Thickness
	for i, t := range sheets {
		path := fmt.Sprintf("shipping.sheets.thickness[%d].up_to", i+1)
		last := i == len(sheets)-1
		switch {
		case t.UpTo == 0 && !last && !b.has(path):
			b.wrongAt(path, "is missing: only the last sheet holds for any size")
		case t.UpTo != 0 && i > 0 && t.UpTo <= sheets[i-1].UpTo:
			b.wrongAt(path, "is not more than the one before: write the smallest first")
		}
	}
	if len(f.Shipping.Classes) == 0 {
		b.wrongAt("shipping.classes", "is empty: leave it out for the published classes")
	}
	if len(sheets) == 0 {
		b.wrongAt("shipping.sheets.thickness", "is empty: leave it out for the usual sheets")
	}
}

// classes are the freight classes as they are written.
func (s Shipping) classes() []string {
	var out []string
	for _, c := range s.Classes {
		out = append(out, strconv.FormatFloat(c.Class, 'f', -1, 64))
	}
	return out
}
