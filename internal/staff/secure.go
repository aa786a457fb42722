package staff

import (
	"net"
	"net/http"
	"net/netip"
	"strings"
)

// policy lets a page load nothing but this server's own files, and run no script that
// stands in the page itself.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
	"form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// mostPosted bounds a form; the longest field is a message.
const mostPosted = 64 << 10

// secured puts on every answer what keeps a page from being misused, and turns away
// posts that another site's page makes.
func (s *Server) secured(next http.Handler) http.Handler {
	guarded := http.NewCrossOriginProtection().Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Permissions-Policy", "camera=(), microphone=(), geolocation=()")
		h.Set("Cache-Control", "no-store")
		if s.opts.Secure {
			h.Set("Strict-Transport-Security", "max-age=31536000")
		}
		r.Body = http.MaxBytesReader(w, r.Body, mostPosted)
		guarded.ServeHTTP(w, r)
	})
}

// clientAddress is the network that a request comes from: an address, or of IPv6 the /64
// around it, for anybody there has as many addresses as they like (RFC 6177). A proxy of ours stands on this machine or
// in the same private network; only then is its word taken, and only its own: the last
// address that it added.
func clientAddress(r *http.Request) string {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		host = r.RemoteAddr
	}
	peer, err := netip.ParseAddr(host)
	if err != nil {
		return "unknown"
	}
	if !peer.IsLoopback() && !peer.IsPrivate() {
		return network(peer)
	}
	list := strings.Split(r.Header.Get("X-Forwarded-For"), ",")
	if last, err := netip.ParseAddr(strings.TrimSpace(list[len(list)-1])); err == nil {
		return network(last)
	}
	return network(peer)
}

func network(a netip.Addr) string {
	a = a.Unmap().WithZone("")
	if a.Is4() {
		return a.String()
	}
	return netip.PrefixFrom(a, 64).Masked().String()
}
