package drawing

import (
	"strconv"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// inches writes a length as a tape shows it, in fractions down to the sixty-fourth and
// with the inch mark: 25 1/2". What no tape fraction is stands as about so much.
func inches(l fitcheck.Length) string {
	switch {
	case l < 0:
		return "-" + inches(-l)
	case l%fitcheck.Sixtyfourth == 0:
		return fraction(int64(l/fitcheck.Sixtyfourth)) + `"`
	}
	return "≈" + l.Tape() + `"`
}

// inchesExactly adds the millimetres where they are what was read.
func inchesExactly(l fitcheck.Length) string {
	s := inches(l)
	if l%fitcheck.Sixtyfourth != 0 && l%fitcheck.Millimetre == 0 {
		s += " (" + strconv.FormatInt(int64(l/fitcheck.Millimetre), 10) + " mm)"
	}
	return s
}

// fraction writes a count of sixty-fourths in lowest terms.
func fraction(n int64) string {
	whole, part, of := n/64, n%64, int64(64)
	if part == 0 {
		return strconv.FormatInt(whole, 10)
	}
	for part%2 == 0 {
		part, of = part/2, of/2
	}
	s := strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(of, 10)
	if whole > 0 {
		s = strconv.FormatInt(whole, 10) + " " + s
	}
	return s
}

// inchesEach writes several readings of one side.
func inchesEach(ls []fitcheck.Length, language string, write func(fitcheck.Length) string) string {
	s := make([]string, len(ls))
	for i, l := range ls {
		s[i] = write(l)
	}
	return strings.Join(s, " "+wordAnd.in(language)+" ")
}
