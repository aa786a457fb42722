package intake

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"os"
	"os/exec"
	"os/signal"
	"strings"
	"syscall"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/dovecottest"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// childBox says that the child watches the real mailbox at this address, until it is
// ended by SIGTERM.
const childBox = "INTAKE_CRASH_MAILBOX"

// boxChild is a bot in a process of its own: its own pool, watcher and lock.
func boxChild(url, _ string) error {
	ctx, cancel := signal.NotifyContext(context.Background(), syscall.SIGTERM)
	defer cancel()
	pool, err := db.Open(ctx, url)
	if err != nil {
		return err
	}
	defer pool.Close()
	log := slog.New(slog.NewTextHandler(os.Stderr, &slog.HandlerOptions{Level: slog.LevelError}))
	sender := EmailSender{Pool: pool, Carrier: tableMail{pool}, Address: dovecottest.User, Name: func() string { return "Pinwheel" }}
	s, err := New(Options{Pool: pool, Shop: &conversation.Shop{}, Brain: (&parrot{}).brain(), Clock: func() time.Time { return noon },
		Senders: map[conversation.Channel]Sender{conversation.Email: sender}, Lease: 5 * time.Second, SweepEvery: 2 * time.Second, Log: log})
	if err != nil {
		return err
	}
	w, err := email.NewWatcher(email.WatcherConfig{Address: os.Getenv(childBox), Security: email.Insecure, Backoff: 20 * time.Millisecond,
		Account: email.Account{User: dovecottest.User, Password: dovecottest.Password}, Store: s.TakeMail,
		Lock: MailboxLock(pool, "test "+dovecottest.User, log), Log: log})
	if err != nil {
		return err
	}
	if err := s.Start(context.WithoutCancel(ctx)); err != nil {
		return err
	}
	if err := w.Run(ctx); !errors.Is(err, context.Canceled) {
		return err
	}
	end, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
	defer cancel()
	return s.Stop(end)
}

// startBot starts such a process; it is ended with the test, if not before.
func startBot(t *testing.T, url, mailbox string) *exec.Cmd {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childDatabase+"="+url, childBox+"="+mailbox)
	cmd.Stdout, cmd.Stderr = t.Output(), t.Output()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if cmd.ProcessState == nil {
			end(t, cmd)
		}
	})
	return cmd
}

// end asks a bot to end, and wants it to do so well.
func end(t *testing.T, cmd *exec.Cmd) {
	t.Helper()
	_ = cmd.Process.Signal(syscall.SIGTERM) // where it has ended, Wait says how
	if err := cmd.Wait(); err != nil {
		t.Errorf("the bot did not end well: %v", err)
	}
}

// Two bots watch one real mailbox with a backlog; the mail server is restarted, then the
// connection that holds the lock is cut off, then the bot that watches is killed: none is
// lost, none is answered twice. Of a mail that it was just handing over nobody can know
// whether it went; such a one is not sent again, and staff are told.
func TestTwoBotsAtOneMailboxAndOneIsKilled(t *testing.T) {
	const backlog = 500
	t.Parallel()
	d := dovecottest.Start(t)
	url, pool := crashDatabase(t)
	s := &shop{t: t, pool: pool}
	var mails []string
	for i := range backlog {
		mails = append(mails, fmt.Sprintf("From: P%d <p%d@example.com>\r\nTo: %s\r\nMessage-ID: <%d@example.com>\r\nSubject: Dome %d\r\n\r\nhello %03d.\r\n",
			i%50, i%50, dovecottest.User, i, i, i))
	}
	d.Deliver("someone@example.com", mails...)
	taken := func() (n int) { s.one(`SELECT count(*) FROM mails_in`, &n); return n }
	holder := func() (pid int) {
		s.one(`SELECT coalesce((SELECT min(pid) FROM pg_locks JOIN pg_stat_activity a USING (pid)
			WHERE locktype = 'advisory' AND granted AND application_name = 'intake-bot mailbox' AND a.datname = current_database()), 0)`, &pid)
		return pid
	}
	first := startBot(t, url, d.IMAP())
	s.until("the first is at it", func() bool { return taken() > 20 })
	second := startBot(t, url, d.IMAP())
	d.Stop()
	d.Start()
	s.until("it goes on", func() bool { return taken() > 120 })
	before := holder()
	if _, err := pool.Exec(t.Context(), `SELECT pg_terminate_backend($1)`, before); err != nil {
		t.Fatal(err)
	}
	s.until("the lock has another holder", func() bool { now := holder(); return now != 0 && now != before })
	s.until("it goes on", func() bool { return taken() > 250 })
	// Whichever watches now, the first has sends under way as well as the second.
	if err := first.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	if err := first.Wait(); err == nil || first.ProcessState.Sys().(syscall.WaitStatus).Signal() != syscall.SIGKILL {
		t.Fatalf("the first ended by itself: %v", err)
	}
	s.until("all are taken in", func() bool { return d.Left(".") == 0 && taken() >= backlog })
	s.quiet()
	end(t, second)
	var messages, unhandled, notOnce, twice, unknown, alerts int
	var states string
	s.one(`SELECT count(*), count(*) FILTER (WHERE handled_at IS NULL) FROM messages WHERE direction = 'in'`, &messages, &unhandled)
	s.one(`SELECT count(*) FROM messages i WHERE direction = 'in' AND 1 <> (SELECT count(*) FROM messages o
		WHERE o.direction = 'out' AND o.conversation_id = i.conversation_id AND position(i.text IN o.text) > 0)`, &notOnce)
	s.one(`SELECT count(*) FROM (SELECT FROM carrier GROUP BY address, text HAVING count(*) > 1) c`, &twice)
	s.one(`SELECT string_agg(DISTINCT state, ' ' ORDER BY state), count(*) FILTER (WHERE state = 'unknown') FROM sends`, &states, &unknown)
	s.one(`SELECT count(*) FROM alerts WHERE reason = 'send_unknown'`, &alerts)
	if messages != backlog || unhandled != 0 || notOnce != 0 || twice != 0 {
		t.Errorf("%d messages, %d not handled, %d not answered once, %d answers sent twice", messages, unhandled, notOnce, twice)
	}
	if strings.TrimPrefix(states, "sent") != "" && states != "sent unknown" || alerts != unknown {
		t.Errorf("sends %s; %d unknown, %d alerts", states, unknown, alerts)
	}
	var lost int
	s.one(`SELECT count(*) FROM sends s JOIN messages m ON m.id = s.message_id WHERE s.state = 'sent'
		AND NOT EXISTS (SELECT FROM carrier c WHERE c.address = m.address AND c.text = m.text)`, &lost)
	if lost != 0 {
		t.Errorf("%d answers count as sent that the mail server never had", lost)
	}
	t.Logf("%d sends unknown", unknown)
}
