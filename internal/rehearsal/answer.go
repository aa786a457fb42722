package rehearsal

import (
	"slices"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// answer is what the customer says to one question, asked for the units it names; nth is
// how often they were asked it before.
func (c *customer) answer(topic fitcheck.Topic, units []int, nth int) line {
	switch topic {
	case fitcheck.TopicName:
		return c.answerName(nth)
	case fitcheck.TopicPlace:
		return c.answerPlace(nth)
	case fitcheck.TopicUse:
		return c.says("use."+c.truth.use, meaning{topic: topic, value: fitcheck.Choice(c.truth.use)})
	case fitcheck.TopicProblem:
		return c.answerProblem()
	case fitcheck.TopicPhotos:
		return c.answerPhoto()
	case fitcheck.TopicConfirm:
		return c.says("confirm.yes", meaning{topic: topic, value: fitcheck.Choice(fitcheck.ConfirmYes)})
	}
	if topic.OfLength() && len(units) > 1 {
		return c.answerEach(topic, units, nth)
	}
	if topic.OfLength() {
		return c.answerSize(topic, units[0], nth)
	}
	return c.answerChoice(topic, units, nth)
}

func (c *customer) answerName(nth int) line {
	if c.manner == shy && (nth == 0 || c.chance(0.6)) {
		return c.says("name.refuse")
	}
	l := c.says("name", meaning{topic: fitcheck.TopicName, value: fitcheck.Text(c.truth.name)})
	l.text = fill(l.text, "name", c.truth.name)
	return l
}

// answerPlace says where: mostly so that it can be found, first perhaps only the town.
func (c *customer) answerPlace(nth int) line {
	t := c.truth.town
	section := draw(c.dice, []weighted[string]{{40, "place.zip"}, {30, "place.town"}, {15, "place.both"}, {3, "place.plus4"}, {12, "place.bare"}})
	if nth > 0 {
		section = pick(c.dice, "place.zip", "place.town")
	}
	where := fitcheck.Place{City: t.City, State: t.State, ZIP: t.ZIP}
	if section == "place.bare" && !t.wellKnown() {
		where = fitcheck.Place{City: t.City} // nobody can know the state
	}
	m := meaning{topic: fitcheck.TopicPlace, value: where, beside: section == "place.bare"}
	l := c.says(section, m)
	l.text = fill(l.text, "zip", t.ZIP, "town", t.City, "ST", t.State, "state", t.stateName(), "plus", plus4(c.dice))
	return l
}

func (c *customer) answerProblem() line {
	if len(c.truth.problems) == 0 {
		return c.says("problem.none", meaning{topic: fitcheck.TopicProblem, value: fitcheck.ChoiceList{}})
	}
	var l line
	for _, p := range c.truth.problems {
		l = l.with(pick(c.dice, " and ", ", ", ", and "), c.says("problem."+p))
	}
	if c.habit.language == "es" {
		l.text = strings.ReplaceAll(l.text, " and ", " y ")
	}
	l.means = append(l.means, meaning{topic: fitcheck.TopicProblem, value: fitcheck.ChoiceList(c.truth.problems)})
	return l
}

// photo stands for a picture that goes with the text.
const photo = "\x00photo"

func (c *customer) answerPhoto() line {
	if !c.truth.units[0].hasPhoto {
		return c.says("photo.cant")
	}
	l := line{means: []meaning{{topic: fitcheck.TopicPhotos, any: true}}}
	if c.chance(0.6) {
		l = c.says("photo.sent", l.means...)
	}
	l.text += photo
	return l
}

// answerSize says a size, by some first as a guess.
func (c *customer) answerSize(topic fitcheck.Topic, unit, nth int) line {
	p := c.said[unit-1][topic]
	switch {
	case !p.known() || c.off == cant && (topic == c.truth.units[unit-1].sizeOf || c.chance(0.5)):
		return c.says("cant.measure")
	case c.manner == vague && nth == 0 && c.unitless == "" && !c.truth.units[unit-1].round && c.chance(0.7):
		return c.guess(topic, unit)
	case c.manner == bySide && nth == 0 && !c.truth.units[unit-1].round && c.unitless == "" && !c.mistake.named:
		return c.oneSide(topic, unit, "side.first")
	}
	return c.sizeSaid(topic, unit, c.severalSizes || c.chance(c.habit.label))
}

// answerEach says a size of two kinds of skylight at once.
func (c *customer) answerEach(topic fitcheck.Topic, units []int, nth int) line {
	if c.off == cant {
		return c.answerSize(topic, units[0], nth)
	}
	first, second := c.sizeSaid(topic, units[0], false), c.sizeSaid(topic, units[1], false)
	l := c.says("each", append(first.means, second.means...)...)
	l.text = fill(l.text, "first", c.told[len(c.told)-2].text, "second", c.told[len(c.told)-1].text)
	return l
}

// guess gives a size to the nearest few inches, marked as one.
func (c *customer) guess(topic fitcheck.Topic, unit int) line {
	p := c.said[unit-1][topic]
	p = pair{nearest(2 * fitcheck.Inch)(p[0]), nearest(2 * fitcheck.Inch)(p[1])}
	if c.chance(0.25) {
		l := c.says("range", meaning{topic: topic, unit: unit, value: p.size(false), doubt: true})
		l.text = fill(l.text, "low", strconv.Itoa(int(p[0].Inches())), "high", strconv.Itoa(int(p[0].Inches())+2))
		return l
	}
	text, _ := c.sayPair(p, false, "pair.plain")
	l := c.says("rough", meaning{topic: topic, unit: unit, value: p.size(false), doubt: true})
	l.text = fill(l.text, "size", text)
	return l
}

func (c *customer) oneSide(topic fitcheck.Topic, unit int, section string) line {
	p := c.said[unit-1][topic]
	l := c.says(section, meaning{topic: topic, unit: unit, value: p.size(false)})
	l.text = fill(l.text, "a", c.habit.withUnit(p[0]), "b", c.habit.withUnit(p[1]))
	return l
}

// answers is what the customer says to all that is asked now, a line a topic.
func (c *customer) answers(asking []conversation.Ask) []line {
	var lines []line
	topics, units := c.grouped(asking)
	c.severalSizes = len(topics) > 1 && topics[0].OfSize()
	if c.severalSizes && (c.manner == bySide || c.chance(0.2)) {
		topics, c.severalSizes = topics[:1], false // one now, the other when asked again
	}
	if l, ok := c.allChoices(topics, units); ok {
		return []line{l}
	}
	for _, topic := range topics {
		a := conversation.Ask{Topic: topic, Unit: units[topic][0]}
		nth := c.answered[a]
		c.answered[a]++
		l := c.answer(topic, units[topic], nth)
		if l.text != "" {
			lines = append(lines, l)
		}
	}
	return lines
}

// unitOf is the customer's own unit that a question is about; the first where they have
// no such one.
func (c *customer) unitOf(a conversation.Ask) int {
	if a.Unit > len(c.truth.units) {
		return 1
	}
	return max(a.Unit, 1)
}

// grouped are the topics asked, each with the units that it is asked for.
func (c *customer) grouped(asking []conversation.Ask) ([]fitcheck.Topic, map[fitcheck.Topic][]int) {
	var topics []fitcheck.Topic
	units := map[fitcheck.Topic][]int{}
	for _, a := range asking {
		if _, seen := units[a.Topic]; !seen {
			topics = append(topics, a.Topic)
		}
		if unit := c.unitOf(a); !slices.Contains(units[a.Topic], unit) {
			units[a.Topic] = append(units[a.Topic], unit)
		}
	}
	return topics, units
}
