package photo

import (
	"context"
	"errors"
	"net"
	"net/http"
	"net/netip"
	"testing"
	"time"

	"golang.org/x/net/dns/dnsmessage"
)

// nameServer answers every question for an address with its own, over UDP on loopback.
func nameServer(t *testing.T, answer netip.Addr) *net.Resolver {
	t.Helper()
	conn, err := net.ListenPacket("udp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { conn.Close() })
	go func() {
		b := make([]byte, 1500)
		for {
			n, from, err := conn.ReadFrom(b)
			if err != nil {
				return // the test ended
			}
			if reply, err := replyTo(b[:n], answer); err == nil {
				_, _ = conn.WriteTo(reply, from)
			}
		}
	}()
	return &net.Resolver{PreferGo: true, Dial: func(ctx context.Context, _, _ string) (net.Conn, error) {
		return new(net.Dialer).DialContext(ctx, "udp", conn.LocalAddr().String())
	}}
}

func replyTo(question []byte, answer netip.Addr) ([]byte, error) {
	var m dnsmessage.Message
	if err := m.Unpack(question); err != nil {
		return nil, err
	}
	m.Response, m.Authoritative, m.Additionals = true, true, nil
	for _, q := range m.Questions {
		h := dnsmessage.ResourceHeader{Name: q.Name, Class: q.Class, Type: q.Type}
		switch {
		case q.Type == dnsmessage.TypeA && answer.Is4():
			m.Answers = append(m.Answers, dnsmessage.Resource{Header: h, Body: &dnsmessage.AResource{A: answer.As4()}})
		case q.Type == dnsmessage.TypeAAAA && !answer.Is4():
			m.Answers = append(m.Answers, dnsmessage.Resource{Header: h, Body: &dnsmessage.AAAAResource{AAAA: answer.As16()}})
		}
	}
	return m.Pack()
}

// A name of the carrier that leads into the shop's own network, by mistake or by somebody
// who answers in the name server's place, is not followed there.
func TestNamesThatLeadInside(t *testing.T) {
	for _, inside := range []string{"127.0.0.1", "10.0.0.5", "169.254.169.254", "192.168.1.1", "::1", "::ffff:127.0.0.1", "::ffff:10.0.0.5", "fd00::1", "fe80::1", "0.0.0.0", "64:ff9b::a00:5"} {
		f := NewFetcher(FetchSettings{User: "AC1", Password: "secret", CredentialHosts: []string{"api.carrier.example"}, Hosts: []string{".store.example"}, Time: 5 * time.Second})
		dialer := newDialer(false)
		dialer.Resolver = nameServer(t, netip.MustParseAddr(inside))
		f.client.Transport.(*http.Transport).DialContext = dialer.DialContext
		for _, address := range []string{"https://api.carrier.example/media/1", "https://pictures.store.example/1"} {
			if _, err := f.Fetch(t.Context(), address); !errors.Is(err, ErrAddress) {
				t.Errorf("%s at %s: %v", address, inside, err)
			}
		}
	}
}
