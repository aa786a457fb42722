package conversation

import (
	"slices"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// questionFor words a step's question, each time in its next way.
func (t *turn) questionFor(s step) string {
	topics := distinct(topicsOf(s.asks))
	switch {
	case s.state == Choosing && len(topics) > 1:
		return t.choiceList(topics)
	case topics[0] == fitcheck.TopicConfirm:
		if t.talk.Memory.Said["ask.confirm"] > 0 && !t.heard.news() {
			return t.vary("ask.confirm_again", nil)
		}
		return t.vary("ask.confirm", wording.Args{"summary": t.summary()})
	}
	prefix := ""
	if len(s.asks) == 1 {
		prefix = t.unitLabel(s.asks[0].Unit)
		if line := t.otherSide(s.asks[0]); line != "" {
			return prefix + line
		}
	}
	if key := groupKey(topics); t.book.Has(key) {
		return prefix + t.vary(key, nil)
	}
	lines := make([]string, 0, len(topics))
	for _, topic := range topics {
		lines = append(lines, t.vary("ask."+string(topic), nil))
	}
	return prefix + strings.Join(lines, " ")
}

// distinct leaves out what stands before already.
func distinct(topics []fitcheck.Topic) []fitcheck.Topic {
	var out []fitcheck.Topic
	for _, topic := range topics {
		if !slices.Contains(out, topic) {
			out = append(out, topic)
		}
	}
	return out
}

// otherSide asks for the side that is still missing of a size, "" where both or none are
// known.
func (t *turn) otherSide(a Ask) string {
	s, ok := t.talk.Value(a.Topic, a.Unit).(fitcheck.Size)
	if !ok || s.Complete() {
		return ""
	}
	return t.vary("ask.other_side", wording.Args{"said": t.size(s), "label": t.label(a.Topic)})
}

func groupKey(topics []fitcheck.Topic) string {
	names := make([]string, len(topics))
	for i, topic := range topics {
		names[i] = string(topic)
	}
	return "ask." + strings.Join(names, "+")
}

func (t *turn) choiceList(topics []fitcheck.Topic) string {
	lines := []string{t.vary("choices.lead", nil)}
	for _, topic := range topics {
		lines = append(lines, "- "+t.vary("choice."+string(topic), nil))
	}
	return strings.Join(lines, "\n")
}

// unitLabel begins a sentence about one unit where the talk knows several, with what
// the customer knows it by.
func (t *turn) unitLabel(unit int) string {
	if unit == 0 || t.talk.UnitCount() < 2 {
		return ""
	}
	if t.acked == unit {
		return "" // what goes before in this message is about the same unit
	}
	args := wording.Args{"n": strconv.Itoa(unit)}
	for _, topic := range []fitcheck.Topic{fitcheck.TopicPlasticSize, fitcheck.TopicCurbOutside} {
		if s := t.shown(topic, unit); s != "" {
			args["size"] = s
			return t.line("unit.sized", 0, args)
		}
	}
	if called := t.talk.Memory.Called[unit]; called != "" {
		args["size"] = called
		return t.line("unit.sized", 0, args)
	}
	return t.plainLabel(unit)
}

// plainLabel is a unit's number alone, where its sizes follow anyway.
func (t *turn) plainLabel(unit int) string {
	if unit == 0 || t.talk.UnitCount() < 2 {
		return ""
	}
	return t.line("unit.label", 0, wording.Args{"n": strconv.Itoa(unit)})
}

func (t *turn) label(topic fitcheck.Topic) string { return t.line("label."+string(topic), 0, nil) }
