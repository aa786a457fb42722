package intake

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"sync/atomic"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/riverqueue/river"
	"github.com/riverqueue/river/riverdriver/riverpgxv5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// Options are what a Service is made of. Pool, Shop and Brain must be there; the rest
// has defaults.
type Options struct {
	Pool    *pgxpool.Pool
	Shop    *conversation.Shop
	Brain   Brain
	Senders map[conversation.Channel]Sender

	Clock func() time.Time // nil: time.Now
	// Real is the time by the database's clock, where Clock may be set to another day; nil:
	// time.Now.
	Real   func() time.Time
	Random io.Reader    // for refs; nil: crypto/rand
	Log    *slog.Logger // nil: nothing is logged

	// Quiet is how long a person must have been quiet before they are answered, for
	// people send one thought in three texts; 0: not at all. QuietCap bounds the wait.
	Quiet, QuietCap time.Duration

	// TurnWorkers and SendWorkers bound how many jobs of a kind run at once here.
	TurnWorkers, SendWorkers int
	// SweepEvery is how often reminders and what a dead process left are looked for.
	SweepEvery time.Duration
	// GiveUpAfter is how long a message is tried before it counts as failed.
	GiveUpAfter time.Duration
	// NewTalkAfter: a message that comes this long after staff finished a lead begins a
	// new talk.
	NewTalkAfter time.Duration
	// Mail is what is to be known of the shop's own mail.
	Mail MailSettings
	// Photos opens what customers send; nil: photos are only noted.
	Photos *PhotoRoom
	// Limits keep senders from running up the bill; zero: none do.
	Limits Limits
	// Keeping is how long things are kept; zero: for good.
	Keeping Keeping
	// Metrics count what happens; nil: nobody looks.
	Metrics *Metrics
	// Alerts are how people of staff and the owner's other systems hear of leads.
	Alerts Alerts
	// Lease is how long a send may take before its process is taken for dead.
	Lease time.Duration

	// Step, if set, is told each point at which a process may die with most effect: before
	// and after each commit and each call to a provider. For tests that end it there.
	Step func(Point)
}

// Defaults of the options; DefaultQuiet and DefaultQuietCap are for the shop's file to use.
const (
	DefaultQuiet    = 4 * time.Second
	DefaultQuietCap = 15 * time.Second

	defaultTurnWorkers  = 8
	defaultSendWorkers  = 32
	defaultSweepEvery   = 15 * time.Second
	defaultGiveUpAfter  = 24 * time.Hour
	defaultNewTalkAfter = 24 * time.Hour
	defaultLease        = 30 * time.Second

	// jobTimeout ends a job that hangs; rescueAfter must be later, or a job could run twice.
	jobTimeout  = 60 * time.Second
	rescueAfter = 90 * time.Second
)

// Service receives messages, makes the turns of talk and sends what they say.
type Service struct {
	opts    Options
	shop    atomic.Pointer[conversation.Shop]
	limits  atomic.Pointer[Limits]
	keeping atomic.Pointer[Keeping]
	queue   *river.Client[pgx.Tx]
	inbox   *shortcut[turnArgs] // turns of what was received here
	hands   chan struct{}       // one for each of those turns at once
	outbox  *shortcut[int64]    // talks in which a turn made here says something
	budget  budget
	trouble trouble
	log     *slog.Logger
}

// New checks the options and prepares a service. It receives at once; jobs run from
// Start on.
func New(opts Options) (*Service, error) {
	if opts.Pool == nil || opts.Shop == nil {
		return nil, errors.New("intake needs a database and a shop")
	}
	if err := opts.Brain.check(); err != nil {
		return nil, err
	}
	opts.fill()
	s := &Service{opts: opts, log: opts.Log}
	s.shop.Store(opts.Shop)
	s.limits.Store(&opts.Limits)
	s.keeping.Store(&opts.Keeping)
	s.inbox, s.hands = newShortcut(inboxPlaces, s.turnNow), make(chan struct{}, opts.TurnWorkers)
	s.outbox = newShortcut(opts.SendWorkers, s.sendNow)
	var err error
	if s.queue, err = river.NewClient(riverpgxv5.New(opts.Pool), s.queueConfig()); err != nil {
		return nil, fmt.Errorf("job queue: %w", err)
	}
	return s, nil
}

func (o *Options) fill() {
	orDuration := func(d *time.Duration, otherwise time.Duration) {
		if *d <= 0 {
			*d = otherwise
		}
	}
	orDuration(&o.SweepEvery, defaultSweepEvery)
	orDuration(&o.GiveUpAfter, defaultGiveUpAfter)
	orDuration(&o.NewTalkAfter, defaultNewTalkAfter)
	orDuration(&o.Lease, defaultLease)
	orDuration(&o.QuietCap, max(DefaultQuietCap, o.Quiet))
	if o.TurnWorkers <= 0 {
		o.TurnWorkers = defaultTurnWorkers
	}
	if o.SendWorkers <= 0 {
		o.SendWorkers = defaultSendWorkers
	}
	if o.Clock == nil {
		o.Clock = time.Now
	}
	if o.Real == nil {
		o.Real = time.Now
	}
	if o.Random == nil {
		o.Random = rand.Reader
	}
	if o.Metrics == nil {
		o.Metrics = NewMetrics(nil)
	}
	if o.Step == nil {
		o.Step = func(Point) {}
	}
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
}

// SetShop puts another shop file in force, from the next turn on.
func (s *Service) SetShop(shop *conversation.Shop) { s.shop.Store(shop) }

// SetLimits puts other limits in force.
func (s *Service) SetLimits(l Limits) { s.limits.Store(&l) }

// LimitsNow are the limits in force.
func (s *Service) LimitsNow() Limits { return *s.limits.Load() }

// now is the clock's time as Postgres keeps it: UTC, whole microseconds.
func (s *Service) now() time.Time { return s.opts.Clock().UTC().Truncate(time.Microsecond) }

// since is how long ago a moment was that the database wrote down.
func (s *Service) since(t time.Time) time.Duration { return s.opts.Real().Sub(t) }

// Start makes turns and runs jobs until Stop. What a process that died left undone is taken up at once.
func (s *Service) Start(ctx context.Context) error {
	if err := s.queue.Start(ctx); err != nil {
		return fmt.Errorf("start job queue: %w", err)
	}
	if err := errors.Join(s.sweep(ctx, sweepAll), s.sweepPhotos(ctx)); err != nil {
		return errors.Join(err, s.queue.Stop(context.WithoutCancel(ctx)))
	}
	s.outbox.start()
	s.inbox.start()
	return nil
}

// Stop lets the jobs that run come to their end, and takes no new ones. Where they are
// not done when ctx is, they are cut off: all of them can be run again.
func (s *Service) Stop(ctx context.Context) error {
	s.inbox.stop(ctx)
	err := s.queue.Stop(ctx)
	s.outbox.stop(ctx)
	if err == nil {
		return nil
	}
	last, cancel := context.WithTimeout(context.WithoutCancel(ctx), 5*time.Second)
	defer cancel()
	if err := s.queue.StopAndCancel(last); err != nil {
		return fmt.Errorf("stop job queue: %w", err)
	}
	return nil
}

// newRef draws a ref for a new talk.
func (s *Service) newRef() (string, error) { return db.NewRef(s.opts.Random) }
