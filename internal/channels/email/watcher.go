package email

import (
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"log/slog"
	"sync"
	"time"

	"github.com/emersion/go-imap/v2"
)

// WatcherConfig is a mailbox and what is done with the mail in it.
type WatcherConfig struct {
	Address  string // host:port
	Security Security
	TLS      *tls.Config
	Account  Account
	Folder   string // "" is INBOX
	TakenIn  string // where mail goes once it is stored; made if missing; "" is "Taken in"
	MaxBytes int64  // larger mail is handed over by its header alone; 0: 35 MiB

	// Store keeps one mail for good. Only after it returned nil is the mail moved away;
	// until then, and where the process dies between the two, the same mail comes again.
	// An error is about the store, never about the mail: reading stops, and the same mail
	// is first when it goes on.
	Store func(context.Context, Incoming) error

	// Lock makes sure that one process at a time watches the mailbox. It waits until it
	// has the lock, or the context ends; lost is closed when the lock is gone. nil: no
	// other process is there.
	Lock func(context.Context) (lost <-chan struct{}, release func(), err error)

	Poll    time.Duration // between looks, where the server has IDLE too: see wait; 0: 1 min
	Command time.Duration // that one command may take; 0: 2 min
	Backoff time.Duration // first pause after a failure, doubled up to 5 min; 0: 1 s
	Log     *slog.Logger  // nil: none
}

// Incoming is one mail as it lies in the mailbox.
type Incoming struct {
	Raw         []byte // whole, or the header alone where TooLarge
	TooLarge    bool
	Size        int64
	UID         uint32
	UIDValidity uint32
	Received    time.Time // by the server
}

// Watcher takes mail out of one mailbox, in order, for as long as Run runs.
type Watcher struct {
	cfg WatcherConfig

	mu     sync.Mutex
	health Health
}

// Health is how the watching goes.
type Health struct {
	Connected  bool
	Emptied    time.Time // when the mailbox was last seen without mail that waits
	Waiting    int       // mails that waited when the mailbox was last looked at
	Unreadable int       // mails that the server lists but does not give; they stay
	Err        error     // why it last broke off; nil once it goes again
	Broke      time.Time // since when it does not go; of no meaning where Err is nil
}

// NewWatcher checks the settings; it does not connect.
func NewWatcher(cfg WatcherConfig) (*Watcher, error) {
	if err := cfg.Security.check(cfg.Address); err != nil {
		return nil, fmt.Errorf("mailbox: %w", err)
	}
	if cfg.Store == nil {
		return nil, errors.New("mailbox: no store")
	}
	setDefault(&cfg.Folder, "INBOX")
	setDefault(&cfg.TakenIn, "Taken in")
	setDefault(&cfg.MaxBytes, 35<<20)
	setDefault(&cfg.Poll, time.Minute)
	setDefault(&cfg.Command, 2*time.Minute)
	setDefault(&cfg.Backoff, time.Second)
	if cfg.Log == nil {
		cfg.Log = slog.New(slog.DiscardHandler)
	}
	return &Watcher{cfg: cfg}, nil
}

// lockWait is after how long a wait for the lock means that another process has it, not that
// it can't be asked for.
const lockWait = 15 * time.Second

func setDefault[T comparable](v *T, d T) {
	var zero T
	if *v == zero {
		*v = d
	}
}

// Health is safe to ask at any time.
func (w *Watcher) Health() Health {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.health
}

func (w *Watcher) note(change func(*Health)) {
	w.mu.Lock()
	defer w.mu.Unlock()
	change(&w.health)
}

// Run watches until the context ends, through every failure of server, network and
// store. It returns the context's error.
func (w *Watcher) Run(ctx context.Context) error {
	pause := backoff{first: w.cfg.Backoff}
	for ctx.Err() == nil {
		worked, err := w.turn(ctx)
		if worked {
			pause.reset()
		}
		if ctx.Err() != nil {
			break
		}
		w.note(func(h *Health) {
			if h.Err == nil {
				h.Broke = time.Now()
			}
			h.Connected, h.Err = false, err
		})
		d := pause.next()
		w.cfg.Log.WarnContext(ctx, "mailbox: broke off", "error", err, "again_in", d)
		sleep(ctx, d)
	}
	w.note(func(h *Health) { h.Connected = false })
	return ctx.Err()
}

// Check logs in, opens the folders and leaves again.
func (w *Watcher) Check(ctx context.Context) error {
	_, err := w.Look(ctx)
	return err
}

// Look does as Check does, and says whether the server tells of new mail by itself (IDLE,
// RFC 2177); otherwise it is asked every WatcherConfig.Poll.
func (w *Watcher) Look(ctx context.Context) (idle bool, err error) {
	s, err := w.connect(ctx)
	if err != nil {
		return false, err
	}
	defer s.close()
	if err := s.open(); err != nil {
		return false, err
	}
	return s.c.Caps().Has(imap.CapIdle), nil
}

// turn holds the lock and one connection until either ends. It worked if the mailbox
// was emptied at least once.
func (w *Watcher) turn(ctx context.Context) (worked bool, err error) {
	if w.cfg.Lock != nil {
		// One who waits for long waits for another that watches: all is well.
		waiting := time.AfterFunc(lockWait, func() { w.note(func(h *Health) { h.Err = nil }) })
		lost, release, err := w.cfg.Lock(ctx)
		waiting.Stop()
		if err != nil {
			return false, fmt.Errorf("mailbox lock: %w", err)
		}
		defer release()
		var cancel context.CancelCauseFunc
		ctx, cancel = context.WithCancelCause(ctx)
		defer cancel(nil)
		go func() {
			select {
			case <-lost:
				cancel(errors.New("mailbox lock lost"))
			case <-ctx.Done():
			}
		}()
	}
	s, err := w.connect(ctx)
	if err != nil {
		return false, err
	}
	defer s.close()
	if err := s.open(); err != nil {
		return false, err
	}
	w.note(func(h *Health) { h.Connected, h.Unreadable, h.Err = true, 0, nil })
	for {
		if err := s.drain(); err != nil {
			return worked, s.why(err)
		}
		worked = true
		w.note(func(h *Health) { h.Emptied, h.Waiting = time.Now(), 0 })
		if err := s.wait(); err != nil {
			return worked, s.why(err)
		}
	}
}
