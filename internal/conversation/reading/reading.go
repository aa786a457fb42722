// Package reading turns what a person wrote into facts, English or Spanish: sizes,
// places, names, choices, and what is asked for. It is pure and total: every text
// has a reading. It never guesses: what it is not sure of is unclear, not a fact.
package reading

import "example.com/intake-bot/internal/fitcheck"

// Why says why something is unclear.
type Why string

const (
	WhyUnits   Why = "units"   // inches, feet, centimetres or millimetres are all possible
	WhyNominal Why = "nominal" // a nominal size, not a measure
	WhyNumber  Why = "number"  // a number that can't be read
	WhyWhich   Why = "which"   // a size, not known of what
	WhyRange   Why = "range"   // "24 to 26"
	WhyRough   Why = "rough"   // said to be a guess
	WhyPlace   Why = "place"
	WhyChoice  Why = "choice"
)

// Request is something asked for outside a topic.
type Request string

const (
	RequestPerson        Request = "person"
	RequestPrice         Request = "price"
	RequestStop          Request = "stop"
	RequestStart         Request = "start"
	RequestHelp          Request = "help"
	RequestUndo          Request = "undo"
	RequestAgain         Request = "again"
	RequestUrgent        Request = "urgent"
	RequestHowTo         Request = "howto"
	RequestQuestion      Request = "question"
	RequestOtherLanguage Request = "other_language"
)

// Fact is something that a message says and the program is sure of.
type Fact struct {
	Topic fitcheck.Topic `json:"topic"`
	Unit  int            `json:"unit,omitempty"` // from 1 where the message speaks of several kinds of unit
	Value fitcheck.Value `json:"value"`
	Said  string         `json:"said"` // the customer's words
}

// Unclear is something that a message seems to say and the program will ask about.
type Unclear struct {
	Topic      *fitcheck.Topic  `json:"topic"` // nil with WhyWhich
	Unit       int              `json:"unit,omitempty"`
	Said       string           `json:"said"`
	Why        Why              `json:"why"`
	Candidates []fitcheck.Topic `json:"candidates,omitempty"` // likelier topics of a size, with WhyWhich
	// Guess is what it would be if the doubt were settled in the plain way; for
	// wording a question ("25 x 49 inches?"), never for the ledger. Not in the JSON.
	Guess fitcheck.Value `json:"-"`
}

// Input is one message and what it may answer.
type Input struct {
	Text string
	// Asked are the topics that the customer is answering, the likeliest first.
	Asked []fitcheck.Topic
	// Units is how many kinds of unit the talk knows so far.
	Units int
	// Rooms are what kinds of unit were called by in earlier messages: "kitchen", "small".
	Rooms map[int]string
	// Names are other words that tell the kinds apart by what the talk knows of them: "round",
	// "square", "big"; each with the kind that it means.
	Names map[string]int
	// Sizes are what is known to be measured of each kind, by any of its parts.
	Sizes map[int][]fitcheck.Size
	// Counts is how many there are of each kind that was counted.
	Counts map[int]int
	// Count is how many skylights were told of, while one kind of them at the most is known.
	Count int
	// Unit is the unit of lengths that come without one, as UnitNamed gives it; "" where
	// not known.
	Unit string
	// Language is the talk's so far ("en", "es"), "" where not known.
	Language string
}

// Reading is what a message says. Slices are never nil, so that they print as [].
type Reading struct {
	Facts    []Fact    `json:"facts"`
	Unclear  []Unclear `json:"unclear"`
	Requests []Request `json:"requests"`
	Language string    `json:"language"` // BCP 47
	// SameAs maps a unit to the one that it is said to equal ("same as the other"). Not in the JSON.
	SameAs map[int]int `json:"-"`
	// Rooms are what the message calls kinds of unit by, for Input.Rooms. Not in the JSON.
	Rooms map[int]string `json:"-"`
	// Looks are the looks that the message tells of kinds beside their room: "round", "big". Not in
	// the JSON.
	Looks map[int]string `json:"-"`
	// Dropped is the kind that is no more wanted, 0 for none. Not in the JSON.
	Dropped int `json:"-"`
	// Kinds is how many kinds of unit the message names, where it says something of one of them.
	// Not in the JSON.
	Kinds int `json:"-"`
	// Total is how many skylights there are in all, where the message names as many kinds. Not in the JSON.
	Total *Fact `json:"-"`
	// SameKind are the units that are said to be of the same kind as the first ("same
	// frame"), 0 for the one that was asked about. Not in the JSON.
	SameKind []int `json:"-"`
	// Trade says that the one question is whether the shop has what it is there for ("do you
	// do skylights"): going on answers it. Not in the JSON.
	Trade bool `json:"-"`
	// UsualAsked says that the one question is what most people take: the shop's usual
	// answers it. Not in the JSON.
	UsualAsked bool `json:"-"`
	// WhomToCall says that the message names whom the shop should not call. Not in the JSON.
	WhomToCall bool `json:"-"`
	// DontKnow are asked topics to which the person said that they don't know, can't
	// or won't say; Usual those left to the shop ("doesn't matter"). Not in the JSON.
	DontKnow []fitcheck.Topic `json:"-"`
	Usual    []fitcheck.Topic `json:"-"`
}
