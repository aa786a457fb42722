package shop

import (
	"errors"
	"time"

	"example.com/intake-bot/internal/conversation"
)

// Conversation is what the talk needs of the file.
func (f *File) Conversation() (*conversation.Shop, error) {
	if f.Zone.Location == nil {
		return nil, errors.New("the shop has no time zone")
	}
	return &conversation.Shop{
		Name:         f.Name,
		Assistant:    f.Assistant,
		Phone:        string(f.Phone),
		Email:        string(f.Email),
		Address:      f.Address.String(),
		Zone:         f.Zone.Location,
		Hours:        f.Calendar(),
		Rules:        f.Rules(),
		ShowEstimate: f.ShowEstimate,
		Silences:     f.Reminders.silences(),
		Wording:      f.Wording,
	}, nil
}

// silences are when each reminder is due, and last, when the talk counts as lapsed.
func (r Reminders) silences() []time.Duration {
	out := make([]time.Duration, 0, len(r.After)+1)
	for _, after := range r.After {
		out = append(out, after.Duration())
	}
	return append(out, r.GiveUp.Duration())
}

// defaultReminders are the talk's own, so that they stand in one place.
func defaultReminders() Reminders {
	var r Reminders
	all := conversation.DefaultSilences()
	for _, after := range all[:len(all)-1] {
		r.After = append(r.After, Span(after))
	}
	r.GiveUp = Span(all[len(all)-1])
	return r
}
