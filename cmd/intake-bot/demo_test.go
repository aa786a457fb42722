package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.com/intake-bot/internal/demo"
)

func TestDemoOnceChecksItsLeads(t *testing.T) {
	dir := demoDir(t)
	for i := range 2 {
		out, errs, status := runProgram(t, onceIn(dir), "", "demo")
		if status != 0 || !strings.HasSuffix(out, "\n5 of 5 customers came out as they must.\n") {
			t.Fatalf("run %d: status %d\n%s%s", i+1, status, out, errs)
		}
	}
	for file, must := range map[string]string{"bot.log": `"level":"DEBUG"`, "metrics.prom": `intake_messages_received_total{channel="sms"}`} {
		checkPrivate(t, filepath.Join(dir, file), must)
	}
}

// The demo has all parts of the real program: texts, mail, photos, staff. It speaks with
// this machine and nobody else, not even a name server.
func TestNobodyElseIsCalled(t *testing.T) {
	strace, err := exec.LookPath("strace")
	if err != nil && os.Getenv("CI") == "true" {
		t.Fatal("no strace here: apt-get install strace")
	}
	if err != nil {
		t.Skip("left out, no strace here: apt-get install strace")
	}
	dir := demoDir(t)
	calls := filepath.Join(dir, "calls")
	cmd := exec.CommandContext(t.Context(), strace, "-f", "--seccomp-bpf", "-qq", "-e", "trace=connect,sendto,sendmsg,sendmmsg", "-o", calls, program, "demo")
	cmd.Env = append([]string{"PATH=" + os.Getenv("PATH"), "HOME=" + t.TempDir()}, onceIn(dir)...)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	b, err := os.ReadFile(calls)
	if err != nil {
		t.Fatal(err)
	}
	near := 0
	for line := range strings.Lines(string(b)) {
		switch {
		case strings.Contains(line, `inet_addr("127.`), strings.Contains(line, `inet_pton(AF_INET6, "::1"`):
			near++
		case strings.Contains(line, "sa_family=AF_INET"):
			t.Errorf("called: %s", line)
		}
	}
	if near < 8 { // few: connections are kept and used again
		t.Errorf("only %d calls to this machine were seen: this test sees too little", near)
	}
}

func onceIn(dir string) []string {
	return []string{"ONCE=1", "DEMO_DIR=" + dir, "PGBIN=" + os.Getenv("PGBIN")}
}

// demoDir is a folder that the demo may use.
func demoDir(t *testing.T) string {
	t.Helper()
	dir, err := os.MkdirTemp("", "demo") // short: a socket's path has a limit
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := os.RemoveAll(dir); err != nil {
			t.Error(err)
		}
	})
	if err := os.Chmod(dir, 0o755); err != nil { // the database's user must get in
		t.Fatal(err)
	}
	return dir
}

// checkPrivate looks in a file for what must be in no log and no metric: words, names,
// numbers, addresses and places of customers, and the secrets of the program.
func checkPrivate(t *testing.T, path, must string) {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	// Seconds to the nanosecond have digits enough to hold any number by chance.
	text := regexp.MustCompile(`\d+\.\d{5,}`).ReplaceAllString(strings.ToLower(string(b)), "0.0")
	if !strings.Contains(string(b), must) {
		t.Fatalf("%s does not hold %s: it proves nothing\n%.2000s", path, must, b)
	}
	customers, err := demo.Customers()
	if err != nil {
		t.Fatal(err)
	}
	private := []string{demoToken}
	for _, c := range customers {
		digits := strings.TrimPrefix(c.Number, "+1")
		private = append(private, digits, c.Mail, c.Name, c.Subject)
		if len(digits) == 10 {
			private = append(private, digits[3:6]+"-"+digits[6:], digits[3:])
		}
		private = append(append(append(private, c.Opens...), c.Closes...), c.Otherwise)
		for _, answers := range c.Answers {
			private = append(private, answers...)
		}
	}
	for _, p := range private {
		if p = strings.ToLower(strings.TrimSpace(p)); len(p) > 6 && strings.Contains(text, p) { // shorter ones are words of ours as well
			t.Errorf("%s tells %q", path, p)
		}
	}
	for _, address := range regexp.MustCompile(`[a-z0-9._-]+@[a-z0-9-]+\.[a-z0-9.-]+`).FindAllString(text, -1) {
		if address != demoMail {
			t.Errorf("%s tells a mail address: %s", path, address)
		}
	}
	if number := regexp.MustCompile(`\+?1?\d{3}5550\d{3}`).FindString(strings.ReplaceAll(text, demoNumber, "")); number != "" {
		t.Errorf("%s tells a number: %s", path, number)
	}
}

func TestDemoFolderIsWhereTheDatabasesUserGetsIn(t *testing.T) {
	dir := t.TempDir()
	closed := filepath.Join(dir, "closed")
	if err := os.MkdirAll(filepath.Join(closed, "in"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(closed, 0o700); err != nil {
		t.Fatal(err)
	}
	if reachable(filepath.Join(closed, "in")) {
		t.Error("a folder below a closed one counts as reachable")
	}
	if !reachable("/usr/bin") {
		t.Error("/usr/bin counts as closed")
	}
}
