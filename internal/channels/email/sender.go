package email

import (
	"bytes"
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"io"
	"net"
	"time"

	"github.com/emersion/go-smtp"
)

// SendKind says what a failed send means for the next one.
type SendKind string

const (
	SendTemporary SendKind = "temporary" // not taken: try again later, for a day
	SendPermanent SendKind = "permanent" // refused: never send this again as it is
	SendUnknown   SendKind = "unknown"   // the answer to the last dot is missing: may have been taken
)

// SendError says why a mail was not, or may not have been, taken. It holds no words and
// no addresses.
type SendError struct {
	Kind  SendKind
	Code  int    // SMTP, 0 where the server gave none
	Stage string // "connect", "auth", "sender", "recipient", "data", "end"
	cause error
}

func (e *SendError) Error() string {
	return fmt.Sprintf("send mail: %s at %s (code %d)", e.Kind, e.Stage, e.Code)
}

func (e *SendError) Unwrap() error { return e.cause }

// SenderConfig is the owner's submission server.
type SenderConfig struct {
	Address  string // host:port
	Security Security
	TLS      *tls.Config // nil: the system's roots, the host's name
	Account  Account     // no User: no AUTH
	Hello    string      // our own name; empty: "localhost"
	Timeout  time.Duration
}

// Sender hands mails over. It is safe for concurrent use: each send has a connection of
// its own.
type Sender struct{ cfg SenderConfig }

// NewSender checks the settings; it does not connect.
func NewSender(cfg SenderConfig) (*Sender, error) {
	if err := cfg.Security.check(cfg.Address); err != nil {
		return nil, fmt.Errorf("mail sending: %w", err)
	}
	if cfg.Hello == "" {
		cfg.Hello = "localhost"
	}
	if cfg.Timeout == 0 {
		cfg.Timeout = 2 * time.Minute
	}
	return &Sender{cfg: cfg}, nil
}

// Send hands over the stored bytes of one mail. An empty from is the null sender. A
// failure is a *SendError.
func (s *Sender) Send(ctx context.Context, from, to string, raw []byte) error {
	ctx, cancel := context.WithTimeout(ctx, s.cfg.Timeout)
	defer cancel()
	c, err := s.open(ctx)
	if err != nil {
		return err
	}
	stop := context.AfterFunc(ctx, func() { c.Close() })
	defer stop()
	defer c.Close()
	if err := transfer(c, from, to, raw); err != nil {
		return err
	}
	_ = c.Quit() // the mail is taken; whether the good-bye arrives changes nothing
	return nil
}

// Check connects and logs in.
func (s *Sender) Check(ctx context.Context) error {
	ctx, cancel := context.WithTimeout(ctx, s.cfg.Timeout)
	defer cancel()
	c, err := s.open(ctx)
	if err != nil {
		return err
	}
	return c.Quit()
}

func (s *Sender) open(ctx context.Context) (*smtp.Client, error) {
	conn, err := s.cfg.Security.dial(ctx, s.cfg.Address, s.cfg.TLS)
	if err != nil {
		return nil, failed("connect", err)
	}
	stop := context.AfterFunc(ctx, func() { conn.Close() })
	defer stop()
	c, err := s.greet(conn)
	if err != nil {
		conn.Close()
		return nil, failed("connect", err)
	}
	c.CommandTimeout = s.cfg.Timeout
	if err := s.login(ctx, c); err != nil {
		c.Close()
		return nil, err
	}
	return c, nil
}

// greet says hello; after STARTTLS once more, and only there is the server's certificate
// looked at.
func (s *Sender) greet(conn net.Conn) (*smtp.Client, error) {
	c := smtp.NewClient(conn)
	if s.cfg.Security == StartTLS {
		var err error
		if c, err = smtp.NewClientStartTLS(conn, tlsFor(s.cfg.Address, s.cfg.TLS)); err != nil {
			return nil, err
		}
	}
	return c, c.Hello(s.cfg.Hello)
}

func (s *Sender) login(ctx context.Context, c *smtp.Client) error {
	if s.cfg.Account.User == "" {
		return nil
	}
	mechanism, err := s.cfg.Account.mechanism(ctx, c.SupportsAuth)
	if err != nil {
		return failed("auth", err)
	}
	if err := c.Auth(mechanism); err != nil {
		e := failed("auth", err)
		e.Kind = SendTemporary // the owner can mend it; the mail is not at fault
		return e
	}
	return nil
}

func transfer(c *smtp.Client, from, to string, raw []byte) error {
	if err := c.Mail(from, nil); err != nil {
		return failed("sender", err)
	}
	if err := c.Rcpt(to, nil); err != nil {
		return failed("recipient", err)
	}
	data, err := c.Data()
	if err != nil {
		return failed("data", err)
	}
	if _, err := io.Copy(data, bytes.NewReader(raw)); err != nil {
		return failed("data", err)
	}
	if _, err := data.CloseWithResponse(); err != nil {
		e := failed("end", err)
		if e.Code == 0 {
			e.Kind = SendUnknown
		}
		return e
	}
	return nil
}

// failed sorts by the server's word: 4xx is temporary, 5xx is not, RFC 5321 section
// 4.2.1. What went wrong without its word, before the end of the mail, is temporary.
func failed(stage string, err error) *SendError {
	e := &SendError{Kind: SendTemporary, Stage: stage, cause: err}
	var said *smtp.SMTPError
	if errors.As(err, &said) {
		e.Code = said.Code
		e.cause = nil // its words may quote the address
		if !said.Temporary() {
			e.Kind = SendPermanent
		}
	}
	return e
}
