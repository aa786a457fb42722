package rehearsal

import (
	"strconv"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// number writes a length as its owner would, without its unit where that can be left out.
func (h *habit) number(l fitcheck.Length) string {
	switch h.measure {
	case centimetres:
		s := strconv.FormatFloat(float64(l)/float64(fitcheck.Centimetre), 'f', -1, 64)
		if h.language == "es" {
			s = strings.ReplaceAll(s, ".", ",")
		}
		return s
	case millimetres:
		return strconv.FormatInt(int64(nearest(fitcheck.Millimetre)(l)/fitcheck.Millimetre), 10)
	case feet:
		return strconv.FormatFloat(float64(nearest(fitcheck.Foot/10)(l))/float64(fitcheck.Foot), 'f', -1, 64)
	}
	switch h.spelling {
	case decimal:
		return strconv.FormatFloat(l.Inches(), 'f', -1, 64)
	case spelled:
		return h.spelledOut(l)
	case feetFirst, feetWords:
		if l >= 24*fitcheck.Inch {
			return h.feetAndInches(l)
		}
	}
	return h.mixed(l)
}

// mixed writes a whole number and a fraction.
func (h *habit) mixed(l fitcheck.Length) string {
	whole, fraction, ok := strings.Cut(l.Tape(), " ")
	if !ok {
		return whole
	}
	switch h.spelling {
	case dashed:
		return whole + "-" + fraction
	case glyph:
		if g := glyphs[fraction]; g != "" {
			return whole + g
		}
	case ths:
		if strings.HasSuffix(fraction, "/8") {
			return whole + " " + fraction + "ths"
		}
	case andWord:
		return whole + " and " + fraction
	}
	return whole + " " + fraction
}

var glyphs = map[string]string{"1/2": "½", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞"}

func (h *habit) feetAndInches(l fitcheck.Length) string {
	feet, rest := int(l/fitcheck.Foot), l%fitcheck.Foot
	first := strconv.Itoa(feet)
	if h.spelling == feetWords {
		if rest == 0 {
			return first + " ft"
		}
		return first + " ft " + rest.Tape() + " in"
	}
	if rest == 0 {
		return first + "'"
	}
	return first + "' " + rest.Tape() + "\""
}

// hasUnit says whether the written number carries its unit itself.
func hasUnit(number string) bool { return strings.ContainsAny(number, "'\"f") }

var (
	ones = []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
		"fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}
	tens      = []string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}
	fractions = map[string]string{"1/2": "a half", "1/4": "a quarter", "3/4": "three quarters", "1/8": "an eighth", "3/8": "three eighths",
		"5/8": "five eighths", "7/8": "seven eighths"}
)

func (h *habit) spelledOut(l fitcheck.Length) string {
	whole, fraction, ok := strings.Cut(l.Tape(), " ")
	n, err := strconv.Atoi(whole)
	if err != nil || n >= 100 {
		return h.mixed(l)
	}
	words := ones[n%20]
	if n >= 20 {
		words = tens[n/10]
		if n%10 > 0 {
			words += " " + ones[n%10]
		}
	}
	switch {
	case !ok:
		return words
	case fractions[fraction] == "":
		return h.mixed(l)
	}
	return words + " and " + fractions[fraction]
}

// withUnit writes a number with its unit, if its owner gives one at all.
func (h *habit) withUnit(l fitcheck.Length) string {
	n := h.number(l)
	if hasUnit(n) {
		return n
	}
	return n + h.unitWord
}
