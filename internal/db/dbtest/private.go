package dbtest

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"

	"example.com/intake-bot/internal/db"
)

// startPrivate starts a server in a folder of its own that ends with this process,
// however that ends. The leash must be kept: closing it ends the server.
func startPrivate(ctx context.Context) (address string, leash *os.File, err error) {
	parent := os.TempDir()
	if os.Getuid() == 0 {
		parent = "/var/tmp" // TMPDIR may be root's alone
	}
	dir, err := os.MkdirTemp(parent, "intake-test-")
	if err != nil {
		return "", nil, err
	}
	local, err := db.StartLocal(ctx, dir, db.LocalOptions{Fast: true, Database: "admin", Connections: 300})
	if err != nil {
		return "", nil, err
	}
	leash, err = endWithUs(dir)
	return local.URL, leash, err
}

// endWithUs starts a small shell that waits for the end of a pipe, which comes with the
// end of this process even if it is killed, then ends the server and clears up.
func endWithUs(dir string) (leash *os.File, err error) {
	b, err := os.ReadFile(filepath.Join(dir, "data", "postmaster.pid"))
	if err != nil {
		return nil, err
	}
	first, _, _ := strings.Cut(string(b), "\n")
	pid, err := strconv.Atoi(strings.TrimSpace(first))
	if err != nil {
		return nil, fmt.Errorf("server's process id: %w", err)
	}
	ours, theirs, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	defer ours.Close()
	const script = `cat >/dev/null; kill -QUIT "$1"; while kill -0 "$1" 2>/dev/null && [ -e "$2/data/postmaster.pid" ]; do sleep 0.05; done; rm -rf "$2"`
	cmd := exec.Command("/bin/sh", "-c", script, "sh", strconv.Itoa(pid), dir)
	cmd.Dir = "/"
	cmd.Stdin = ours
	cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	return theirs, nil
}
