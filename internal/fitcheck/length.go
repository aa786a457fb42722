package fitcheck

import (
	"math"
	"strconv"
	"strings"
)

// Length is a length in whole nanometres. Inches to the 64th and millimetres are
// both exact in it: 1 in = 25.4 mm (international yard and pound agreement, 1959).
type Length int64

// The units that people measure in.
const (
	Millimetre  Length = 1_000_000
	Centimetre         = 10 * Millimetre
	Inch        Length = 25_400_000
	Sixteenth          = Inch / 16
	Sixtyfourth        = Inch / 64
	Foot               = 12 * Inch
)

// MaxLength bounds what is accepted as a length at all (a thousand feet), so that
// no sum or square of lengths can overflow.
const MaxLength = 1000 * Foot

// Inches is the length in decimal inches.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// FromInches is the length nearest to a number of decimal inches.
func FromInches(in float64) Length { return Length(math.Round(in * float64(Inch))) }

// MarshalJSON writes decimal inches, to the eight places that keep every
// nanometre, without trailing zeros.
func (l Length) MarshalJSON() ([]byte, error) {
	return l.appendInches(make([]byte, 0, 16)), nil
}

func (l Length) appendInches(b []byte) []byte {
	n := len(b)
	b = strconv.AppendFloat(b, l.Inches(), 'f', 8, 64)
	end := len(b)
	for end > n && b[end-1] == '0' {
		end--
	}
	if b[end-1] == '.' {
		end--
	}
	return b[:end]
}

// Tape writes the length as a tape shows it, to the nearest sixteenth of an inch,
// without its unit: "25 1/2", "7/8", "48".
func (l Length) Tape() string {
	if l < 0 {
		return "-" + (-l).Tape()
	}
	sixteenths := int64((l + Sixteenth/2) / Sixteenth)
	whole, part := sixteenths/16, sixteenths%16
	if part == 0 {
		return strconv.FormatInt(whole, 10)
	}
	den := int64(16)
	for part%2 == 0 {
		part, den = part/2, den/2
	}
	frac := strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(den, 10)
	if whole == 0 {
		return frac
	}
	return strings.Join([]string{strconv.FormatInt(whole, 10), frac}, " ")
}
