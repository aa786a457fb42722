package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"sync/atomic"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/intake"
	"example.com/intake-bot/internal/shop"
	"example.com/intake-bot/internal/staff"
)

// bot is the running program: the service and its web server. serve and demo start the
// same one.
type bot struct {
	pool    *pgxpool.Pool
	service *intake.Service
	server  *http.Server
	failed  chan error // the web server's end, if it ends by itself
	address string     // where it listens
	log     *slog.Logger
	page    *staff.Server // the staff's
	// shopText is the shop file in force.
	shopText atomic.Pointer[string]
	post     *post
	watched  *watched
	ready    *readiness
	endClock context.CancelFunc
	goodbye  time.Duration // how long readiness says so before no more connections are taken
	drain    time.Duration // how long stopping may take in all
}

// botOptions are what a bot is made of.
type botOptions struct {
	pool      *pgxpool.Pool
	file      *shop.File
	carrier   carrierSettings
	mail      mailSettings
	metrics   string // address of the metrics, empty for none
	listener  net.Listener
	publicURL string
	clock     func() time.Time // nil: the database's
	log       *slog.Logger
	shopText  string // the shop file in force, to be shown to the owner
	alerts    alertSettings
	goodbye   time.Duration
	hooks     hooks
}

// startBot starts everything; what was begun is ended again where a step fails.
func startBot(ctx context.Context, o botOptions) (*bot, error) {
	real, err := o.realClock(ctx)
	if err != nil {
		return nil, err
	}
	if o.clock == nil {
		o.clock = real.Now
	}
	webhook, err := sms.NewWebhook(o.publicURL, tokens(o.carrier)...)
	if err != nil {
		return nil, err
	}
	webhook.Now = o.clock
	client, err := sms.NewClient(sms.Config{
		AccountID: o.carrier.account, AuthToken: o.carrier.token,
		From: o.carrier.from, MessagingService: o.carrier.service,
		BaseURL: o.carrier.apiURL, StatusCallback: o.publicURL + "/sms/status",
		Now: real.Now, Transport: o.carrierTransport(),
	})
	if err != nil {
		return nil, err
	}
	talkingShop, err := talking(o.file)
	if err != nil {
		return nil, err
	}
	b := &bot{goodbye: o.goodbye, drain: cmp.Or(o.hooks.drain, drain), pool: o.pool, failed: make(chan error, 1), address: o.listener.Addr().String(), log: o.log}
	if err := putAnswers(ctx, o.pool, o.file); err != nil {
		return nil, err
	}
	if err := b.openService(ctx, o, real, client, talkingShop); err != nil {
		return nil, err
	}
	if err := b.openStaffPage(o); err != nil {
		return nil, err
	}
	if err := b.service.Start(ctx); err != nil {
		b.page.Close()
		return nil, err
	}
	b.ready = &readiness{pool: o.pool, trouble: b.service.Trouble, mailbox: b.post.health()}
	b.server = webServer(b.routes(webhook), o.log)
	following, endClock := context.WithCancel(context.WithoutCancel(ctx))
	b.endClock = endClock
	go real.Follow(following, o.pool, o.log)
	b.post.watch()
	b.server.RegisterOnShutdown(b.page.Close) // its streams would never end by themselves
	go func() { b.failed <- b.server.Serve(o.listener) }()
	return b, nil
}

// webServer waits for nobody for long, and reads nobody's headers without end; bodies are
// bounded where they are read.
func webServer(h http.Handler, log *slog.Logger) *http.Server {
	return &http.Server{
		Handler:           h,
		ReadHeaderTimeout: 10 * time.Second,
		ReadTimeout:       30 * time.Second,
		WriteTimeout:      30 * time.Second,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    64 << 10,
		ErrorLog:          slog.NewLogLogger(log.Handler(), slog.LevelWarn),
	}
}

// openService makes the service with all its channels.
func (b *bot) openService(ctx context.Context, o botOptions, real *db.Clock, client *sms.Client, talkingShop *conversation.Shop) (err error) {
	b.watched = newWatched()
	if b.post, err = newPost(ctx, o); err != nil {
		return err
	}
	options := intake.Options{
		Pool: o.pool, Shop: talkingShop, Brain: b.brain(), Clock: o.clock, Real: real.Now, Log: o.log,
		Lease: o.hooks.lease, Step: o.hooks.step,
		Senders: map[conversation.Channel]intake.Sender{conversation.SMS: intake.SMSSender{Client: client, Picture: b.post.pictures.Link}},
		Photos:  photoRoom(o.carrier, o.hooks.photoWait),
		Limits:  limitsOf(o.file), Keeping: keepingOf(o.file), Metrics: b.watched.counters,
		Quiet: o.file.Replies.Quiet.Duration(), QuietCap: o.file.Replies.AtMost.Duration(),
	}
	if err := b.post.addMail(&options, o, func() *conversation.Shop { return b.service.Shop() }); err != nil {
		return err
	}
	b.addAlerts(&options, o)
	if b.service, err = intake.New(options); err != nil {
		return err
	}
	if err := b.post.open(ctx, o, b.service); err != nil {
		return err
	}
	return b.watched.open(o.metrics, intake.Gauges{Pool: o.pool, Mailbox: b.post.health(),
		SegmentsADay: func() int { return b.service.LimitsNow().SegmentsADay }, Today: b.service.Today})
}

// realClock is the database's.
func (o *botOptions) realClock(ctx context.Context) (*db.Clock, error) {
	real := db.NewClock(o.hooks.clock)
	ahead, err := real.Look(ctx, o.pool)
	if err == nil {
		db.TellClock(ctx, o.log, ahead)
	}
	return real, err
}

func (o *botOptions) carrierTransport() http.RoundTripper {
	if o.hooks.transport == nil {
		return nil // the client's own
	}
	return o.hooks.transport(http.DefaultTransport.(*http.Transport).Clone())
}

func tokens(c carrierSettings) []string {
	if c.oldToken == "" {
		return []string{c.token}
	}
	return []string{c.token, c.oldToken}
}

func (b *bot) brain() intake.Brain {
	return intake.Brain{
		Respond: conversation.Respond,
		Nudge:   conversation.Nudge,
		Record:  func(t conversation.Talk) conversation.Record { return conversation.NewRecord(t, nil, nil) },
		Keyword: reading.Keyword,
		Answer:  answers.Find,
	}
}

// routes are all addresses of the program.
func (b *bot) routes(webhook *sms.Webhook) http.Handler {
	mux := http.NewServeMux()
	mux.Handle("/sms/", b.service.SMSHandler(webhook))
	mux.Handle("/picture/", b.post.pictures.Handler())
	mux.Handle("/mail/", b.post.unsubscribe.Handler())
	mux.Handle(staff.Base+"/", b.page)
	mux.Handle(staff.Base, b.page)
	mux.HandleFunc("GET /healthz", func(w http.ResponseWriter, _ *http.Request) {
		fmt.Fprintln(w, "ok")
	})
	b.ready.routes(mux)
	return mux
}

// drain is how long what was begun may take to its end.
const drain = 25 * time.Second

// stop says that it is going, for as long as those who ask need to hear it; then it takes
// no more messages, lets what was begun come to its end, and stops.
func (b *bot) stop() error {
	ctx, cancel := context.WithTimeout(context.Background(), b.drain)
	defer cancel()
	b.ready.stopping.Store(true)
	select {
	case <-time.After(b.goodbye):
	case <-b.failed: // nobody can ask any more
	}
	b.endClock()
	b.post.stop()
	err := b.server.Shutdown(ctx)
	if err != nil {
		err = fmt.Errorf("stop the web server: %w", errors.Join(err, b.server.Close()))
	}
	return errors.Join(err, b.service.Stop(ctx), b.watched.close())
}
