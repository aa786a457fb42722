package main

import (
	"errors"
	"strings"

	"example.com/intake-bot/internal/staff"
)

// readLoginProvider reads where the shop's people may log in beside our own passwords;
// nil: nowhere.
func readLoginProvider(env environment) (*staff.Provider, error) {
	var wrong []error
	get := func(name string) string {
		value, err := env.secret(name)
		wrong = append(wrong, err)
		return value
	}
	p := &staff.Provider{Issuer: get("OIDC_ISSUER"), ClientID: get("OIDC_CLIENT_ID"), Secret: get("OIDC_CLIENT_SECRET"),
		Name: orElse(get("OIDC_NAME"), "the shop's log-in")}
	if err := errors.Join(wrong...); err != nil {
		return nil, err
	}
	if p.Issuer == "" && p.ClientID == "" && p.Secret == "" {
		return nil, nil
	}
	if p.Issuer == "" || p.ClientID == "" || p.Secret == "" {
		return nil, errors.New("set all of OIDC_ISSUER, OIDC_CLIENT_ID and OIDC_CLIENT_SECRET, or none")
	}
	if !safeURL(p.Issuer) {
		return nil, errors.New("OIDC_ISSUER is not an https address")
	}
	return p, nil
}

// safeURL says whether nobody on the way can read or change what goes to an address.
func safeURL(text string) bool {
	host, near := hostOf(text)
	return near || host != "" && strings.HasPrefix(text, "https://")
}
