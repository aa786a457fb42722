package fitcheck

// Allowed values of the enumerated topics. Their lay meaning is in docs/contract.md.
const (
	UseHome             = "home"
	UseCommercial       = "commercial"
	UseManufacturedHome = "manufactured_home"
	UseRV               = "rv"
	UseOutbuilding      = "outbuilding"
	UseOther            = "other"

	ProblemCracked  = "cracked"
	ProblemLeaking  = "leaking"
	ProblemHoleOpen = "hole_open"
	ProblemHazy     = "hazy"
	ProblemStorm    = "storm"
	ProblemOther    = "other"

	StyleCurbMount       = "curb_mount"
	StyleDomeOverFrame   = "dome_over_frame"
	StyleFiberglassFrame = "fiberglass_frame"
	StyleVerticalRise    = "vertical_rise"
	StyleSelfFlashing    = "self_flashing"
	StyleBareDome        = "bare_dome"
	StyleGlass           = "glass"
	StyleTubular         = "tubular"
	StyleNoneYet         = "none_yet"
	StyleUnsure          = "unsure"

	OutlineRectangle = "rectangle"
	OutlineRound     = "round"
	OutlineOther     = "other"

	ProfileDome    = "dome"
	ProfilePyramid = "pyramid"
	ProfileBarrel  = "barrel"
	ProfileFlat    = "flat"
	ProfileOther   = "other"

	ConditionGood        = "good"
	ConditionWeathered   = "weathered"
	ConditionCaulkedOver = "caulked_over"
	ConditionBent        = "bent"
	ConditionCorroded    = "corroded"
	ConditionUnsure      = "unsure"

	WantDomeOnly     = "dome_only"
	WantCompleteUnit = "complete_unit"
	WantUnsure       = "unsure"

	CoveringShingles      = "shingles"
	CoveringWoodShingles  = "wood_shingles"
	CoveringMetalShingles = "metal_shingles"
	CoveringSlate         = "slate"
	CoveringTile          = "tile"
	CoveringMetal         = "metal"
	CoveringStandingSeam  = "standing_seam"
	CoveringRollRoofing   = "roll_roofing"
	CoveringBuiltUp       = "built_up"
	CoveringMembrane      = "membrane"
	CoveringOther         = "other"

	MaterialAcrylic       = "acrylic"
	MaterialPolycarbonate = "polycarbonate"

	ColorClear  = "clear"
	ColorWhite  = "white"
	ColorBronze = "bronze"
	ColorOther  = "other"

	FinishMill             = "mill"
	FinishBronzeAnodized   = "bronze_anodized"
	FinishBronzePowderCoat = "bronze_powder_coat"
	FinishOther            = "other"

	RiskHail  = "hail"
	RiskTrees = "trees"
	RiskGolf  = "golf"
	RiskOther = "other"

	ConfirmYes = "yes"
	ConfirmNo  = "no"
)

var colors = []string{ColorClear, ColorWhite, ColorBronze, ColorOther}

// choices lists what each enumerated topic may be, in the order of the contract.
var choices = map[Topic][]string{
	TopicUse:     {UseHome, UseCommercial, UseManufacturedHome, UseRV, UseOutbuilding, UseOther},
	TopicProblem: {ProblemCracked, ProblemLeaking, ProblemHoleOpen, ProblemHazy, ProblemStorm, ProblemOther},
	TopicStyle: {StyleCurbMount, StyleDomeOverFrame, StyleFiberglassFrame, StyleVerticalRise,
		StyleSelfFlashing, StyleBareDome, StyleGlass, StyleTubular, StyleNoneYet, StyleUnsure},
	TopicOutline:        {OutlineRectangle, OutlineRound, OutlineOther},
	TopicProfile:        {ProfileDome, ProfilePyramid, ProfileBarrel, ProfileFlat, ProfileOther},
	TopicFrameCondition: {ConditionGood, ConditionWeathered, ConditionCaulkedOver, ConditionBent, ConditionCorroded, ConditionUnsure},
	TopicWant:           {WantDomeOnly, WantCompleteUnit, WantUnsure},
	TopicRoofCovering: {CoveringShingles, CoveringWoodShingles, CoveringMetalShingles, CoveringSlate, CoveringTile,
		CoveringMetal, CoveringStandingSeam, CoveringRollRoofing, CoveringBuiltUp, CoveringMembrane, CoveringOther},
	TopicMaterial:   {MaterialAcrylic, MaterialPolycarbonate},
	TopicFinish:     {FinishMill, FinishBronzeAnodized, FinishBronzePowderCoat, FinishOther},
	TopicImpactRisk: {RiskHail, RiskTrees, RiskGolf, RiskOther},
	TopicConfirm:    {ConfirmYes, ConfirmNo},
}

// Choices lists the allowed values of an enumerated topic; nil for any other.
func Choices(t Topic) []string { return choices[t] }
