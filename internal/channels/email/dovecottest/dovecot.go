// Package dovecottest gives a test a real mail server of its own: Debian's Dovecot, on
// loopback, in a folder that is gone when the test ends. Mail is read from it by IMAP and
// delivered to it by LMTP, as in the world.
package dovecottest

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"net"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/emersion/go-smtp"
)

// User and Password are of the one mailbox.
const (
	User     = "hello@pinwheel.test"
	Password = "loopback"
)

// Server is a running Dovecot.
type Server struct {
	t       testing.TB
	program string
	dir     string
	imap    int
	lmtp    int
	process *exec.Cmd
}

// config is for all versions but for what an older or a newer one names otherwise: 2.4, as
// in Debian 13, can't read the settings of 2.3, as in Debian 12.
const config = `HEAD
base_dir = DIR/run
state_dir = DIR/state
log_path = DIR/dovecot.log
protocols = imap lmtp
listen = 127.0.0.1
ssl = no
first_valid_uid = 1
default_vsz_limit = 256M
mail_max_userip_connections = 50
mail_fsync = never
namespace inbox {
  inbox = yes
}
service imap-login {
  inet_listener imap {
    port = IMAP
  }
  inet_listener imaps {
    port = 0
  }
}
service lmtp {
  inet_listener lmtp {
    port = LMTP
  }
}
protocol lmtp {
  postmaster_address = postmaster@pinwheel.test
}
`

// rootless is what Dovecot wants besides where it is started by an ordinary user: it runs
// as nobody else, and shuts nothing into a folder of its own (its guide's chapter on
// running without root).
const rootless = `
default_internal_user = OWNER
default_internal_group = GROUP
default_login_user = OWNER
service anvil {
  chroot =
}
service imap-login {
  chroot =
}
`

const headOf23 = `
disable_plaintext_auth = no
mail_location = maildir:DIR/mail/%u
passdb {
  driver = static
  args = password=PASSWORD
}
userdb {
  driver = static
  args = uid=OWNER gid=GROUP home=DIR/mail/%u allow_all_users=yes
}`

const headOf24 = `dovecot_config_version = 2.4.0
dovecot_storage_version = 2.4.0
auth_allow_cleartext = yes
mail_driver = maildir
mail_path = DIR/mail/%{user}
passdb static {
  password = PASSWORD
}
userdb static {
  allow_all_users = yes
  fields {
    uid = OWNER
    gid = GROUP
    home = DIR/mail/%{user}
  }
}`

// head is what a version's configuration begins with.
func (s *Server) head() (string, error) {
	version, err := exec.Command(s.program, "--version").Output()
	if err != nil {
		return "", fmt.Errorf("version of Dovecot: %w", err)
	}
	if strings.HasPrefix(string(version), "2.3.") {
		return headOf23, nil
	}
	return headOf24, nil
}

// Start starts a server. It skips the test where Dovecot is not there, but never in CI,
// which must have it.
func Start(t testing.TB) *Server {
	t.Helper()
	s := &Server{t: t, program: find(t, "dovecot", "dovecot-imapd dovecot-lmtpd"), imap: FreePort(t), lmtp: FreePort(t)}
	owner, err := user.Current()
	if os.Getuid() == 0 {
		owner, err = user.Lookup("mail") // mail is never root's
	}
	if err != nil {
		leftOut(t, "no user for mail: "+err.Error())
	}
	if s.dir, err = os.MkdirTemp("/var/tmp", "dovecot-test-"); err != nil { // its own users must get in
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(s.dir) })
	if err := s.furnish(owner); err != nil {
		t.Fatal(err)
	}
	s.Start()
	t.Cleanup(s.Stop)
	return s
}

// furnish makes the server's folders and its configuration.
func (s *Server) furnish(owner *user.User) error {
	uid, err := strconv.Atoi(owner.Uid)
	if err != nil {
		return err
	}
	for _, sub := range []string{"", "run", "state", "mail"} {
		if err := os.MkdirAll(filepath.Join(s.dir, sub), 0o755); err != nil {
			return err
		}
	}
	head, err := s.head()
	if err != nil {
		return err
	}
	group, err := user.LookupGroupId(owner.Gid)
	if err != nil {
		return err
	}
	text := strings.Replace(config, "HEAD", head, 1)
	if os.Getuid() != 0 {
		text += rootless
	}
	text = strings.NewReplacer("DIR", s.dir, "PASSWORD", Password, "IMAP", strconv.Itoa(s.imap), "LMTP", strconv.Itoa(s.lmtp),
		"OWNER", owner.Username, "GROUP", group.Name).Replace(text)
	return errors.Join(os.Chmod(s.dir, 0o755), os.Chown(filepath.Join(s.dir, "mail"), uid, -1),
		os.WriteFile(filepath.Join(s.dir, "dovecot.conf"), []byte(text), 0o644))
}

// Dir is the server's folder, for what a test puts beside it.
func (s *Server) Dir() string { return s.dir }

// IMAP and LMTP are the addresses that are served, host and port.
func (s *Server) IMAP() string { return local(s.imap) }
func (s *Server) LMTP() string { return local(s.lmtp) }

func local(port int) string { return "127.0.0.1:" + strconv.Itoa(port) }

// Start starts it again after Stop; the mail is still there.
func (s *Server) Start() {
	s.t.Helper()
	s.process = exec.Command(s.program, "-F", "-c", filepath.Join(s.dir, "dovecot.conf"))
	s.process.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	told, err := os.Create(filepath.Join(s.dir, "errors")) // as when it can't read its configuration
	if err != nil {
		s.t.Fatal(err)
	}
	defer told.Close()
	s.process.Stderr = told
	if err := s.process.Start(); err != nil {
		s.t.Fatal(err)
	}
	for end := time.Now().Add(2 * time.Minute); !Listens(s.IMAP()) || !Listens(s.LMTP()); time.Sleep(10 * time.Millisecond) {
		if time.Now().After(end) {
			said, _ := os.ReadFile(told.Name())
			log, _ := os.ReadFile(filepath.Join(s.dir, "dovecot.log"))
			s.t.Fatalf("Dovecot does not listen: %s%s", said, log)
		}
	}
}

// Stop ends Dovecot with all that it started: a plain stop can leave logged-in processes
// behind.
func (s *Server) Stop() {
	if s.process == nil {
		return
	}
	syscall.Kill(-s.process.Process.Pid, syscall.SIGTERM)
	done := make(chan struct{})
	go func() { s.process.Wait(); close(done) }()
	select {
	case <-done:
	case <-time.After(5 * time.Second):
	}
	syscall.Kill(-s.process.Process.Pid, syscall.SIGKILL)
	s.process = nil
}

// Deliver puts mails into the mailbox by LMTP, over one connection.
func (s *Server) Deliver(from string, mails ...string) {
	s.t.Helper()
	conn, err := net.Dial("tcp", s.LMTP())
	if err != nil {
		s.t.Fatal(err)
	}
	c := smtp.NewClientLMTP(conn)
	defer c.Close()
	for i, raw := range mails {
		if err := c.SendMail(from, []string{User}, strings.NewReader(raw)); err != nil {
			s.t.Fatalf("deliver mail %d: %v", i+1, err)
		}
	}
}

// Left counts the mails in a folder, on disk: "." is the inbox, ".Taken in" another.
func (s *Server) Left(folder string) int {
	n := 0
	for _, sub := range []string{"new", "cur"} {
		if files, err := os.ReadDir(filepath.Join(s.dir, "mail", User, folder, sub)); err == nil {
			n += len(files)
		}
	}
	return n
}

// Need finds a program that wants root, or skips the test; in CI it fails it instead where
// the program is missing, since an ordinary user can't help being one.
func Need(t testing.TB, program, pkg string) string {
	t.Helper()
	found := find(t, program, pkg)
	if os.Getuid() != 0 {
		t.Skip(program + " wants root")
	}
	return found
}

// find finds a program, in the folders of an ordinary user and of root.
func find(t testing.TB, program, pkg string) string {
	t.Helper()
	for _, p := range []string{program, "/usr/sbin/" + program} {
		if found, err := exec.LookPath(p); err == nil {
			return found
		}
	}
	leftOut(t, program+" is not there: apt-get install "+pkg)
	return ""
}

// leftOut ends a test that can't run here; in CI every test must.
func leftOut(t testing.TB, why string) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Fatal(why)
	}
	t.Skip(why)
}

// FreePort is a port of this machine that nobody listens on, and below those that the
// system gives to whoever asks for any: it is still free when it is listened on.
func FreePort(t testing.TB) int {
	t.Helper()
	var err error
	for range 100 {
		port := 10000 + rand.IntN(20000)
		var l net.Listener
		if l, err = net.Listen("tcp", local(port)); err == nil {
			l.Close()
			return port
		}
	}
	t.Fatalf("no free port: %v", err)
	return 0
}

// Listens says whether somebody listens at an address.
func Listens(address string) bool {
	c, err := net.Dial("tcp", address)
	if err != nil {
		return false
	}
	c.Close()
	return true
}
