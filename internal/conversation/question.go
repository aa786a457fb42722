package conversation

import (
	"slices"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// questionFor words a step's question; nth is how often it was put before.
func (t *turn) questionFor(s step, nth int) string {
	topics := slices.Compact(topicsOf(s.asks))
	switch {
	case s.state == Choosing && len(topics) > 1:
		return t.choiceList(topics, nth)
	case topics[0] == fitcheck.TopicConfirm:
		return t.line("ask.confirm", nth, wording.Args{"summary": t.summary()})
	}
	prefix := ""
	if len(s.asks) == 1 {
		prefix = t.unitLabel(s.asks[0].Unit)
	}
	if key := groupKey(topics); t.book.Has(key) {
		return prefix + t.line(key, nth, nil)
	}
	lines := make([]string, 0, len(topics))
	for _, topic := range topics {
		lines = append(lines, t.line("ask."+string(topic), nth, nil))
	}
	return prefix + strings.Join(lines, " ")
}

func groupKey(topics []fitcheck.Topic) string {
	names := make([]string, len(topics))
	for i, topic := range topics {
		names[i] = string(topic)
	}
	return "ask." + strings.Join(names, "+")
}

func (t *turn) choiceList(topics []fitcheck.Topic, nth int) string {
	lines := []string{t.line("choices.lead", nth, nil)}
	for _, topic := range topics {
		lines = append(lines, "- "+t.line("choice."+string(topic), 0, nil))
	}
	return strings.Join(lines, "\n")
}

// unitLabel begins a sentence about one unit where the talk knows several.
func (t *turn) unitLabel(unit int) string {
	if unit == 0 || t.talk.UnitCount() < 2 {
		return ""
	}
	return t.line("unit.label", 0, wording.Args{"n": strconv.Itoa(unit)})
}

func (t *turn) label(topic fitcheck.Topic) string { return t.line("label."+string(topic), 0, nil) }
