package conversation

import (
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// idleMeasure: a rough measure that nobody asked for and the part does not depend on, as the box's height does
// not matter to a dome, is not asked to the 1/16: it stands for staff as it was said.
func (t *turn) idleMeasure(u reading.Unclear, a Ask) bool {
	rough := u.Why == reading.WhyRough || u.Why == reading.WhyRange || u.Why == reading.WhyNominal
	if !rough || !a.Topic.OfLength() || t.isAsked(a.Topic) || t.talk.Value(a.Topic, a.Unit) != nil {
		return false
	}
	switch a.Topic {
	case fitcheck.TopicCurbHeight, fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside, fitcheck.TopicCurbDiagonals, fitcheck.TopicDomeRise:
		return t.replaceOf(a.Unit-1) == fitcheck.ReplaceDome && !t.missing(a)
	}
	return false
}

// missing: the part needs it, or its check does.
func (t *turn) missing(a Ask) bool {
	return a.Unit > 0 && a.Unit <= len(t.check.Units) && slices.Contains(t.check.Units[a.Unit-1].Missing, a.Topic)
}
