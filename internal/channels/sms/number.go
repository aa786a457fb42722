package sms

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"github.com/nyaruka/phonenumbers"
)

// ErrSender matches every *SenderError.
var ErrSender = errors.New("sender can't be answered")

// SenderKind says why a sender is nobody to talk with.
type SenderKind string

const (
	SenderShortCode  SenderKind = "short_code"  // a service's number of three to eight digits
	SenderName       SenderKind = "name"        // an alphanumeric sender id
	SenderAnonymous  SenderKind = "anonymous"   // withheld
	SenderOtherRoute SenderKind = "other_route" // a chat app's address such as "whatsapp:+1…"
	SenderImpossible SenderKind = "impossible"  // no telephone number at all
)

// SenderError says that a message came from something that is no telephone number. It
// does not hold the sender, so that it can be logged.
type SenderError struct{ Kind SenderKind }

func (e *SenderError) Error() string        { return "sender can't be answered: " + string(e.Kind) }
func (e *SenderError) Is(target error) bool { return target == ErrSender }

// anonymous numbers spell words on a keypad: RESTRICTED, ANONYMOUS, UNKNOWN,
// UNAVAILABLE, BLOCKED. Source: from memory of the carrier's page on caller ids.
var anonymous = map[string]bool{
	"+7378742833": true, "+2562533": true, "+8566696": true,
	"+266696687": true, "+86282452253": true, "": true,
}

var (
	shortCode = regexp.MustCompile(`^\+?\d{3,8}$`)
	route     = regexp.MustCompile(`^[a-z]{2,12}:`)
	hasLetter = regexp.MustCompile(`\pL`)
)

// Normalize gives a telephone number in E.164; one without a country is taken as of
// the United States. Error: *SenderError. A number need only be possible, not assigned:
// the carrier has proved that it can text, and numbering plans are newer than tables.
func Normalize(number string) (string, error) {
	s := strings.TrimSpace(number)
	if kind := oddSender(s); kind != "" {
		return "", &SenderError{Kind: kind}
	}
	n, err := phonenumbers.Parse(s, "US")
	if err != nil || !phonenumbers.IsPossibleNumber(n) || n.GetExtension() != "" {
		return "", &SenderError{Kind: SenderImpossible}
	}
	e164 := phonenumbers.Format(n, phonenumbers.E164)
	if len(e164) > len("+")+15 { // ITU-T E.164 section 6, from memory
		return "", fmt.Errorf("number too long: %w", &SenderError{Kind: SenderImpossible})
	}
	return e164, nil
}

func oddSender(s string) SenderKind {
	switch {
	case anonymous[s], strings.EqualFold(s, "anonymous"), strings.EqualFold(s, "restricted"):
		return SenderAnonymous
	case route.MatchString(s):
		return SenderOtherRoute
	case shortCode.MatchString(s):
		return SenderShortCode
	case hasLetter.MatchString(s):
		return SenderName
	}
	return ""
}

// tollFree are the area codes for which whoever is called pays. Source: the North American
// numbering plan's list of toll-free codes, from memory.
var tollFree = regexp.MustCompile(`^\+1(?:800|833|844|855|866|877|888)\d{7}$`)

// TollFree says whether a number in E.164 is a toll-free one of North America; carriers
// have a registration of their own for those.
func TollFree(number string) bool { return tollFree.MatchString(number) }
