package drawing

import (
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// Paper is the size of a sheet of paper.
type Paper string

const (
	Letter Paper = "letter" // 8 1/2 x 11 in, also where nothing is said
	A4     Paper = "a4"     // 210 x 297 mm
)

// SheetData is all that a lead sheet shows. Every field may be empty: what is not known
// is left out or named as missing. Texts may hold anything; they are cut to what fits,
// and the sheet says where.
type SheetData struct {
	Paper Paper

	Shop      string // its name
	Ref       string // of the lead
	Page      string // where the whole lead is found, such as the address of its page
	Status    string // of the contract: ready, needs_person …
	WhyStaff  []string
	Qualified bool
	Urgent    bool

	// Times are shown in the zone that they carry; the zero time is left out.
	Opened, Ready, Printed time.Time

	Name, Phone, Email string
	Channel            string // how they wrote: sms, email
	Language           string // BCP 47 tag of the customer's language
	TimeZone           string // theirs, such as America/Denver
	Place              fitcheck.Place
	Use                string   // of the contract: home, commercial …
	Problem            []string // of the contract: cracked, leaking …

	// Cautions are the contract's; the sheet has a sentence for each, to keep in mind on
	// the phone.
	Cautions []string
	Units    []SheetUnit
	Photos   []SheetPhoto
}

// SheetUnit is one kind of unit with what the check says of it. Facts are all that was
// said of it, in the order in which it was said; the last of a topic is what stands.
type SheetUnit struct {
	Unit   fitcheck.Unit
	Result fitcheck.UnitResult
	Facts  []SheetFact
}

// SheetFact is one thing that the customer said.
type SheetFact struct {
	Topic   fitcheck.Topic
	Value   fitcheck.Value
	Said    string // their words
	Message int    // its number in the talk
}

// SheetPhoto is a photo as JPEG or PNG, upright. Staff get the first ones small; the
// sheet says how many more there are.
type SheetPhoto struct {
	Data    []byte
	Of      fitcheck.Topic // what it was asked for, empty for none
	Message int
}
