package photo

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/netip"
	"net/url"
	"slices"
	"strings"
	"time"
)

// Errors of a fetch. ErrHost, ErrAddress and ErrTooLarge stay so however often it is
// tried; ErrGone means that the carrier no longer has the picture.
var (
	ErrHost     = errors.New("not a host of the carrier")
	ErrTooLarge = errors.New("more bytes than allowed")
	ErrGone     = errors.New("no longer there")
)

// StatusError is an answer that is neither the picture nor ErrGone. A 401 or 403 is a
// matter of the credentials, a 429 or 5xx passes.
type StatusError struct{ Status int }

func (e *StatusError) Error() string { return fmt.Sprintf("the carrier answers %d", e.Status) }

// FetchSettings say where pictures may be fetched from.
type FetchSettings struct {
	User, Password string // sent to CredentialHosts only, and only over TLS
	// CredentialHosts get the credentials, Hosts may be fetched from (the former too). Each
	// is a host name, or with a leading dot all names below it.
	CredentialHosts, Hosts []string
	Bytes                  int64         // most bytes of a picture; default 25 MB
	Time                   time.Duration // for one fetch with its redirects; default 30 s
	// Loopback allows plain HTTP to loopback addresses whose host is listed, with the
	// credentials: for tests and the demo, where the carrier is a program next door.
	Loopback bool
}

// Fetcher gets pictures from the carrier. It may be used by several goroutines.
type Fetcher struct {
	set    FetchSettings
	client *http.Client
}

// maxRedirects is one more than the carrier needs (interface, then file store).
const maxRedirects = 3

// NewFetcher makes a Fetcher. It uses no proxy of the environment: the addresses that
// it looks at are those that it dials itself.
func NewFetcher(set FetchSettings) *Fetcher {
	if set.Bytes <= 0 {
		set.Bytes = 25_000_000
	}
	if set.Time <= 0 {
		set.Time = 30 * time.Second
	}
	f := &Fetcher{set: set}
	dialer := newDialer(set.Loopback)
	f.client = &http.Client{
		CheckRedirect: f.follow,
		Transport: &http.Transport{
			DialContext:            dialer.DialContext,
			ForceAttemptHTTP2:      true,
			TLSHandshakeTimeout:    10 * time.Second,
			ResponseHeaderTimeout:  20 * time.Second,
			IdleConnTimeout:        time.Minute,
			MaxIdleConnsPerHost:    4,
			MaxResponseHeaderBytes: 64 << 10,
			DisableCompression:     true,
		},
	}
	return f
}

func newDialer(loopback bool) *net.Dialer {
	return &net.Dialer{Timeout: 10 * time.Second, Control: dialControl(loopback)}
}

// Fetch gets the bytes of a picture.
func (f *Fetcher) Fetch(ctx context.Context, address string) ([]byte, error) {
	var file []byte
	err := f.do(ctx, http.MethodGet, address, func(body io.Reader) (err error) {
		file, err = io.ReadAll(io.LimitReader(body, f.set.Bytes+1))
		if err == nil && int64(len(file)) > f.set.Bytes {
			err = ErrTooLarge
		}
		return err
	})
	if err != nil {
		return nil, fmt.Errorf("fetch photo: %w", err)
	}
	return file, nil
}

// Delete removes a picture at the carrier; one that is gone already is no error.
func (f *Fetcher) Delete(ctx context.Context, address string) error {
	err := f.do(ctx, http.MethodDelete, address, func(io.Reader) error { return nil })
	if err != nil && !errors.Is(err, ErrGone) {
		return fmt.Errorf("delete photo at the carrier: %w", err)
	}
	return nil
}

func (f *Fetcher) do(ctx context.Context, method, address string, read func(io.Reader) error) error {
	ctx, cancel := context.WithTimeout(ctx, f.set.Time)
	defer cancel()
	r, err := http.NewRequestWithContext(ctx, method, address, nil)
	if err != nil {
		return ErrHost // the error would show the address
	}
	if err := f.prepare(r); err != nil {
		return err
	}
	res, err := f.client.Do(r)
	if err != nil {
		return withoutAddress(err)
	}
	defer res.Body.Close()
	if err := statusError(res.StatusCode); err != nil {
		return err
	}
	if res.ContentLength > f.set.Bytes {
		return ErrTooLarge
	}
	return read(res.Body)
}

// withoutAddress drops what net/http puts around an error: the address of a picture is
// a key to it and stays out of logs.
func withoutAddress(err error) error {
	var whole *url.Error
	if errors.As(err, &whole) {
		return whole.Err
	}
	return err
}

func statusError(status int) error {
	switch {
	case status >= 200 && status < 300:
		return nil
	case status == http.StatusNotFound, status == http.StatusGone:
		return ErrGone
	}
	return &StatusError{Status: status}
}

// follow judges a redirect as the first address was judged, and decides anew whether
// the credentials go along. Only reading follows.
func (f *Fetcher) follow(r *http.Request, via []*http.Request) error {
	if len(via) > maxRedirects || r.Method != http.MethodGet {
		return http.ErrUseLastResponse
	}
	return f.prepare(r)
}

// prepare checks where a request goes and gives it the credentials that belong there.
func (f *Fetcher) prepare(r *http.Request) error {
	r.Header.Del("Authorization")
	r.Header.Del("Referer")
	r.Header.Set("Accept", "image/*")
	trusted := listed(f.set.CredentialHosts, r.URL)
	if !trusted && !listed(f.set.Hosts, r.URL) || r.URL.User != nil || !f.scheme(r.URL) {
		return ErrHost
	}
	if trusted && f.set.User != "" {
		r.SetBasicAuth(f.set.User, f.set.Password)
	}
	return nil
}

// scheme allows TLS on its own port, and with Loopback what is on this machine.
func (f *Fetcher) scheme(u *url.URL) bool {
	if f.set.Loopback && loopbackHost(u.Hostname()) {
		return u.Scheme == "http" || u.Scheme == "https"
	}
	return u.Scheme == "https" && (u.Port() == "" || u.Port() == "443")
}

func loopbackHost(host string) bool {
	a, err := netip.ParseAddr(host)
	return host == "localhost" || err == nil && a.IsLoopback()
}

func listed(hosts []string, u *url.URL) bool {
	host := strings.TrimSuffix(strings.ToLower(u.Hostname()), ".")
	return host != "" && slices.ContainsFunc(hosts, func(h string) bool {
		h = strings.ToLower(h)
		return host == h || strings.HasPrefix(h, ".") && strings.HasSuffix(host, h)
	})
}
