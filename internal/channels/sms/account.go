package sms

import (
	"context"
	"errors"
	"fmt"
	"time"

	api "github.com/twilio/twilio-go/rest/api/v2010"
	messaging "github.com/twilio/twilio-go/rest/messaging/v1"
)

// ErrNoSender says that the account has no such number or messaging service.
var ErrNoSender = errors.New("the account has no such sender")

// Account is what the carrier has on file of the account.
type Account struct {
	Status string    // active, suspended or closed
	Trial  bool      // it texts only to numbers that were proven to the carrier
	Date   time.Time // the carrier's clock, to the second; zero where it did not say
}

// Registration is how far a sender is registered for business texts.
type Registration string

const (
	Registered    Registration = "registered"
	NotRegistered Registration = "not registered"
	NotTold       Registration = "not told" // the carrier does not say for this kind of sender
)

// Sender is what the carrier has on file of the number, or messaging service, that sends.
type Sender struct {
	ID            string
	InboundURL    string // where it posts incoming messages; empty: nowhere
	InboundMethod string
	// ByNumber: a service leaves incoming messages to what each of its numbers says.
	ByNumber bool
	// Application: an application of the carrier's overrules the number's own address.
	Application  bool
	Texts        bool
	Pictures     bool
	Registration Registration
	// Stage is the carrier's own word for how far the registration is; may be empty.
	Stage string
}

// Account asks the carrier for the account, and so proves the credentials.
func (c *Client) Account(ctx context.Context) (Account, error) {
	ctx, cancel := context.WithTimeout(ctx, c.cfg.Timeout)
	defer cancel()
	service, x := c.call(ctx)
	got, err := service.FetchAccount(c.cfg.AccountID)
	if err != nil {
		return Account{}, fmt.Errorf("carrier account: %w", sendError(x.last, err))
	}
	return Account{Status: deref(got.Status), Trial: deref(got.Type) == "Trial", Date: x.last.date}, nil
}

// Sender asks for the number or messaging service that is set to send.
func (c *Client) Sender(ctx context.Context) (Sender, error) {
	ctx, cancel := context.WithTimeout(ctx, c.cfg.Timeout)
	defer cancel()
	if c.cfg.MessagingService != "" {
		return c.service(ctx)
	}
	service, x := c.call(ctx)
	// The filter also finds numbers that only look alike.
	page, err := service.PageIncomingPhoneNumber((&api.ListIncomingPhoneNumberParams{}).SetPhoneNumber(c.cfg.From).SetPageSize(50), "", "")
	if err != nil {
		return Sender{}, fmt.Errorf("carrier number: %w", sendError(x.last, err))
	}
	for _, n := range page.IncomingPhoneNumbers {
		if deref(n.PhoneNumber) == c.cfg.From {
			return c.registered(ctx, numberOf(n))
		}
	}
	return Sender{}, fmt.Errorf("carrier number: %w", ErrNoSender)
}

func numberOf(n api.ApiV2010IncomingPhoneNumber) Sender {
	s := Sender{ID: deref(n.Sid), InboundURL: deref(n.SmsUrl), InboundMethod: deref(n.SmsMethod),
		Application: deref(n.SmsApplicationSid) != "", Registration: NotTold}
	if n.Capabilities != nil {
		s.Texts, s.Pictures = n.Capabilities.Sms, n.Capabilities.Mms
	}
	return s
}

// registered adds how far a toll-free number is verified. Other numbers are registered
// through a campaign, which the carrier does not name with the number.
func (c *Client) registered(ctx context.Context, s Sender) (Sender, error) {
	if !TollFree(c.cfg.From) {
		return s, nil
	}
	requests, x := c.requests(ctx)
	params := (&messaging.ListTollfreeVerificationParams{}).SetTollfreePhoneNumberSid(s.ID).SetPageSize(50)
	page, err := messaging.NewApiService(requests).PageTollfreeVerification(params, "", "")
	if err != nil {
		return s, fmt.Errorf("carrier registration: %w", sendError(x.last, err))
	}
	s.Registration = NotRegistered
	for _, v := range page.Verifications {
		s.Stage = deref(v.Status)
		if s.Stage == "TWILIO_APPROVED" { // from memory of the carrier's page on toll-free verification
			s.Registration = Registered
			break
		}
	}
	return s, nil
}

// service is the messaging service that sends.
func (c *Client) service(ctx context.Context) (Sender, error) {
	requests, x := c.requests(ctx)
	got, err := messaging.NewApiService(requests).FetchService(c.cfg.MessagingService)
	if err != nil {
		failed := sendError(x.last, err)
		if failed.Code == 20404 { // from memory of the carrier's public error list
			return Sender{}, fmt.Errorf("carrier messaging service: %w", ErrNoSender)
		}
		return Sender{}, fmt.Errorf("carrier messaging service: %w", failed)
	}
	s := Sender{ID: deref(got.Sid), InboundURL: deref(got.InboundRequestUrl), InboundMethod: deref(got.InboundMethod),
		ByNumber: got.UseInboundWebhookOnNumber != nil && *got.UseInboundWebhookOnNumber,
		Texts:    true, Pictures: true, Registration: NotTold}
	if registered := got.UsAppToPersonRegistered; registered != nil {
		s.Registration = NotRegistered
		if *registered {
			s.Registration = Registered
		}
	}
	return s, nil
}
