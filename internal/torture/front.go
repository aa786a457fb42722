package torture

import (
	"io"
	"log"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"sync"
	"sync/atomic"
	"testing"
)

// Front is the address that the carrier knows: a proxy that hands each post to one of the
// bots that are up, in turn, and answers 502 while none is.
type Front struct {
	URL  string
	mu   sync.Mutex
	bots []string // host:port
	next atomic.Int64
}

func newFront(t testing.TB) *Front {
	f := &Front{}
	proxy := &httputil.ReverseProxy{
		Rewrite: func(r *httputil.ProxyRequest) {
			r.SetURL(&url.URL{Scheme: "http", Host: f.pick()})
		},
		ErrorLog:  log.New(io.Discard, "", 0), // bots die here
		Transport: &http.Transport{DisableKeepAlives: true},
	}
	server := httptest.NewServer(proxy)
	t.Cleanup(server.Close)
	f.URL = server.URL
	return f
}

func (f *Front) pick() string {
	f.mu.Lock()
	defer f.mu.Unlock()
	if len(f.bots) == 0 {
		return "127.0.0.1:1" // nobody listens there
	}
	return f.bots[int(f.next.Add(1))%len(f.bots)]
}

func (f *Front) add(address string) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.bots = append(f.bots, address)
}

func (f *Front) remove(address string) {
	f.mu.Lock()
	defer f.mu.Unlock()
	for i, a := range f.bots {
		if a == address {
			f.bots = append(f.bots[:i:i], f.bots[i+1:]...)
			return
		}
	}
}
