package sms

import (
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"net/url"
	"strings"
	"time"

	"github.com/twilio/twilio-go/client"
)

// What can be wrong with a webhook post. StatusFor gives the answer to each.
var (
	ErrSignature = errors.New("webhook signature missing or wrong")
	ErrTooLarge  = errors.New("webhook body too large")
	ErrMalformed = errors.New("webhook malformed")
)

// signatureHeader carries base64(HMAC-SHA1(auth token, public URL + sorted form)).
// Source: from memory of the carrier's page on webhook security.
const signatureHeader = "X-Twilio-Signature"

const (
	// maxBody is far above the largest real post: 1,600 characters of text, each at
	// most 12 bytes when percent-encoded, ten media addresses and some forty short fields.
	maxBody = 64 << 10
	// maxParams bounds the map that is built from a post; real ones have about forty.
	maxParams = 200
)

// Webhook reads the carrier's posts. PublicURL is the address that the carrier was
// told, up to where this program's paths begin: "https://bot.example.com" or
// "https://example.com/texts" where a proxy takes a prefix off. Forwarded headers and
// Host are never looked at, for anybody can send them.
type Webhook struct {
	AuthTokens []string // any may have signed, so that a token can be changed without a gap
	PublicURL  string
	Now        func() time.Time // nil: time.Now
}

// NewWebhook refuses settings with which no post could be told from a forged one.
func NewWebhook(publicURL string, authTokens ...string) (*Webhook, error) {
	u, err := url.Parse(publicURL)
	if err != nil {
		return nil, fmt.Errorf("public URL: %w", err)
	}
	if (u.Scheme != "https" && u.Scheme != "http") || u.Host == "" || u.RawQuery != "" || u.Fragment != "" {
		return nil, errors.New("public URL: want https://host or https://host/prefix")
	}
	if len(authTokens) == 0 {
		return nil, errors.New("webhook: no auth token")
	}
	for _, t := range authTokens {
		if strings.TrimSpace(t) == "" {
			return nil, errors.New("webhook: empty auth token")
		}
	}
	return &Webhook{AuthTokens: authTokens, PublicURL: publicURL}, nil
}

// StatusFor is the HTTP status that answers a post that ended with err. A sender that
// can't be answered is no fault of the post: the carrier gets a 200, lest it try again.
func StatusFor(err error) int {
	switch {
	case err == nil, errors.Is(err, ErrSender):
		return http.StatusOK
	case errors.Is(err, ErrSignature):
		return http.StatusForbidden
	case errors.Is(err, ErrTooLarge):
		return http.StatusRequestEntityTooLarge
	default:
		return http.StatusBadRequest
	}
}

// form reads and proves a post. Only Get may be used on what it returns: the
// signature covers the first value of a key and no other.
func (h *Webhook) form(r *http.Request, body io.Reader) (url.Values, error) {
	sig := r.Header.Get(signatureHeader)
	if sig == "" {
		return nil, ErrSignature
	}
	if err := checkShape(r); err != nil {
		return nil, err
	}
	raw, err := readBounded(body)
	if err != nil {
		return nil, err
	}
	if strings.Count(raw, "&") >= maxParams {
		return nil, fmt.Errorf("%w: over %d parameters", ErrTooLarge, maxParams)
	}
	form, err := url.ParseQuery(raw)
	if err != nil {
		return nil, fmt.Errorf("%w: not form encoded", ErrMalformed)
	}
	if !h.signed(r, form, sig) {
		return nil, ErrSignature
	}
	return form, nil
}

func checkShape(r *http.Request) error {
	if r.Method != http.MethodPost {
		return fmt.Errorf("%w: method %s", ErrMalformed, r.Method)
	}
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if err != nil || kind != "application/x-www-form-urlencoded" {
		return fmt.Errorf("%w: content type", ErrMalformed)
	}
	return nil
}

func readBounded(body io.Reader) (string, error) {
	raw, err := io.ReadAll(io.LimitReader(body, maxBody+1))
	var tooLarge *http.MaxBytesError
	if errors.As(err, &tooLarge) || len(raw) > maxBody {
		return "", ErrTooLarge
	}
	if err != nil {
		return "", fmt.Errorf("%w: reading the body: %w", ErrMalformed, err)
	}
	return string(raw), nil
}

func (h *Webhook) signed(r *http.Request, form url.Values, sig string) bool {
	if h.PublicURL == "" {
		return false
	}
	params := make(map[string]string, len(form))
	for k := range form {
		params[k] = form.Get(k)
	}
	address := h.publicAddress(r)
	for _, token := range h.AuthTokens {
		if token == "" {
			continue // an empty key would make signatures that anybody can make
		}
		v := client.NewRequestValidator(token)
		if v.Validate(address, params, sig) {
			return true
		}
	}
	return false
}

// publicAddress is the address that the carrier posted to, as it signed it.
func (h *Webhook) publicAddress(r *http.Request) string {
	a := strings.TrimRight(h.PublicURL, "/") + r.URL.EscapedPath()
	if r.URL.RawQuery != "" {
		a += "?" + r.URL.RawQuery
	}
	return a
}

func (h *Webhook) now() time.Time {
	if h.Now != nil {
		return h.Now().UTC()
	}
	return time.Now().UTC()
}
