package preflight

import (
	"bytes"
	"context"
	"crypto/tls"
	"crypto/x509"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"strings"
)

// checkAddress looks at PUBLIC_URL from here. Whether the carrier reaches it as well can't
// be known from here: a test text shows it.
func checkAddress(ctx context.Context, s *Settings) []Line {
	const check = "public address"
	if s.PublicURL == "" {
		return nil
	}
	u, err := url.Parse(s.PublicURL)
	if err != nil || u.Host == "" || u.Scheme != "https" && u.Scheme != "http" || u.RawQuery != "" || u.Fragment != "" {
		return []Line{wrong(check, "PUBLIC_URL is not an address", "write it like https://bot.example.com, as it is entered at the carrier")}
	}
	lines := []Line{resolved(ctx, s, check, u)}
	if lines[0].Result == Wrong {
		return lines
	}
	o := outside{client: &http.Client{Transport: s.Transport, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}, base: strings.TrimRight(s.PublicURL, "/")}
	if o.client.Transport == nil {
		direct := http.DefaultTransport.(*http.Transport).Clone() //nolint:forcetypeassert // it is one
		direct.Proxy = nil                                        // the carrier comes straight, too
		o.client.Transport = direct
	}
	lines = append(lines, o.health(ctx))
	if lines[1].Result == OK {
		lines = append(lines, o.unsigned(ctx), o.inside(ctx))
	}
	return lines
}

// resolved says where the name leads.
func resolved(ctx context.Context, s *Settings, check string, u *url.URL) Line {
	host := u.Hostname()
	addresses, err := s.Lookup(ctx, host)
	if err != nil || len(addresses) == 0 {
		return wrong(check, host+" leads nowhere", "enter the name at your domain's provider: an A record with this machine's address (AAAA for IPv6); a new one may take an hour to be known")
	}
	ip := net.ParseIP(addresses[0])
	found := fmt.Sprintf("%s leads to %s", host, strings.Join(addresses, ", "))
	switch {
	case ip != nil && ip.IsLoopback():
		return unknown(check, found+", this machine itself", "good for trying things out; the carrier can't reach it")
	case u.Scheme != "https":
		return wrong(check, "PUBLIC_URL begins with http://", "texts would cross the internet in the clear, and carriers' signatures are for the address they call: use https://")
	case ip != nil && ip.IsPrivate():
		return unknown(check, found+", an address within your own network", "the carrier must reach the name by another one, from outside")
	}
	return ok(check, "%s", found)
}

type outside struct {
	client *http.Client
	base   string
}

// ask gives the status and the first bytes of an answer.
func (o outside) ask(ctx context.Context, method, path string, form []byte) (status int, body string, header http.Header, err error) {
	r, err := http.NewRequestWithContext(ctx, method, o.base+path, bytes.NewReader(form))
	if err != nil {
		return 0, "", nil, err
	}
	if form != nil {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	res, err := o.client.Do(r)
	if err != nil {
		return 0, "", nil, err
	}
	defer res.Body.Close()
	b, err := io.ReadAll(io.LimitReader(res.Body, 4<<10))
	return res.StatusCode, strings.TrimSpace(string(b)), res.Header, err
}

func (o outside) health(ctx context.Context) Line {
	const check, start = "bot behind it", "start the bot and the proxy (docs/going-live.md, steps 3 and 6), then run this again"
	status, body, header, err := o.ask(ctx, http.MethodGet, "/healthz", nil)
	var unknownAuthority x509.UnknownAuthorityError
	var invalid *tls.CertificateVerificationError
	switch {
	case errors.As(err, &unknownAuthority), errors.As(err, &invalid):
		return wrong(check, "its certificate does not hold: "+last(err), "let the proxy get one for this name (ports 80 and 443 must be open); its log says why it could not: journalctl -u caddy")
	case err != nil:
		return wrong(check, "nobody answers: "+last(err), start)
	case status >= 300 && status < 400:
		return wrong(check, "it sends on to "+header.Get("Location"), "PUBLIC_URL must be the address that answers itself, without a detour: a post is not sent on")
	case status == http.StatusBadGateway || status == http.StatusServiceUnavailable || status == http.StatusGatewayTimeout:
		return wrong(check, fmt.Sprintf("the proxy answers %d: no bot behind it", status), "start the bot: sudo systemctl start intake-bot@8081 intake-bot@8082; its log says what is wrong: journalctl -u 'intake-bot@*'")
	case status != http.StatusOK || body != "ok":
		return wrong(check, fmt.Sprintf("/healthz is answered %d, and not by the bot", status), "another web server has this name or port: use the proxy configuration of deploy/proxy")
	}
	return ok(check, "/healthz is answered")
}

// unsigned posts what a stranger could; the bot must take none of it.
func (o outside) unsigned(ctx context.Context) Line {
	const check = "unsigned posts"
	form := url.Values{"MessageSid": {"SM00000000000000000000000000000000"}, "From": {"+12185550199"}, "To": {"+12185550142"}, "Body": {"preflight"}}
	status, _, _, err := o.ask(ctx, http.MethodPost, "/sms/inbound", []byte(form.Encode()))
	switch {
	case err != nil:
		return wrong(check, "nobody answers: "+last(err), "let the proxy pass /sms/ on: use the proxy configuration of deploy/proxy")
	case status == http.StatusForbidden:
		return ok(check, "/sms/inbound answers 403 to what the carrier did not sign")
	case status/100 == 2:
		return wrong(check, fmt.Sprintf("/sms/inbound answers %d to a post without a signature", status), "whatever answers there is not this program: use the proxy configuration of deploy/proxy")
	}
	return wrong(check, fmt.Sprintf("/sms/inbound answers %d to a post", status), "let the proxy pass /sms/ on with method and body as they come: use the proxy configuration of deploy/proxy")
}

// inside looks that what is for the house does not go out.
func (o outside) inside(ctx context.Context) Line {
	const check = "metrics inside"
	status, _, _, err := o.ask(ctx, http.MethodGet, "/metrics", nil)
	if err == nil && status == http.StatusOK {
		return wrong(check, "/metrics can be read from outside", "let METRICS_LISTEN be an address of this machine (127.0.0.1:9464), and the proxy not pass it on")
	}
	return ok(check, "/metrics can't be read from outside")
}

// last is the innermost reason, without the address that the library puts before it.
func last(err error) string {
	var with *url.Error
	if errors.As(err, &with) {
		err = with.Err
	}
	if errors.Is(err, context.DeadlineExceeded) {
		return "no answer in time"
	}
	return err.Error()
}
