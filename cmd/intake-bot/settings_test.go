package main

import (
	"io/fs"
	"maps"
	"strings"
	"testing"
)

func environmentOf(vars, files map[string]string) environment {
	return environment{
		lookup: func(name string) (string, bool) { v, ok := vars[name]; return v, ok },
		read: func(path string) ([]byte, error) {
			if text, ok := files[path]; ok {
				return []byte(text), nil
			}
			return nil, fs.ErrNotExist
		},
	}
}

var complete = map[string]string{
	"DATABASE_URL": "postgres://localhost/a", "SHOP_FILE": "shop.yaml", "PUBLIC_URL": "https://bot.example.com/",
	"CARRIER_ACCOUNT_ID": "AC1", "CARRIER_AUTH_TOKEN": "secret", "CARRIER_FROM": "+12185550142",
}

func TestSettings(t *testing.T) {
	for _, c := range []struct {
		what   string
		change map[string]string // "" takes the variable away
		wrong  string
	}{
		{"complete", nil, ""},
		{"a service instead of a number", map[string]string{"CARRIER_FROM": "", "CARRIER_MESSAGING_SERVICE": "MG1"}, ""},
		{"neither", map[string]string{"CARRIER_FROM": ""}, "set one of CARRIER_FROM"},
		{"both", map[string]string{"CARRIER_MESSAGING_SERVICE": "MG1"}, "set one of CARRIER_FROM"},
		{"no database", map[string]string{"DATABASE_URL": ""}, "DATABASE_URL is not set: write it like"},
		{"secret in a file", map[string]string{"CARRIER_AUTH_TOKEN": "", "CARRIER_AUTH_TOKEN_FILE": "/run/token"}, ""},
		{"secret in both", map[string]string{"CARRIER_AUTH_TOKEN_FILE": "/run/token"}, "CARRIER_AUTH_TOKEN and CARRIER_AUTH_TOKEN_FILE are both set"},
		{"no such file", map[string]string{"CARRIER_AUTH_TOKEN": "", "CARRIER_AUTH_TOKEN_FILE": "/none"}, "CARRIER_AUTH_TOKEN_FILE: file does not exist"},
		{"half a log-in provider", map[string]string{"OIDC_ISSUER": "https://login.example.com"}, "set all of OIDC_ISSUER"},
		{"a provider without TLS", map[string]string{"OIDC_ISSUER": "http://login.example.com", "OIDC_CLIENT_ID": "a", "OIDC_CLIENT_SECRET": "secret"}, "OIDC_ISSUER is not an https address"},
		{"a log-in provider", map[string]string{"OIDC_ISSUER": "https://login.example.com", "OIDC_CLIENT_ID": "a", "OIDC_CLIENT_SECRET": "secret"}, ""},
		{"a level that is none", map[string]string{"LOG_LEVEL": "loud"}, "LOG_LEVEL is not one of"},
	} {
		vars := maps.Clone(complete)
		maps.Copy(vars, c.change)
		s, err := readSettings(environmentOf(vars, map[string]string{"/run/token": "secret\n"}))
		switch {
		case c.wrong == "" && err != nil, c.wrong != "" && (err == nil || !strings.Contains(err.Error(), c.wrong)):
			t.Errorf("%s: %v, want %q", c.what, err, c.wrong)
		case err != nil && strings.Contains(err.Error(), "secret"):
			t.Errorf("%s: the error tells the secret: %v", c.what, err)
		case err == nil && (s.carrier.token != "secret" || s.publicURL != "https://bot.example.com" || s.listen == ""):
			t.Errorf("%s: %+v", c.what, s)
		}
	}
}

func TestOnlyThisMachineIsSpokenToWithoutTLS(t *testing.T) {
	for address, want := range map[string]bool{
		"http://127.0.0.1:8125": true, "http://[::1]:8125": true, "http://localhost:1": true,
		"http://carrier.example.com": false, "https://10.0.0.1": false, "http://localhost.example.com": false, "": false,
	} {
		if _, near := hostOf(address); near != want {
			t.Errorf("%q is near: %t", address, near)
		}
	}
}
