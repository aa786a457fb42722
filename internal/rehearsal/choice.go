package rehearsal

import (
	"strconv"

	"example.com/intake-bot/internal/fitcheck"
)

// answerChoice says what the customer has or wants, for all units that were asked about:
// they want the same for all.
func (c *customer) answerChoice(topic fitcheck.Topic, units []int, nth int) line {
	s := &c.truth.units[units[0]-1]
	switch topic {
	case fitcheck.TopicStyle:
		return c.answerStyle(s, units, nth)
	case fitcheck.TopicCount:
		return c.answerCount(units)
	case fitcheck.TopicFrameCondition:
		return c.says("frame."+orUnsure(s.condition), each(units, topic, fitcheck.Choice(orUnsure(s.condition)))...)
	case fitcheck.TopicWant:
		return c.answerWant(s, units)
	case fitcheck.TopicLayers:
		if s.layers > 0 {
			return c.says("layers."+strconv.Itoa(s.layers), each(units, topic, fitcheck.Whole(s.layers))...)
		}
	case fitcheck.TopicMaterial:
		if s.material != "" {
			return c.says("material."+s.material, each(units, topic, fitcheck.Choice(s.material))...)
		}
	case fitcheck.TopicColor:
		if s.outer != "" {
			return c.answerColor(s, units)
		}
	case fitcheck.TopicFinish:
		return c.answerFinish(s, units, nth)
	}
	return c.says(pick(c.dice, "choice.unknown", "choice.unknown", "choice.usual"))
}

func orUnsure(s string) string {
	if s == "" {
		return fitcheck.ConditionUnsure
	}
	return s
}

func each(units []int, topic fitcheck.Topic, v fitcheck.Value) []meaning {
	out := make([]meaning, len(units))
	for i, u := range units {
		out[i] = meaning{topic: topic, unit: u, value: v}
	}
	return out
}

func (c *customer) answerStyle(s *skylight, units []int, nth int) line {
	if c.manner == vague && nth == 0 && c.chance(0.5) {
		return c.says("style.vague", meaning{unit: units[0]})
	}
	section := "style." + s.style
	if nth > 0 && len(c.book[section+"+"]) > 0 {
		section += "+"
	}
	return c.says(section, each(units, fitcheck.TopicStyle, fitcheck.Choice(s.style))...)
}

// answerCount gives one number for one kind, and each kind's where there are several.
func (c *customer) answerCount(units []int) line {
	var l line
	for _, u := range units {
		n := c.truth.units[u-1].count
		m := meaning{topic: fitcheck.TopicCount, unit: u, value: fitcheck.Whole(n)}
		section := "count.many"
		if n == 1 {
			section = "count.one"
		}
		one := c.says(section, m)
		one.text = fill(one.text, "n", strconv.Itoa(n))
		l = l.with(", ", one)
	}
	return l
}

func (c *customer) answerWant(s *skylight, units []int) line {
	want := s.want
	if want == "" {
		want = pick(c.dice, fitcheck.WantUnsure, fitcheck.WantCompleteUnit)
		if s.dome {
			want = fitcheck.WantDomeOnly
		}
	}
	return c.says("want."+want, each(units, fitcheck.TopicWant, fitcheck.Choice(want))...)
}

func (c *customer) answerColor(s *skylight, units []int) line {
	section := "color.one"
	v := fitcheck.Color{Outer: s.outer}
	switch {
	case s.inner != "" && s.inner == s.outer:
		section, v.Inner = "color.both", s.inner
	case s.inner != "":
		section, v.Inner = "color.two", s.inner
	}
	l := c.says(section, each(units, fitcheck.TopicColor, v)...)
	l.text = fill(l.text, "outer", c.colorWord(s.outer), "inner", c.colorWord(s.inner))
	return l
}

func (c *customer) colorWord(color string) string {
	if color == "" {
		return ""
	}
	return c.phrase("color." + color).text
}

func (c *customer) answerFinish(s *skylight, units []int, nth int) line {
	switch {
	case s.finish == "":
		return c.says("choice.unknown")
	case s.finishIsPlainWords && nth == 0:
		return c.says("finish.vague")
	}
	return c.says("finish."+s.finish, each(units, fitcheck.TopicFinish, fitcheck.Choice(s.finish))...)
}

// allChoices answers a list of choices in one breath where the customer knows none of them.
func (c *customer) allChoices(topics []fitcheck.Topic, units map[fitcheck.Topic][]int) (line, bool) {
	if len(topics) < 2 {
		return line{}, false
	}
	for _, t := range topics {
		switch t {
		case fitcheck.TopicLayers, fitcheck.TopicColor, fitcheck.TopicMaterial, fitcheck.TopicFinish:
		default:
			return line{}, false
		}
		s := c.truth.units[units[t][0]-1]
		if known := s.of(t) != nil; known && !(c.manner == hurried && c.chance(0.5)) {
			return line{}, false
		}
	}
	return c.says(pick(c.dice, "choice.allunknown", "choice.allusual")), true
}
