package torture_test

import (
	"errors"
	"os"
	"path/filepath"
	"sync"
	"syscall"
	"testing"
	"time"

	"example.com/intake-bot/internal/torture"
)

const (
	unreachable = "the database: it can't be reached"
	stopping    = "the database: it is stopping or starting"
	silent      = "the database: it does not answer in time"
	full        = "the database: its disk is full"
)

// crowd is who talks in the tests of one fault, with what they leave undisturbed.
var crowd = struct {
	sync.Once
	run  run
	left torture.Remains
}{}

func theCrowd(t *testing.T) (run, torture.Remains) {
	t.Helper()
	leftOut(t)
	crowd.Do(func() {
		crowd.run = script(t, 21, 6)
		crowd.left = crowd.run.calm(t)
	})
	if crowd.left == nil {
		t.Skip("the undisturbed run failed")
	}
	return crowd.run, crowd.left
}

// disturbed plays with stages, and compares.
func (r run) disturbed(t *testing.T, h *torture.House, want torture.Remains, stages ...func()) *torture.Play {
	t.Helper()
	turns := 0
	for _, c := range r.customers {
		turns += len(c.Turns)
	}
	s := &torture.Stages{T: t, Turns: turns, Stages: stages}
	p := &torture.Play{House: h, Customers: r.customers, Seed: r.seed, Gate: s.Gate}
	if err := p.Run(t.Context()); err != nil {
		t.Fatal(err)
	}
	if !s.All() {
		t.Error("not every fault was made")
	}
	compare(t, h, r.customers, want)
	return p
}

// The database is stopped in good order and started again, dies and is started again, and
// throws everybody out: nothing is lost, and nobody has to do anything about the bot.
func TestDatabaseRestarted(t *testing.T) {
	atLength(t)
	r, want := theCrowd(t)
	p := torture.NewPostgres(t, torture.Folder(t), nil)
	h := torture.NewHouse(t, p.URL, p.URL)
	b := h.Open()
	r.disturbed(t, h, want,
		func() {
			if err := p.Stop(); err != nil {
				t.Error(err)
			}
			b.Red(unreachable, stopping)
			p.Again()
			b.Green()
		},
		func() {
			if err := p.Kill(); err != nil {
				t.Error(err)
			}
			b.Red(unreachable, stopping)
			p.Again()
			b.Green()
		},
		func() {
			for range 5 {
				_, err := h.Pool.Exec(t.Context(), `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
					WHERE datname = current_database() AND pid <> pg_backend_pid()`)
				if err != nil {
					t.Error(err)
				}
				time.Sleep(30 * time.Millisecond) // into what they do next
			}
			b.Green()
		})
}

// The way to the database is slow, then silent, then cut.
func TestDatabaseSlowAndSilent(t *testing.T) {
	atLength(t)
	r, want := theCrowd(t)
	p := torture.NewPostgres(t, torture.Folder(t), nil)
	proxy := p.Proxy()
	h := torture.NewHouse(t, torture.ProxyURL(proxy), p.URL)
	b := h.Open()
	r.disturbed(t, h, want,
		func() { proxy.Slow(40 * time.Millisecond) }, // each way: a turn takes half a second
		func() {
			proxy.Slow(0)
			proxy.Silence(true)
			b.Red(silent)
			proxy.Silence(false)
			b.Green()
		},
		func() {
			for range 5 {
				proxy.Cut()
				time.Sleep(30 * time.Millisecond)
			}
			b.Green()
		})
}

// The database's disk is full: what can't be kept is not acknowledged, readiness says why,
// and when there is room again all goes on.
func TestDatabaseDiskFull(t *testing.T) {
	atLength(t)
	leftOut(t)
	dir := torture.Folder(t)
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=160m,mode=755"); err != nil {
		t.Skipf("a small disk can't be made here (it takes root, and the right to mount): %v", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, syscall.MNT_DETACH); err != nil {
			t.Error(err)
		}
	})
	r, want := theCrowd(t)
	p := torture.NewPostgres(t, dir, map[string]string{"max_wal_size": "32MB", "min_wal_size": "32MB"})
	h := torture.NewHouse(t, p.URL, p.URL)
	b := h.Open()
	ballast := filepath.Join(dir, "ballast")
	r.disturbed(t, h, want, func() {
		fill(t, ballast)
		// Until the server has used up what room it kept within its files.
		b.Red(full)
		if err := os.Remove(ballast); err != nil {
			t.Error(err)
		}
		b.Green()
	})
}

// fill writes a file until the disk is full.
func fill(t *testing.T, path string) {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Error(err)
		return
	}
	defer f.Close()
	for size := 1 << 20; size >= 512; {
		if _, err := f.Write(make([]byte, size)); err == nil {
			continue
		} else if !errors.Is(err, syscall.ENOSPC) {
			t.Error(err)
			return
		}
		size /= 2
	}
}

// A primary with a synchronous standby, each on the loopback: the primary dies under load,
// the standby takes over, the bot finds it by itself, and nothing that was acknowledged is
// missing.
func TestFailover(t *testing.T) {
	atLength(t)
	r, want := theCrowd(t)
	dir := torture.Folder(t)
	first := torture.NewPostgres(t, dir, nil)
	second := first.Standby(dir)
	url := torture.ProxyURL(first.Proxy(), second.Proxy())
	h := torture.NewHouse(t, url, url)
	b := h.Open()
	var mu sync.Mutex
	acked := []string{}
	turns := 0
	for _, c := range r.customers {
		turns += len(c.Turns)
	}
	s := &torture.Stages{T: t, Turns: turns, Stages: []func(){func() {
		if err := first.Kill(); err != nil {
			t.Error(err)
		}
		b.Red(unreachable, stopping, "the database: it takes no writes")
		second.Promote()
		b.Green()
	}}}
	p := &torture.Play{House: h, Customers: r.customers, Seed: r.seed, Gate: s.Gate, Acked: func(id string) {
		mu.Lock()
		defer mu.Unlock()
		acked = append(acked, id)
	}}
	if err := p.Run(t.Context()); err != nil {
		t.Fatal(err)
	}
	var kept int
	if err := h.Pool.QueryRow(t.Context(), `SELECT count(*) FROM messages WHERE provider_id = ANY ($1)`, acked).Scan(&kept); err != nil {
		t.Fatal(err)
	}
	if kept != len(acked) || kept == 0 || !s.All() {
		t.Errorf("of %d acknowledged texts %d are kept", len(acked), kept)
	}
	compare(t, h, r.customers, want)
}
