package fitcheck

// Job is what one check looks at: the units of one building.
type Job struct {
	Use   string
	Place Place
	Site  Site
	Units []Unit
	// Resolution is how finely the tape was read, for sizes that do not say it
	// themselves; 0 lets each be inferred from how its number is written.
	Resolution Length
}

// Site is what is known of the place beyond its name; the caller looks it up, since
// the check has no tables of places. Zero values mean "not known".
type Site struct {
	State  string  // of the ZIP code, for a place that names no state
	County string  // likely county: a ZIP code may span several
	Lat    float64 // degrees north
	Lon    float64 // degrees east
	Known  bool    // whether Lat and Lon are known
}

// Replace is what part to replace.
type Replace string

// Verdict says what the measurements say, and nothing of other choices.
type Verdict string

// Severity says who needs to see a finding.
type Severity string

const (
	ReplaceDome  Replace = "dome"
	ReplaceUnit  Replace = "unit"
	ReplaceStaff Replace = "staff" // a person must decide

	VerdictFits       Verdict = "fits"
	VerdictConfirm    Verdict = "confirm"    // probably right, one thing to confirm
	VerdictRemeasure  Verdict = "remeasure"  // the numbers contradict each other
	VerdictNoFit      Verdict = "no_fit"     // what is known can't fit
	VerdictIncomplete Verdict = "incomplete" // a needed measurement is missing

	Note Severity = "note" // staff should see it
	Ask  Severity = "ask"  // the customer is asked
	Stop Severity = "stop" // not orderable as it stands
)

// Result is the answer to a Job.
type Result struct {
	Units    []UnitResult `json:"units"`
	Cautions []string     `json:"cautions"`
}

// UnitResult is the answer for one unit. Slices are never nil, so that they print
// as [].
type UnitResult struct {
	Replace      Replace   `json:"replace"`
	Reasons      []string  `json:"reasons"`
	Verdict      Verdict   `json:"verdict"`
	Findings     []Finding `json:"findings"`
	Missing      []Topic   `json:"missing"`
	PhotosWanted []Topic   `json:"photos_wanted"`
	Order        *Order    `json:"order"`
	Ship         *Ship     `json:"ship"`
	Estimate     *Estimate `json:"estimate"`
	// CheckedBy is the measurement that would bear out the one that the part still lacks,
	// so that both can be taken in one go; empty where there is none or it is known.
	CheckedBy Topic `json:"-"`
}

// Finding is one thing that the check saw.
type Finding struct {
	Code     Code     `json:"code"`
	Severity Severity `json:"severity"`
	Topic    Topic    `json:"topic"`
	// Text is one plain sentence that a customer could get, lengths in tape fractions.
	Text string `json:"text"`
	// Source is a published section, "common practice", or "from memory: …".
	Source string `json:"source"`
	// Numbers are the finding's own, by name: lengths in inches, others as named.
	Numbers Numbers `json:"numbers,omitempty"`
	// Rival is the code of another finding that the numbers can't tell from this one,
	// so that one question can cover both; empty where this one stands out.
	Rival Code `json:"-"`
	// Settle is the smallest set of topics whose measuring again would settle it, the
	// likeliest first; empty where the answer is a word and not a number.
	Settle []Topic `json:"-"`
	// Slip says which way of going wrong is meant where the code covers several, so that
	// the question can be put in other words or another language; mostly empty.
	Slip  Slip `json:"-"`
	clash bool // the numbers contradict each other
}

// Numbers are named figures of a finding; names of lengths end in _in.
type Numbers map[string]float64

// Order is what to order.
type Order struct {
	FrameInside *Size   `json:"frame_inside"` // of a complete unit
	PlasticSize *Size   `json:"plastic_size"` // of a dome
	Stock       *string `json:"stock"`        // the shop's item that it is, if any
	// Estimated marks a size that rests on indirect measures: not orderable as it
	// stands. Low and High then span it.
	Estimated bool  `json:"estimated,omitempty"`
	Low       *Size `json:"low,omitempty"`
	High      *Size `json:"high,omitempty"`
}

// Ship says how one unit travels; Pieces is the count.
type Ship struct {
	By           string     `json:"by"` // parcel, freight, staff
	Pieces       int        `json:"pieces"`
	WeightLb     float64    `json:"weight_lb"`
	BilledLb     int        `json:"billed_lb"`
	CartonIn     [3]float64 `json:"carton_in"`
	FreightClass *float64   `json:"freight_class"`
	Notes        []string   `json:"notes,omitempty"`
}

// Estimate is a price range in whole units of the currency; a Reason stands where
// there is none.
type Estimate struct {
	Low      int64          `json:"low"`
	High     int64          `json:"high"`
	Currency string         `json:"currency"`
	Lines    []EstimateLine `json:"lines"`
	Reason   string         `json:"reason,omitempty"`
}

// EstimateLine is one line of an estimate; the lines add up to its range.
type EstimateLine struct {
	What string `json:"what"`
	Low  int64  `json:"low"`
	High int64  `json:"high"`
}
