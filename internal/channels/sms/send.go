package sms

import (
	"context"
	"errors"
	"fmt"

	"github.com/twilio/twilio-go/client"
	api "github.com/twilio/twilio-go/rest/api/v2010"
)

// Send hands one message to the carrier and returns the carrier's id. A failure is a
// *SendError. The carrier has no idempotency key: after Kind Unknown the message may be
// on its way, and only Find can tell.
func (c *Client) Send(ctx context.Context, to, body string, media []string) (string, error) {
	ctx, cancel := context.WithTimeout(ctx, c.cfg.Timeout)
	defer cancel()
	params := (&api.CreateMessageParams{}).SetTo(to)
	if body != "" {
		params.SetBody(body)
	}
	if len(media) > 0 {
		params.SetMediaUrl(media)
	}
	if c.cfg.From != "" {
		params.SetFrom(c.cfg.From)
	} else {
		params.SetMessagingServiceSid(c.cfg.MessagingService)
	}
	if c.cfg.StatusCallback != "" {
		params.SetStatusCallback(c.cfg.StatusCallback)
	}
	service, x := c.call(ctx)
	m, err := service.CreateMessage(params)
	if err != nil {
		return "", sendError(x.last, err)
	}
	if m.Sid == nil || *m.Sid == "" || x.last.status >= 300 {
		return "", sendError(x.last, errors.New("answer without a message id"))
	}
	return *m.Sid, nil
}

func sendError(a answer, err error) *SendError {
	e := &SendError{HTTPStatus: a.status, RetryAfter: a.retryAfter}
	var rest *client.TwilioRestError
	if errors.As(err, &rest) {
		// The carrier's sentence may quote the number; its code says all.
		e.Code = rest.Code
		if a.status == 0 { // refused by the library before anything was sent
			e.Kind = KindOf(rest.Code)
			return e
		}
	} else {
		e.cause = quiet(err)
	}
	e.Kind = classify(a, e.Code)
	return e
}

// quiet keeps the reason and drops the address, which can hold numbers.
func quiet(err error) error {
	var withURL interface {
		error
		Unwrap() error
		Timeout() bool
	}
	if errors.As(err, &withURL) && withURL.Unwrap() != nil {
		return fmt.Errorf("carrier: %w", withURL.Unwrap())
	}
	return fmt.Errorf("carrier: %w", err)
}
