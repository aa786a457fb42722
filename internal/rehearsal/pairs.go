package rehearsal

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// sayPair writes both sides of a size. named says whether the words tell which side is
// which.
func (c *customer) sayPair(p pair, round bool, section string) (text string, named bool) {
	h := c.habit
	switch {
	case round:
		section = "pair.round"
	case section != "":
	case p[0] == p[1]:
		section = "pair.square"
	case h.spelling == spelled || h.spelling == andWord:
		section = "pair.spelled"
	default:
		section = draw(c.dice, []weighted[string]{{70, "pair.plain"}, {18, "pair.named"}, {12, "pair.loose"}})
	}
	first, last := h.number(p[0]), h.withUnit(p[1])
	if h.onBoth || section == "pair.named" || round || hasUnit(last) && h.spelling != feetFirst {
		first = h.withUnit(p[0])
	}
	if section == "pair.square" {
		first = h.withUnit(p[0])
	}
	return fill(c.phrase(section).text, "a", first, "b", last), section == "pair.named"
}

// sizeSaid is a size with or without what it measures.
func (c *customer) sizeSaid(topic fitcheck.Topic, unit int, labelled bool) line {
	return c.pairSaid(topic, unit, c.said[unit-1][topic], labelled)
}

func (c *customer) pairSaid(topic fitcheck.Topic, unit int, p pair, labelled bool) line {
	s := &c.truth.units[unit-1]
	force := ""
	if c.mistake.named && unit == 1 && topic == c.wrong {
		force = "pair.named"
	}
	text, named := c.sayPair(p, s.round, force)
	c.told = append(c.told, toldSize{text, topic})
	section := "size.bare"
	if labelled {
		section = "size." + string(topic)
		if topic == inside && c.mistake.name == betweenDrywall && p != s.sizes[topic] {
			section += ".drywall"
		}
	}
	m := meaning{topic: topic, unit: unit, value: p.size(s.round), named: named}
	if m.other = c.otherUnit(p, s.round); m.other != nil {
		m.value, m.other = m.other, m.value
	}
	return line{fill(c.phrase(section).text, "size", text), []meaning{m}}
}

// toldSize is a size as it was written, and what it measures.
type toldSize struct {
	text string
	of   fitcheck.Topic
}

// meantBy is what a size measures that the assistant quotes; "" where they told none.
func (c *customer) meantBy(said string) fitcheck.Topic {
	said = strings.ToLower(said)
	for i := len(c.told) - 1; i >= 0; i-- {
		if text := strings.ToLower(c.told[i].text); strings.Contains(text, said) || strings.Contains(said, text) {
			return c.told[i].of
		}
	}
	if len(c.told) > 0 {
		return c.told[len(c.told)-1].of
	}
	return ""
}

// otherUnit is what a size without a unit is where it is taken for inches, if its owner
// measured in something else.
func (c *customer) otherUnit(p pair, round bool) fitcheck.Value {
	if c.unitless == "" {
		return nil
	}
	scale := map[measure]fitcheck.Length{feet: fitcheck.Foot, centimetres: fitcheck.Centimetre, millimetres: fitcheck.Millimetre}[c.unitless]
	return pair{literal(p[0], scale), literal(p[1], scale)}.size(round)
}

// literal is a figure of another unit taken for inches.
func literal(l, scale fitcheck.Length) fitcheck.Length {
	return fitcheck.Length(float64(l) / float64(scale) * float64(fitcheck.Inch))
}
