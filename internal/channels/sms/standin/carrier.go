// Package standin is a carrier in miniature, for the demo and the tests: it takes the
// REST calls by which texts are sent, keeps the texts, and posts signed webhooks about
// what people text and what became of each send. It can be told to fail in the ways in
// which a real carrier fails. No text ever leaves the machine.
package standin

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"time"
)

// Config is the one account that the carrier has.
type Config struct {
	AccountID string
	AuthToken string
	Number    string // the shop's, E.164
	// InboundURL is where messages from people are posted, as signed: the bot's PUBLIC_URL
	// and path.
	InboundURL string
	// DeliverTo is the scheme and host that posts really go to, where a proxy would
	// stand between; empty: as in the address.
	DeliverTo string
	// OnMessage is told of each message once, in either direction, in the order in which
	// the carrier took them. It must not call the carrier.
	OnMessage func(Message)
	Now       func() time.Time // nil: time.Now
	HTTP      *http.Client     // for posts; nil: one with a timeout of 20 s
	Callbacks Callbacks
	MediaAuth bool // media need the account's credentials
}

// Carrier is the stand-in. Its zero value is of no use; see New.
type Carrier struct {
	cfg    Config
	mux    *http.ServeMux
	faults faults

	mu       sync.Mutex
	messages []*Message // oldest first
	byID     map[string]*Message
	media    map[string]storedMedia
	changed  chan struct{} // closed and replaced at every change
	plan     Callbacks
	base     string
	onFile   *OnFile // nil: as usual

	serving sync.WaitGroup
	reports sync.WaitGroup
	ctx     context.Context
	cancel  context.CancelFunc
	server  *http.Server
}

// New makes a carrier that serves nothing yet: use it as an http.Handler, or Start it.
func New(cfg Config) *Carrier {
	if cfg.Now == nil {
		cfg.Now = time.Now
	}
	if cfg.HTTP == nil {
		cfg.HTTP = &http.Client{Timeout: 20 * time.Second}
	}
	c := &Carrier{
		cfg: cfg, byID: map[string]*Message{}, media: map[string]storedMedia{},
		changed: make(chan struct{}), plan: cfg.Callbacks,
	}
	c.ctx, c.cancel = context.WithCancel(context.Background())
	c.faults.init()
	c.mux = c.routes()
	return c
}

// Start serves on a TCP address such as "127.0.0.1:0" until Close, and returns the base
// URL.
func (c *Carrier) Start(address string) (string, error) {
	l, err := net.Listen("tcp", address)
	if err != nil {
		return "", fmt.Errorf("stand-in carrier: %w", err)
	}
	c.SetBaseURL("http://" + l.Addr().String())
	c.server = &http.Server{Handler: c, ReadHeaderTimeout: 10 * time.Second}
	c.serving.Go(func() {
		if err := c.server.Serve(l); !errors.Is(err, http.ErrServerClosed) {
			c.cancel()
		}
	})
	return c.BaseURL(), nil
}

// Close stops serving and posting, and waits until both have ended.
func (c *Carrier) Close() error {
	c.cancel()
	var err error
	if c.server != nil {
		ctx, cancel := context.WithTimeout(context.Background(), 2*time.Second)
		defer cancel()
		if c.server.Shutdown(ctx) != nil { // somebody keeps a connection busy
			err = c.server.Close()
		}
	}
	c.serving.Wait()
	c.reports.Wait()
	return err
}

// SetBaseURL says under which address the carrier is served, where Start does not know
// it; media addresses begin with it.
func (c *Carrier) SetBaseURL(u string) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.base = strings.TrimRight(u, "/")
}

// BaseURL is the address under which the carrier is served.
func (c *Carrier) BaseURL() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.base
}

// SetInboundURL is for a bot whose address is known only once it runs.
func (c *Carrier) SetInboundURL(u string) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.cfg.InboundURL = u
}

func (c *Carrier) inboundURL() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.cfg.InboundURL
}

func (c *Carrier) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Date", c.cfg.Now().UTC().Format(http.TimeFormat))
	c.mux.ServeHTTP(w, r)
}

// deliverTo is where a post signed for one address really goes.
func (c *Carrier) deliverTo(signed string) (string, error) {
	if c.cfg.DeliverTo == "" {
		return signed, nil
	}
	u, err := url.Parse(signed)
	if err != nil {
		return "", fmt.Errorf("webhook address: %w", err)
	}
	to, err := url.Parse(c.cfg.DeliverTo)
	if err != nil {
		return "", fmt.Errorf("address to deliver to: %w", err)
	}
	u.Scheme, u.Host = to.Scheme, to.Host
	return u.String(), nil
}
