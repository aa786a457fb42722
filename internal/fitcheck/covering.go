package fitcheck

// covering is the least slope that the model code gives for a roof's covering.
type covering struct {
	quarters Length // least rise in 12 in of run, in quarters of an inch
	what     string // what wants that slope
	source   string
}

// coverings have the figures of IRC 2021 R905, whose text was read in adopted state
// editions; that of standing seams was reported. "Shingles" of which it is not said of
// what they are have the least figure of all shingles, "metal" that of panels that lap
// dry. What is not listed has none.
var coverings = map[string]covering{
	CoveringShingles:      {8, "Shingles are", sourceShingles},
	CoveringTile:          {10, "Roof tiles are", sourceTile},
	CoveringMetalShingles: {12, "Metal shingles are", sourceMetalShingles},
	CoveringRollRoofing:   {4, "Roll roofing is", sourceRollRoofing},
	CoveringSlate:         {16, "Slate is", sourceSlate},
	CoveringWoodShingles:  {12, "Wood shingles and shakes are", sourceWoodShingles},
	CoveringBuiltUp:       {1, "Built-up roofing is", sourceBuiltUp},
	CoveringMetal:         {12, "Metal panels that lap without sealant are", sourceMetal},
	CoveringStandingSeam:  {1, "Standing seams are", sourceStandingSeam},
	CoveringMembrane:      {1, "Roofing membranes are", sourceMembrane},
}

const (
	sourceShingles      = "IRC 2021 R905.2.2 (asphalt shingles at 2:12 or steeper)"
	sourceTile          = "IRC 2021 R905.3.2 (clay and concrete tile at 2 1/2:12 or steeper)"
	sourceMetalShingles = "IRC 2021 R905.4.2 (metal shingles at 3:12 or steeper)"
	sourceRollRoofing   = "IRC 2021 R905.5.2 (mineral roll roofing at 1:12 or steeper)"
	sourceSlate         = "IRC 2021 R905.6.2 (slate at 4:12 or steeper)"
	sourceWoodShingles  = "IRC 2021 R905.7.2, R905.8.2 (wood shingles and shakes at 3:12 or steeper)"
	sourceBuiltUp       = "IRC 2021 R905.9.1 (built-up roofs at 1/4:12 or steeper)"
	sourceMetal         = "IRC 2021 R905.10.2 (metal panels that lap without sealant at 3:12 or steeper)"
	sourceStandingSeam  = "IRC 2021 R905.10.2 (standing seams at 1/4:12 or steeper), as reported by two tables of it"
	sourceMembrane      = "IRC 2021 R905.11 to R905.15 (modified bitumen, single-ply, foam and liquid at 1/4:12 or steeper)"
)

// coveringFlag holds the roof's slope against what covers it (dossier 2.4): where the two
// contradict each other, one of them was said or noted wrong, or the roof is a case for
// whoever knows its local code. A roof that is called flat still drains: it counts as
// 1/4:12, the least that any covering is made for (common practice).
func coveringFlag(fs []Finding, u *Unit) []Finding {
	c, listed := coverings[u.RoofCovering]
	if !listed || u.RoofSlope == nil {
		return fs
	}
	const quarter = Inch / 4
	s := *u.RoofSlope
	if s.Rise == 0 {
		s = Slope{quarter, Foot}
	}
	if 48*s.Rise >= c.quarters*s.Run {
		return fs
	}
	return append(fs, Finding{Code: SlopeBelowCode, Severity: Note, Topic: TopicRoofCovering, Source: c.source,
		Numbers: Numbers{"found_in_12": 12 * float64(u.RoofSlope.Rise) / float64(u.RoofSlope.Run), "low_in_12": float64(c.quarters) / 4},
		Text: c.what + " meant for roofs of " + (c.quarters * quarter).Tape() +
			" in 12 or steeper, so our staff will ask what covers this one and how steep it is."})
}
