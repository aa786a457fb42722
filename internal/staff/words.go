package staff

import (
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// topicNames are what staff call the topics.
var topicNames = map[fitcheck.Topic]string{
	fitcheck.TopicName: "Name", fitcheck.TopicPlace: "Ships to", fitcheck.TopicUse: "Building",
	fitcheck.TopicProblem: "What is wrong", fitcheck.TopicPhotos: "Photos", fitcheck.TopicEmail: "Email",
	fitcheck.TopicPhone: "Phone", fitcheck.TopicConfirm: "Summary confirmed",
	fitcheck.TopicCount: "How many", fitcheck.TopicStyle: "Kind", fitcheck.TopicOutline: "Seen from above",
	fitcheck.TopicProfile: "Seen from the side", fitcheck.TopicFrameCondition: "State of the frame",
	fitcheck.TopicWant: "Asked for", fitcheck.TopicPlasticSize: "Plastic, edge to edge",
	fitcheck.TopicRetainerOpening: "Retainer, clear opening", fitcheck.TopicRetainerOutside: "Retainer, outside",
	fitcheck.TopicFrameInside: "Old flange, inside", fitcheck.TopicCurbOutside: "Curb, outside",
	fitcheck.TopicCurbInside: "Curb, inside", fitcheck.TopicCurbDiagonals: "Curb, corner to corner",
	fitcheck.TopicCurbHeight: "Curb above the roof", fitcheck.TopicBulgeBase: "Foot of the bulge",
	fitcheck.TopicDomeRise: "Rise of the dome", fitcheck.TopicRoofSlope: "Roof slope",
	fitcheck.TopicRoofCovering: "Roof covering", fitcheck.TopicLayers: "Layers",
	fitcheck.TopicMaterial: "Kind of plastic", fitcheck.TopicColor: "Color", fitcheck.TopicFinish: "Metal finish",
	fitcheck.TopicImpactRisk: "Hail and the like",
}

func topicName(t fitcheck.Topic) string {
	if name := topicNames[t]; name != "" {
		return name
	}
	return plain(string(t))
}

// statusWords say how far a lead has come.
var statusWords = map[conversation.Status]string{
	conversation.StatusOpen: "still talking", conversation.StatusReady: "ready to order from",
	conversation.StatusNeedsPerson: "needs one of us", conversation.StatusPickedUp: "in hand",
	conversation.StatusQuoted: "price is out", conversation.StatusOrdered: "ordered",
	conversation.StatusDeclined: "came to nothing", conversation.StatusClosed: "shut",
}

var verdictWords = map[fitcheck.Verdict]string{
	fitcheck.VerdictFits: "numbers agree", fitcheck.VerdictConfirm: "one thing to confirm",
	fitcheck.VerdictRemeasure: "numbers contradict each other", fitcheck.VerdictNoFit: "can't fit as measured",
	fitcheck.VerdictIncomplete: "not all measured",
}

var partWords = map[fitcheck.Replace]string{
	fitcheck.ReplaceDome: "plastic dome", fitcheck.ReplaceUnit: "complete unit", fitcheck.ReplaceStaff: "part to be decided",
}

var stateWords = map[conversation.State]string{
	conversation.Opening: "nothing said yet", conversation.Introducing: "asking who and where",
	conversation.Identifying: "asking what is up there", conversation.Measuring: "asking for measurements",
	conversation.Rechecking: "asking again about numbers", conversation.Choosing: "asking for layers and colors",
	conversation.Picturing: "waiting for a photo", conversation.Confirming: "waiting for a yes to the summary",
	conversation.HandedOver: "done, handed over", conversation.WithStaff: "silent, with us",
	conversation.Lapsed: "customer went quiet", conversation.Silenced: "customer opted out",
}

// cautionWords are what to keep in mind on the phone.
var cautionWords = map[string]string{
	fitcheck.CautionRoofFall:   "Don't send anybody onto the roof: a plastic dome holds no one. Measuring from inside will often do.",
	fitcheck.CautionOpenHole:   "The roof is open. Ask what keeps the rain out now, and whether anyone could fall through.",
	fitcheck.CautionStructure:  "The roof's structure may be touched: that is for somebody licensed there.",
	fitcheck.CautionVehicle:    "A vehicle: a hatch may be a way out, there may be no curb, and the road shakes everything.",
	fitcheck.CautionLocalCodes: "A code may bear on it. Never say that it meets one; the local office decides.",
	fitcheck.CautionEnergy:     "A whole unit counts as new glazing: look up the highest U-factor for the county, and the rating of what we'd send.",
	fitcheck.CautionWildfire:   "Parts of the state have wildfire rules that plastic may not suit: ask whether the building stands in such an area.",
}

// reasonWords say why it is a dome, a unit, or for a person to decide.
var reasonWords = map[string]string{
	"reuse_frame": "the frame can stay", "style_needs_unit": "that kind of frame takes a whole unit", "frame_past_reuse": "the frame is past reuse",
	"photo_decides": "a photo has to decide", "outside_our_parts": "not among our parts", "new_opening": "a new opening",
	"not_curb_mounted": "it sits on no curb", "customer_prefers_unit": "the customer wants the whole unit",
}

func reasons(codes []string) string {
	words := make([]string, len(codes))
	for i, code := range codes {
		words[i] = firstOf(reasonWords[code], plain(code))
	}
	return strings.Join(words, "; ")
}

var severityWords = map[fitcheck.Severity]string{fitcheck.Note: "to know", fitcheck.Ask: "to ask", fitcheck.Stop: "stops it"}

var channelWords = map[conversation.Channel]string{conversation.SMS: "text", conversation.Email: "mail", conversation.Terminal: "terminal"}

// plain turns a name of the contract into words.
func plain(name string) string { return strings.ReplaceAll(name, "_", " ") }

// list joins words as one says them.
func list(words []string) string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = plain(w)
	}
	if len(out) < 2 {
		return strings.Join(out, "")
	}
	return strings.Join(out[:len(out)-1], ", ") + " and " + out[len(out)-1]
}

// length writes a length as one reads it from a tape; one that lies on no sixteenth as it
// was given.
func length(l fitcheck.Length) string {
	switch {
	case l%fitcheck.Sixteenth == 0:
		return l.Tape()
	case l%fitcheck.Millimetre == 0:
		return strconv.FormatInt(int64(l/fitcheck.Millimetre), 10) + " mm (" + l.Tape() + ")"
	}
	return strconv.FormatFloat(l.Inches(), 'f', -1, 64)
}

// valueWords writes a topic's value for people.
func valueWords(v fitcheck.Value) string {
	switch v := v.(type) {
	case nil:
		return ""
	case fitcheck.Text:
		return string(v)
	case fitcheck.Choice:
		return plain(string(v))
	case fitcheck.ChoiceList:
		if len(v) == 0 {
			return "none"
		}
		return list(v)
	case fitcheck.Whole:
		return strconv.Itoa(int(v))
	case fitcheck.Size:
		return sizeWords(v)
	case fitcheck.Diagonals:
		if v.Second == 0 {
			return length(v.First) + ", the other not known"
		}
		return length(v.First) + " and " + length(v.Second)
	case fitcheck.Height:
		return length(v.Height)
	case fitcheck.Slope:
		if v.Rise == 0 {
			return "flat"
		}
		return length(v.Rise) + " in " + length(v.Run)
	case fitcheck.Color:
		return colorWords(v)
	case fitcheck.Place:
		return placeWords(v.City, v.State, v.ZIP)
	}
	return ""
}

func sizeWords(s fitcheck.Size) string {
	switch {
	case s.Diameter > 0:
		return length(s.Diameter) + " round"
	case len(s.Sides) > 0:
		parts := make([]string, len(s.Sides))
		for i, side := range s.Sides {
			parts[i] = length(side)
		}
		return strings.Join(parts, " / ") + ", side by side"
	case s.Width > 0 && s.Length > 0:
		return length(s.Width) + " x " + length(s.Length)
	case s.Width > 0:
		return length(s.Width) + " wide, length not known"
	case s.Length > 0:
		return length(s.Length) + " long, width not known"
	case s.One > 0:
		return length(s.One) + ", one side"
	}
	return ""
}

func colorWords(c fitcheck.Color) string {
	words := []string{}
	for _, w := range []string{c.Outer, c.Middle, c.Inner} {
		if w != "" {
			words = append(words, w)
		}
	}
	return strings.Join(words, " over ")
}

func placeWords(city, state, zip string) string {
	town := city
	if town != "" && state != "" {
		town += ", "
	}
	return strings.TrimSpace(town + state + " " + zip)
}
