package email

import "time"

// Message is one mail, taken apart.
type Message struct {
	ID         string // Message-ID without its brackets; "" where the mail has none
	From       string // address, lower case; "" where there is none that can be read
	Name       string // the sender's display name
	ReplyTo    string // address, where the sender asks for answers elsewhere
	ReturnPath string // the envelope's sender, as the receiving server noted it
	To         []string
	Subject    string
	InReplyTo  string
	References []string // oldest first
	Date       time.Time

	// Text is what the sender newly wrote: no quoted text, signature, footer, disclaimer.
	Text string
	// Blocks are the pieces of Text, each with the quoted text right above it: of an
	// interleaved reply that is the question it answers. Joined by blank lines they are
	// Text.
	Blocks []Block
	// Forwarded is what a forwarded mail says; the sender did not write it.
	Forwarded string

	Photos      []Photo
	Attachments []Attachment // files that are no photos, for staff to know of

	Auto    bool    // no person wrote it; never answer
	AutoWhy AutoWhy // "" where Auto is false
	Bounce  *Bounce // set where it reports on the delivery of another mail

	AuthResults []AuthResult // as claimed; see Proven
	Cut         bool         // something was left out because of Limits
}

// Block is a piece of new text and what it stands under.
type Block struct {
	Quoted string
	Text   string
}

// Photo is a picture that the sender sent on purpose, as far as can be told.
type Photo struct {
	Name          string
	Type          string // by content: "image/jpeg"
	Data          []byte
	ContentID     string
	Inline        bool
	Width, Height int // 0 where the format's header was not understood
}

// Attachment is a file that is no photo. Its content is not kept.
type Attachment struct {
	Name string
	Type string
	Size int
}
