// Package conversation is the talk with one customer: it reads what came in, keeps
// the ledger of facts, has the numbers checked, and decides what to say next and when
// the lead goes to a person. It is pure: clock and shop are passed in, so the same
// messages at the same times give the same talk and lead, byte for byte.
package conversation

import (
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// State is where a talk stands; the law of their changes is in states.go.
type State string

const (
	Opening     State = "opening"     // nothing said yet
	Introducing State = "introducing" // name, place, use
	Identifying State = "identifying" // what is up there and what is wrong with it
	Measuring   State = "measuring"
	Rechecking  State = "rechecking" // the numbers can't all be right
	Choosing    State = "choosing"   // layers, material, colors, finish
	Picturing   State = "picturing"  // photos
	Confirming  State = "confirming"
	HandedOver  State = "handed_over"
	WithStaff   State = "with_staff"
	Lapsed      State = "lapsed"   // no answer; the next message picks up where it was
	Silenced    State = "silenced" // opted out
)

// Channel is how a message travels.
type Channel string

const (
	SMS      Channel = "sms"
	Email    Channel = "email"
	Terminal Channel = "terminal"
)

// Who wrote a message or gave a fact.
const (
	FromCustomer = "customer"
	FromBot      = "bot"
	FromStaff    = "staff"
)

// Message is one message of a talk, in either direction.
type Message struct {
	N       int // place in the talk, from 1, both directions counted
	At      time.Time
	From    string
	Channel Channel
	Text    string
	Photos  int // how many photos came with it
	// Answer is the owner's answer to a question that the message asks, looked up by
	// the caller; empty where none fits well.
	Answer string
	// Blocks are the pieces of a mail that answers in between what it quotes; empty where
	// Text is one piece.
	Blocks []Block
	// Unproven: nothing shows that the domain of a mail's sender stands behind it.
	Unproven bool
	// Claims is the ref of a talk that the message may belong to: its writer names the ref,
	// or, with Given, that talk gave the writer's number or address. Empty for none.
	Claims string
	Given  bool
	// Looks are what was seen of photos and files since the last turn, where it is worth a
	// word.
	Looks []PhotoLook
}

// Block is a piece of a message and what stands quoted above it asks for.
type Block struct {
	Asked []fitcheck.Topic `json:"asked,omitempty"`
	Text  string           `json:"text"`
}

// Entry is one fact in the ledger. A later one of the same topic and unit replaces
// it; nothing is erased.
type Entry struct {
	Topic   fitcheck.Topic
	Unit    int // from 1; 0 for topics of the whole lead
	Value   fitcheck.Value
	Said    string
	Message int    // N of the message that it came from
	By      string // FromCustomer or FromStaff
	Undone  bool   // taken back by the customer
}

// Talk is all that is kept of one conversation beside its messages.
type Talk struct {
	Ref      string
	Channel  Channel
	Phone    string // E.164, the number that texted; empty for mail
	Email    string // the address that wrote; empty for texts
	Language string // "en" or "es"
	State    State
	OpenedAt time.Time
	Ledger   []Entry
	Memory   Memory
	Lead     Lead
}

// Memory is what the policy has to remember from turn to turn, kept as JSON.
type Memory struct {
	Asking   []Ask          `json:"asking,omitempty"`   // what the last question asked
	Tries    map[Ask]int    `json:"tries,omitempty"`    // how often each thing was asked
	LetGo    map[Ask]bool   `json:"let_go,omitempty"`   // asked enough, or not to be had: left to staff
	Raised   map[string]int `json:"raised,omitempty"`   // "code@unit": how often a finding was asked about
	Pending  *Pending       `json:"pending,omitempty"`  // something unclear that waits for its other half
	Early    []*Pending     `json:"early,omitempty"`    // sizes that came before their time
	Unplaced *Pending       `json:"unplaced,omitempty"` // a size of which nobody said what it is, though that was asked
	Called   map[int]string `json:"called,omitempty"`   // what a unit was called before it was measured ("4x8")
	Rooms    map[int]string `json:"rooms,omitempty"`    // the room that a unit was called by
	Looks    map[int]string `json:"looks,omitempty"`    // how a unit looks, beside its room
	Rough    map[Ask]string `json:"rough,omitempty"`    // a measure that was told roughly, as said
	Bronze   map[int]bool   `json:"bronze,omitempty"`   // a unit's frame is wanted in bronze, which may be open

	Introduced  bool           `json:"introduced,omitempty"`
	Explained   bool           `json:"explained,omitempty"` // told why the dome alone won't do
	Cautioned   bool           `json:"cautioned,omitempty"` // told what matters when measuring
	Urgent      bool           `json:"urgent,omitempty"`
	Rushed      bool           `json:"rushed,omitempty"`    // staff were told that it is urgent
	Danger      bool           `json:"danger,omitempty"`    // an open hole, water coming in, somebody hurt
	FirstAid    bool           `json:"first_aid,omitempty"` // told what to do first
	Confirmed   bool           `json:"confirmed,omitempty"`
	Relisted    bool           `json:"relisted,omitempty"` // the list is another than was shown last
	PersonAsked bool           `json:"person_asked,omitempty"`
	Foreign     bool           `json:"foreign,omitempty"` // wrote in a language that is not ours
	Abroad      bool           `json:"abroad,omitempty"`  // writes from outside the US
	Stopped     bool           `json:"stopped,omitempty"`
	LeftOut     string         `json:"left_out,omitempty"`   // words for a skylight that is no more wanted, while others are
	Out         map[int]bool   `json:"out,omitempty"`        // kinds that are no more wanted, and keep their number
	CalledOff   bool           `json:"called_off,omitempty"` // wants nothing any more
	Quiet       bool           `json:"quiet,omitempty"`      // a person of staff talks; the assistant does not
	Shut        bool           `json:"shut,omitempty"`       // closed by staff, for good
	Total       int            `json:"total,omitempty"`      // skylights of all kinds, where it is not told how many of each
	PhotoOf     fitcheck.Topic `json:"photo_of,omitempty"`   // what a photo was asked for
	Hurt        bool           `json:"hurt,omitempty"`       // wrote that somebody is hurt
	Lost        int            `json:"lost,omitempty"`       // turns in a row of which nothing could be used
	Nudges      int            `json:"nudges,omitempty"`
	LastAt      time.Time      `json:"last_at,omitzero"` // when the customer wrote last
	Usual       map[Ask]bool   `json:"usual,omitempty"`  // left to the shop's usual
	Said        map[string]int `json:"said,omitempty"`   // how often a sentence was said that has several ways

	NoTexts   bool    `json:"no_texts,omitempty"`   // the number takes no texts
	NoMail    bool    `json:"no_mail,omitempty"`    // the address takes no mail
	Unproven  bool    `json:"unproven,omitempty"`   // a mail's sender is not proven
	Claims    string  `json:"claims,omitempty"`     // ref of a talk that it may belong to
	Given     bool    `json:"given,omitempty"`      // since that talk gave this number or address
	StoppedOn Channel `json:"stopped_on,omitempty"` // where the customer opted out
	Flood     string  `json:"flood,omitempty"`      // why the talk was held back
	Barren    int     `json:"barren,omitempty"`     // messages in a row that brought nothing new
}

// Ask is one thing that is asked: a topic, of one unit or of the whole lead (0).
type Ask struct {
	Topic fitcheck.Topic
	Unit  int
}

// UtteranceKind says under which conditions an utterance may be sent.
type UtteranceKind string

const (
	Reply    UtteranceKind = "reply"    // answers what the customer just wrote
	Farewell UtteranceKind = "farewell" // the one confirmation of an opt-out; goes out in spite of it
	Reminder UtteranceKind = "reminder" // unasked: only in the customer's daytime
	Notice   UtteranceKind = "notice"   // what the carriers' rules ask for, such as the answer to HELP
)

// Utterance is one text to send.
type Utterance struct {
	Text string
	Kind UtteranceKind
	// Picture is the topic of a drawing to send along, empty for none.
	Picture fitcheck.Topic
}

// Outcome is what a turn leads to. Talk replaces the one that went in.
type Outcome struct {
	Talk     Talk
	Facts    []Entry                // the entries that this turn added to the ledger, its tail
	Say      []Utterance            // in order
	Asking   []Ask                  // what is asked now
	Waits    bool                   // what is asked stands from before, and was not asked anew
	PhotosOf map[int]fitcheck.Topic // message N -> what its photos were asked for
	// Wake is when to call Nudge if nothing more comes in; zero for never.
	Wake time.Time
	// Alert says that staff should be told now (a lead became ready, needs a person, or
	// is urgent).
	Alert bool
}
