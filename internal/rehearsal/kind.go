package rehearsal

import "example.com/intake-bot/internal/fitcheck"

// kind is a sort of customer: what they have and how the shop comes to know them. The
// shares are a judgement, not a count.
type kind struct {
	name    string
	uses    []string
	styles  []weighted[string]
	several float64 // share that has several alike
	second  float64 // share that has two kinds of skylight
	mail    float64 // share that writes mail instead of texts
	handy   float64 // share that measures to the sixteenth and gives all sizes unasked
}

var usualStyles = []weighted[string]{
	{60, fitcheck.StyleCurbMount}, {9, fitcheck.StyleUnsure}, {7, fitcheck.StyleDomeOverFrame},
	{6, fitcheck.StyleFiberglassFrame}, {4, fitcheck.StyleVerticalRise}, {4, fitcheck.StyleSelfFlashing},
	{3, fitcheck.StyleBareDome}, {3, fitcheck.StyleGlass}, {2, fitcheck.StyleTubular}, {2, fitcheck.StyleNoneYet},
}

var kinds = []weighted[kind]{
	{40, kind{name: "homeowner", uses: []string{fitcheck.UseHome}, styles: usualStyles, several: 0.12, mail: 0.2}},
	{14, kind{name: "contractor", uses: []string{fitcheck.UseHome, fitcheck.UseCommercial, fitcheck.UseHome}, styles: usualStyles[:5],
		several: 0.45, second: 0.3, mail: 0.3, handy: 0.6}},
	{11, kind{name: "manager", uses: []string{fitcheck.UseCommercial}, styles: usualStyles[:5], several: 0.7, second: 0.15, mail: 0.5, handy: 0.2}},
	{9, kind{name: "manufactured home", uses: []string{fitcheck.UseManufacturedHome},
		styles: []weighted[string]{{50, fitcheck.StyleCurbMount}, {20, fitcheck.StyleBareDome}, {15, fitcheck.StyleSelfFlashing}, {15, fitcheck.StyleDomeOverFrame}}, several: 0.1}},
	{8, kind{name: "RV owner", uses: []string{fitcheck.UseRV},
		styles: []weighted[string]{{60, fitcheck.StyleBareDome}, {20, fitcheck.StyleSelfFlashing}, {20, fitcheck.StyleUnsure}}, several: 0.05, mail: 0.1}},
	{7, kind{name: "outbuilding", uses: []string{fitcheck.UseOutbuilding}, styles: usualStyles[:6], several: 0.25}},
	{3, kind{name: "other", uses: []string{fitcheck.UseOther}, styles: usualStyles[:2], mail: 0.3}},
}

// manner is how somebody carries on a talk.
type manner string

const (
	plain      manner = "plain"
	vague      manner = "vague"        // first a guess, the tape later
	chatty     manner = "chatty"       // with much around it
	hurried    manner = "hurried"      // as few words as will do
	atOnce     manner = "all at once"  // tells everything in the first message
	bursts     manner = "bursts"       // half a thought a text
	correcting manner = "correcting"   // puts right what they said before
	sideways   manner = "other answer" // answers another question than the one asked
	bySide     manner = "side by side" // one side of a size at a time
	shy        manner = "no name"      // won't say who they are
)

var manners = []weighted[manner]{
	{24, plain}, {11, vague}, {12, chatty}, {12, hurried}, {11, atOnce}, {9, bursts}, {8, correcting}, {6, sideways}, {4, bySide}, {3, shy},
}

// turnOff is how somebody leaves the straight way to a lead, if at all.
type turnOff string

const (
	stays    turnOff = "stays"
	leaves   turnOff = "leaves"
	returns  turnOff = "comes back" // leaves and answers the reminder
	optsOut  turnOff = "opts out"
	restarts turnOff = "opts out and in"
	person   turnOff = "wants a person"
	cant     turnOff = "can't measure"
)

var turnOffs = []weighted[turnOff]{
	{80, stays}, {5, leaves}, {4, returns}, {2, optsOut}, {1, restarts}, {4, person}, {4, cant},
}
