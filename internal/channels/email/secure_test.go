package email_test

import (
	"context"
	"crypto/tls"
	"errors"
	"io"
	"log"
	"net"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/emersion/go-imap/v2"
	"github.com/emersion/go-imap/v2/imapserver"
	"github.com/emersion/go-imap/v2/imapserver/imapmemserver"
	"github.com/emersion/go-sasl"

	"example.com/intake-bot/internal/channels/email"
)

// tokenSession is a session of the memory server that knows tokens in place of passwords.
type tokenSession struct {
	imapserver.Session
	mechanism string
	token     func() string // that is good now
}

func (s *tokenSession) AuthenticateMechanisms() []string { return []string{s.mechanism} }

func (s *tokenSession) Authenticate(mechanism string) (sasl.Server, error) {
	if mechanism != s.mechanism {
		return nil, errors.New("unknown mechanism")
	}
	if mechanism == sasl.OAuthBearer {
		return sasl.NewOAuthBearerServer(func(o sasl.OAuthBearerOptions) *sasl.OAuthBearerError {
			if o.Token != s.token() || s.Login(mailUser, mailPassword) != nil {
				return &sasl.OAuthBearerError{Status: "invalid_token"}
			}
			return nil
		}), nil
	}
	return xoauth2Server{s}, nil
}

type xoauth2Server struct{ s *tokenSession }

func (x xoauth2Server) Next(response []byte) ([]byte, bool, error) {
	if string(response) != "user="+mailUser+"\x01auth=Bearer "+x.s.token()+"\x01\x01" {
		return nil, true, errors.New("invalid token")
	}
	return nil, true, x.s.Login(mailUser, mailPassword)
}

func secureServer(t *testing.T, security email.Security, mechanism string, cert *tls.Config) string {
	t.Helper()
	_, address := tokenServer(t, security, mechanism, cert, func() string { return "tok" })
	return address
}

func tokenServer(t *testing.T, security email.Security, mechanism string, cert *tls.Config, token func() string) (*imapmemserver.User, string) {
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
			return &tokenSession{Session: users.NewSession(), mechanism: mechanism, token: token}, nil, nil
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
	return user, l.Addr().String()
}

// A token that ran out is no matter: at each log-in the command is asked for the one that
// is good now, as also where the server refuses the one before.
func TestTokenIsAskedForAtEachLogIn(t *testing.T) {
	cert, pool := certificate(t)
	file := filepath.Join(t.TempDir(), "token") // what the owner's program prints
	write := func(token string) {
		t.Helper()
		if err := os.WriteFile(file, []byte(token+"\n"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	var good atomic.Value
	good.Store("first")
	write("first")
	user, address := tokenServer(t, email.ImplicitTLS, sasl.OAuthBearer, cert, func() string { return good.Load().(string) })
	p := startProxy(t, address, nil)
	k := newKept()
	w := watcherFor(t, p.address, k, func(cfg *email.WatcherConfig) {
		cfg.Security, cfg.TLS = email.ImplicitTLS, &tls.Config{RootCAs: pool}
		cfg.Account = email.Account{User: mailUser, Token: email.TokenCommand("cat", file)}
	})
	run(t, w)
	put := func(n int) {
		t.Helper()
		raw := mailNumber(n)
		if _, err := user.Append("INBOX", &literal{Reader: strings.NewReader(raw), size: int64(len(raw))}, &imap.AppendOptions{}); err != nil {
			t.Fatal(err)
		}
	}
	put(1)
	until(t, "the first mail", func() bool { return len(k.ids(t)) == 1 })
	good.Store("second") // the server forgets the first one and breaks off
	p.cut()
	until(t, "the refusal", func() bool { h := w.Health(); return h.Err != nil && strings.Contains(h.Err.Error(), "log in") })
	put(2)
	write("second")
	until(t, "the second mail", func() bool { return len(k.ids(t)) == 2 })
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
