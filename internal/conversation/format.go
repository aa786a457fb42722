package conversation

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// length writes a length as its reader measured it: in tape fractions where it is one,
// in millimetres where it was taken so, else in decimals.
func (t *turn) length(l fitcheck.Length) string {
	switch {
	case l%fitcheck.Sixteenth == 0:
		return l.Tape()
	case l%fitcheck.Sixtyfourth == 0:
		return fine(l)
	case l%fitcheck.Millimetre == 0:
		return strconv.FormatInt(int64(l/fitcheck.Millimetre), 10) + " mm"
	}
	return strconv.FormatFloat(l.Inches(), 'f', -1, 64)[:min(7, len(strconv.FormatFloat(l.Inches(), 'f', -1, 64)))]
}

// fine writes thirty-seconds and sixty-fourths.
func fine(l fitcheck.Length) string {
	n, den := int64(l/fitcheck.Sixtyfourth), int64(64)
	whole, part := n/64, n%64
	for part%2 == 0 {
		part, den = part/2, den/2
	}
	if whole == 0 {
		return fmt.Sprintf("%d/%d", part, den)
	}
	return fmt.Sprintf("%d %d/%d", whole, part, den)
}

// size writes a size: "25 1/2 x 49 1/2 in", "648 x 1257 mm", "36 in across".
func (t *turn) size(s fitcheck.Size) string {
	var lengths []fitcheck.Length
	switch {
	case s.Diameter > 0:
		return t.joined([]fitcheck.Length{s.Diameter}) + " " + t.line("across", 0, nil)
	case len(s.Sides) > 0:
		lengths = s.Sides
	case s.One > 0:
		lengths = []fitcheck.Length{s.One}
	default:
		for _, l := range []fitcheck.Length{s.Width, s.Length} {
			if l > 0 {
				lengths = append(lengths, l)
			}
		}
	}
	return t.joined(lengths)
}

// joined writes lengths that belong together, with their unit once.
func (t *turn) joined(lengths []fitcheck.Length) string {
	words, metric := make([]string, len(lengths)), true
	for _, l := range lengths {
		metric = metric && l%fitcheck.Millimetre == 0 && l%fitcheck.Sixteenth != 0
	}
	for i, l := range lengths {
		words[i] = strings.TrimSuffix(t.length(l), " mm")
		if !metric && strings.HasSuffix(t.length(l), " mm") {
			words[i] = strconv.FormatFloat(float64(l)/float64(fitcheck.Inch), 'f', 2, 64)
		}
	}
	unit := t.line("inches", 0, nil)
	if metric && len(lengths) > 0 {
		unit = "mm"
		if cm := centimetres(lengths, t.writesCentimetres()); cm != nil {
			words, unit = cm, "cm"
		}
	}
	return strings.Join(words, " x ") + " " + unit
}

// shown writes what stands for a topic of a unit, "" where nothing does.
func (t *turn) shown(topic fitcheck.Topic, unit int) string {
	if v := t.talk.Value(topic, unit); v != nil {
		return t.value(topic, v)
	}
	return ""
}

// value writes a value for the customer to read.
func (t *turn) value(topic fitcheck.Topic, v fitcheck.Value) string {
	switch v := v.(type) {
	case fitcheck.Size:
		return t.size(v)
	case fitcheck.Diagonals:
		if v.Second == 0 {
			return t.joined([]fitcheck.Length{v.First})
		}
		return strings.Replace(t.joined([]fitcheck.Length{v.First, v.Second}), " x ", " "+t.line("and", 0, nil)+" ", 1)
	case fitcheck.Height:
		return t.joined([]fitcheck.Length{v.Height})
	case fitcheck.Slope:
		if v.Rise == 0 {
			return t.line("slope.flat", 0, nil)
		}
		return v.Rise.Tape() + "/" + v.Run.Tape()
	case fitcheck.Choice:
		return t.word(topic, string(v))
	case fitcheck.ChoiceList:
		words := make([]string, len(v))
		for i, w := range v {
			words[i] = t.word(topic, w)
		}
		return strings.Join(words, ", ")
	case fitcheck.Color:
		return t.color(v)
	case fitcheck.Place:
		return placeText(v)
	case fitcheck.Text:
		return string(v)
	case fitcheck.Whole:
		if key := fmt.Sprintf("layers.%d", int(v)); topic == fitcheck.TopicLayers && t.book.Has(key) {
			return t.line(key, 0, nil)
		}
		return strconv.Itoa(int(v))
	}
	return ""
}

// word is an allowed value in the reader's language; the bare word where it has none.
func (t *turn) word(topic fitcheck.Topic, w string) string {
	if key := string(topic) + "." + w; t.book.Has(key) {
		return t.line(key, 0, nil)
	}
	return strings.ReplaceAll(w, "_", " ")
}

func (t *turn) color(c fitcheck.Color) string {
	var words []string
	for _, w := range []string{c.Outer, c.Middle, c.Inner} {
		if w != "" {
			words = append(words, t.word(fitcheck.TopicColor, w))
		}
	}
	if len(words) == 2 && words[0] == words[1] {
		return t.line("color.both", 0, wording.Args{"color": words[0]})
	}
	return strings.Join(words, " "+t.line("over", 0, nil)+" ")
}

func placeText(p fitcheck.Place) string {
	town := p.City
	if p.State != "" {
		if town != "" {
			town += ", "
		}
		town += p.State
	}
	return strings.TrimSpace(town + " " + p.ZIP)
}
