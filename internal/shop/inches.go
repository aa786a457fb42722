package shop

import (
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// Inches is a length that is written in inches: 1.5, 3/8, "25 1/2".
type Inches fitcheck.Length

var inchesForm = regexp.MustCompile(`^(?:(\d{1,4}(?:\.\d{1,9})?)|(\d{1,2}/\d{1,2})|(\d{1,4})[ -](\d{1,2}/\d{1,2}))(?: ?(?:in|inch|inches|"))?$`)

func (l *Inches) set(text string) error {
	sum, ok := readInches(strings.TrimSpace(text))
	if !ok || sum.Sign() <= 0 {
		return fmt.Errorf("%q is not a length in inches: write it like 1.5 or 3/8 or 25 1/2", text)
	}
	nanometres := new(big.Rat).Mul(sum, new(big.Rat).SetInt64(int64(fitcheck.Inch)))
	// A third of an inch has no whole count of nanometres; no tape shows it either.
	if !nanometres.IsInt() {
		return fmt.Errorf("%q is on no tape: write it in halves to sixty-fourths, or as a decimal", text)
	}
	*l = Inches(nanometres.Num().Int64())
	return nil
}

func readInches(text string) (*big.Rat, bool) {
	m := inchesForm.FindStringSubmatch(text)
	if m == nil {
		return nil, false
	}
	sum := new(big.Rat)
	for _, part := range m[1:] {
		if part == "" {
			continue
		}
		if strings.HasSuffix(part, "/0") || strings.HasSuffix(part, "/00") {
			return nil, false
		}
		r, ok := new(big.Rat).SetString(part)
		if !ok {
			return nil, false
		}
		sum.Add(sum, r)
	}
	return sum, true
}

func (l Inches) length() fitcheck.Length { return fitcheck.Length(l) }

// String is the length as a tape shows it.
func (l Inches) String() string { return fitcheck.Length(l).Tape() }

// sideWords is a length exactly: as a tape shows it, or in decimals where none does.
func sideWords(l fitcheck.Length) string {
	var again Inches
	if words := l.Tape(); again.set(words) == nil && again.length() == l {
		return words
	}
	return strconv.FormatFloat(l.Inches(), 'f', -1, 64)
}
