package db

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"time"
)

// process is a server that we started.
type process struct {
	cmd  *exec.Cmd
	log  string
	from int64         // where in the log its words begin
	done chan struct{} // closed when it has ended
}

// makeCluster makes the data folder where there is none: aside, then renamed, so that
// a start that is cut short leaves no half of one.
func (l *Local) makeCluster(ctx context.Context, fast bool) error {
	if _, err := os.Stat(filepath.Join(l.dataDir(), "PG_VERSION")); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	aside := l.dataDir() + ".new"
	if err := os.RemoveAll(aside); err != nil {
		return err
	}
	args := []string{"-D", aside, "-U", "app", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-instructions"}
	if runtime.GOOS == "linux" {
		args = append(args, "--lc-ctype=C.UTF-8") // so that É and é are one letter to a search
	}
	if fast {
		args = append(args, "--no-sync")
	}
	log := filepath.Join(l.Dir, "initdb.log")
	cmd, out, err := l.command(ctx, log, "initdb", args...)
	if err != nil {
		return err
	}
	defer out.Close()
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("initdb: %w: %s", err, tail(log, 0))
	}
	return os.Rename(aside, l.dataDir())
}

// command prepares one of the server's programs: as the server's user, in a session
// of its own so that Ctrl-C reaches the bot first, and with its output in a file,
// since a pipe would have to be drained for as long as the server lives.
func (l *Local) command(ctx context.Context, log, name string, args ...string) (*exec.Cmd, *os.File, error) {
	out, err := os.OpenFile(log, os.O_CREATE|os.O_WRONLY|os.O_APPEND, 0o600)
	if err != nil {
		return nil, nil, err
	}
	cmd := exec.CommandContext(ctx, filepath.Join(l.programs, name), args...)
	cmd.Dir = l.Dir
	cmd.Env = []string{"PATH=" + os.Getenv("PATH"), "LC_ALL=C", "TZ=UTC", "HOME=" + l.Dir}
	cmd.Stdout, cmd.Stderr = out, out
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: l.user.credential, Setsid: true}
	return cmd, out, nil
}

// start runs the server and does not wait until it answers.
func (l *Local) start(opts LocalOptions) (*process, error) {
	log := filepath.Join(l.Dir, "postgres.log")
	// Not bound to a context: the server outlives the call.
	cmd, out, err := l.command(context.Background(), log, "postgres", l.settings(opts)...)
	if err != nil {
		return nil, err
	}
	defer out.Close()
	p := &process{cmd: cmd, log: log, done: make(chan struct{})}
	if info, err := out.Stat(); err == nil {
		p.from = info.Size()
	}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	go func() {
		defer close(p.done)
		// How it ended is in its log and in cmd.ProcessState.
		_ = cmd.Wait()
	}()
	return p, nil
}

func (l *Local) settings(opts LocalOptions) []string {
	args := []string{"-D", l.dataDir()}
	set := func(name string, value any) { args = append(args, "-c", fmt.Sprintf("%s=%v", name, value)) }
	set("listen_addresses", "")
	set("unix_socket_directories", l.socket)
	set("unix_socket_permissions", "0700")
	set("port", 5432) // names the socket only
	set("timezone", "UTC")
	set("log_timezone", "UTC")
	set("max_connections", opts.Connections)
	if opts.Fast {
		set("fsync", "off")
		set("full_page_writes", "off")
		set("autovacuum", "off")
	}
	for name, value := range opts.Settings {
		set(name, value)
	}
	return args
}

// stop sends a signal and waits until the server has ended; one that does not heed it
// is told more firmly.
func (p *process) stop(sig syscall.Signal) error {
	for _, s := range []syscall.Signal{sig, syscall.SIGQUIT, syscall.SIGKILL} {
		if err := p.cmd.Process.Signal(s); err != nil && !errors.Is(err, os.ErrProcessDone) {
			return err
		}
		select {
		case <-p.done:
			return nil
		case <-time.After(20 * time.Second):
		}
	}
	return fmt.Errorf("process %d does not end", p.cmd.Process.Pid)
}

// lastWords is what the server wrote to its log.
func (p *process) lastWords() string { return tail(p.log, p.from) }

// tail is the end of a log from an offset on, as one line.
func tail(log string, from int64) string {
	b, err := os.ReadFile(log)
	if err != nil {
		return err.Error()
	}
	if from < int64(len(b)) {
		b = b[from:]
	}
	const most = 1000
	if len(b) > most {
		b = b[len(b)-most:]
	}
	return strings.Join(strings.Fields(string(b)), " ")
}
