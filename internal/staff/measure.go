package staff

import (
	"encoding/json"
	"regexp"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// What staff type into a form is read strictly: nobody is there to be asked again but
// they themselves, and they are told what would be right.

var lengthForm = regexp.MustCompile(`^(?:(\d{1,4})(?:[ -]+(\d{1,2})/(\d{1,2}))?|(\d{1,2})/(\d{1,2})|(\d{0,4}\.\d{1,6}))\s*("|in|inch|inches|mm|cm)?$`)

// readLength reads inches ("25 1/2", "25.5", "1/2") or, where it says so, millimetres or
// centimetres.
func readLength(text string) (fitcheck.Length, error) {
	m := lengthForm.FindStringSubmatch(strings.ToLower(strings.TrimSpace(text)))
	if m == nil {
		return 0, refuse("%q is no length: write 25 1/2, 25.5 or 648 mm.", text)
	}
	number := func(s string) int64 { n, _ := strconv.ParseInt(s, 10, 64); return n }
	over, under := number(m[2]+m[4]), number(m[3]+m[5])
	unit := fitcheck.Inch
	switch m[7] {
	case "mm":
		unit = fitcheck.Millimetre
	case "cm":
		unit = fitcheck.Centimetre
	}
	l := fitcheck.Length(number(m[1])) * unit
	if m[3]+m[5] != "" {
		if under == 0 || over >= under {
			return 0, refuse("%q is no length: the fraction can't be read.", text)
		}
		l += fitcheck.Length(over) * unit / fitcheck.Length(under)
	}
	if m[6] != "" {
		f, _ := strconv.ParseFloat(m[6], 64)
		l = fitcheck.Length(f*float64(unit) + 0.5)
	}
	if l <= 0 || l > fitcheck.MaxLength {
		return 0, refuse("%q is out of all reason for a length.", text)
	}
	return l, nil
}

var (
	between   = regexp.MustCompile(`(?i)\s*(?:x|×|\*|\bby\b)\s*`)
	sidesForm = regexp.MustCompile(`\s*(?:,|;| / )\s*`)
	roundForm = regexp.MustCompile(`(?i)\s*(?:round|across|diameter|dia\.?)\s*$`)
)

// readSize reads "25 1/2 x 49 1/2", "30 round", or four sides with commas.
func readSize(text string) (fitcheck.Size, error) {
	text = strings.TrimSpace(text)
	if roundForm.MatchString(text) {
		d, err := readLength(roundForm.ReplaceAllString(text, ""))
		return fitcheck.Size{Diameter: d}, err
	}
	parts := between.Split(text, -1)
	if len(parts) == 1 {
		parts = sidesForm.Split(text, -1)
	}
	lengths := make([]fitcheck.Length, len(parts))
	for i, p := range parts {
		l, err := readLength(p)
		if err != nil {
			return fitcheck.Size{}, err
		}
		lengths[i] = l
	}
	switch len(lengths) {
	case 2:
		return fitcheck.Size{Width: min(lengths[0], lengths[1]), Length: max(lengths[0], lengths[1])}, nil
	case 4:
		return fitcheck.Size{Sides: lengths}, nil
	}
	return fitcheck.Size{}, refuse("%q is no size: write 25 1/2 x 49 1/2, 30 round, or four sides with commas.", text)
}

// readValue reads what staff typed for a topic.
func readValue(t fitcheck.Topic, text string) (fitcheck.Value, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return nil, refuse("%s: nothing was entered.", topicName(t))
	}
	if t.OfSize() {
		return readSize(text)
	}
	switch t {
	case fitcheck.TopicCurbDiagonals:
		return readDiagonals(text)
	case fitcheck.TopicCurbHeight, fitcheck.TopicDomeRise:
		if text == "0" && t == fitcheck.TopicDomeRise {
			return fitcheck.Height{}, nil
		}
		h, err := readLength(text)
		return fitcheck.Height{Height: h}, err
	case fitcheck.TopicRoofSlope:
		return readSlope(text)
	case fitcheck.TopicColor:
		return readColor(text)
	case fitcheck.TopicPlace:
		return readPlace(text)
	case fitcheck.TopicProblem, fitcheck.TopicImpactRisk:
		return readList(t, text)
	case fitcheck.TopicCount, fitcheck.TopicLayers, fitcheck.TopicPhotos:
		return decode(t, text)
	case fitcheck.TopicPhone:
		return readPhone(text)
	case fitcheck.TopicName, fitcheck.TopicEmail:
		return decode(t, quoted(text))
	}
	return decode(t, quoted(strings.ReplaceAll(strings.ToLower(text), " ", "_")))
}

func quoted(text string) string {
	js, err := json.Marshal(text)
	if err != nil {
		return `""`
	}
	return string(js)
}

// decode has the fit check read a value in the contract's form; its errors say what is
// allowed.
func decode(t fitcheck.Topic, js string) (fitcheck.Value, error) {
	v, err := fitcheck.DecodeValue(t, []byte(js))
	if err != nil {
		return nil, refuse("%s: %s.", topicName(t), plain(strings.TrimPrefix(err.Error(), string(t)+": ")))
	}
	return v, nil
}

func readDiagonals(text string) (fitcheck.Value, error) {
	parts := regexp.MustCompile(`(?i)\s*(?:x|×|,|;|\band\b)\s*`).Split(text, -1)
	if len(parts) > 2 {
		return nil, refuse("%q: write both, like 55 3/4 and 55 5/8.", text)
	}
	var d fitcheck.Diagonals
	var err error
	if d.First, err = readLength(parts[0]); err == nil && len(parts) == 2 {
		d.Second, err = readLength(parts[1])
	}
	return d, err
}

func readSlope(text string) (fitcheck.Value, error) {
	if strings.EqualFold(text, "flat") {
		return fitcheck.Slope{Run: fitcheck.Foot}, nil
	}
	m := regexp.MustCompile(`(?i)^(\d{1,2}(?:\.\d+)?)\s*(?:/|:|in|on|over)\s*(\d{1,2})$`).FindStringSubmatch(text)
	if m == nil {
		return nil, refuse("%q is no slope: write 4/12, or flat.", text)
	}
	return decode(fitcheck.TopicRoofSlope, `{"rise_in":`+m[1]+`,"run_in":`+m[2]+`}`)
}

func readColor(text string) (fitcheck.Value, error) {
	parts := regexp.MustCompile(`(?i)\s*(?:/|,|\bover\b)\s*`).Split(strings.ToLower(text), -1)
	var c fitcheck.Color
	switch len(parts) {
	case 1:
		c.Outer = parts[0]
	case 2:
		c.Outer, c.Inner = parts[0], parts[1]
	case 3:
		c.Outer, c.Middle, c.Inner = parts[0], parts[1], parts[2]
	default:
		return nil, refuse("%q: write the colors from outside to inside, like clear over white.", text)
	}
	js, err := json.Marshal(c)
	if err != nil {
		return nil, err
	}
	return decode(fitcheck.TopicColor, string(js))
}

func readList(t fitcheck.Topic, text string) (fitcheck.Value, error) {
	if strings.EqualFold(text, "none") {
		return fitcheck.ChoiceList{}, nil
	}
	words := sidesForm.Split(strings.ToLower(text), -1)
	for i, w := range words {
		words[i] = strings.ReplaceAll(w, " ", "_")
	}
	js, err := json.Marshal(words)
	if err != nil {
		return nil, err
	}
	return decode(t, string(js))
}

func readPhone(text string) (fitcheck.Value, error) {
	digits := strings.TrimPrefix(onlyDigits(text), "1")
	if len(digits) != 10 || digits[0] < '2' || digits[3] < '2' {
		return nil, refuse("%q is no US phone number: write it like (218) 555-0142.", text)
	}
	return fitcheck.Text("+1" + digits), nil
}

var zipForm = regexp.MustCompile(`\b(\d{5})(?:-\d{4})?$`)

// readPlace reads "Duluth, MN 55802", "Duluth, MN" or "55802"; a ZIP code brings its town.
func readPlace(text string) (fitcheck.Value, error) {
	var p fitcheck.Place
	if m := zipForm.FindStringSubmatch(text); m != nil {
		p.ZIP = m[1]
		text = strings.TrimSpace(zipForm.ReplaceAllString(text, ""))
		e, ok := place.ByZIP(p.ZIP)
		if !ok {
			return nil, refuse("There is no ZIP code %s.", p.ZIP)
		}
		p.City, p.State = e.City, e.State
	}
	town, state, found := strings.Cut(text, ",")
	if town = strings.TrimSpace(town); found {
		p.City, p.State = town, strings.ToUpper(strings.TrimSpace(state))
	} else if town != "" && p.ZIP == "" {
		return nil, refuse("%q: write the town and the state's two letters, like Duluth, MN, or the ZIP code.", text)
	}
	js, err := json.Marshal(p)
	if err != nil {
		return nil, err
	}
	return decode(fitcheck.TopicPlace, string(js))
}
