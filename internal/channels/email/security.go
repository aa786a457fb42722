package email

import (
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"net"
	"time"
)

// Security is how a connection to a mail server is kept from being read.
type Security string

const (
	ImplicitTLS Security = "tls"
	StartTLS    Security = "starttls"
	// Insecure sends passwords and mail in the clear: only to this machine itself.
	Insecure Security = "insecure"
)

func (s Security) check(address string) error {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return errors.New("server address: want host:port")
	}
	switch s {
	case ImplicitTLS, StartTLS:
		return nil
	case Insecure:
		if ip := net.ParseIP(host); host == "localhost" || (ip != nil && ip.IsLoopback()) {
			return nil
		}
		return errors.New(`security "insecure" is for a server on this machine only`)
	}
	return errors.New(`security: want "tls", "starttls" or "insecure"`)
}

// dial connects, and shakes hands where TLS comes first.
func (s Security) dial(ctx context.Context, address string, cfg *tls.Config) (net.Conn, error) {
	d := &net.Dialer{Timeout: 30 * time.Second, KeepAlive: 30 * time.Second}
	conn, err := d.DialContext(ctx, "tcp", address)
	if err != nil {
		return nil, fmt.Errorf("connect: %w", err)
	}
	if s != ImplicitTLS {
		return conn, nil
	}
	secure := tls.Client(conn, tlsFor(address, cfg))
	if err := secure.HandshakeContext(ctx); err != nil {
		conn.Close()
		return nil, fmt.Errorf("TLS: %w", err)
	}
	return secure, nil
}

func tlsFor(address string, cfg *tls.Config) *tls.Config {
	out := &tls.Config{}
	if cfg != nil {
		out = cfg.Clone()
	}
	if out.ServerName == "" {
		out.ServerName, _, _ = net.SplitHostPort(address)
	}
	return out
}
