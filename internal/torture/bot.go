package torture

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os/exec"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"
)

// patience is how long anything that must come may take on a busy machine.
const patience = 3 * time.Minute

// Bot is one process of the program.
type Bot struct {
	t       testing.TB
	front   *Front
	process *exec.Cmd
	address string // where it listens, once it does

	started chan struct{} // closed when it takes messages
	ended   chan struct{} // closed when the process is gone
	mu      sync.Mutex
	diedAt  string // the point at which it ended itself
	log     *tailBuffer
	rest    []byte // of its log, an unfinished line
}

// start starts the program with an environment and does not wait.
func start(t testing.TB, program string, front *Front, log *tailBuffer, env []string) *Bot {
	t.Helper()
	b := &Bot{t: t, front: front, log: log, started: make(chan struct{}), ended: make(chan struct{})}
	b.process = exec.Command(program, "serve")
	b.process.Env = env
	b.process.Stderr = b
	// Without it a test that is killed would leave the bot behind.
	b.process.SysProcAttr = &syscall.SysProcAttr{Pdeathsig: syscall.SIGKILL}
	if err := b.process.Start(); err != nil {
		t.Fatal(err)
	}
	go func() {
		_ = b.process.Wait() // how it ended is in ProcessState
		b.front.remove(b.address)
		close(b.ended)
	}()
	return b
}

// Write takes the program's log.
func (b *Bot) Write(p []byte) (int, error) {
	b.log.Write(p)
	b.rest = append(b.rest, p...)
	for {
		line, rest, found := bytes.Cut(b.rest, []byte("\n"))
		if !found {
			return len(p), nil
		}
		b.rest = rest
		b.line(line)
	}
}

func (b *Bot) line(line []byte) {
	var said struct {
		Msg, Listen string
		DiedAt      string `json:"died_at"`
	}
	if json.Unmarshal(line, &said) != nil {
		return
	}
	switch {
	case said.DiedAt != "":
		b.mu.Lock()
		b.diedAt = said.DiedAt
		b.mu.Unlock()
	case said.Msg == "started":
		b.address = said.Listen
		b.front.add(b.address)
		close(b.started)
	}
}

// ready waits until the bot takes messages; false where it ended first.
func (b *Bot) ready() bool {
	select {
	case <-b.started:
		return true
	case <-b.ended:
		return false
	case <-time.After(patience):
		b.t.Fatalf("the bot did not start:\n%s", b.log)
	}
	return false
}

// Kill ends it with SIGKILL.
func (b *Bot) Kill() {
	_ = b.process.Process.Kill() // it may have ended before
	<-b.ended
}

// Stop ends it with SIGTERM, and says how long that took.
func (b *Bot) Stop() (time.Duration, error) {
	began := time.Now()
	if err := b.process.Process.Signal(syscall.SIGTERM); err != nil {
		return 0, err
	}
	select {
	case <-b.ended:
	case <-time.After(patience):
		b.Kill()
		return 0, fmt.Errorf("it did not stop")
	}
	if code := b.process.ProcessState.ExitCode(); code != 0 {
		return time.Since(began), fmt.Errorf("it ended with status %d", code)
	}
	return time.Since(began), nil
}

// point is where it ended itself, empty if it did not.
func (b *Bot) point() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.diedAt
}

// Ready asks for its readiness: the status and what it says.
func (b *Bot) Ready(path string) (int, string) {
	client := http.Client{Timeout: 10 * time.Second, Transport: &http.Transport{DisableKeepAlives: true}}
	res, err := client.Get("http://" + b.address + path)
	if err != nil {
		return 0, err.Error()
	}
	defer res.Body.Close()
	body, err := io.ReadAll(res.Body)
	if err != nil {
		return 0, err.Error()
	}
	return res.StatusCode, strings.TrimSpace(string(body))
}

// tailBuffer keeps the end of what is written to it.
type tailBuffer struct {
	mu sync.Mutex
	b  []byte
}

func (l *tailBuffer) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	const most = 64 << 10
	l.b = append(l.b, p...)
	if len(l.b) > 2*most {
		l.b = append([]byte(nil), l.b[len(l.b)-most:]...)
	}
	return len(p), nil
}

func (l *tailBuffer) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return string(l.b)
}
