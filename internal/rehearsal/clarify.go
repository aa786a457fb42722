package rehearsal

import (
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// clarify is what the customer says when something they wrote was not clear.
func (c *customer) clarify(p *conversation.Pending, asked conversation.Ask) line {
	unit := c.unitOf(asked)
	c.answered[asked]++
	if !asked.Topic.OfLength() {
		return c.answer(asked.Topic, []int{unit}, 1)
	}
	switch p.Why {
	case reading.WhyUnits:
		return c.tellUnit(p.Said, unit)
	case reading.WhyWhich:
		return c.tellWhich(p.Said, unit)
	case reading.WhyRough, reading.WhyRange, reading.WhyNominal:
		return c.tellExactly(asked.Topic, unit)
	}
	return c.sizeSaid(asked.Topic, unit, false)
}

// tellUnit names the unit of the size that was told without one. Where nothing was
// said of what it measures, that stays open.
func (c *customer) tellUnit(said string, unit int) line {
	word := c.habit.measure
	if c.unitless != "" {
		word = c.unitless
	}
	m := meaning{beside: true}
	if topic := c.meantBy(said); topic != "" {
		m = meaning{topic: topic, unit: unit, beside: true, value: c.said[unit-1][topic].size(c.truth.units[unit-1].round)}
	}
	l := c.says("units."+string(word), m)
	c.unitTold()
	return l
}

// unitTold lets the customer write units from now on, and measure in inches who gave feet.
func (c *customer) unitTold() {
	switch c.unitless {
	case feet:
		*c.habit = c.inInches
		c.said[0] = c.truth.units[0].sizes.copied()
	case centimetres, millimetres:
		c.habit.unitWord = " " + string(c.unitless)
	}
	c.unitless = ""
}

// tellWhich says what the last size measures.
func (c *customer) tellWhich(said string, unit int) line {
	topic := c.meantBy(said)
	if topic == "" || len(c.book["which."+string(topic)]) == 0 {
		topic = c.truth.units[unit-1].sizeOf
	}
	m := meaning{topic: topic, unit: unit, value: c.said[unit-1][topic].size(c.truth.units[unit-1].round)}
	if other := c.otherUnit(c.said[unit-1][topic], c.truth.units[unit-1].round); other != nil {
		m.value, m.other = other, m.value
	}
	return c.says("which."+string(topic), m)
}

// tellExactly measures what was guessed before.
func (c *customer) tellExactly(topic fitcheck.Topic, unit int) line {
	if c.off == cant {
		return c.says("cant.measure")
	}
	l := c.sizeSaid(topic, unit, false)
	if c.chance(0.5) {
		text, named := c.sayPair(c.said[unit-1][topic], c.truth.units[unit-1].round, "")
		l.text = fill(c.phrase("exact.size").text, "size", text)
		l.means[0].named = named
	}
	return l
}

// recheck is what the customer says when a number of theirs was doubted.
func (c *customer) recheck(code fitcheck.Code, asked conversation.Ask) line {
	unit := c.unitOf(asked)
	s := &c.truth.units[unit-1]
	c.answered[asked]++
	switch {
	case c.off == cant:
		return c.says("cant.measure")
	case c.unitless != "":
		return c.tellUnit("", unit)
	case code == fitcheck.DoubledCurb && s.doubled:
		return c.says("recheck.doubled")
	case code == fitcheck.ThinCurb && s.thin:
		return c.says("recheck.thin")
	case code == fitcheck.DrywallIncluded && c.mistake.name == betweenDrywall && unit == 1:
		return c.aboutDrywall(unit)
	}
	return c.measureAgain(code, asked.Topic, unit)
}

func (c *customer) aboutDrywall(unit int) line {
	if !c.admits || c.chance(0.3) {
		return c.says("recheck.drywall.stuck")
	}
	return c.resay("recheck.drywall", inside, unit)
}

// measureAgain goes back with the tape: what was wrong is put right by those who admit it,
// what was right is said again.
func (c *customer) measureAgain(code fitcheck.Code, topic fitcheck.Topic, unit int) line {
	s := &c.truth.units[unit-1]
	was, is := c.said[unit-1][topic], s.sizes[topic]
	switch {
	case was.known() && is.known() && was != is && c.admits:
		return c.resay("recheck.new", topic, unit)
	case code == fitcheck.NominalSize && was == is:
		return c.says("recheck.nominal")
	case c.mistake.named && c.admits && unit == 1 && topic != c.wrong:
		return c.resay("recheck.swap."+string(c.wrong), c.wrong, unit)
	}
	return c.resayAs("recheck.same", topic, unit, was)
}

// resay says a size as it truly is.
func (c *customer) resay(section string, topic fitcheck.Topic, unit int) line {
	is := c.truth.units[unit-1].sizes[topic]
	c.said[unit-1][topic] = is
	if unit == 1 && topic == c.wrong {
		c.mistake.named = false
	}
	return c.resayAs(section, topic, unit, is)
}

func (c *customer) resayAs(section string, topic fitcheck.Topic, unit int, p pair) line {
	if !p.known() {
		return c.says("cant.measure")
	}
	l := c.pairSaid(topic, unit, p, false)
	text, named := c.sayPair(p, c.truth.units[unit-1].round, "")
	l.text, l.means[0].named = fill(c.phrase(section).text, "size", text), named
	return l
}

// raised is the code of the finding that a turn asked about, if it did.
func raised(before, after map[string]int) fitcheck.Code {
	for key, n := range after {
		code, _, _ := strings.Cut(key, "@")
		if n > before[key] && !fitcheck.Topic(code).OfLength() {
			return fitcheck.Code(code)
		}
	}
	return ""
}
