package shop

import (
	"fmt"
	"regexp"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// Outline is the size of a part: two sides, the smaller first or not, or a diameter.
type Outline fitcheck.Size

var (
	sidesForm = regexp.MustCompile(`^(.+?)\s*[x×]\s*(.+)$`)
	roundForm = regexp.MustCompile(`^(.+?)\s+round$`)
)

func (o *Outline) set(text string) error {
	text = strings.ToLower(strings.TrimSpace(text))
	var one, two Inches
	if m := roundForm.FindStringSubmatch(text); m != nil {
		if err := one.set(m[1]); err != nil {
			return err
		}
		*o = Outline{Diameter: one.length()}
		return nil
	}
	m := sidesForm.FindStringSubmatch(text)
	if m == nil {
		return fmt.Errorf("%q is not a size: write it like 26 x 52 or 30 round, in inches", text)
	}
	if err := one.set(m[1]); err != nil {
		return err
	}
	if err := two.set(m[2]); err != nil {
		return err
	}
	*o = Outline{Width: min(one, two).length(), Length: max(one, two).length()}
	return nil
}
