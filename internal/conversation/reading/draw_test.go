package reading

import (
	"encoding/json"
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"example.com/intake-bot/internal/fitcheck"
)

// drawn is a length and one way of writing it.
type drawn struct {
	value fitcheck.Length
	text  string
}

var (
	tensInWords = []string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}
	onesInWords = []string{"", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"}
	partInWords = map[[2]int]string{{1, 2}: "a half", {1, 4}: "a quarter", {3, 4}: "three quarters", {1, 8}: "an eighth", {3, 8}: "three eighths",
		{5, 8}: "five eighths", {7, 8}: "seven eighths"}
)

// drawLength draws a length between 12 and 95 inches with a part to the sixteenth, and
// writes it in one of the ways that people write such a length.
// One that is written in feet gets no bare number beside it: that would be in doubt.
func drawLength(t *rapid.T, label string, inFeet bool) drawn {
	whole := rapid.IntRange(12, 95).Draw(t, label+" whole")
	sixteenths := rapid.IntRange(0, 15).Draw(t, label+" sixteenths")
	value := fitcheck.Length(whole)*fitcheck.Inch + fitcheck.Length(sixteenths)*fitcheck.Sixteenth
	num, den := sixteenths, 16
	for num > 0 && num%2 == 0 {
		num, den = num/2, den/2
	}
	feet := []func() string{
		func() string { return fmt.Sprintf("%d' %s\"", whole/12, mixed(whole%12, num, den, " ")) },
		func() string { return fmt.Sprintf("%d ft %s in", whole/12, mixed(whole%12, num, den, " ")) },
		func() string { return fmt.Sprintf("%d'-%s\"", whole/12, mixed(whole%12, num, den, " ")) },
	}
	if inFeet {
		return drawn{value, rapid.SampledFrom(feet).Draw(t, label+" way")()}
	}
	ways := []func() string{
		func() string { return mixed(whole, num, den, " ") },
		func() string { return mixed(whole, num, den, "-") },
		func() string { return mixed(whole, num, den, " and ") },
		func() string { return mixed(whole, num, den, " ") + `"` },
		func() string { return mixed(whole, num, den, " ") + " inches" },
		func() string { return mixed(whole, num, den, "-") + " in" },
		func() string { return trimZeros(fmt.Sprintf("%d.%04d", whole, sixteenths*625)) + " inches" },
	}
	if words := spoken(whole, num, den); words != "" {
		ways = append(ways, func() string { return words })
	}
	return drawn{value, rapid.SampledFrom(ways).Draw(t, label+" way")()}
}

func mixed(whole, num, den int, joiner string) string {
	switch {
	case num == 0:
		return fmt.Sprint(whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d", num, den)
	}
	return fmt.Sprintf("%d%s%d/%d", whole, joiner, num, den)
}

func trimZeros(s string) string {
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

func spoken(whole, num, den int) string {
	if whole < 20 {
		return ""
	}
	text := tensInWords[whole/10]
	if whole%10 > 0 {
		text += " " + onesInWords[whole%10]
	}
	if num == 0 {
		return text
	}
	part, ok := partInWords[[2]int{num, den}]
	if !ok {
		return ""
	}
	return text + " and " + part
}

func askedOf(topics ...fitcheck.Topic) []fitcheck.Topic { return topics }

func sizeOf(width, length fitcheck.Length) string {
	return fmt.Sprint(fitcheck.Size{Width: width, Length: length})
}

func stripResolution(v fitcheck.Value) string {
	s, ok := v.(fitcheck.Size)
	if !ok {
		return fmt.Sprint(v)
	}
	s.Resolution = 0
	return fmt.Sprint(s)
}

func formOfReading(r Reading) string {
	b, err := json.Marshal(r)
	if err != nil {
		return err.Error()
	}
	return string(b)
}
