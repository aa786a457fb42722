package conversation

import (
	"encoding/json"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// RecordVersion is the version of the lead record's form.
const RecordVersion = 1

// NewRecord is the lead record of a talk as it stands, with all its messages and
// photos.
func NewRecord(t Talk, messages []Message, photos []RecordPhoto) Record {
	r := Record{Version: RecordVersion, Ref: t.Ref, Status: t.Lead.Status, Qualified: t.Lead.Qualified,
		WhyStaff: list(t.Lead.WhyStaff), Urgent: t.Lead.Urgent, AfterHours: t.Lead.AfterHours, Channel: t.Channel,
		Language: t.Language, OpenedAt: utc(t.OpenedAt), Customer: t.customer(), Place: t.recordPlace(),
		Use: optional(t.text(fitcheck.TopicUse, 0)), Units: list(t.Lead.Units), Photos: list(photos),
		Facts: make([]RecordFact, 0, len(t.Ledger)), Messages: make([]RecordMessage, 0, len(messages))}
	if t.Lead.ReadyAt != nil {
		at := utc(*t.Lead.ReadyAt)
		r.ReadyAt = &at
	}
	problem, _ := t.words(fitcheck.TopicProblem)
	r.Problem = list(problem)
	for _, e := range t.Ledger {
		r.Facts = append(r.Facts, RecordFact{e.Topic, e.Unit, e.Value, e.Said, e.Message})
	}
	for _, m := range messages {
		r.Messages = append(r.Messages, RecordMessage{m.N, utc(m.At), m.From, m.Channel, m.Text})
	}
	return r
}

// customer is who wrote: the number or address that the messages came from, unless
// they gave another.
func (t *Talk) customer() RecordCustomer {
	phone, email := t.text(fitcheck.TopicPhone, 0), t.text(fitcheck.TopicEmail, 0)
	if phone == "" {
		phone = t.Phone
	}
	if email == "" {
		email = t.Email
	}
	return RecordCustomer{optional(t.text(fitcheck.TopicName, 0)), optional(phone), optional(email)}
}

func (t *Talk) recordPlace() RecordPlace {
	p := t.Place()
	r := RecordPlace{City: optional(p.City), State: optional(p.State), ZIP: optional(p.ZIP)}
	if p != (fitcheck.Place{}) {
		if zones := placeZones(*t); len(zones) == 1 {
			r.TimeZone = &zones[0]
		}
	}
	return r
}

func optional(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

func list[T any](s []T) []T {
	if s == nil {
		return []T{}
	}
	return s
}

func utc(t time.Time) time.Time { return t.UTC().Truncate(time.Microsecond) }

// MarshalJSON writes every known topic of the unit, and "check" beside them.
func (u LeadUnit) MarshalJSON() ([]byte, error) {
	fields := map[string]any{"check": u.Check}
	for _, topic := range fitcheck.UnitTopics {
		if v := u.Unit.Get(topic); v != nil {
			fields[string(topic)] = v
		}
	}
	return json.Marshal(fields)
}

// Successor is the talk that begins when somebody writes again long after their lead
// has ended: what is still true of them goes along, what was about the old part not.
func (t Talk) Successor(ref string, at time.Time) Talk {
	next := Talk{Ref: ref, Channel: t.Channel, Phone: t.Phone, Email: t.Email, Language: t.Language,
		State: Opening, OpenedAt: at, Lead: Lead{Status: StatusOpen}}
	next.Memory.Introduced = true
	for _, topic := range []fitcheck.Topic{fitcheck.TopicName, fitcheck.TopicPlace, fitcheck.TopicEmail, fitcheck.TopicPhone} {
		if e := t.entry(topic, 0); e != nil {
			next.Ledger = append(next.Ledger, *e)
		}
	}
	return next
}
