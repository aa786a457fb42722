package intake

import (
	"context"
	"errors"
	"strconv"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/fitcheck"
)

// SMSSender sends texts through the carrier's client.
type SMSSender struct {
	Client *sms.Client
	// Picture gives the public address of a drawing to send along, empty for none; nil:
	// texts go without.
	Picture func(topic fitcheck.Topic, language string) string
}

// Send hands a text to the carrier.
func (s SMSSender) Send(ctx context.Context, m Outgoing) (string, error) {
	var media []string
	if m.Picture != "" && s.Picture != nil {
		if address := s.Picture(m.Picture, m.Language); address != "" {
			media = append(media, address)
		}
	}
	id, err := s.Client.Send(ctx, m.To.Address, m.Text, media)
	if err != nil {
		return "", smsFailure(err)
	}
	return id, nil
}

// Find looks for a text in the carrier's list.
func (s SMSSender) Find(ctx context.Context, m Outgoing) (string, bool, error) {
	return s.Client.Find(ctx, m.To.Address, m.Text, m.Since)
}

// smsFailure says what the carrier's error means for us.
func smsFailure(err error) error {
	var carrier *sms.SendError
	if !errors.As(err, &carrier) {
		return err
	}
	code := string(carrier.Kind)
	if carrier.Code != 0 {
		code = strconv.Itoa(carrier.Code)
	}
	return &Failure{Kind: smsKind(carrier.Kind), Code: code, RetryAfter: carrier.RetryAfter, Err: carrier}
}

func smsKind(k sms.Kind) FailureKind {
	switch k {
	case sms.Temporary:
		return Temporary
	case sms.Unsubscribed:
		return Unsubscribed
	case sms.Landline, sms.Unreachable, sms.Invalid:
		return Unreachable
	case sms.Filtered, sms.Refused:
		return Refused
	}
	return Uncertain
}
