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
		if t.talk.Memory.Said["ask.confirm"] > 0 && (!t.heard.news() || t.justOne()) && !t.talk.Memory.Relisted && len(t.heard.repeated) == 0 {
			return t.vary("ask.confirm_again", nil)
		}
		question := t.vary("ask.confirm", wording.Args{"summary": t.summary()})
		if slices.Contains(topics, fitcheck.TopicCount) {
			question += " " + t.vary("ask.count_too", nil)
		}
		return question
	}
	prefix := ""
	if s.ofOneUnit() {
		prefix = t.unitLabel(s.asks[0].Unit)
	}
	if len(s.asks) == 1 {
		if s.state == Confirming && topics[0] == fitcheck.TopicCount {
			return t.vary("ask.count_last", nil)
		}
		if line := t.otherSide(s.asks[0]); line != "" {
			return prefix + line
		}
		if line := t.countQuestion(s.asks[0]); line != "" {
			return prefix + line
		}
	}
	if len(topics) == 1 {
		if line := t.offer("ask.offered", topics[0]); line != "" {
			return prefix + line
		}
	}
	key := groupKey(topics)
	if round := "ask.round." + string(topics[0]); len(topics) == 1 && t.book.Has(round) && t.isRound(s.asks[0].Unit) {
		key = round
	}
	if prefix != "" && key == t.justAsked && topics[0].OfLength() {
		return prefix + t.vary("ask.same_measure", nil)
	}
	t.justAsked = key
	if t.book.Has(key) {
		return prefix + t.askVaried(key, topics)
	}
	lines := make([]string, 0, len(topics))
	for _, topic := range topics {
		lines = append(lines, t.askVaried("ask."+string(topic), []fitcheck.Topic{topic}))
	}
	return prefix + strings.Join(lines, " ")
}

// ofOneUnit says whether all that is asked is of one kind of unit.
func (s step) ofOneUnit() bool {
	return !slices.ContainsFunc(s.asks, func(a Ask) bool { return a.Unit != s.asks[0].Unit })
}

// askVaried words a question so that none of its parts comes in the same words again,
// however they were put together before.
func (t *turn) askVaried(key string, topics []fitcheck.Topic) string {
	said := t.talk.Memory.Said
	n := said[key]
	for _, topic := range topics {
		n = max(n, said["asked."+string(topic)])
	}
	said[key] = n + 1
	for _, topic := range topics {
		said["asked."+string(topic)] = n + 1
	}
	return t.line(key, n, nil)
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
		line := t.offer("choice.offered", topic)
		if line == "" {
			line = t.vary("choice."+string(topic), nil)
		}
		lines = append(lines, "- "+line)
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
	if called := t.talk.Memory.Called[unit]; called != "" && t.talk.Memory.Rooms[unit] == "" {
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
	args := wording.Args{"n": strconv.Itoa(unit)}
	if room := t.talk.Memory.Rooms[unit]; room != "" && !t.roomTwice(room) {
		args["size"] = t.called(room, unit)
		return t.line("unit.sized", 0, args)
	}
	return t.line("unit.label", 0, args)
}

func (t *turn) label(topic fitcheck.Topic) string { return t.line("label."+string(topic), 0, nil) }

// isRound says whether a unit is known to be round, so that there is but one measure of each.
func (t *turn) isRound(unit int) bool {
	if t.talk.text(fitcheck.TopicOutline, unit) == fitcheck.OutlineRound {
		return true
	}
	for _, topic := range fitcheck.SizeTopics {
		if s, ok := t.talk.Value(topic, unit).(fitcheck.Size); ok && s.Diameter > 0 {
			return true
		}
	}
	return false
}

// roomTwice says whether several kinds were called by the same word, which then tells nothing.
func (t *turn) roomTwice(room string) bool {
	n := 0
	for _, r := range t.talk.Memory.Rooms {
		if r == room {
			n++
		}
	}
	return n > 1
}
