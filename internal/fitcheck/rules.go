package fitcheck

// Rules are the shop's own lines: tolerances, what it makes and stocks, and how it
// packs and prices. DefaultRules has the trade's habits; the shop file may move them.
type Rules struct {
	Gap      GapRules
	Grip     GripRules
	Measure  MeasureRules
	Flashing Length // what flashing may add to the curb's outside, in total, before anyone asks
	Making   MakingRules
	Stock    []StockItem
	Ship     ShipRules
	Prices   *PriceBook // nil: no estimates
	ShipFrom Site       // where parcels start
	Sells    SellRules
}

// GapRules bound the cap gap, in total per direction: the inside of the unit's flange
// less the outside of the curb.
type GapRules struct {
	SoundLow, SoundHigh Length // sound from here to here, inclusive; tight below
	Loose               Length // loose above; a note between SoundHigh and here
	Target              Length // what a unit made to size is given
}

// GripRules bound how far the plastic lies under the retaining frame, per edge.
type GripRules struct {
	Short               Length // short below
	SoundLow, SoundHigh Length
	Long                Length // long above
}

// MakingRules bound what the shop can make to size.
type MakingRules struct {
	Step             Length // order sizes are rounded up to this step
	DomeMin, DomeMax Length // side of the plastic
	UnitMin, UnitMax Length // side of the flange, inside
}

// StockItem is a ready-made part.
type StockItem struct {
	Code     string
	Part     Replace // ReplaceDome or ReplaceUnit
	Size     Size    // plastic size of a dome, frame inside of a unit
	Profile  string
	Layers   int
	Material string
	Color    Color
	Finish   string
}

// SellRules say which parts and styles the shop sells and where it ships.
type SellRules struct {
	Materials []string
	Layers    []int
	Colors    []string
	Finishes  []string
	States    []string // two-letter codes that it ships to; empty: all states
}

// DefaultRules are the lines that the trade draws by habit (common practice, no
// source, unless said otherwise where a rule is used).
func DefaultRules() *Rules {
	return &Rules{
		Gap:      GapRules{SoundLow: Inch / 4, SoundHigh: Inch / 2, Loose: 3 * Inch / 4, Target: 3 * Inch / 8},
		Grip:     GripRules{Short: 3 * Inch / 8, SoundLow: Inch / 2, SoundHigh: 3 * Inch / 2, Long: 2 * Inch},
		Measure:  MeasureRules{Hand: Inch / 8},
		Flashing: 3 * Inch / 8,
		Making:   MakingRules{Step: Inch / 8, DomeMin: 8 * Inch, DomeMax: 120 * Inch, UnitMin: 10 * Inch, UnitMax: 120 * Inch},
		Sells: SellRules{
			Materials: []string{MaterialAcrylic, MaterialPolycarbonate},
			Layers:    []int{1, 2, 3},
			Colors:    []string{ColorClear, ColorWhite, ColorBronze},
			Finishes:  []string{FinishMill, FinishBronzeAnodized, FinishBronzePowderCoat},
		},
		Ship: DefaultShipRules(),
	}
}
