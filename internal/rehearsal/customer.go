package rehearsal

import (
	"slices"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// customer is one made-up person with their whole life at the shop before them.
type customer struct {
	dice
	number  int
	kind    kind
	manner  manner
	off     turnOff
	channel conversation.Channel
	habit   *habit
	book    phrasebook
	truth   truth

	said         []sizes        // what they would say of each unit, mistakes and all
	mistake      mistake        // in unit 1; its name is empty where there is none
	wrong        fitcheck.Topic // what is said wrong
	unitless     measure        // leaves this unit out until asked
	inInches     habit          // how they write once they were asked about it
	told         []toldSize     // the sizes that they wrote, the latest last
	severalSizes bool           // are asked at once, so that each is said with what it measures
	admits       bool           // measures again rightly when asked about the mistake
	asides       []string       // what they will ask for by the way, in order

	answered map[conversation.Ask]int
	lastSaid map[string]int // section -> phrase used last
}

// newCustomer makes up customer number n of a run.
func newCustomer(seed uint64, n int, books map[string]phrasebook) *customer {
	d := newDice(seed, n)
	c := &customer{dice: d, number: n, kind: draw(d, kinds), manner: draw(d, manners), off: draw(d, turnOffs),
		answered: map[conversation.Ask]int{}, lastSaid: map[string]int{}}
	c.habit = drawHabit(d, c.manner)
	if d.chance(c.kind.handy) && c.manner == plain {
		c.manner = atOnce
	}
	c.book = books[c.habit.language]
	c.truth = drawTruth(d, c.kind, c.habit)
	for i := range c.truth.units {
		c.said = append(c.said, c.truth.units[i].sizes.copied())
	}
	c.channel = conversation.SMS
	if d.chance(c.kind.mail) && c.manner != bursts {
		c.channel = conversation.Email
	}
	c.admits = d.chance(0.88)
	if d.chance(0.35) && c.off != cant {
		c.err()
	}
	c.planAsides()
	return c
}

// err lets the customer get one measure wrong.
func (c *customer) err() {
	s := &c.truth.units[0]
	m, topic := drawMistake(c.dice, s, c.said[0])
	if m.noUnit != "" && (c.habit.measure != inInches || s.round) {
		return
	}
	c.mistake, c.wrong, c.unitless = m, topic, m.noUnit
	if c.habit.measure != inInches {
		for t, p := range c.said[0] {
			c.said[0][t] = pair{c.habit.mark(p[0]), c.habit.mark(p[1])}
		}
	}
	if c.unitless == "" {
		return
	}
	for t, p := range c.said[0] {
		c.said[0][t] = pair{roughly(c.unitless, p[0]), roughly(c.unitless, p[1])}
	}
	c.inInches = *c.habit
	c.habit.measure, c.habit.spelling, c.habit.unitWord = c.unitless, decimal, ""
}

// roughly is the mark of a tape in another unit: a tenth of a foot, a millimetre.
func roughly(m measure, l fitcheck.Length) fitcheck.Length {
	if m == feet {
		return nearest(fitcheck.Foot / 10)(l)
	}
	return nearest(fitcheck.Millimetre)(l)
}

func (c *customer) planAsides() {
	for _, a := range []weighted[string]{{14, "price"}, {8, "howto"}, {8, "question"}, {5, "question.owner"}, {3, "again"}, {3, "wait"}, {2, "language"}} {
		if c.IntN(100) < a.weight {
			c.asides = append(c.asides, a.what)
		}
	}
	c.Shuffle(len(c.asides), func(i, j int) { c.asides[i], c.asides[j] = c.asides[j], c.asides[i] })
}

// phrase is one way to put something, another than the last time where there are several.
func (c *customer) phrase(section string) phrase {
	options := c.book[section]
	if len(options) == 0 {
		return phrase{text: "[" + section + "]"} // a test holds every section against this
	}
	i := c.IntN(len(options))
	if last, again := c.lastSaid[section]; again && last == i {
		i = (i + 1) % len(options)
	}
	c.lastSaid[section] = i
	return options[i]
}

// says is a phrase with what it means.
func (c *customer) says(section string, m ...meaning) line {
	p := c.phrase(section)
	return line{p.text, slices.Concat(m, c.beside(p, m))}
}

// beside are a phrase's own by-the-way meanings, for the units that it speaks of.
func (c *customer) beside(p phrase, of []meaning) []meaning {
	out := slices.Clone(p.means)
	for i := range out {
		if !out[i].topic.OfUnit() {
			continue
		}
		out[i].unit = 1
		for _, m := range of {
			out[i].unit = max(m.unit, 1)
		}
	}
	return out
}

// erring says whether something of theirs is still said wrong.
func (c *customer) erring() bool {
	for i := range c.said {
		for _, t := range []fitcheck.Topic{c.truth.units[i].sizeOf, c.truth.units[i].checkOf} {
			if c.said[i][t].off(c.truth.units[i].sizes[t]) > 3*fitcheck.Inch/8 {
				return true
			}
		}
	}
	return false
}

// shouldBeReady says whether the talk could end in a ready lead if all went well.
func (c *customer) shouldBeReady() bool {
	stays := c.off == stays || c.off == returns || c.off == restarts
	return stays && !c.truth.beyondShop() && (c.admits || c.mistake.name == "")
}
