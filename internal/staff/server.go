package staff

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"time"

	"github.com/alexedwards/scs/pgxstore"
	"github.com/alexedwards/scs/v2"
	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/riverqueue/river"
	"github.com/riverqueue/river/riverdriver/riverpgxv5"

	"example.com/intake-bot/internal/conversation"
)

// Options are what the page is made of. Pool, Shop and Send must be there.
type Options struct {
	Pool *pgxpool.Pool
	// Shop is the one in force.
	Shop func() *conversation.Shop
	// Send sees that what waits to be sent in a talk goes out, once tx is committed.
	Send func(ctx context.Context, tx pgx.Tx, conversationID int64) error
	// Address is where the page is reached from outside, without the path: https://bot.example.com
	Address string
	// Provider is the owner's own log-in; nil: there are only passwords.
	Provider *Provider
	// SegmentCents is what a segment of a text costs the shop, in cents; 0: not known.
	SegmentCents float64
	// ShopFile is the text of the shop file in force; nil: it can't be shown.
	ShopFile func() string

	Clock  func() time.Time // nil: time.Now; of the shop's doings, not of sessions
	Log    *slog.Logger     // nil: nothing is logged
	Secure bool             // the page is reached over https only
}

// Sessions end after so long without a click, and at the latest so long after the log-in.
const (
	idleLimit     = 4 * time.Hour
	absoluteLimit = 14 * time.Hour
)

// Server serves everything below Base.
type Server struct {
	opts      Options
	log       *slog.Logger
	sessions  *scs.SessionManager
	provider  *provider
	stopSweep context.CancelFunc
	queue     *river.Client[pgx.Tx] // only looked at and inserted into, never started here
	hub       *hub
	hashing   chan struct{} // how many passwords are tried at once
	handler   http.Handler
}

// Base is where the page begins.
const Base = "/staff"

// New prepares the page. Close ends what it keeps running.
func New(opts Options) (*Server, error) {
	if opts.Pool == nil || opts.Shop == nil || opts.Send == nil {
		return nil, errors.New("the staff's page needs a database, a shop and a way to send")
	}
	if opts.Clock == nil {
		opts.Clock = time.Now
	}
	if opts.Log == nil {
		opts.Log = slog.New(slog.DiscardHandler)
	}
	s := &Server{opts: opts, log: opts.Log, hashing: make(chan struct{}, 2), provider: newProvider(opts.Provider, opts.Address)}
	var err error
	if s.queue, err = river.NewClient(riverpgxv5.New(opts.Pool), &river.Config{Logger: opts.Log}); err != nil {
		return nil, fmt.Errorf("job queue: %w", err)
	}
	s.sessions = newSessions(pgxstore.NewWithCleanupInterval(opts.Pool, 0), opts.Secure)
	ctx, stop := context.WithCancel(context.Background())
	s.stopSweep = stop
	go s.sweep(ctx)
	s.hub = newHub(opts.Pool, opts.Log)
	s.handler = s.routes()
	return s, nil
}

func newSessions(store scs.Store, secure bool) *scs.SessionManager {
	m := scs.New()
	m.Store = store
	m.HashTokenInStore = true
	m.IdleTimeout, m.Lifetime = idleLimit, absoluteLimit
	m.Cookie.Name = "shop_session"
	if secure {
		m.Cookie.Name = "__Host-shop_session"
	}
	m.Cookie.Secure, m.Cookie.HttpOnly, m.Cookie.SameSite, m.Cookie.Path = secure, true, http.SameSiteLaxMode, "/"
	m.Cookie.Persist = false
	return m
}

// ServeHTTP serves the page.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.handler.ServeHTTP(w, r) }

// Close ends the streams of news and what runs beside.
func (s *Server) Close() {
	s.hub.close()
	s.stopSweep()
}

// now is the shop's time as Postgres keeps it.
func (s *Server) now() time.Time { return s.opts.Clock().UTC().Truncate(time.Microsecond) }
