package drawing

import (
	"strconv"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// plain is a name of the contract as words.
func plain(name string) string { return clean(strings.ReplaceAll(name, "_", " "), 60) }

// topicWords is what a measure is of, for staff.
func topicWords(t fitcheck.Topic) string { return plain(string(t)) }

// valueWords writes a value for staff: sizes in tape fractions.
func valueWords(v fitcheck.Value) string {
	switch v := v.(type) {
	case fitcheck.Text:
		return clean(string(v), 120)
	case fitcheck.Choice:
		return plain(string(v))
	case fitcheck.ChoiceList:
		return listWords(v)
	case fitcheck.Whole:
		return strconv.Itoa(int(v))
	case fitcheck.Size:
		return sizeWords(v)
	case fitcheck.Diagonals:
		return inchesEach(known(v.First, v.Second), "en", inchesExactly)
	case fitcheck.Height:
		return inchesExactly(v.Height)
	case fitcheck.Slope:
		return inchesExactly(v.Rise) + " in " + inchesExactly(v.Run)
	case fitcheck.Color:
		return colorWords(v)
	case fitcheck.Place:
		return placeWords(v)
	}
	return ""
}

func sizeWords(s fitcheck.Size) string {
	u := fitcheck.Unit{CurbOutside: s}
	o := outlineOf(&u, fitcheck.TopicCurbOutside)
	return o.words("en")
}

func listWords(names []string) string {
	if len(names) == 0 {
		return "none"
	}
	words := make([]string, len(names))
	for i, n := range names {
		words[i] = plain(n)
	}
	return strings.Join(words, ", ")
}

func colorWords(c fitcheck.Color) string {
	words := []string{}
	for _, layer := range [...]string{c.Outer, c.Middle, c.Inner} {
		if layer != "" {
			words = append(words, plain(layer))
		}
	}
	return strings.Join(words, " over ")
}

func placeWords(p fitcheck.Place) string {
	s := clean(p.City, 60)
	for _, part := range [...]string{clean(p.State, 20), clean(p.ZIP, 12)} {
		switch {
		case s == "":
			s = part
		case part != "" && part == clean(p.State, 20):
			s += ", " + part
		case part != "":
			s += " " + part
		}
	}
	return s
}

// money writes whole units of a currency: USD 1,204.
func money(currency string, n int64) string {
	s := strconv.FormatInt(n, 10)
	for at := len(s) - 3; at > 0 && s[at-1] != '-'; at -= 3 {
		s = s[:at] + "," + s[at:]
	}
	return strings.TrimSpace(clean(currency, 4) + " " + s)
}

func moneyRange(currency string, low, high int64) string {
	if low == high {
		return money(currency, low)
	}
	return money(currency, low) + " to " + money("", high)
}

// decimal writes a number with at most one digit behind the point.
func decimal(x float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(x, 'f', 1, 64), ".0")
}

// cautionWords is what to keep in mind on the phone; a caution that has no sentence here
// is shown by its name.
func cautionWords(c string) string {
	switch c {
	case fitcheck.CautionRoofFall:
		return "Ask nobody to go up. Numbers from indoors or from a roofer will do, and a dome holds nobody's weight."
	case fitcheck.CautionOpenHole:
		return "The opening may be open: nobody under it or near its edge, cover it from inside or have it covered."
	case fitcheck.CautionStructure:
		return "Cutting or widening an opening touches the structure: leave that to a licensed person and the building office."
	case fitcheck.CautionVehicle:
		return "In a vehicle a hatch may be a way out: find out before you offer anything that does not open."
	case fitcheck.CautionLocalCodes:
		return "A building code was flagged below: the local office decides, so say neither that it passes nor that it fails."
	case fitcheck.CautionEnergy:
		return "A whole unit counts as new glazing: look up the highest U-factor for the county before quoting."
	case fitcheck.CautionWildfire:
		return "Parts of this state have wildfire rules that plastic may not suit: ask whether the building stands in such an area."
	}
	return plain(c)
}
