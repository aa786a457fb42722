package sms

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"net/url"
	"regexp"
	"time"

	"github.com/twilio/twilio-go/client"
	api "github.com/twilio/twilio-go/rest/api/v2010"
)

// Config is how to reach the carrier and as whom.
type Config struct {
	AccountID        string
	AuthToken        string
	From             string // E.164 or a short code; either this or MessagingService
	MessagingService string
	StatusCallback   string        // public address for status posts; empty: none
	BaseURL          string        // another server that speaks the same; empty: the carrier
	Timeout          time.Duration // of one call; 0: 15 s
	// Now is the clock by which callers of Find tell time; nil: time.Now.
	Now       func() time.Time
	Transport http.RoundTripper
}

// Client sends messages and asks what was sent. It is safe for concurrent use.
type Client struct {
	cfg  Config
	base *url.URL
	next http.RoundTripper
}

// The REST library refuses other characters at each call; here it is said at the start.
var credential = regexp.MustCompile(`^[a-zA-Z0-9]+$`)

// NewClient checks the settings; it does not call the carrier.
func NewClient(cfg Config) (*Client, error) {
	if !credential.MatchString(cfg.AccountID) || !credential.MatchString(cfg.AuthToken) {
		return nil, errors.New("carrier account id and token: want letters and digits")
	}
	if (cfg.From == "") == (cfg.MessagingService == "") {
		return nil, errors.New("carrier: want either a sender number or a messaging service")
	}
	c := &Client{cfg: cfg, next: cfg.Transport}
	if cfg.BaseURL != "" {
		u, err := url.Parse(cfg.BaseURL)
		if err != nil || u.Host == "" {
			return nil, errors.New("carrier base URL: want http://host or https://host")
		}
		c.base = u
	}
	if c.cfg.Timeout == 0 {
		c.cfg.Timeout = 15 * time.Second
	}
	if c.cfg.Now == nil {
		c.cfg.Now = time.Now
	}
	if c.next == nil {
		c.next = newTransport()
	}
	return c, nil
}

func newTransport() *http.Transport {
	return &http.Transport{
		Proxy:                 http.ProxyFromEnvironment,
		DialContext:           (&net.Dialer{Timeout: 5 * time.Second}).DialContext,
		TLSHandshakeTimeout:   5 * time.Second,
		ForceAttemptHTTP2:     true,
		MaxIdleConns:          32,
		MaxIdleConnsPerHost:   32,
		IdleConnTimeout:       60 * time.Second,
		ResponseHeaderTimeout: 30 * time.Second,
	}
}

// call gives the library's service, bound to one context and watched by an exchange.
func (c *Client) call(ctx context.Context) (*api.ApiService, *exchange) {
	requests, x := c.requests(ctx)
	return api.NewApiService(requests), x
}

// requests is what every service of the library is made of.
func (c *Client) requests(ctx context.Context) (*client.RequestHandler, *exchange) {
	x := &exchange{ctx: ctx, base: c.base, next: c.next}
	rest := &client.Client{
		Credentials: client.NewCredentials(c.cfg.AccountID, c.cfg.AuthToken),
		HTTPClient: &http.Client{
			Transport: x,
			// A redirect would send the message, or the credentials, once more.
			CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
		},
	}
	rest.SetAccountSid(c.cfg.AccountID)
	return &client.RequestHandler{Client: rest}, x
}

// Check asks the carrier for its newest message, and so proves the credentials.
func (c *Client) Check(ctx context.Context) error {
	ctx, cancel := context.WithTimeout(ctx, c.cfg.Timeout)
	defer cancel()
	service, x := c.call(ctx)
	params := (&api.ListMessageParams{}).SetPageSize(1)
	if _, err := service.PageMessage(params, "", ""); err != nil {
		return fmt.Errorf("carrier check: %w", sendError(x.last, err))
	}
	return nil
}
