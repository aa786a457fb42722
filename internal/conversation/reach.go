package conversation

import "example.com/intake-bot/internal/fitcheck"

// noteWays keeps what the messages themselves show of the ways to a customer: who writes
// on one can be reached there again.
func (t *turn) noteWays(in []Message) {
	m := &t.talk.Memory
	for _, msg := range in {
		switch msg.Channel {
		case SMS:
			m.NoTexts = false
		case Email:
			m.NoMail = false
		}
		m.Unproven = m.Unproven || msg.Unproven
		if msg.Claims != "" {
			m.Claims, m.Given = msg.Claims, msg.Given
		}
	}
}

// unreached are the ways that turned out to lead nowhere, for staff.
func (t *turn) unreached() []string {
	var why []string
	if t.talk.Memory.NoTexts {
		why = append(why, WhyNoTexts)
	}
	if t.talk.Memory.NoMail {
		why = append(why, WhyNoMail)
	}
	return why
}

// Reasons for staff where a message could not be delivered.
const (
	WhyNoTexts = "number takes no texts"
	WhyNoMail  = "address takes no mail"
)

// reachable says whether a way to the customer is left.
func (t *turn) reachable() bool {
	m := t.talk.Memory
	phone := t.talk.Phone != "" || t.talk.text(fitcheck.TopicPhone, 0) != ""
	email := t.talk.Email != "" || t.talk.text(fitcheck.TopicEmail, 0) != ""
	return t.talk.Channel == Terminal || phone && !m.NoTexts || email && !m.NoMail
}

// deaf says whether the way on which the talk is held leads nowhere.
func (t *turn) deaf() bool {
	return t.talk.Channel == SMS && t.talk.Memory.NoTexts || t.talk.Channel == Email && t.talk.Memory.NoMail
}
