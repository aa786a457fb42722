package fitcheck

// ShipRules are the limits of parcel and freight and how the shop packs. Lengths are
// Lengths, weights pounds, volumes cubic inches, all of one closed carton.
type ShipRules struct {
	Parcel   ParcelLimits
	Oversize OversizeLimits
	Handling HandlingLimits
	// DimDivisor is cubic inches a pound of dimensional weight.
	DimDivisor int
	// Classes are the freight classes by density, from the lightest up.
	Classes []DensityClass
	Packing Packing
	Sheets  Sheets
}

// ParcelLimits bound what travels as a parcel at all; a carton at the limit still does.
type ParcelLimits struct {
	MaxLb              float64
	MaxLengthIn        int // longest side
	MaxLengthPlusGirth int // longest side and twice the sum of the others, in
}

// OversizeLimits are those above which a parcel is charged as oversize.
type OversizeLimits struct {
	OverLb              float64
	OverLengthIn        int
	OverLengthPlusGirth int
	OverCubicIn         int
	MinBilledLb         int // the least that such a parcel is billed for
}

// HandlingLimits are those above which a parcel is charged for additional handling.
type HandlingLimits struct {
	OverLb       float64
	OverLengthIn int // longest side
	OverWidthIn  int // second longest side
	OverCubicIn  int
}

// DensityClass is one tier of the freight classes: it holds from Density on, in pounds
// a cubic foot, to the next tier.
type DensityClass struct {
	Density float64
	Class   float64
}

// Packing is how the shop packs. Allowances are for both sides together.
type Packing struct {
	Around        Length  // carton over the part's length and width
	Above         Length  // carton over the part's height
	LayerGap      Length  // what each layer after the first adds to the height
	FrameWall     Length  // outside of a unit's frame over its inside
	FrameDepth    Length  // height of a unit's frame below the plastic
	CartonLbPerFt float64 // carton and padding, pounds a square foot of carton surface
	PalletIn      int     // height of a pallet, 0 where the carton itself is handed over
	PalletLb      float64 // weight of a pallet
}

// Sheets are what the parts are made of.
type Sheets struct {
	// Thickness by the longer side of the plastic, from the smallest up; the last one
	// holds for all that is larger.
	Thickness    []SheetThickness
	LbPerCubicIn map[string]float64 // density by material
	// FrameLbPerFt is a unit's frame with its retainer, pounds a foot of its girth.
	FrameLbPerFt float64
}

// SheetThickness is the sheet of parts whose longer side is at most UpTo.
type SheetThickness struct {
	UpTo      Length
	Thickness Length
}

// DefaultShipRules are the published limits of 2025 and the trade's packing habits.
func DefaultShipRules() ShipRules {
	return ShipRules{
		// Parcel size pages of two large ground services, 2025: 150 lb, 108 in, 165 in.
		Parcel: ParcelLimits{MaxLb: 150, MaxLengthIn: 108, MaxLengthPlusGirth: 165},
		// The same services' questions and answers and trade notices of 2025–26.
		Oversize: OversizeLimits{OverLb: 110, OverLengthIn: 96, OverLengthPlusGirth: 130, OverCubicIn: 17_280, MinBilledLb: 90},
		// Trade notices of 2025–26; the 50 lb is from memory of the same price lists.
		Handling: HandlingLimits{OverLb: 50, OverLengthIn: 48, OverWidthIn: 30, OverCubicIn: 10_368},
		// Dimensional-weight page, 2025; sides rounded up to whole inches since 18 Aug 2025.
		DimDivisor: 139,
		Classes:    densityClasses(),
		// Common practice, no source.
		Packing: Packing{Around: 3 * Inch, Above: 3 * Inch, LayerGap: Inch / 2, FrameWall: Inch, FrameDepth: 7 * Inch / 2,
			CartonLbPerFt: 0.27},
		Sheets: Sheets{
			// Common practice, no source.
			Thickness: []SheetThickness{{60 * Inch, Inch / 8}, {84 * Inch, 3 * Inch / 16}, {MaxLength, Inch / 4}},
			// Acrylic 1.19, polycarbonate 1.20 g/cm³: materials databases, stock data sheets.
			LbPerCubicIn: map[string]float64{MaterialAcrylic: 0.0430, MaterialPolycarbonate: 0.0434},
			// Aluminium 0.0975 lb/in³ at 0.9 in² of frame and retainer section: common practice, no source.
			FrameLbPerFt: 1.05,
		},
	}
}

// densityClasses are the thirteen tiers of the freight classification's Docket 2025-1,
// in effect since 19 July 2025; the lower bound is inside its tier.
func densityClasses() []DensityClass {
	return []DensityClass{{0, 400}, {1, 300}, {2, 250}, {4, 175}, {6, 125}, {8, 100}, {10, 92.5},
		{12, 85}, {15, 70}, {22.5, 65}, {30, 60}, {35, 55}, {50, 50}}
}
