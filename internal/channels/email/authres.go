package email

import (
	"io"
	"strings"

	"github.com/emersion/go-message"
	"github.com/emersion/go-msgauth/authres"
	"github.com/emersion/go-msgauth/dkim"
	"golang.org/x/net/publicsuffix"
)

// AuthResult is one line of what a server says that it found out about the sender: RFC
// 8601. Anybody can write such a line; only the one of the owner's own server counts.
type AuthResult struct {
	Server string // who says so, lower case
	Method string // "dmarc", "dkim", "spf"
	Result string // "pass", "fail"…
	Domain string // that was checked, lower case
}

// maxResults bounds what is kept of a mail full of such fields.
const maxResults = 50

func authResults(h message.Header) []AuthResult {
	var all []AuthResult
	fields := h.FieldsByKey("Authentication-Results")
	for fields.Next() && len(all) < maxResults {
		server, results, err := authres.Parse(fields.Value())
		if err != nil {
			continue
		}
		for _, r := range results[:min(len(results), maxResults)] {
			if a, ok := authResult(r); ok {
				a.Server = strings.ToLower(server)
				all = append(all, a)
			}
		}
	}
	return all
}

func authResult(r authres.Result) (AuthResult, bool) {
	switch r := r.(type) {
	case *authres.DMARCResult:
		return AuthResult{Method: "dmarc", Result: string(r.Value), Domain: strings.ToLower(r.From)}, true
	case *authres.DKIMResult:
		return AuthResult{Method: "dkim", Result: string(r.Value), Domain: strings.ToLower(domainOf(r.Domain, r.Identifier))}, true
	case *authres.SPFResult:
		return AuthResult{Method: "spf", Result: string(r.Value), Domain: strings.ToLower(domainOf("", r.From))}, true
	}
	return AuthResult{}, false
}

func domainOf(domain, address string) string {
	if domain != "" {
		return domain
	}
	return address[strings.LastIndex(address, "@")+1:]
}

// Proven reports whether the owner's receiving server, by the name that it writes into
// Authentication-Results, found that the sender's domain stands behind the mail: DMARC,
// or DKIM or SPF of a domain aligned with it (relaxed alignment, RFC 7489 section 3.1).
// That server must take off such fields that come from outside, RFC 8601 section 5.
func (m Message) Proven(server string) bool {
	from := domainOf("", m.From)
	if server == "" || m.From == "" {
		return false
	}
	for _, r := range m.AuthResults {
		if r.Server != strings.ToLower(server) || r.Result != string(authres.ResultPass) {
			continue
		}
		if aligned(r.Domain, from) || (r.Method == "dmarc" && r.Domain == "") {
			return true
		}
	}
	return false
}

// aligned: the same organizational domain.
func aligned(a, b string) bool {
	if a == "" || b == "" {
		return false
	}
	oa, errA := publicsuffix.EffectiveTLDPlusOne(a)
	ob, errB := publicsuffix.EffectiveTLDPlusOne(b)
	return errA == nil && errB == nil && oa == ob
}

// LookupTXT asks the domain name system.
type LookupTXT func(domain string) ([]string, error)

// SignedBy checks the mail's DKIM signatures, RFC 6376, and reports whether one of a
// domain aligned with the From address holds.
func SignedBy(raw io.Reader, from string, lookup LookupTXT) (bool, error) {
	verified, err := dkim.VerifyWithOptions(raw, &dkim.VerifyOptions{LookupTXT: lookup, MaxVerifications: 5})
	if err != nil && len(verified) == 0 {
		return false, err
	}
	for _, v := range verified {
		if v.Err == nil && aligned(v.Domain, domainOf("", from)) {
			return true, nil
		}
	}
	return false, nil
}
