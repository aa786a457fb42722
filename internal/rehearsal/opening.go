package rehearsal

import (
	"strconv"

	"example.com/intake-bot/internal/fitcheck"
)

// opening is how the customer begins, a line a thought.
func (c *customer) opening() []line {
	var lines []line
	if c.manner != hurried && c.chance(0.6) {
		lines = append(lines, c.says("hello"))
	}
	if len(c.truth.units) > 1 {
		return append(lines, c.bothKinds())
	}
	switch {
	case c.manner == atOnce:
		return append(lines, c.everything()...)
	case c.chance(0.2):
		return []line{c.says("open.bare")}
	case c.manner == hurried && c.chance(0.4), c.chance(0.08):
		return append(lines, c.unlabelled())
	}
	return append(lines, c.reason()...)
}

// reason is why they write: what is wrong, or what they want.
func (c *customer) reason() []line {
	first := c.says("open.part")
	if w := c.truth.units[0].want; w == fitcheck.WantDomeOnly || w == fitcheck.WantCompleteUnit {
		first = c.says("open."+w, meaning{topic: fitcheck.TopicWant, unit: 1, value: fitcheck.Choice(w)})
	}
	lines := []line{first}
	if len(c.truth.problems) > 0 && c.chance(0.7) {
		lines = append(lines, c.answerProblem())
	}
	if c.chance(0.2) {
		lines = append(lines, c.answer(fitcheck.TopicPlace, nil, 1))
	}
	return lines
}

// unlabelled begins with a size and no word of what it measures.
func (c *customer) unlabelled() line {
	s := &c.truth.units[0]
	text, _ := c.sayPair(c.said[0][s.sizeOf], s.round, "")
	c.told = append(c.told, toldSize{text, s.sizeOf})
	l := c.says("size.unlabeled")
	l.text = fill(l.text, "size", text)
	return l
}

// everything is all that the shop could want to know, in one go.
func (c *customer) everything() []line {
	s := &c.truth.units[0]
	lines := c.reason()
	lines = append(lines, c.answer(fitcheck.TopicStyle, []int{1}, 1))
	if s.condition != "" {
		lines = append(lines, c.answer(fitcheck.TopicFrameCondition, []int{1}, 0))
	}
	if c.off != cant {
		lines = append(lines, c.sizeSaid(s.sizeOf, 1, true))
		if c.chance(0.75) {
			lines = append(lines, c.sizeSaid(s.checkOf, 1, true))
		}
	}
	for _, t := range []fitcheck.Topic{fitcheck.TopicLayers, fitcheck.TopicColor, fitcheck.TopicMaterial, fitcheck.TopicUse, fitcheck.TopicPlace, fitcheck.TopicName} {
		if s.of(t) == nil && t.OfUnit() || c.chance(0.25) || t == fitcheck.TopicName && c.manner == shy {
			continue
		}
		lines = append(lines, c.answer(t, []int{1}, 1))
	}
	return lines
}

// bothKinds tells of two kinds of skylight, how many of each and perhaps how large.
func (c *customer) bothKinds() line {
	var kinds [2]line
	sized := c.off != cant && c.chance(0.6)
	for i := range kinds {
		s := &c.truth.units[i]
		kinds[i] = line{strconv.Itoa(s.count) + " of them", []meaning{{topic: fitcheck.TopicCount, unit: i + 1, value: fitcheck.Whole(s.count)}}}
		if c.habit.language == "es" {
			kinds[i].text = strconv.Itoa(s.count) + " piezas"
		}
		if sized {
			kinds[i] = kinds[i].with(", ", c.sizeSaid(s.sizeOf, i+1, true))
		}
	}
	l := c.says("twokinds")
	l.text = fill(l.text, "first", kinds[0].text, "second", kinds[1].text)
	l.means = append(append(l.means, kinds[0].means...), kinds[1].means...)
	return l
}
