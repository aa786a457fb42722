package email_test

import (
	"context"
	"crypto/tls"
	"errors"
	"io"
	"log"
	"net"
	"strings"
	"testing"

	"github.com/emersion/go-imap/v2/imapserver"
	"github.com/emersion/go-imap/v2/imapserver/imapmemserver"
	"github.com/emersion/go-sasl"

	"example.com/intake-bot/internal/channels/email"
)

// tokenSession is a session of the memory server that knows tokens in place of passwords.
type tokenSession struct {
	imapserver.Session
	mechanism string
}

func (s *tokenSession) AuthenticateMechanisms() []string { return []string{s.mechanism} }

func (s *tokenSession) Authenticate(mechanism string) (sasl.Server, error) {
	if mechanism != s.mechanism {
		return nil, errors.New("unknown mechanism")
	}
	if mechanism == sasl.OAuthBearer {
		return sasl.NewOAuthBearerServer(func(o sasl.OAuthBearerOptions) *sasl.OAuthBearerError {
			if o.Token != "tok" || s.Login(mailUser, mailPassword) != nil {
				return &sasl.OAuthBearerError{Status: "invalid_token"}
			}
			return nil
		}), nil
	}
	return xoauth2Server{s}, nil
}

type xoauth2Server struct{ s *tokenSession }

func (x xoauth2Server) Next(response []byte) ([]byte, bool, error) {
	if string(response) != "user="+mailUser+"\x01auth=Bearer tok\x01\x01" {
		return nil, true, errors.New("invalid token")
	}
	return nil, true, x.s.Login(mailUser, mailPassword)
}

func secureServer(t *testing.T, security email.Security, mechanism string, cert *tls.Config) string {
	t.Helper()
	user := imapmemserver.NewUser(mailUser, mailPassword)
	if err := user.Create("INBOX", nil); err != nil {
		t.Fatal(err)
	}
	users := imapmemserver.New()
	users.AddUser(user)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	options := &imapserver.Options{
		NewSession: func(*imapserver.Conn) (imapserver.Session, *imapserver.GreetingData, error) {
			if mechanism == "" {
				return users.NewSession(), nil, nil
			}
			return &tokenSession{Session: users.NewSession(), mechanism: mechanism}, nil, nil
		},
		Caps: capSet(), Logger: log.New(io.Discard, "", 0),
	}
	if security == email.StartTLS {
		options.TLSConfig = cert
	} else {
		l = tls.NewListener(l, cert)
	}
	server := imapserver.New(options)
	go server.Serve(l)
	t.Cleanup(func() { server.Close() })
	return l.Addr().String()
}

// Passwords and tokens go only through TLS, to a server whose certificate holds.
func TestLogsInSecurely(t *testing.T) {
	cert, pool := certificate(t)
	token := func(s string) func(context.Context) (string, error) {
		return func(context.Context) (string, error) { return s, nil }
	}
	trusted := &tls.Config{RootCAs: pool}
	for _, f := range []struct {
		name      string
		security  email.Security
		mechanism string
		account   email.Account
		tls       *tls.Config
		fails     string
	}{
		{"TLS, password", email.ImplicitTLS, "", email.Account{Password: mailPassword}, trusted, ""},
		{"STARTTLS, password", email.StartTLS, "", email.Account{Password: mailPassword}, trusted, ""},
		{"TLS, token", email.ImplicitTLS, sasl.OAuthBearer, email.Account{Token: token("tok")}, trusted, ""},
		{"STARTTLS, token the older way", email.StartTLS, "XOAUTH2", email.Account{Token: token("tok")}, trusted, ""},
		{"token run out", email.ImplicitTLS, sasl.OAuthBearer, email.Account{Token: token("old")}, trusted, "log in"},
		{"TLS, unknown certificate", email.ImplicitTLS, "", email.Account{Password: mailPassword}, nil, "certificate"},
		{"STARTTLS, unknown certificate", email.StartTLS, "", email.Account{Password: mailPassword}, nil, "certificate"},
	} {
		address := secureServer(t, f.security, f.mechanism, cert)
		w := watcherFor(t, address, newKept(), func(cfg *email.WatcherConfig) {
			cfg.Security, cfg.TLS, cfg.Account = f.security, f.tls, f.account
			cfg.Account.User = mailUser
		})
		err := w.Check(t.Context())
		if (err == nil) != (f.fails == "") || (err != nil && !strings.Contains(err.Error(), f.fails)) {
			t.Errorf("%s: %v, want %q", f.name, err, f.fails)
		}
	}
}
