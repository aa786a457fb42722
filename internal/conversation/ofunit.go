package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// Which kinds of unit a fact is about.

// unitsOf are the units that a fact is about: the ones it names, else those that were
// asked about the topic, else, for what can be the same for all, all that have nothing of
// their own, else the one that the talk is at.
func (t *turn) unitsOf(f reading.Fact, text string) []int {
	if !f.Topic.OfUnit() {
		return []int{0}
	}
	if f.Unit > 0 {
		return []int{f.Unit}
	}
	var units []int
	for _, a := range t.talk.Memory.Asking {
		if a.Topic == f.Topic && a.Unit > 0 {
			units = append(units, a.Unit)
		}
	}
	if len(units) > 1 && !shared(f.Topic) {
		units = t.firstWithout(f.Topic, units) // a size is one unit's
	}
	if len(units) == 1 && shared(f.Topic) && t.heard.kinds <= 1 && t.talk.UnitCount() > 1 {
		if without := t.unitsWithout(f.Topic); len(without) > 0 {
			return without // asked of the only one that was known before this message
		}
	}
	chosen := len(units) == 0 && (slices.Contains(choiceTopics, f.Topic) || !t.atOneUnit())
	if shared(f.Topic) && (plural.MatchString(text) || chosen) {
		units = t.unitsWithout(f.Topic)
		if len(units) == 0 && t.summed() && slices.Contains(choiceTopics, f.Topic) && (plural.MatchString(text) || t.alikeIn(f.Topic)) {
			units = t.allUnits() // "no, both white"
		}
	}
	if len(units) > 0 {
		return units
	}
	return []int{t.focus()}
}

// plural are words that speak of all units at once.
var plural = regexp.MustCompile(`(?i)\b(all|both|each|every|they|they're|theyre|frames|domes|units|skylights|todos|todas|ambos|ambas|cada|marcos|domos)\b`)

// shared says whether a topic is likely the same for all units of a building: what they
// are and are to be made of, never what they measure or how many there are.
func shared(topic fitcheck.Topic) bool { return !topic.OfLength() && topic != fitcheck.TopicCount }

// atOneUnit says whether the question was about one unit of several.
func (t *turn) atOneUnit() bool {
	unit := 0
	for _, a := range t.talk.Memory.Asking {
		if a.Unit > 0 && unit > 0 && a.Unit != unit {
			return false // "good, only plastic", to how the frame of each is
		}
		unit = max(unit, a.Unit)
	}
	return unit > 0
}

// firstWithout is the first of the units that has nothing of a topic yet, the first of all
// where each has.
func (t *turn) firstWithout(topic fitcheck.Topic, units []int) []int {
	for _, unit := range units {
		if t.talk.Value(topic, unit) == nil {
			return []int{unit}
		}
	}
	return units[:1]
}

func (t *turn) allUnits() []int {
	units := make([]int, t.talk.UnitCount())
	for i := range units {
		units[i] = i + 1
	}
	return units
}

func (t *turn) unitsWithout(topic fitcheck.Topic) []int {
	var units []int
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		if t.talk.Value(topic, unit) == nil {
			units = append(units, unit)
		}
	}
	return units
}

// focus is the unit that the last question was about, the first one otherwise.
func (t *turn) focus() int {
	for _, a := range t.talk.Memory.Asking {
		if a.Unit > 0 {
			return a.Unit
		}
	}
	return 1
}

// alikeIn says whether all kinds have the same of a topic, so that what puts it right is of all.
func (t *turn) alikeIn(topic fitcheck.Topic) bool {
	for unit := 2; unit <= t.talk.UnitCount(); unit++ {
		if t.talk.Value(topic, unit) != t.talk.Value(topic, 1) {
			return false
		}
	}
	return true
}
