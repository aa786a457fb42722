package email_test

import (
	"bytes"
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"errors"
	"io"
	"math/big"
	"net"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/emersion/go-sasl"
	"github.com/emersion/go-smtp"

	"example.com/intake-bot/internal/channels/email"
)

// relay is a submission server within the test.
type relay struct {
	mu       sync.Mutex
	got      []string
	from     []string
	failRcpt error
	failMail error
	failData error
	hang     chan struct{} // where set, the last dot is never answered
	heard    chan struct{} // closed then
	token    string
}

func (r *relay) NewSession(*smtp.Conn) (smtp.Session, error) { return &relaySession{r: r}, nil }

func (r *relay) taken() []string {
	r.mu.Lock()
	defer r.mu.Unlock()
	return append([]string(nil), r.got...)
}

type relaySession struct {
	r    *relay
	from string
}

func (s *relaySession) AuthMechanisms() []string { return []string{sasl.Plain, sasl.OAuthBearer} }

func (s *relaySession) Auth(mechanism string) (sasl.Server, error) {
	if mechanism == sasl.OAuthBearer {
		return sasl.NewOAuthBearerServer(func(o sasl.OAuthBearerOptions) *sasl.OAuthBearerError {
			if o.Username == mailUser && o.Token == s.r.token {
				return nil
			}
			return &sasl.OAuthBearerError{Status: "invalid_token"}
		}), nil
	}
	return sasl.NewPlainServer(func(_, user, password string) error {
		if user == mailUser && password == mailPassword {
			return nil
		}
		return smtp.ErrAuthFailed
	}), nil
}

func (s *relaySession) Mail(from string, _ *smtp.MailOptions) error {
	s.from = from
	return s.r.failMail
}
func (s *relaySession) Rcpt(string, *smtp.RcptOptions) error { return s.r.failRcpt }
func (s *relaySession) Reset()                               {}
func (s *relaySession) Logout() error                        { return nil }
func (s *relaySession) Data(body io.Reader) error {
	b, err := io.ReadAll(body)
	if err != nil {
		return err
	}
	if s.r.hang != nil {
		close(s.r.heard)
		<-s.r.hang
	}
	if s.r.failData != nil {
		return s.r.failData
	}
	s.r.mu.Lock()
	defer s.r.mu.Unlock()
	s.r.got = append(s.r.got, string(b))
	s.r.from = append(s.r.from, s.from)
	return nil
}

func startRelay(t *testing.T, r *relay, cfg *tls.Config, implicit bool) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	if implicit {
		l = tls.NewListener(l, cfg)
	}
	s := smtp.NewServer(r)
	s.Domain, s.TLSConfig, s.AllowInsecureAuth = "mx.test", cfg, cfg == nil
	go s.Serve(l)
	t.Cleanup(func() { s.Close() })
	return l.Addr().String()
}

// certificate makes one for 127.0.0.1, and the pool that trusts it.
func certificate(t *testing.T) (*tls.Config, *x509.CertPool) {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	template := &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: "mx.test"}, IPAddresses: []net.IP{net.IPv4(127, 0, 0, 1)},
		NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(time.Hour), IsCA: true, BasicConstraintsValid: true,
	}
	der, err := x509.CreateCertificate(rand.Reader, template, template, &key.PublicKey, key)
	if err != nil {
		t.Fatal(err)
	}
	parsed, err := x509.ParseCertificate(der)
	if err != nil {
		t.Fatal(err)
	}
	pool := x509.NewCertPool()
	pool.AddCert(parsed)
	return &tls.Config{Certificates: []tls.Certificate{{Certificate: [][]byte{der}, PrivateKey: key}}}, pool
}

func senderFor(t *testing.T, address string, change func(*email.SenderConfig)) *email.Sender {
	t.Helper()
	cfg := email.SenderConfig{Address: address, Security: email.Insecure, Timeout: time.Minute,
		Account: email.Account{User: mailUser, Password: mailPassword}}
	if change != nil {
		change(&cfg)
	}
	s, err := email.NewSender(cfg)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestSendsTheStoredBytes(t *testing.T) {
	r := &relay{}
	s := senderFor(t, startRelay(t, r, nil, false), nil)
	o := answer()
	o.Text = "a line\n.\n..two dots\nend"
	raw, err := email.Compose(o)
	if err != nil {
		t.Fatal(err)
	}
	for range 2 { // a second try is the same mail
		if err := s.Send(t.Context(), "", "dana@example.com", raw); err != nil {
			t.Fatal(err)
		}
	}
	got := r.taken()
	if len(got) != 2 || got[0] != string(raw) || got[1] != string(raw) || r.from[0] != "" {
		t.Errorf("%d mails, from %q; the first is ours: %v", len(got), r.from, got[0] == string(raw))
	}
	if err := s.Check(t.Context()); err != nil {
		t.Error(err)
	}
}

func TestSendSecurely(t *testing.T) {
	server, pool := certificate(t)
	for _, security := range []email.Security{email.ImplicitTLS, email.StartTLS} {
		r := &relay{token: "tok"}
		address := startRelay(t, r, server, security == email.ImplicitTLS)
		trusting := func(cfg *email.SenderConfig) {
			cfg.Security, cfg.TLS = security, &tls.Config{RootCAs: pool}
			cfg.Account = email.Account{User: mailUser, Token: email.TokenCommand("echo", "tok")}
		}
		if err := senderFor(t, address, trusting).Send(t.Context(), "a@pinwheel.example", "dana@example.com", []byte("Subject: x\r\n\r\nx\r\n")); err != nil {
			t.Errorf("%s: %v", security, err)
		}
		wary := func(cfg *email.SenderConfig) { cfg.Security = security }
		var e *email.SendError
		if err := senderFor(t, address, wary).Check(t.Context()); !errors.As(err, &e) || e.Stage != "connect" || e.Kind != email.SendTemporary {
			t.Errorf("%s: a server with an unknown certificate: %v", security, err)
		}
	}
}

func smtpError(code int) error {
	return &smtp.SMTPError{Code: code, Message: "no dana@example.com here"}
}

// 4xx is tried again, 5xx is not: RFC 5321 section 4.2.1.
func TestSendRefusals(t *testing.T) {
	for _, f := range []struct {
		name  string
		relay *relay
		stage string
		code  int
		kind  email.SendKind
	}{
		{"sender refused", &relay{failMail: smtpError(550)}, "sender", 550, email.SendPermanent},
		{"no such person", &relay{failRcpt: smtpError(550)}, "recipient", 550, email.SendPermanent},
		{"mailbox busy", &relay{failRcpt: smtpError(450)}, "recipient", 450, email.SendTemporary},
		{"greylisted", &relay{failRcpt: smtpError(451)}, "recipient", 451, email.SendTemporary},
		{"content refused", &relay{failData: smtpError(554)}, "end", 554, email.SendPermanent},
		{"server full", &relay{failData: smtpError(452)}, "end", 452, email.SendTemporary},
	} {
		s := senderFor(t, startRelay(t, f.relay, nil, false), nil)
		err := s.Send(t.Context(), "a@pinwheel.example", "dana@example.com", []byte("Subject: x\r\n\r\nx\r\n"))
		var e *email.SendError
		if !errors.As(err, &e) || e.Stage != f.stage || e.Code != f.code || e.Kind != f.kind {
			t.Errorf("%s: %v", f.name, err)
		}
		if err != nil && strings.Contains(err.Error(), "dana") {
			t.Errorf("%s: the error names the person: %v", f.name, err)
		}
	}
}

func TestSendWrongPassword(t *testing.T) {
	address := startRelay(t, &relay{}, nil, false)
	s := senderFor(t, address, func(cfg *email.SenderConfig) { cfg.Account.Password = "wrong" })
	err := s.Send(t.Context(), "", "dana@example.com", []byte("x"))
	var e *email.SendError
	if !errors.As(err, &e) || e.Stage != "auth" || e.Kind != email.SendTemporary {
		t.Errorf("got %v", err)
	}
}

func TestSendUnknownEnd(t *testing.T) {
	r := &relay{hang: make(chan struct{}), heard: make(chan struct{})}
	defer close(r.hang)
	s := senderFor(t, startRelay(t, r, nil, false), nil)
	ctx, cancel := context.WithCancel(t.Context())
	go func() { <-r.heard; cancel() }() // the whole mail is there
	err := s.Send(ctx, "", "dana@example.com", []byte("Subject: x\r\n\r\nx\r\n"))
	var e *email.SendError
	if !errors.As(err, &e) || e.Kind != email.SendUnknown || e.Stage != "end" {
		t.Errorf("got %v", err)
	}
}

func TestSendNobodyListens(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	l.Close()
	err = senderFor(t, l.Addr().String(), nil).Send(t.Context(), "", "dana@example.com", []byte("x"))
	var e *email.SendError
	if !errors.As(err, &e) || e.Kind != email.SendTemporary || e.Stage != "connect" {
		t.Errorf("got %v", err)
	}
}

func TestSilentServerIsGivenUp(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close() // accepts, and says nothing
	s := senderFor(t, l.Addr().String(), func(cfg *email.SenderConfig) { cfg.Timeout = 200 * time.Millisecond })
	err = s.Send(t.Context(), "", "dana@example.com", []byte("x"))
	var e *email.SendError
	if !errors.As(err, &e) || e.Kind != email.SendTemporary {
		t.Errorf("got %v", err)
	}
}

func TestTokenCommand(t *testing.T) {
	for _, f := range []struct {
		name, command string
		args          []string
		want          string
	}{
		{"prints one", "echo", []string{"abc.def"}, "abc.def"},
		{"prints nothing", "true", nil, ""},
		{"prints two words", "echo", []string{"a b"}, ""},
		{"fails", "false", nil, ""},
	} {
		got, err := email.TokenCommand(f.command, f.args...)(t.Context())
		if got != f.want || (err == nil) != (f.want != "") {
			t.Errorf("%s: %q, %v", f.name, got, err)
		}
	}
}

// A signature of the sender's own domain holds; of another, or on changed words, it does not.
func TestSignedBy(t *testing.T) {
	raw, record := signed(t, "example.com", "From: Dana <dana@example.com>\r\nSubject: dome\r\nTo: hello@pinwheel.example\r\n\r\n24 x 48\r\n")
	lookup := func(domain string) ([]string, error) {
		if domain == "k1._domainkey.example.com" {
			return []string{record}, nil
		}
		return nil, &net.DNSError{IsNotFound: true}
	}
	for _, f := range []struct {
		name, from string
		raw        []byte
		want       bool
	}{
		{"own domain", "dana@example.com", raw, true},
		{"a part of the domain", "dana@mail.example.com", raw, true}, // relaxed, RFC 7489 section 3.1.1
		{"another domain", "dana@example.org", raw, false},
		{"changed words", "dana@example.com", bytes.Replace(raw, []byte("24 x 48"), []byte("24 x 49"), 1), false},
		{"not signed", "dana@example.com", []byte("From: dana@example.com\r\n\r\nx\r\n"), false},
	} {
		got, err := email.SignedBy(bytes.NewReader(f.raw), f.from, lookup)
		if got != f.want || err != nil {
			t.Errorf("%s: %v, %v", f.name, got, err)
		}
	}
}
