package intake

import (
	"context"
	"fmt"
	"log/slog"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/dovecottest"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// mailProcess is a bot that watches a real mailbox, as far as the mailbox can tell: its
// own pool, its own lock.
type mailProcess struct {
	service *Service
	stop    func()
}

func startMailProcess(t *testing.T, s *shop, d *dovecottest.Server, name string) mailProcess {
	t.Helper()
	pool, err := db.Open(t.Context(), s.pool.Config().ConnString())
	if err != nil {
		t.Fatal(err)
	}
	log := slog.New(slog.NewTextHandler(t.Output(), &slog.HandlerOptions{Level: slog.LevelError}))
	service, err := New(Options{Pool: pool, Shop: &conversation.Shop{}, Brain: (&parrot{}).brain(), Clock: s.now, Lease: time.Second,
		Senders: map[conversation.Channel]Sender{conversation.Email: s.carrier}, Log: log})
	if err != nil {
		t.Fatal(err)
	}
	w, err := email.NewWatcher(email.WatcherConfig{Address: d.IMAP(), Security: email.Insecure, Backoff: 20 * time.Millisecond,
		Account: email.Account{User: dovecottest.User, Password: dovecottest.Password}, Store: service.TakeMail,
		Lock: MailboxLock(pool, "test "+dovecottest.User, log), Log: log})
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	if err := service.Start(ctx); err != nil {
		t.Fatal(err)
	}
	done := make(chan struct{})
	go func() { defer close(done); _ = w.Run(ctx) }() // ends with ctx
	stopped := false
	p := mailProcess{service: service, stop: func() {
		if stopped {
			return
		}
		stopped = true
		cancel()
		<-done
		end, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
		defer cancel()
		if err := service.Stop(end); err != nil {
			t.Errorf("stop %s: %v", name, err)
		}
		pool.Close()
	}}
	t.Cleanup(p.stop)
	return p
}

// Two bots watch one real mailbox with a backlog; the mail server is restarted, then the
// lock of the one that watches is cut off, then that bot ends: none is lost, none is
// answered twice.
func TestBacklogOfARealMailbox(t *testing.T) {
	const backlog = 500
	d := dovecottest.Start(t)
	s := newShop(t, nil)
	var mails []string
	for i := range backlog {
		mails = append(mails, fmt.Sprintf("From: P%d <p%d@example.com>\r\nTo: %s\r\nMessage-ID: <%d@example.com>\r\nSubject: Dome %d\r\n\r\nhello %d\r\n",
			i%50, i%50, dovecottest.User, i, i, i))
	}
	d.Deliver("someone@example.com", mails...)
	first := startMailProcess(t, s, d, "the first")
	taken := func() (n int) { s.one(`SELECT count(*) FROM mails_in`, &n); return n }
	s.until("the first is at it", func() bool { return taken() > 20 })
	startMailProcess(t, s, d, "the second")
	d.Stop()
	d.Start()
	s.until("it goes on", func() bool { return taken() > 120 })
	if _, err := s.pool.Exec(t.Context(), `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'intake-bot mailbox'
		AND pid IN (SELECT pid FROM pg_locks WHERE locktype = 'advisory' AND granted)`); err != nil {
		t.Fatal(err)
	}
	s.until("it goes on", func() bool { return taken() > 250 })
	first.stop()
	s.until("all are taken in", func() bool { return d.Left(".") == 0 && taken() >= backlog })
	s.quiet()
	var messages, handled, out, twice int
	s.one(`SELECT count(*), count(handled_at) FROM messages WHERE direction = 'in'`, &messages, &handled)
	s.one(`SELECT count(*) FROM sends WHERE state = 'sent'`, &out)
	s.one(`SELECT count(*) FROM (SELECT text FROM messages WHERE direction = 'out' GROUP BY text HAVING count(*) > 1) t`, &twice)
	sent := len(s.carrier.texts())
	if messages != backlog || handled != backlog || twice != 0 || sent != out {
		t.Errorf("%d messages, %d handled, %d answers said twice, %d sent for %d answers", messages, handled, twice, sent, out)
	}
}

// The lock is one holder's at a time, and dies with its connection.
func TestMailboxLock(t *testing.T) {
	s := newShop(t, nil)
	take := MailboxLock(s.pool, "box", slog.New(slog.DiscardHandler))
	lost, release, err := take(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	defer release()
	short, cancel := context.WithTimeout(t.Context(), 1500*time.Millisecond)
	defer cancel()
	if _, _, err := take(short); err == nil {
		t.Fatal("a second holder")
	}
	_, releaseOther, err := MailboxLock(s.pool, "another box", slog.New(slog.DiscardHandler))(t.Context())
	if err != nil {
		t.Fatalf("another mailbox: %v", err)
	}
	releaseOther()
	if _, err := s.pool.Exec(t.Context(), `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'intake-bot mailbox'`); err != nil {
		t.Fatal(err)
	}
	began := time.Now()
	_, releaseNext, err := take(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	defer releaseNext()
	select {
	case <-lost:
	case <-time.After(2 * time.Minute):
		t.Error("the first holder does not know that its lock is gone")
	}
	t.Logf("another took over after %s", time.Since(began).Round(time.Millisecond))
}
