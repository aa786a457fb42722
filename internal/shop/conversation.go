package shop

import (
	"errors"

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
		Wording:      f.Wording,
	}, nil
}
