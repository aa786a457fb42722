package email_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/emersion/go-smtp"

	"example.com/intake-bot/internal/channels/email"
)

// need skips where a program is not there, but never in CI, which must have it.
func need(t *testing.T, program, pkg string) string {
	t.Helper()
	for _, p := range []string{program, "/usr/sbin/" + program} {
		if found, err := exec.LookPath(p); err == nil {
			if os.Getuid() == 0 {
				return found
			}
			t.Skipf("%s wants root", program)
		}
	}
	if os.Getenv("CI") != "" {
		t.Fatalf("%s is missing: apt-get install %s", program, pkg)
	}
	t.Skipf("%s is not there: apt-get install %s", program, pkg)
	return ""
}

func freePort(t *testing.T) int {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port
}

// dovecot is a real mail server with a folder of its own, on loopback.
type dovecot struct {
	t          *testing.T
	program    string
	dir        string
	imap, lmtp int
	process    *exec.Cmd
}

const dovecotConfig = `
base_dir = DIR/run
state_dir = DIR/state
log_path = DIR/dovecot.log
protocols = imap lmtp
listen = 127.0.0.1
ssl = no
disable_plaintext_auth = no
first_valid_uid = 1
mail_location = maildir:DIR/mail/%u
default_vsz_limit = 256M
mail_max_userip_connections = 50
passdb {
  driver = static
  args = password=PASSWORD
}
userdb {
  driver = static
  args = uid=mail gid=mail home=DIR/mail/%u allow_all_users=yes
}
namespace inbox {
  inbox = yes
}
service imap-login {
  inet_listener imap {
    address = 127.0.0.1
    port = IMAP
  }
  inet_listener imaps {
    port = 0
  }
}
service lmtp {
  inet_listener lmtp {
    address = 127.0.0.1
    port = LMTP
  }
}
protocol lmtp {
  postmaster_address = postmaster@pinwheel.test
}
`

const (
	dovecotUser     = "hello@pinwheel.test"
	dovecotPassword = "loopback"
)

func startDovecot(t *testing.T) *dovecot {
	t.Helper()
	d := &dovecot{t: t, program: need(t, "dovecot", "dovecot-imapd dovecot-lmtpd"), imap: freePort(t), lmtp: freePort(t)}
	dir, err := os.MkdirTemp("/var/tmp", "dovecot-test-") // its own users must get in
	if err != nil {
		t.Fatal(err)
	}
	d.dir = dir
	t.Cleanup(func() { os.RemoveAll(dir) })
	owner, err := user.Lookup("mail")
	if err != nil {
		t.Skipf("no user for mail: %v", err)
	}
	uid, _ := strconv.Atoi(owner.Uid)
	for _, sub := range []string{"", "run", "state", "mail"} {
		if err := os.MkdirAll(filepath.Join(dir, sub), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	if err := errors.Join(os.Chmod(dir, 0o755), os.Chown(filepath.Join(dir, "mail"), uid, -1)); err != nil {
		t.Fatal(err)
	}
	config := strings.NewReplacer("DIR", dir, "PASSWORD", dovecotPassword, "IMAP", strconv.Itoa(d.imap), "LMTP", strconv.Itoa(d.lmtp)).Replace(dovecotConfig)
	if err := os.WriteFile(filepath.Join(dir, "dovecot.conf"), []byte(config), 0o644); err != nil {
		t.Fatal(err)
	}
	d.start()
	t.Cleanup(d.stop)
	return d
}

func (d *dovecot) start() {
	d.t.Helper()
	d.process = exec.Command(d.program, "-F", "-c", filepath.Join(d.dir, "dovecot.conf"))
	d.process.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	if err := d.process.Start(); err != nil {
		d.t.Fatal(err)
	}
	until(d.t, "Dovecot listens", func() bool { return listens(d.imap) && listens(d.lmtp) })
}

// stop ends Dovecot with all that it started: a plain stop can leave logged-in
// processes behind.
func (d *dovecot) stop() {
	if d.process == nil {
		return
	}
	syscall.Kill(-d.process.Process.Pid, syscall.SIGTERM)
	done := make(chan struct{})
	go func() { d.process.Wait(); close(done) }()
	select {
	case <-done:
	case <-time.After(5 * time.Second):
	}
	syscall.Kill(-d.process.Process.Pid, syscall.SIGKILL)
	d.process = nil
}

func listens(port int) bool {
	c, err := net.Dial("tcp", "127.0.0.1:"+strconv.Itoa(port))
	if err != nil {
		return false
	}
	c.Close()
	return true
}

// deliver puts mails into the mailbox by LMTP, over one connection.
func (d *dovecot) deliver(from, to int) {
	d.t.Helper()
	conn, err := net.Dial("tcp", "127.0.0.1:"+strconv.Itoa(d.lmtp))
	if err != nil {
		d.t.Fatal(err)
	}
	c := smtp.NewClientLMTP(conn)
	defer c.Close()
	for i := from; i <= to; i++ {
		if err := c.SendMail("dana@example.com", []string{dovecotUser}, strings.NewReader(mailNumber(i))); err != nil {
			d.t.Fatalf("deliver %d: %v", i, err)
		}
	}
}

func (d *dovecot) watcher(k *kept, change func(*email.WatcherConfig)) *email.Watcher {
	d.t.Helper()
	return watcherFor(d.t, "127.0.0.1:"+strconv.Itoa(d.imap), k, func(cfg *email.WatcherConfig) {
		cfg.Account = email.Account{User: dovecotUser, Password: dovecotPassword}
		if change != nil {
			change(cfg)
		}
	})
}

// left counts the mails in the folders, on disk.
func (d *dovecot) left() (inbox, taken int) {
	count := func(folder string) int {
		n := 0
		for _, sub := range []string{"new", "cur"} {
			files, err := os.ReadDir(filepath.Join(d.dir, "mail", dovecotUser, folder, sub))
			if err == nil {
				n += len(files)
			}
		}
		return n
	}
	return count("."), count(".Taken in")
}

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
	d.stop()
	d.start()
	until(t, "more", func() bool { return len(k.all()) > 250 })
	stopFirst()
	until(t, "all taken in", func() bool { inbox, taken := d.left(); return inbox == 0 && taken >= n })
	if got := k.ids(t); !slices.Equal(got, numbered(1, n)) {
		t.Errorf("%d of %d stored, or out of order", len(got), n)
	}
	if lock.times() < 2 {
		t.Error("nobody took over")
	}
	d.deliver(n+1, n+1) // IDLE
	until(t, "the new one", func() bool { return len(k.ids(t)) == n+1 })
	if err := d.watcher(newKept(), nil).Check(t.Context()); err != nil {
		t.Error(err)
	}
}

// opensmtpd takes mail by SMTP and delivers it to Dovecot. It has one spool and control
// socket on a machine, so it is started only where none runs.
func startOpenSMTPD(t *testing.T, d *dovecot) string {
	t.Helper()
	program := need(t, "smtpd", "opensmtpd")
	if c, err := net.Dial("unix", "/var/run/smtpd.sock"); err == nil {
		c.Close()
		t.Skip("an OpenSMTPD runs on this machine already")
	}
	port := freePort(t)
	config := fmt.Sprintf("listen on 127.0.0.1 port %d\naction \"deliver\" lmtp \"127.0.0.1:%d\" rcpt-to virtual { \"@\" = mail }\n"+
		"match from any for domain \"pinwheel.test\" action \"deliver\"\n", port, d.lmtp)
	file := filepath.Join(d.dir, "smtpd.conf")
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
		return listens(port)
	})
	return "127.0.0.1:" + strconv.Itoa(port)
}

// A mail of ours goes through a real SMTP server into a real mailbox and out of it.
func TestThroughRealServers(t *testing.T) {
	d := startDovecot(t)
	s := senderFor(t, startOpenSMTPD(t, d), func(cfg *email.SenderConfig) { cfg.Account = email.Account{}; cfg.Timeout = 20 * time.Second })
	k := newKept()
	run(t, d.watcher(k, nil))
	o := answer()
	o.To = email.Mailbox{Address: dovecotUser}
	o.Text = "Señora Fields,\n.\n25½ × 49½?\n" + strings.Repeat("long ", 300)
	raw, err := email.Compose(o)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Send(t.Context(), "hello@pinwheel.test", dovecotUser, raw); err != nil {
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
