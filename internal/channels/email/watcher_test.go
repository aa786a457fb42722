package email_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/emersion/go-imap/v2"

	"example.com/intake-bot/internal/channels/email"
)

const takenIn = "Taken in"

// What a server can do differs; nothing may be lost or left on any of them.
func TestTakesInOnEveryKindOfServer(t *testing.T) {
	noIdle := strings.NewReplacer(" IDLE", " XDLE")
	for _, f := range []struct {
		name   string
		caps   imap.CapSet
		change *strings.Replacer
		left   int // in the inbox, marked as deleted
	}{
		{"with MOVE", capSet(imap.CapMove, imap.CapUIDPlus), nil, 0},
		{"without MOVE", capSet(imap.CapUIDPlus), nil, 0},
		{"without MOVE and UIDPLUS", capSet(), nil, 5},
		{"without IDLE", capSet(imap.CapMove), noIdle, 0},
	} {
		t.Run(f.name, func(t *testing.T) {
			t.Parallel()
			m := startMemory(t, f.caps)
			p := startProxy(t, m.address, f.change)
			k := newKept()
			for i := 1; i <= 3; i++ {
				m.put(mailNumber(i))
			}
			w := watcherFor(t, p.address, k, nil)
			run(t, w)
			until(t, "first mails", func() bool { return len(k.all()) == 3 })
			m.put(mailNumber(4)) // while it waits
			until(t, "the fourth", func() bool { return len(k.all()) == 4 })
			m.put(mailNumber(5))
			until(t, "all moved", func() bool { return m.count(takenIn) == 5 && m.count("INBOX") == f.left })
			if got := k.ids(t); !slices.Equal(got, numbered(1, 5)) {
				t.Errorf("stored %v", got)
			}
			until(t, "health", func() bool { h := w.Health(); return h.Connected && h.Waiting == 0 && h.Err == nil })
		})
	}
}

// Mail that comes between the last look and IDLE is taken in, though the server says
// nothing of it: this one tells only of what comes once IDLE runs.
func TestMailBetweenLookAndIdle(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	p := startProxy(t, m.address, nil)
	var idles atomic.Int64
	p.listen(func(words string) {
		if strings.HasSuffix(words, " IDLE\r\n") {
			if n := int(idles.Add(1)); n <= 3 {
				m.put(mailNumber(n)) // before the server hears the command
			}
		}
	})
	k := newKept()
	run(t, watcherFor(t, p.address, k, nil))
	until(t, "all three", func() bool { return m.count(takenIn) == 3 })
	if got := k.ids(t); !slices.Equal(got, numbered(1, 3)) {
		t.Errorf("stored %v", got)
	}
}

// IDLE is begun anew again and again, each time ended first.
func TestIdleIsBegunAnew(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	p := startProxy(t, m.address, nil)
	var idles, dones atomic.Int64
	p.listen(func(words string) {
		switch {
		case strings.HasSuffix(words, " IDLE\r\n"):
			if idles.Add(1) != dones.Load()+1 {
				t.Error("IDLE before the last one was ended")
			}
		case words == "DONE\r\n":
			dones.Add(1)
		}
	})
	run(t, watcherFor(t, p.address, newKept(), nil))
	until(t, "five times", func() bool { return idles.Load() >= 5 })
}

// A mail stays where it is until it is stored, and its order is kept.
func TestStoreFails(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	k := newKept()
	k.setFail(errors.New("database away"))
	for i := 1; i <= 3; i++ {
		m.put(mailNumber(i))
	}
	w := watcherFor(t, m.address, k, nil)
	run(t, w)
	until(t, "the failure", func() bool { h := w.Health(); return h.Err != nil && strings.Contains(h.Err.Error(), "database away") })
	if m.count("INBOX") != 3 || len(k.all()) != 0 {
		t.Errorf("%d left, %d stored", m.count("INBOX"), len(k.all()))
	}
	k.setFail(nil)
	until(t, "all stored", func() bool { return m.count(takenIn) == 3 })
	if got := k.ids(t); !slices.Equal(got, numbered(1, 3)) {
		t.Errorf("stored %v", got)
	}
}

func TestServerComesAndGoes(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	k := newKept()
	run(t, watcherFor(t, m.address, k, nil))
	for i := 1; i <= 3; i++ {
		m.put(mailNumber(i))
		until(t, "stored", func() bool { return len(k.ids(t)) == i })
		m.stop()
		time.Sleep(30 * time.Millisecond)
		m.start()
	}
}

// The library waits for ever on a server that says nothing; the watcher does not.
func TestServerFallsSilent(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	p := startProxy(t, m.address, nil)
	k := newKept()
	w := watcherFor(t, p.address, k, func(cfg *email.WatcherConfig) {
		cfg.Command, cfg.Poll = 300*time.Millisecond, 200*time.Millisecond
	})
	run(t, w)
	m.put(mailNumber(1))
	until(t, "first", func() bool { return len(k.ids(t)) == 1 })
	p.setSilent(true)
	m.put(mailNumber(2))
	until(t, "noticed", func() bool { return w.Health().Err != nil })
	p.setSilent(false)
	until(t, "second", func() bool { return len(k.ids(t)) == 2 })
}

// Cut at any moment, mail comes at least once, in order, and none is left waiting. (Cut
// between mark and removal, a mail stays in the inbox with its mark; its copy is safe.)
func TestCutOffAgainAndAgain(t *testing.T) {
	m := startMemory(t, capSet(imap.CapUIDPlus)) // the longer way, without MOVE
	p := startProxy(t, m.address, nil)
	k := newKept()
	run(t, watcherFor(t, p.address, k, nil))
	const n = 60
	for i := 1; i <= n; i++ {
		m.put(mailNumber(i))
		if i%4 == 0 {
			p.cut()
			time.Sleep(time.Millisecond)
		}
	}
	until(t, "all taken in", func() bool { return m.count(takenIn) >= n && m.count("INBOX") == m.deleted() })
	if got := k.ids(t); !slices.Equal(got, numbered(1, n)) {
		t.Errorf("stored %v", got)
	}
}

func TestBacklogInOrder(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	k := newKept()
	const n = 450 // more than four batches
	for i := 1; i <= n; i++ {
		m.put(mailNumber(i))
	}
	run(t, watcherFor(t, m.address, k, nil))
	until(t, "all moved", func() bool { return m.count(takenIn) == n })
	if got := k.ids(t); !slices.Equal(got, numbered(1, n)) {
		t.Errorf("stored out of order")
	}
}

func TestTooLargeIsHandedOverByItsHeader(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	k := newKept()
	m.put(mailNumber(1) + strings.Repeat("x", 5000))
	m.put(mailNumber(2))
	run(t, watcherFor(t, m.address, k, func(cfg *email.WatcherConfig) { cfg.MaxBytes = 1000 }))
	until(t, "both moved", func() bool { return m.count(takenIn) == 2 })
	all := k.all()
	if !all[0].TooLarge || all[0].Size < 5000 || len(all[0].Raw) > 300 || all[1].TooLarge {
		t.Errorf("%d bytes, %+v, then too large: %v", len(all[0].Raw), all[0].Size, all[1].TooLarge)
	}
	if got := k.ids(t); !slices.Equal(got, numbered(1, 2)) {
		t.Errorf("stored %v", got)
	}
}

// A mailbox that was made anew starts its UIDs again; none is taken for another.
func TestMailboxMadeAnew(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	k := newKept()
	run(t, watcherFor(t, m.address, k, nil))
	m.put(mailNumber(1))
	until(t, "first", func() bool { return m.count(takenIn) == 1 })
	m.stop()
	if err := m.user.Delete("INBOX"); err != nil {
		t.Fatal(err)
	}
	if err := m.user.Create("INBOX", nil); err != nil {
		t.Fatal(err)
	}
	m.put(mailNumber(2))
	m.start()
	until(t, "second", func() bool { return m.count(takenIn) == 2 })
	all := k.all()
	if got := k.ids(t); !slices.Equal(got, numbered(1, 2)) || all[0].UIDValidity == all[len(all)-1].UIDValidity {
		t.Errorf("stored %v, validity %d and %d", got, all[0].UIDValidity, all[len(all)-1].UIDValidity)
	}
}

// One mail that the server can't give does not hold up those behind it, and stays.
func TestUnreadableMailHoldsNothingUp(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	p := startProxy(t, m.address, strings.NewReplacer("FETCH 2 (UID BODY", "FETCH 2 (UID BOGUS"))
	k := newKept()
	for i := 1; i <= 4; i++ {
		m.put(mailNumber(i))
	}
	w := watcherFor(t, p.address, k, nil)
	run(t, w)
	until(t, "the others", func() bool { return m.count(takenIn) == 3 })
	until(t, "health", func() bool { h := w.Health(); return h.Unreadable == 1 && h.Connected && !h.Emptied.IsZero() })
	if m.count("INBOX") != 1 {
		t.Errorf("%d left", m.count("INBOX"))
	}
}

// oneLock is a lock between watchers; lose takes it from whoever has it.
type oneLock struct {
	token chan struct{}
	mu    sync.Mutex
	lost  chan struct{}
	held  int
}

func newLock() *oneLock { return &oneLock{token: make(chan struct{}, 1)} }

func (l *oneLock) lock(ctx context.Context) (<-chan struct{}, func(), error) {
	select {
	case l.token <- struct{}{}:
	case <-ctx.Done():
		return nil, nil, ctx.Err()
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	l.lost = make(chan struct{})
	l.held++
	return l.lost, func() { <-l.token }, nil
}

func (l *oneLock) lose() {
	l.mu.Lock()
	defer l.mu.Unlock()
	close(l.lost)
}

func (l *oneLock) times() int {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.held
}

func TestOneAtATimeAndTakeOver(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	k, lock := newKept(), newLock()
	locked := func(cfg *email.WatcherConfig) { cfg.Lock = lock.lock }
	stopFirst := run(t, watcherFor(t, m.address, k, locked))
	until(t, "the first holds it", func() bool { return lock.times() == 1 })
	run(t, watcherFor(t, m.address, k, locked))
	for i := 1; i <= 20; i++ {
		m.put(mailNumber(i))
	}
	until(t, "twenty", func() bool { return m.count(takenIn) == 20 })
	if n := len(k.all()); n != 20 || lock.times() != 1 {
		t.Errorf("%d stored, lock taken %d times", n, lock.times())
	}
	lock.lose() // its connection to the database broke
	until(t, "somebody takes it again", func() bool { return lock.times() >= 2 })
	stopFirst()
	m.put(mailNumber(21))
	until(t, "the other took over", func() bool { return m.count(takenIn) == 21 })
	if got := k.ids(t); !slices.Equal(got, numbered(1, 21)) {
		t.Errorf("stored %v", got)
	}
}

func TestWatcherSettings(t *testing.T) {
	store := newKept().store
	for _, f := range []struct {
		name string
		cfg  email.WatcherConfig
		ok   bool
	}{
		{"TLS", email.WatcherConfig{Address: "mail.example:993", Security: email.ImplicitTLS, Store: store}, true},
		{"in the clear to this machine", email.WatcherConfig{Address: "127.0.0.1:143", Security: email.Insecure, Store: store}, true},
		{"in the clear to another", email.WatcherConfig{Address: "mail.example:143", Security: email.Insecure, Store: store}, false},
		{"no security named", email.WatcherConfig{Address: "mail.example:143", Store: store}, false},
		{"no port", email.WatcherConfig{Address: "mail.example", Security: email.ImplicitTLS, Store: store}, false},
		{"no store", email.WatcherConfig{Address: "mail.example:993", Security: email.ImplicitTLS}, false},
	} {
		if _, err := email.NewWatcher(f.cfg); (err == nil) != f.ok {
			t.Errorf("%s: %v", f.name, err)
		}
	}
}

func TestCheck(t *testing.T) {
	m := startMemory(t, capSet(imap.CapMove))
	if err := watcherFor(t, m.address, newKept(), nil).Check(t.Context()); err != nil {
		t.Error(err)
	}
	wrong := func(cfg *email.WatcherConfig) { cfg.Account.Password = "wrong" }
	err := watcherFor(t, m.address, newKept(), wrong).Check(t.Context())
	if err == nil || !strings.Contains(err.Error(), "log in") || strings.Contains(fmt.Sprint(err), mailPassword) {
		t.Errorf("wrong password: %v", err)
	}
}
