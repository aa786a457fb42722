package shop

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Money is an amount in integer cents, written like 12, 12.50, "$12.50" or "1,250".
type Money int64

var moneyForm = regexp.MustCompile(`^\$? ?(\d{1,3}(?:,\d{3})+|\d{1,8})(?:\.(\d{1,2}))?$`)

func (m *Money) set(text string) error {
	parts := moneyForm.FindStringSubmatch(strings.TrimSpace(text))
	if parts == nil {
		return fmt.Errorf("%q is not an amount of money: write it like 12.50 or $1,250", text)
	}
	cents := parts[2]
	for len(cents) < 2 {
		cents += "0"
	}
	n, err := strconv.ParseInt(strings.ReplaceAll(parts[1], ",", "")+cents, 10, 64)
	if err != nil {
		return fmt.Errorf("%q is too much money: write at most eight digits before the point", text)
	}
	*m = Money(n)
	return nil
}
