package fitcheck

// Code names a kind of finding; docs/contract.md lists them.
type Code string

const (
	CurbWallMismatch           Code = "curb_wall_mismatch"
	DrywallIncluded            Code = "drywall_included"
	FlashingIncluded           Code = "flashing_included"
	DoubledCurb                Code = "doubled_curb"
	ThinCurb                   Code = "thin_curb"
	FrameMeasuredForCurb       Code = "frame_measured_for_curb"
	RetainerMeasuredForPlastic Code = "retainer_measured_for_plastic"
	SidesSwapped               Code = "sides_swapped"
	FeetForInches              Code = "feet_for_inches"
	MetricForInches            Code = "metric_for_inches"
	TapeHookInch               Code = "tape_hook_inch"
	MisreadFoot                Code = "misread_foot"
	NominalSize                Code = "nominal_size"
	OutOfSquare                Code = "out_of_square"
	DiagonalsImpossible        Code = "diagonals_impossible"
	CapGapTight                Code = "cap_gap_tight"
	CapGapLoose                Code = "cap_gap_loose"
	WontCap                    Code = "wont_cap"
	EdgeGripShort              Code = "edge_grip_short"
	EdgeGripLong               Code = "edge_grip_long"
	WontPassOpening            Code = "wont_pass_opening"
	ExpansionClearance         Code = "expansion_clearance"
	RiseBelowCode              Code = "rise_below_code"
	CurbBelowCode              Code = "curb_below_code"
	AreaOverCode               Code = "area_over_code"
	SlopeBelowCode             Code = "slope_below_code"
	HurricaneRegion            Code = "hurricane_region"
	SnowRegion                 Code = "snow_region"
	ExtremeClimate             Code = "extreme_climate"
	ImpactAdvised              Code = "impact_advised"
	SingleLayerHeatedSpace     Code = "single_layer_heated_space"
	RareColor                  Code = "rare_color"
	OversizeParcel             Code = "oversize_parcel"
	TooLargeToMake             Code = "too_large_to_make"
	TooSmallToMake             Code = "too_small_to_make"
	ImplausibleSize            Code = "implausible_size"
)

// Slip is a way of going wrong that shares its code with others.
type Slip string

const (
	SlipFraction   Slip = "fraction"    // nominal_size: "48.3" for 48 3/8
	SlipAround     Slip = "around"      // implausible_size: a round one's girth for its width
	SlipFromMiddle Slip = "from_middle" // implausible_size: half of a round one's width
	SlipLevel      Slip = "level"       // curb_wall_mismatch: not taken along the roof
	SlipCopied     Slip = "copied"      // curb_wall_mismatch and others: one side written twice
)

// Reasons of a decision about what to replace.
const (
	ReasonReuseFrame          = "reuse_frame"
	ReasonStyleNeedsUnit      = "style_needs_unit"
	ReasonFramePastReuse      = "frame_past_reuse"
	ReasonPhotoDecides        = "photo_decides"
	ReasonOutsideOurParts     = "outside_our_parts"
	ReasonNewOpening          = "new_opening"
	ReasonNotCurbMounted      = "not_curb_mounted"
	ReasonCustomerPrefersUnit = "customer_prefers_unit"
)

// Cautions of a whole job: what whoever talks to the customer should say once.
const (
	CautionRoofFall   = "roof_fall"     // measuring or work on a roof
	CautionOpenHole   = "open_hole"     // a dome is off or broken through
	CautionStructure  = "structure"     // a new opening, a cut member: a licensed person decides
	CautionVehicle    = "vehicle_exit"  // a hatch may be a way out
	CautionLocalCodes = "local_codes"   // a code flag was raised: the local building office decides
	CautionEnergy     = "energy_rating" // whole units count as new glazing: its highest U-factor is the county's
	CautionWildfire   = "wildfire_area" // parts of the state ask for skylights that resist fire
)
