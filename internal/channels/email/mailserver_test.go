package email_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/emersion/go-imap/v2"
	"github.com/emersion/go-imap/v2/imapserver"
	"github.com/emersion/go-imap/v2/imapserver/imapmemserver"

	"example.com/intake-bot/internal/channels/email"
)

const (
	mailUser     = "hello@pinwheel.example"
	mailPassword = "not a real one"
)

// memory is a mail server within the test.
type memory struct {
	t       *testing.T
	address string
	user    *imapmemserver.User
	caps    imap.CapSet
	server  *imapserver.Server
}

func capSet(caps ...imap.Cap) imap.CapSet {
	set := imap.CapSet{imap.CapIMAP4rev1: {}}
	for _, c := range caps {
		set[c] = struct{}{}
	}
	return set
}

func startMemory(t *testing.T, caps imap.CapSet) *memory {
	t.Helper()
	m := &memory{t: t, user: imapmemserver.NewUser(mailUser, mailPassword), caps: caps, address: "127.0.0.1:0"}
	if err := m.user.Create("INBOX", nil); err != nil {
		t.Fatal(err)
	}
	m.start()
	t.Cleanup(m.stop)
	return m
}

func (m *memory) start() {
	m.t.Helper()
	l, err := net.Listen("tcp", m.address)
	if err != nil {
		m.t.Fatal(err)
	}
	m.address = l.Addr().String()
	users := imapmemserver.New()
	users.AddUser(m.user)
	m.server = imapserver.New(&imapserver.Options{
		NewSession: func(*imapserver.Conn) (imapserver.Session, *imapserver.GreetingData, error) {
			return users.NewSession(), nil, nil
		},
		Caps: m.caps, InsecureAuth: true, Logger: log.New(io.Discard, "", 0),
	})
	server := m.server
	go server.Serve(l)
}

func (m *memory) stop() { m.server.Close() }

func (m *memory) put(raw string) {
	m.t.Helper()
	r := &literal{Reader: strings.NewReader(raw), size: int64(len(raw))}
	if _, err := m.user.Append("INBOX", r, &imap.AppendOptions{}); err != nil {
		m.t.Fatal(err)
	}
}

type literal struct {
	io.Reader
	size int64
}

func (l *literal) Size() int64 { return l.size }

func (m *memory) count(folder string) int {
	m.t.Helper()
	d, err := m.user.Status(folder, &imap.StatusOptions{NumMessages: true})
	if err != nil {
		return -1
	}
	return int(*d.NumMessages)
}

// deleted is how many mails in the inbox bear the mark of deletion.
func (m *memory) deleted() int {
	m.t.Helper()
	d, err := m.user.Status("INBOX", &imap.StatusOptions{NumDeleted: true})
	if err != nil || d.NumDeleted == nil {
		m.t.Fatal(err)
	}
	return int(*d.NumDeleted)
}

func mailNumber(i int) string {
	return fmt.Sprintf("From: dana@example.com\r\nMessage-ID: <n%d@example.com>\r\nSubject: number %d\r\n\r\nIt is mail %d.\r\n", i, i, i)
}

// kept is a store that notes what it was given.
type kept struct {
	mu    sync.Mutex
	mails []email.Incoming
	fail  error
	added chan struct{}
}

func newKept() *kept { return &kept{added: make(chan struct{}, 10000)} }

func (k *kept) store(_ context.Context, in email.Incoming) error {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.fail != nil {
		return k.fail
	}
	k.mails = append(k.mails, in)
	k.added <- struct{}{}
	return nil
}

func (k *kept) setFail(err error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.fail = err
}

func (k *kept) all() []email.Incoming {
	k.mu.Lock()
	defer k.mu.Unlock()
	return append([]email.Incoming(nil), k.mails...)
}

// ids are the Message-IDs in the order in which they were stored, repeats left out.
func (k *kept) ids(t *testing.T) []string {
	t.Helper()
	var ids []string
	seen := map[string]bool{}
	for _, in := range k.all() {
		m, err := email.Parse(bytes.NewReader(in.Raw), email.Limits{})
		if err != nil {
			t.Fatal(err)
		}
		if !seen[m.ID] {
			ids = append(ids, m.ID)
		}
		seen[m.ID] = true
	}
	return ids
}

func numbered(from, to int) []string {
	var ids []string
	for i := from; i <= to; i++ {
		ids = append(ids, fmt.Sprintf("n%d@example.com", i))
	}
	return ids
}

// until waits for something to become true, by looking often.
func until(t *testing.T, what string, ok func() bool) {
	t.Helper()
	deadline := time.Now().Add(2 * time.Minute)
	for !ok() {
		if time.Now().After(deadline) {
			t.Fatalf("not within two minutes: %s", what)
		}
		time.Sleep(5 * time.Millisecond)
	}
}

func watcherFor(t *testing.T, address string, k *kept, change func(*email.WatcherConfig)) *email.Watcher {
	t.Helper()
	cfg := email.WatcherConfig{
		Address: address, Security: email.Insecure, Account: email.Account{User: mailUser, Password: mailPassword},
		Store: k.store, Backoff: 20 * time.Millisecond, Poll: 200 * time.Millisecond, Command: time.Minute,
	}
	if change != nil {
		change(&cfg)
	}
	w, err := email.NewWatcher(cfg)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// run watches until the test, or the returned function, ends it.
func run(t *testing.T, w *email.Watcher) (stop func()) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan struct{})
	go func() {
		defer close(done)
		if err := w.Run(ctx); !errors.Is(err, context.Canceled) {
			t.Errorf("run: %v", err)
		}
	}()
	stop = sync.OnceFunc(func() {
		cancel()
		select {
		case <-done:
		case <-time.After(2 * time.Minute):
			t.Error("the watcher does not stop")
		}
	})
	t.Cleanup(stop)
	return stop
}

// proxy stands between and can fall silent, cut, change words, or listen.
type proxy struct {
	address string
	mu      sync.Mutex
	silent  bool
	heard   func(words string) // see listen
	conns   []net.Conn
	change  *strings.Replacer
}

func startProxy(t *testing.T, to string, change *strings.Replacer) *proxy {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	p := &proxy{address: l.Addr().String(), change: change}
	t.Cleanup(func() { l.Close(); p.cut() })
	go func() {
		for {
			in, err := l.Accept()
			if err != nil {
				return
			}
			out, err := net.Dial("tcp", to)
			if err != nil {
				in.Close()
				continue
			}
			p.mu.Lock()
			p.conns = append(p.conns, in, out)
			p.mu.Unlock()
			go p.copy(out, in, true)
			go p.copy(in, out, false)
		}
	}()
	return p
}

func (p *proxy) copy(to, from net.Conn, fromClient bool) {
	defer to.Close()
	buf := make([]byte, 32<<10)
	for {
		n, err := from.Read(buf)
		if err != nil {
			return
		}
		p.mu.Lock()
		silent, heard := p.silent, p.heard
		p.mu.Unlock()
		if silent {
			continue
		}
		b := buf[:n]
		if heard != nil && fromClient {
			heard(string(b))
		}
		if p.change != nil {
			b = []byte(p.change.Replace(string(b)))
		}
		if _, err := to.Write(b); err != nil {
			return
		}
	}
}

func (p *proxy) setSilent(silent bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.silent = silent
}

// listen has f hear what the client says, before the server does.
func (p *proxy) listen(f func(words string)) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.heard = f
}

func (p *proxy) cut() {
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, c := range p.conns {
		c.Close()
	}
	p.conns = nil
}
