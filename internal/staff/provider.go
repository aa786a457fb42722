package staff

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"strings"
	"sync"
	"time"

	"github.com/coreos/go-oidc/v3/oidc"
	"golang.org/x/oauth2"
)

// Provider is the owner's own log-in: an OpenID Connect provider that knows the shop's
// people. Those get in through it whose mail address, proven to the provider, is that of
// an account here; nobody else does, and no account is made.
type Provider struct {
	Issuer   string // https://login.example.com, as the provider itself writes it
	ClientID string
	Secret   string
	Name     string       // what people call it, shown on the log-in page
	Client   *http.Client // nil: one with a time limit
}

// providerTime bounds each call to the provider: somebody waits for it.
const providerTime = 15 * time.Second

// provider asks an OpenID Connect provider who somebody is.
type provider struct {
	Provider
	back string // where the provider sends people back to

	mu    sync.Mutex
	known *oidc.Provider // nil until it was reached once
}

func newProvider(p *Provider, address string) *provider {
	if p == nil {
		return nil
	}
	own := &provider{Provider: *p, back: address + Base + "/login/return"}
	if own.Client == nil {
		own.Client = &http.Client{Timeout: providerTime}
	}
	return own
}

// reach gives the provider as it describes itself. It is asked when first needed and not
// when the program starts: customers are answered also while it is down.
func (p *provider) reach(ctx context.Context) (*oidc.Provider, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.known != nil {
		return p.known, nil
	}
	ctx, cancel := context.WithTimeout(oidc.ClientContext(ctx, p.Client), providerTime)
	defer cancel()
	known, err := oidc.NewProvider(ctx, p.Issuer)
	if err != nil {
		return nil, fmt.Errorf("log-in provider: %w", err)
	}
	p.known = known
	return known, nil
}

func (p *provider) config(known *oidc.Provider) *oauth2.Config {
	return &oauth2.Config{ClientID: p.ClientID, ClientSecret: p.Secret, Endpoint: known.Endpoint(), RedirectURL: p.back,
		Scopes: []string{oidc.ScopeOpenID, "email"}}
}

// attempt is what a browser keeps while it is at the provider: the state that must come
// back, the nonce that must be in the token, and the verifier of RFC 7636 (PKCE), without
// which nobody else can use the code.
type attempt struct {
	State, Nonce, Verifier string
	Next                   string
}

func newAttempt(next string) attempt {
	return attempt{oauth2.GenerateVerifier(), oauth2.GenerateVerifier(), oauth2.GenerateVerifier(), next} // 256 random bits each
}

// start is the provider's address to send a browser to.
func (p *provider) start(ctx context.Context, a attempt) (string, error) {
	known, err := p.reach(ctx)
	if err != nil {
		return "", err
	}
	return p.config(known).AuthCodeURL(a.State, oidc.Nonce(a.Nonce), oauth2.S256ChallengeOption(a.Verifier)), nil
}

// errNotProven says that the provider does not vouch for a mail address.
var errNotProven = errors.New("the provider does not say that the mail address is proven")

// who gives the mail address, in lower case, of whoever brought a code back. The token's
// signature, issuer, audience and time are checked by the library (OpenID Connect Core
// 1.0, 3.1.3.7), the nonce here.
func (p *provider) who(ctx context.Context, code string, a attempt) (email string, err error) {
	ctx, cancel := context.WithTimeout(oidc.ClientContext(ctx, p.Client), providerTime)
	defer cancel()
	known, err := p.reach(ctx)
	if err != nil {
		return "", err
	}
	config := p.config(known)
	tokens, err := config.Exchange(ctx, code, oauth2.VerifierOption(a.Verifier))
	if err != nil {
		return "", fmt.Errorf("log-in provider: take the code: %w", withoutAnswer(err))
	}
	raw, _ := tokens.Extra("id_token").(string)
	token, err := known.Verifier(&oidc.Config{ClientID: p.ClientID}).Verify(ctx, raw)
	if err != nil {
		return "", fmt.Errorf("log-in provider: check the token: %w", err)
	}
	if !same(token.Nonce, a.Nonce) {
		return "", errors.New("log-in provider: the token is of another log-in")
	}
	var claims mailClaims
	if err := token.Claims(&claims); err != nil {
		return "", fmt.Errorf("log-in provider: read the token: %w", err)
	}
	if claims.Email == "" { // some tell it only when asked
		info, err := known.UserInfo(ctx, config.TokenSource(ctx, tokens))
		if err != nil {
			return "", fmt.Errorf("log-in provider: ask for the mail address: %w", withoutAnswer(err))
		}
		if info.Subject != token.Subject {
			return "", errors.New("log-in provider: it speaks of another person than its token")
		}
		claims = mailClaims{info.Email, looseBool(info.EmailVerified)}
	}
	if claims.Email == "" || !claims.Proven {
		return "", errNotProven
	}
	return strings.ToLower(claims.Email), nil
}

type mailClaims struct {
	Email  string    `json:"email"`
	Proven looseBool `json:"email_verified"`
}

// looseBool is true or, as some providers write it, "true".
type looseBool bool

// UnmarshalJSON takes anything else for false.
func (f *looseBool) UnmarshalJSON(b []byte) error {
	*f = string(b) == "true" || string(b) == `"true"`
	return nil
}

// withoutAnswer drops what the provider answered in full: it may hold a person's data,
// and the log must not.
func withoutAnswer(err error) error {
	var refused *oauth2.RetrieveError
	if errors.As(err, &refused) && refused.Response != nil {
		return fmt.Errorf("answered %s %.40q", refused.Response.Status, refused.ErrorCode)
	}
	return err
}
