package shop

import (
	"fmt"
	"net/mail"
	"net/url"
	"regexp"
	"strings"
	"time"

	_ "time/tzdata" // zones are there on any machine

	"example.com/intake-bot/internal/place"
)

// Zone is a time zone by its name in the tz database.
type Zone struct{ Location *time.Location }

func (z *Zone) set(text string) error {
	loc, err := time.LoadLocation(text)
	// "Local" would be the machine's, not the shop's; a bare "EST" knows no summer time.
	if err != nil || text == "" || text == "Local" || !strings.Contains(text, "/") {
		return fmt.Errorf("%q is not a time zone: write it like America/Chicago, America/New_York, America/Denver or America/Los_Angeles", text)
	}
	z.Location = loc
	return nil
}

// Phone is a US number as people read it.
type Phone string

var notDigit = regexp.MustCompile(`\D`)

func (p *Phone) set(text string) error {
	digits := notDigit.ReplaceAllString(text, "")
	if len(digits) == 11 {
		digits = strings.TrimPrefix(digits, "1")
	}
	// North American numbering plan: neither area nor exchange begins with 0 or 1.
	if len(digits) != 10 || digits[0] < '2' || digits[3] < '2' {
		return fmt.Errorf("%q is not a US phone number: write it like (218) 555-0142", text)
	}
	*p = Phone(fmt.Sprintf("(%s) %s-%s", digits[:3], digits[3:6], digits[6:]))
	return nil
}

// E164 is the number for machines: +12185550142.
func (p Phone) E164() string { return "+1" + notDigit.ReplaceAllString(string(p), "") }

// Mail is one mail address.
type Mail string

func (m *Mail) set(text string) error {
	a, err := mail.ParseAddress(text)
	if err != nil || a.Address != strings.TrimSpace(text) {
		return fmt.Errorf("%q is not a mail address: write it like orders@example.com", text)
	}
	*m = Mail(a.Address)
	return nil
}

// Website is an address that a browser opens.
type Website string

func (w *Website) set(text string) error {
	u, err := url.Parse(text)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Host == "" {
		return fmt.Errorf("%q is not a web address: write it like https://www.example.com", text)
	}
	*w = Website(text)
	return nil
}

// checkAddress: parcels are priced from the ZIP code, so it must be one of the state's.
func (f *File) checkAddress(b *binder) {
	zip, state := string(f.Address.ZIP), string(f.Address.State)
	if zip == "" || state == "" {
		return // missing is told already
	}
	switch e, known := place.ByZIP(zip); {
	case !known:
		b.wrongAt("address.zip", "%s is no ZIP code that the post uses", zip)
	case e.State != state:
		b.wrongAt("address.state", "is %s, but the ZIP code %s is in %s, %s", state, zip, e.City, e.State)
	}
}

// ZIP is a five-digit postal code.
type ZIP string

var zipForm = regexp.MustCompile(`^\d{5}$`)

func (z *ZIP) set(text string) error {
	if !zipForm.MatchString(text) {
		return fmt.Errorf("%q is not a ZIP code: write its five digits, like \"55802\"", text)
	}
	*z = ZIP(text)
	return nil
}
