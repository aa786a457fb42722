package db

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"
)

// serverFolder is a new folder where the server's user may go, even for root.
func serverFolder(t *testing.T) string {
	t.Helper()
	parent := os.TempDir()
	if os.Getuid() == 0 {
		parent = "/var/tmp"
	}
	dir, err := os.MkdirTemp(parent, "intake-local-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(dir) })
	if err := os.Chmod(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	return filepath.Join(dir, "pg")
}

func startLocal(t *testing.T, dir string) *Local {
	t.Helper()
	l, err := StartLocal(t.Context(), dir, LocalOptions{Fast: true})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := l.Stop(); err != nil {
			t.Error(err)
		}
	})
	return l
}

func openLocal(t *testing.T, l *Local) *pgxpool.Pool {
	t.Helper()
	pool, err := Open(t.Context(), l.URL)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(pool.Close)
	return pool
}

func TestLocalServerKeepsDataThroughAKill(t *testing.T) {
	dir := serverFolder(t)
	first := startLocal(t, dir)
	if !first.Started {
		t.Error("the first start says that the server already ran")
	}
	if _, err := openLocal(t, first).Exec(t.Context(), "CREATE TABLE kept (a int)"); err != nil {
		t.Fatal(err)
	}
	if again := startLocal(t, dir); again.Started || again.URL != first.URL {
		t.Errorf("second start: started %v, url %s, want the running server at %s", again.Started, again.URL, first.URL)
	}
	if err := first.Kill(); err != nil {
		t.Fatal(err)
	}
	after := startLocal(t, dir)
	if !after.Started {
		t.Error("the start after a kill says that the server still ran")
	}
	if _, err := openLocal(t, after).Exec(t.Context(), "SELECT a FROM kept"); err != nil {
		t.Errorf("the table is gone: %v", err)
	}
}

func TestLocalServerManyStartersAtOnce(t *testing.T) {
	dir := serverFolder(t)
	var wg sync.WaitGroup
	got := make([]*Local, 4)
	errs := make([]error, len(got))
	for i := range got {
		wg.Go(func() { got[i], errs[i] = StartLocal(t.Context(), dir, LocalOptions{Fast: true}) })
	}
	wg.Wait()
	started := 0
	for i, l := range got {
		if errs[i] != nil {
			t.Fatal(errs[i])
		}
		if l.Started {
			started++
			t.Cleanup(func() { l.Stop() })
		}
	}
	if started != 1 {
		t.Errorf("%d of %d started a server, want one", started, len(got))
	}
}

func TestLocalServerAfterAStartCutShort(t *testing.T) {
	dir := serverFolder(t)
	half := filepath.Join(dir, "data.new")
	if err := os.MkdirAll(half, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(half, "PG_VERSION"), []byte("15\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if os.Getuid() == 0 {
		u, err := findServerUser()
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []string{dir, half, filepath.Join(half, "PG_VERSION")} {
			if err := os.Chown(p, u.uid, u.gid); err != nil {
				t.Fatal(err)
			}
		}
	}
	startLocal(t, dir)
}

func TestLocalServerLongPath(t *testing.T) {
	dir := filepath.Join(serverFolder(t), strings.Repeat("long", 20), "pg")
	l := startLocal(t, dir)
	t.Cleanup(func() { os.RemoveAll(l.socket) })
	openLocal(t, l)
}

func TestLocalServerRefusals(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	otherVersion := serverFolder(t)
	if err := os.MkdirAll(filepath.Join(otherVersion, "data"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(otherVersion, "data", "PG_VERSION"), []byte("9999\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, dir, programs, want string }{
		{"a file is in the way", file, "", "not a folder"},
		{"no programs there", serverFolder(t), "/nowhere", "install them"},
		{"data of another version", otherVersion, "", "version 9999, which made the data"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := StartLocal(t.Context(), c.dir, LocalOptions{Programs: c.programs})
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want one that says %q", err, c.want)
			}
		})
	}
	if _, err := os.Stat(filepath.Join(otherVersion, "data", "PG_VERSION")); err != nil {
		t.Errorf("data of another version was touched: %v", err)
	}
}

func TestLockFolderGivesUpWithItsContext(t *testing.T) {
	dir := t.TempDir()
	unlock, err := lockFolder(t.Context(), dir)
	if err != nil {
		t.Fatal(err)
	}
	defer unlock()
	ctx, cancel := context.WithTimeout(t.Context(), 50*time.Millisecond)
	defer cancel()
	if _, err := lockFolder(ctx, dir); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("error %v, want that the time is over", err)
	}
}
