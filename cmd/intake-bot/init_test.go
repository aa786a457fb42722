package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"

	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/preflight"
)

// typist is an owner at a terminal: reads what the program says, and types.
type typist struct {
	t    *testing.T
	pid  int
	file *os.File
	said lockedBuffer
	done chan struct{}
}

func atTerminal(t *testing.T, env []string, args ...string) (*typist, *exec.Cmd) {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), program, args...)
	cmd.Env = append([]string{"PATH=" + os.Getenv("PATH"), "HOME=" + t.TempDir(), "TERM=xterm"}, env...)
	file, err := pty.Start(cmd)
	if err != nil {
		t.Fatal(err)
	}
	o := &typist{t: t, pid: cmd.Process.Pid, file: file, done: make(chan struct{})}
	t.Cleanup(func() { file.Close() })
	go func() {
		defer close(o.done)
		buf := make([]byte, 4096)
		for {
			n, err := file.Read(buf)
			_, _ = o.said.Write(buf[:n]) // a buffer takes all
			if err != nil {
				return // the program has ended
			}
		}
	}()
	return o, cmd
}

// hidden answers a question for a secret, once the terminal shows no more what is typed: a
// person is slower than the program that turns that off.
func (o *typist) hidden(question, text string) {
	o.t.Helper()
	o.await(question)
	for end := time.Now().Add(2 * time.Minute); ; time.Sleep(5 * time.Millisecond) {
		set, err := exec.Command("stty", "-a", "-F", fmt.Sprintf("/proc/%d/fd/0", o.pid)).CombinedOutput()
		if err != nil || time.Now().After(end) {
			o.t.Fatalf("%s: what is typed stays shown: %v %s", question, err, set)
		}
		if bytes.Contains(set, []byte(" -echo ")) {
			break
		}
	}
	o.answer(question, text)
}

// answer waits for a question and types.
func (o *typist) answer(question, text string) {
	o.t.Helper()
	o.await(question)
	if _, err := o.file.WriteString(text + "\n"); err != nil {
		o.t.Fatal(err)
	}
}

func (o *typist) await(question string) {
	o.t.Helper()
	for end := time.Now().Add(2 * time.Minute); !strings.Contains(o.said.String(), question); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			o.t.Fatalf("not asked: %s\n%s", question, o.said.String())
		}
	}
}

func TestInitAtATerminal(t *testing.T) {
	const secret = "0123456789abcdef0123456789abcdef"
	dir := filepath.Join(t.TempDir(), "intake-bot")
	o, cmd := atTerminal(t, nil, "init", dir)
	o.answer("What is the shop called?", "Larkspur Domes")
	o.answer("At which mail address", "ann@larkspur.test")
	o.answer("At which phone number", "12")
	o.answer(`"12" is not a US phone number`, "(612) 555-0142")
	o.answer("website?", "")
	o.answer("Number and street", "1 Elm Street")
	o.answer("ZIP code?", "80202")
	o.answer("[Denver]", "")
	o.answer("[CO]", "")
	o.answer("[America/Denver]", "")
	for _, question := range []string{"Monday to Friday", "on Saturday", "Where to does", "[https://bot.larkspur.test]"} {
		o.answer(question, "")
	}
	o.hidden("The database?", "postgres://intake@127.0.0.1:1/intake")
	o.answer("account's id", "AC00000000000000000000000000000001")
	o.hidden("account's token?", secret)
	o.answer("The number that texts?", "")
	o.answer("mailbox of its own", "no")
	<-o.done
	if err := cmd.Wait(); err != nil {
		t.Errorf("%v\n%s", err, o.said.String())
	}
	said := o.said.String()
	if strings.Contains(said, secret) || strings.Contains(said, "127.0.0.1:1/intake") {
		t.Error("a secret was shown")
	}
	for _, want := range []string{"Incoming messages: https://bot.larkspur.test/sms/inbound   as POST", "Register before you tell customers", "How things stand:",
		"Larkspur Domes, 1 Elm Street, Denver, CO 80202", "is Postgres running"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not said in:\n%s", want, said)
		}
	}
	checkWritten(t, dir, secret)
	_, errs, status := runProgram(t, nil, "", "init", dir, "--yes")
	if status != 1 || !strings.Contains(errs, "nothing is overwritten") {
		t.Errorf("a second time: status %d, %s", status, errs)
	}
}

// checkWritten looks at both files, and has the program look at them.
func checkWritten(t *testing.T, dir, secret string) {
	t.Helper()
	for name, mode := range map[string]os.FileMode{"shop.yaml": 0o644, "environment": 0o600} {
		info, err := os.Stat(filepath.Join(dir, name))
		if err != nil || info.Mode().Perm() != mode {
			t.Errorf("%s: %v, %v", name, info, err)
		}
	}
	env, err := environmentFile(filepath.Join(dir, "environment"))
	if err != nil {
		t.Fatal(err)
	}
	set, err := readSettings(env)
	if err != nil || set.carrier.token != secret || set.shopFile != filepath.Join(dir, "shop.yaml") || set.carrier.from != "+16125550142" || set.mail.address != "" {
		t.Errorf("%v, %+v", err, set)
	}
	if out, errs, status := runProgram(t, nil, "", "shop", "check", filepath.Join(dir, "shop.yaml")); status != 0 || !strings.Contains(out, "sound. Larkspur Domes") {
		t.Errorf("status %d: %s%s", status, out, errs)
	}
}

func TestInitBrokenOff(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new")
	if _, errs, status := runProgram(t, nil, "Larkspur Domes\n", "init", dir); status != 1 || !strings.Contains(errs, "nothing was written") {
		t.Errorf("status %d: %s", status, errs)
	}
	o, cmd := atTerminal(t, nil, "init", dir)
	o.answer("What is the shop called?", "Larkspur Domes\x03") // Ctrl-C
	<-o.done
	if err := cmd.Wait(); err == nil || !strings.Contains(o.said.String(), "nothing was written") {
		t.Errorf("%v: %s", err, o.said.String())
	}
	if _, _, status := runProgram(t, nil, "", "init", dir, "--yes", "--phone", "12"); status != 1 {
		t.Error("a wrong flag is taken")
	}
	if _, err := os.Stat(dir); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("something was written: %v", err)
	}
}

// From nothing to a bot that answers: init, migrate, serve, and preflight with nothing
// wrong.
func TestFromInitToABotThatAnswers(t *testing.T) {
	s := serveIn(t)
	s.kill()
	s.database = dbtest.EmptyURL(t)
	dir := t.TempDir()
	out, errs, status := runProgram(t, []string{"DATABASE_URL=" + s.database, "CARRIER_AUTH_TOKEN=token1"}, "", "init", dir, "--yes", "--name", "Larkspur Domes",
		"--carrier-account", "AC00000000000000000000000000000001", "--carrier-number", "+12185550142", "--hours", "0:00-24:00", "--saturday", "0:00-24:00")
	if status != 0 || !strings.Contains(out, "run intake-bot migrate") || strings.Contains(out+errs, "token1") {
		t.Fatalf("status %d: %s%s", status, out, errs)
	}
	// What in the test stands for the world outside.
	path := filepath.Join(dir, "environment")
	written, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	here := bytes.NewBuffer(bytes.ReplaceAll(written, []byte("https://bot.pinwheel-domes.example"), []byte(s.url)))
	here.WriteString("\nLISTEN=" + strings.TrimPrefix(s.url, "http://") + "\nCARRIER_API_URL=" + s.carrier.BaseURL() + "\n")
	if err := os.WriteFile(path, here.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	s.env = []string{"PATH=" + os.Getenv("PATH")}
	for line := range strings.Lines(here.String()) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			s.env = append(s.env, strings.ReplaceAll(line, "'", ""))
		}
	}
	if _, errs, status := runProgram(t, s.env, "", "migrate"); status != 0 {
		t.Fatalf("migrate: %s", errs)
	}
	s.start()
	passed, lines, status := preflightOf(t, nil, "--environment", path)
	if !passed || status != 0 || lines["unsigned posts"].Result != preflight.OK {
		t.Errorf("status %d: %+v", status, lines)
	}
	if _, err := s.carrier.Text(t.Context(), "+12185550160", "hello"); err != nil {
		t.Fatal(err)
	}
	texts, err := s.carrier.WaitTo(t.Context(), "+12185550160", 1)
	if err != nil || !strings.Contains(texts[0].Body, "Larkspur Domes") {
		t.Errorf("%v, %v", texts, err)
	}
}
