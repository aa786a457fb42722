package photo

import "fmt"

// Why says why a file is not taken, for a wording to explain.
type Why string

const (
	WhyEmpty     Why = "empty"     // no bytes at all
	WhyOther     Why = "other"     // no picture, or of a kind that is not read
	WhyAnimated  Why = "animated"  // several pictures in one
	WhyVideo     Why = "video"     // a film
	WhyDocument  Why = "document"  // a PDF or office file
	WhyTooLarge  Why = "too_large" // more bytes, pixels or memory than allowed
	WhyBroken    Why = "broken"    // a picture that can't be read, such as one cut off
	WhyUnderSize Why = "speck"     // a few pixels, such as a tracking dot
)

// Refused is the error for a file that is not taken. The same file will be refused
// again: trying once more helps nothing.
type Refused struct {
	Why  Why
	Kind Kind
	err  error
}

func (r *Refused) Error() string {
	if r.err != nil {
		return fmt.Sprintf("photo refused: %s (%s): %v", r.Why, r.Kind, r.err)
	}
	return fmt.Sprintf("photo refused: %s (%s)", r.Why, r.Kind)
}

func (r *Refused) Unwrap() error { return r.err }

func refuse(why Why, kind Kind, err error) error { return &Refused{Why: why, Kind: kind, err: err} }
