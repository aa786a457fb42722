package conversation

import (
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// Status is how far a lead has come.
type Status string

const (
	StatusOpen        Status = "open"         // still talking
	StatusReady       Status = "ready"        // complete and confirmed by the customer
	StatusNeedsPerson Status = "needs_person" // handed over early, WhyStaff says why
	StatusPickedUp    Status = "picked_up"
	StatusQuoted      Status = "quoted"
	StatusOrdered     Status = "ordered"
	StatusDeclined    Status = "declined"
	StatusClosed      Status = "closed" // opted out, spam, or nothing came of it
)

// Lead is what staff get of a talk, apart from its facts, messages and photos.
type Lead struct {
	Status     Status
	Qualified  bool
	WhyStaff   []string
	Urgent     bool
	AfterHours bool
	ReadyAt    *time.Time
	Units      []LeadUnit
}

// LeadUnit is one kind of unit as it now stands, with what the check says of it. Its
// JSON is the contract's: every known topic, and "check".
type LeadUnit struct {
	Unit  fitcheck.Unit
	Check fitcheck.UnitResult
}

// Record is the lead record of docs/contract.md.
type Record struct {
	Version    int             `json:"version"`
	Ref        string          `json:"ref"`
	Status     Status          `json:"status"`
	Qualified  bool            `json:"qualified"`
	WhyStaff   []string        `json:"why_staff"`
	Urgent     bool            `json:"urgent"`
	AfterHours bool            `json:"after_hours"`
	Channel    Channel         `json:"channel"`
	Language   string          `json:"language"`
	OpenedAt   time.Time       `json:"opened_at"`
	ReadyAt    *time.Time      `json:"ready_at"`
	Customer   RecordCustomer  `json:"customer"`
	Place      RecordPlace     `json:"place"`
	Use        *string         `json:"use"`
	Problem    []string        `json:"problem"`
	Units      []LeadUnit      `json:"units"`
	Photos     []RecordPhoto   `json:"photos"`
	Facts      []RecordFact    `json:"facts"`
	Messages   []RecordMessage `json:"messages"`
}

// RecordCustomer is who the lead is about; null where not known.
type RecordCustomer struct {
	Name  *string `json:"name"`
	Phone *string `json:"phone"`
	Email *string `json:"email"`
}

// RecordPlace is where the part goes; null where not known.
type RecordPlace struct {
	City     *string `json:"city"`
	State    *string `json:"state"`
	ZIP      *string `json:"zip"`
	TimeZone *string `json:"time_zone"`
}

// RecordPhoto is one photo of a lead; its size is null until it was fetched.
type RecordPhoto struct {
	ID          string          `json:"id"`
	Of          *fitcheck.Topic `json:"of"`
	FromMessage int             `json:"from_message"`
	Width       *int            `json:"width"`
	Height      *int            `json:"height"`
}

// RecordFact is one fact with its words and message.
type RecordFact struct {
	Topic   fitcheck.Topic `json:"topic"`
	Unit    int            `json:"unit,omitempty"`
	Value   fitcheck.Value `json:"value"`
	Said    string         `json:"said"`
	Message int            `json:"message"`
}

// RecordMessage is one message of the talk.
type RecordMessage struct {
	N       int       `json:"n"`
	At      time.Time `json:"at"`
	From    string    `json:"from"`
	Channel Channel   `json:"channel"`
	Text    string    `json:"text"`
}
