package conversation

import (
	"time"

	"example.com/intake-bot/internal/conversation/wording"
)

// DefaultSilences is when a silent customer is reminded, counted from their last message,
// and when what is known goes to staff as it is.
func DefaultSilences() []time.Duration {
	return []time.Duration{20 * time.Hour, 72 * time.Hour, 96 * time.Hour}
}

func (t *turn) silences() []time.Duration {
	if t.shop.Silences == nil {
		return DefaultSilences()
	}
	return t.shop.Silences
}

// Texts that nobody asked for go out from 8 to 20 only, in every zone where the customer
// can be: an hour narrower than 47 CFR 64.1200(c)(1), since some states are stricter.
const (
	dayStart = 8
	dayEnd   = 20
)

// Nudge is called at an outcome's Wake if nothing came in since: it reminds once or
// twice, then hands what is known to staff.
func Nudge(talk Talk, now time.Time, shop *Shop) (Outcome, error) {
	t, err := begin(talk, now, shop)
	if err != nil {
		return Outcome{}, err
	}
	t.runCheck()
	if !t.waiting() {
		return t.end()
	}
	m := &t.talk.Memory
	m.Nudges++
	if m.Nudges >= len(t.silences()) {
		if err := t.move(Lapsed); err != nil {
			return Outcome{}, err
		}
		return t.end()
	}
	key := "nudge.1"
	if m.Nudges > 1 {
		key = "nudge.2"
	}
	question := t.questionFor(step{t.talk.State, m.Asking})
	t.say.kind = Reminder
	t.say.add(t.line(key, 0, wording.Args{"shop": t.shop.Name, "question": question}))
	return t.end()
}

// waiting says whether the talk waits for the customer.
func (t *turn) waiting() bool {
	switch t.talk.State {
	case Opening, HandedOver, WithStaff, Lapsed, Silenced:
		return false
	}
	return len(t.talk.Memory.Asking) > 0 && !t.deaf()
}

// wake is when to look again if the customer stays silent; zero for never.
func (t *turn) wake() time.Time {
	m := t.talk.Memory
	if !t.waiting() || m.Nudges >= len(t.silences()) || m.LastAt.IsZero() {
		return time.Time{}
	}
	due := m.LastAt.Add(t.silences()[m.Nudges])
	if due.Before(t.now) {
		due = t.now
	}
	return Daytime(due, placeZones(t.talk))
}

// Daytime is the first time at or after t that is day in all of the zones; t itself
// where no hour is.
func Daytime(t time.Time, zones []string) time.Time {
	locations := make([]*time.Location, 0, len(zones))
	for _, z := range zones {
		if l, err := time.LoadLocation(z); err == nil {
			locations = append(locations, l)
		}
	}
	const pace = 15 * time.Minute
	for at := t; at.Sub(t) < 48*time.Hour; at = at.Truncate(pace).Add(pace) {
		if dayIn(at, locations) {
			return at
		}
	}
	return t
}

func dayIn(t time.Time, locations []*time.Location) bool {
	for _, l := range locations {
		if h := t.In(l).Hour(); h < dayStart || h >= dayEnd {
			return false
		}
	}
	return true
}
