package conversation

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// respond decides what this turn says and where it leaves the talk.
func (t *turn) respond() error {
	if t.talk.Memory.Quiet {
		return t.listen()
	}
	if t.barren() {
		return t.leave()
	}
	if t.talk.State == HandedOver || t.talk.State == WithStaff {
		return t.afterwards()
	}
	if t.talk.Memory.Hurt {
		t.firstAid()
		return t.toStaff()
	}
	if t.heard.bye && t.talk.Memory.CalledOff && t.talk.State == Lapsed {
		return nil // leave was taken
	}
	t.greet()
	t.firstAid()
	if t.heard.off {
		return t.partWays()
	}
	t.acknowledge()
	t.answer()
	if t.confirmedAndCall() {
		return t.proceed()
	}
	switch {
	case t.talk.Memory.PersonAsked, t.talk.Memory.Foreign, t.talk.Memory.Abroad, t.talk.Memory.Lost >= lostTurns:
		return t.toStaff()
	case t.keepsQuestion(), t.aside(), t.waits():
		return nil
	case t.refusesSummary():
		return t.askChange()
	}
	t.settleConfirm()
	return t.proceed()
}

// proceed asks the next thing, or ends the talk.
func (t *turn) proceed() error {
	if done, err := t.clarify(); done || err != nil {
		return err
	}
	if done, err := t.recheck(); done || err != nil {
		return err
	}
	steps := t.next()
	if len(steps) == 0 {
		return t.conclude()
	}
	if done, err := t.askHeld(steps[0]); done || err != nil {
		return err
	}
	return t.ask(steps)
}

// greet introduces the assistant in the first answer, and says when the shop is closed.
func (t *turn) greet() {
	m := &t.talk.Memory
	if m.Introduced {
		if t.talk.State == Lapsed {
			t.say.add(t.line("intro_back", 0, nil))
		}
		return
	}
	m.Introduced = true
	key := "intro"
	if t.talk.Channel == Email {
		key = "intro_mail"
	}
	t.say.add(t.line(key, 0, wording.Args{"shop": t.shop.Name, "assistant": t.shop.Assistant}))
	if m.Claims != "" && !m.Given {
		t.say.add(t.line("join.prove", 0, nil))
	}
	if t.closed() && !m.PersonAsked {
		t.say.add(t.line("closed_now", 0, wording.Args{"opens": t.opens()}))
	}
}

// answer says what is asked for beside the topics.
func (t *turn) answer() {
	h := &t.heard
	if h.asks(reading.RequestPrice) {
		t.say.add(t.priceLine())
	}
	if !t.asksHow() && !t.tellsBelow() {
		t.say.add(h.answers...)
	}
	if h.passes() {
		t.say.add(t.vary("answer.question", nil))
	}
	if h.asks(reading.RequestHelp) && !h.asks(reading.RequestHowTo) {
		t.say.add(t.helpLine())
	}
}

// keepsQuestion answers "how do I measure that" and "say that again" without counting
// the question as asked once more: the person is on it.
func (t *turn) keepsQuestion() bool {
	h, m := &t.heard, &t.talk.Memory
	if len(m.Asking) == 0 || len(h.entries) > 0 {
		return false
	}
	switch {
	case t.fromBelow():
		return true
	case t.asksHow(), h.asks(reading.RequestHowTo) && len(h.answers) == 0:
		t.tellHow()
		return true
	case h.asks(reading.RequestHowTo):
		return true // the owner's answer was given, and they are on it
	case h.asks(reading.RequestAgain), t.onlyWhom():
		t.say.add(t.questionFor(step{t.talk.State, m.Asking}))
		return true
	}
	return false
}

// onlyWhom says whether nothing was told but whom to call: the question is put again, and does not count.
func (t *turn) onlyWhom() bool {
	h := t.heard
	h.whom = false
	return t.heard.whom && h.nothing()
}

// asksHow says whether the customer asks how to take the measure that was asked for; that
// is answered for this one, not by the owner's general answer.
func (t *turn) asksHow() bool {
	asking := t.talk.Memory.Asking
	return len(asking) > 0 && asking[0].Topic.OfLength() && len(t.heard.entries) == 0 && t.heard.asks(reading.RequestHowTo)
}

// tellHow says how to find what was asked for; the picture is of the first.
func (t *turn) tellHow() {
	topics := topicsOf(t.talk.Memory.Asking)
	t.say.picture = pictureOf(topics[0])
	if slices.Contains(topics, fitcheck.TopicStyle) {
		topics = []fitcheck.Topic{fitcheck.TopicStyle} // how many there are takes no telling
	}
	var lines []string
	for _, topic := range topics {
		if line := t.howTo(topic, t.talk.Memory.Asking[0].Unit); !slices.Contains(lines, line) {
			lines = append(lines, line)
		}
	}
	t.say.add(lines...)
}

func (t *turn) howTo(topic fitcheck.Topic, unit int) string {
	if key := "howto.round." + string(topic); t.book.Has(key) && t.isRound(unit) {
		return t.line(key, 0, nil)
	}
	if key := "howto." + string(topic); t.book.Has(key) {
		return t.line(key, 0, nil)
	}
	return t.line("howto.other", 0, nil)
}

// pictureOf is the drawing that shows how to measure a topic.
func pictureOf(topic fitcheck.Topic) fitcheck.Topic {
	if topic.OfLength() {
		return topic
	}
	return ""
}

// confirmedAndCall: who says yes to the summary and would rather be called has a complete lead;
// staff get back to them anyway.
func (t *turn) confirmedAndCall() bool {
	m := &t.talk.Memory
	if !t.isAsked(fitcheck.TopicConfirm) || t.heard.confirm != fitcheck.ConfirmYes || t.corrects() || !t.heard.asks(reading.RequestPerson) || len(t.blockers()) > 0 {
		return false
	}
	m.PersonAsked, m.Confirmed = false, true
	return true
}

// ask puts questions and remembers them.
func (t *turn) ask(steps []step) error {
	m := &t.talk.Memory
	t.explain(steps[0])
	before := m.Asking
	m.Asking = nil
	if len(steps) > 1 {
		t.acked = 0 // each line of a list says which unit it is about
	}
	var lines []string
	for _, s := range steps {
		s.asks = slices.DeleteFunc(slices.Clone(s.asks), func(a Ask) bool { return slices.Contains(m.Asking, a) }) // asked in a line above
		if len(s.asks) == 0 {
			continue
		}
		lines = append(lines, t.questionFor(s))
		m.Asking = append(m.Asking, s.asks...)
	}
	if len(lines) > 1 {
		lines = []string{t.vary("mail.questions", nil) + "\n- " + strings.Join(lines, "\n- ")}
	}
	t.say.add(lines...)
	t.orMore(steps[0])
	t.safety(steps[0].state)
	for _, a := range m.Asking {
		if a.Topic == fitcheck.TopicConfirm && m.Relisted {
			m.Tries[a], m.Relisted = 0, false // another list, another question
		}
		if a.Topic == fitcheck.TopicConfirm && m.Tries[a] > 0 && t.heard.photos > 0 && !t.heard.news() {
			continue // the photo came late, and the summary is still to be answered
		}
		if s := steps[0]; s.state == Choosing && t.asideOf(before, a) {
			continue
		}
		m.Tries[a]++
	}
	t.keepAside(steps[0].state, before)
	return t.move(steps[0].state)
}

// explain says once, before the box is to be measured, why the dome alone won't do.
func (t *turn) explain(s step) {
	m := &t.talk.Memory
	if m.Explained || s.state != Measuring || s.asks[0].Unit > len(t.check.Units) {
		return
	}
	for _, reason := range t.check.Units[s.asks[0].Unit-1].Reasons {
		if key := "why." + reason; t.book.Has(key) {
			m.Explained = true
			t.say.add(t.labelWhere(reason, s.asks[0].Unit) + t.line(key, 0, nil))
			return
		}
	}
}

// labelWhere says of which unit the reason is, where it is not of all; what was said back before may be another's.
func (t *turn) labelWhere(reason string, unit int) string {
	if !slices.ContainsFunc(t.check.Units, func(u fitcheck.UnitResult) bool { return !slices.Contains(u.Reasons, reason) }) {
		return ""
	}
	t.acked = 0
	label := t.unitLabel(unit)
	t.acked = unit
	return label
}

// orMore asks once for the number of pieces along with the first measure, where all that it
// goes beside was told unasked. It stays open where nothing is said to it.
func (t *turn) orMore(s step) {
	first := s.asks[0].Topic == fitcheck.TopicPlasticSize || s.asks[0].Topic == fitcheck.TopicCurbOutside
	if s.state != Measuring || !first || len(t.howMany()) == 0 || t.talk.Memory.Said["hint.or_more"] > 0 {
		return
	}
	t.say.add(t.vary("hint.or_more", nil))
}

// safety tells once, with the first question that takes a tape, what matters.
func (t *turn) safety(state State) {
	if t.talk.Memory.Cautioned || state != Measuring && state != Rechecking {
		return
	}
	t.talk.Memory.Cautioned = true
	t.say.add(t.line("safe.measure", 0, nil))
}
