package email_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/dovecottest"
)

// dovecot is a real mail server, on loopback.
type dovecot struct {
	*dovecottest.Server
	t *testing.T
}

func startDovecot(t *testing.T) *dovecot {
	t.Helper()
	return &dovecot{dovecottest.Start(t), t}
}

// deliver puts numbered mails into the mailbox.
func (d *dovecot) deliver(from, to int) {
	d.t.Helper()
	var mails []string
	for i := from; i <= to; i++ {
		mails = append(mails, mailNumber(i))
	}
	d.Deliver("dana@example.com", mails...)
}

func (d *dovecot) watcher(k *kept, change func(*email.WatcherConfig)) *email.Watcher {
	d.t.Helper()
	return watcherFor(d.t, d.IMAP(), k, func(cfg *email.WatcherConfig) {
		cfg.Account = email.Account{User: dovecottest.User, Password: dovecottest.Password}
		if change != nil {
			change(cfg)
		}
	})
}

// left counts the mails in the folders, on disk.
func (d *dovecot) left() (inbox, taken int) { return d.Left("."), d.Left(".Taken in") }

// Five hundred mails wait; the server is restarted in the middle, and of two processes
// the one that watches is stopped: none is lost, and the order is kept.
func TestDovecotBacklogRestartTakeOver(t *testing.T) {
	d := startDovecot(t)
	const n = 500
	d.deliver(1, n)
	k, lock := newKept(), newLock()
	slow := func(cfg *email.WatcherConfig) {
		cfg.Lock = lock.lock
		cfg.Store = func(ctx context.Context, in email.Incoming) error {
			time.Sleep(time.Millisecond)
			return k.store(ctx, in)
		}
	}
	stopFirst := run(t, d.watcher(k, slow))
	until(t, "the first holds the lock", func() bool { return lock.times() == 1 })
	run(t, d.watcher(k, slow))
	until(t, "some", func() bool { return len(k.all()) > 50 })
	d.Stop()
	d.Start()
	until(t, "more", func() bool { return len(k.all()) > 250 })
	stopFirst()
	until(t, "all taken in", func() bool { inbox, taken := d.left(); return inbox == 0 && taken >= n })
	if got := k.ids(t); !slices.Equal(got, numbered(1, n)) {
		t.Errorf("%d of %d stored, or out of order", len(got), n)
	}
	if lock.times() < 2 {
		t.Error("nobody took over")
	}
	d.deliver(n+1, n+1)
	until(t, "the new one", func() bool { return len(k.ids(t)) == n+1 })
	if err := d.watcher(newKept(), nil).Check(t.Context()); err != nil {
		t.Error(err)
	}
}

// A real server tells of new mail by itself, of mail too that came between the last look
// and IDLE; no look of ours comes within the test.
func TestDovecotTellsOfNewMail(t *testing.T) {
	d := startDovecot(t)
	p := startProxy(t, d.IMAP(), nil)
	var idles atomic.Int64
	p.listen(func(words string) {
		if strings.HasSuffix(words, " IDLE\r\n") {
			if n := int(idles.Add(1)); n <= 3 {
				d.deliver(n, n)
			}
		}
	})
	k := newKept()
	run(t, d.watcher(k, func(cfg *email.WatcherConfig) { cfg.Address, cfg.Poll = p.address, time.Hour }))
	until(t, "those between", func() bool { return len(k.all()) == 3 })
	for i := 4; i <= 6; i++ {
		d.deliver(i, i)
		until(t, "it tells", func() bool { return len(k.all()) == i })
	}
	if got := k.ids(t); !slices.Equal(got, numbered(1, 6)) {
		t.Errorf("stored %v", got)
	}
}

// opensmtpd takes mail by SMTP and delivers it to Dovecot. It has one spool and control
// socket on a machine, so it is started only where none runs.
func startOpenSMTPD(t *testing.T, d *dovecot) string {
	t.Helper()
	program := dovecottest.Need(t, "smtpd", "opensmtpd")
	if c, err := net.Dial("unix", "/var/run/smtpd.sock"); err == nil {
		c.Close()
		t.Skip("an OpenSMTPD runs on this machine already")
	}
	port := dovecottest.FreePort(t)
	config := fmt.Sprintf("listen on 127.0.0.1 port %d\naction \"deliver\" lmtp \"%s\" rcpt-to virtual { \"@\" = mail }\n"+
		"match from any for domain \"pinwheel.test\" action \"deliver\"\n", port, d.LMTP())
	file := filepath.Join(d.Dir(), "smtpd.conf")
	if err := os.WriteFile(file, []byte(config), 0o600); err != nil {
		t.Fatal(err)
	}
	var log bytes.Buffer
	p := exec.Command(program, "-d", "-f", file)
	p.Stdout, p.Stderr = &log, &log
	p.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	if err := p.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan struct{})
	go func() { p.Wait(); close(ended) }()
	t.Cleanup(func() {
		syscall.Kill(-p.Process.Pid, syscall.SIGTERM)
		select {
		case <-ended:
		case <-time.After(5 * time.Second):
			syscall.Kill(-p.Process.Pid, syscall.SIGKILL)
			<-ended
		}
	})
	until(t, "OpenSMTPD listens", func() bool {
		select {
		case <-ended:
			t.Fatalf("OpenSMTPD ended: %s", log.String())
		default:
		}
		return dovecottest.Listens("127.0.0.1:" + strconv.Itoa(port))
	})
	return "127.0.0.1:" + strconv.Itoa(port)
}

// A mail of ours goes through a real SMTP server into a real mailbox and out of it.
func TestThroughRealServers(t *testing.T) {
	dovecottest.Need(t, "smtpd", "opensmtpd")
	d := startDovecot(t)
	s := senderFor(t, startOpenSMTPD(t, d), func(cfg *email.SenderConfig) { cfg.Account = email.Account{}; cfg.Timeout = 2 * time.Minute })
	k := newKept()
	run(t, d.watcher(k, nil))
	o := answer()
	o.To = email.Mailbox{Address: dovecottest.User}
	o.Text = "Señora Fields,\n.\n25½ × 49½?\n" + strings.Repeat("long ", 300)
	raw, err := email.Compose(o)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Send(t.Context(), "hello@pinwheel.test", dovecottest.User, raw); err != nil {
		t.Fatal(err)
	}
	until(t, "it arrives", func() bool { return len(k.all()) == 1 })
	m, err := email.Parse(bytes.NewReader(k.all()[0].Raw), email.Limits{})
	if err != nil || m.ID != o.ID || m.Text != strings.TrimSpace(o.Text) || m.ReturnPath != "hello@pinwheel.test" {
		t.Errorf("%v, %q, %q, from %q", err, m.ID, m.Text, m.ReturnPath)
	}
	var refused *email.SendError
	if err := s.Send(t.Context(), "", "dana@elsewhere.test", raw); !errors.As(err, &refused) || refused.Kind != email.SendPermanent {
		t.Errorf("mail for another domain: %v", err)
	}
}
