package torture

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/intake-bot/internal/db"
)

// database is the name of the database in a server of a test's own.
const database = "intake"

// Postgres is a server of a test's own, to be hurt.
type Postgres struct {
	*db.Local
	t    testing.TB
	opts db.LocalOptions
}

// Folder is a new one, where a server's user may go.
func Folder(t testing.TB) string {
	t.Helper()
	parent := os.TempDir()
	if os.Getuid() == 0 {
		parent = "/var/tmp"
	}
	dir, err := os.MkdirTemp(parent, "torture-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := os.RemoveAll(dir); err != nil {
			t.Error(err)
		}
	})
	if err := os.Chmod(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	return dir
}

// NewPostgres starts a server in a folder, and migrates its database.
func NewPostgres(t testing.TB, dir string, settings map[string]string) *Postgres {
	t.Helper()
	p := &Postgres{t: t, opts: db.LocalOptions{Fast: true, Database: database, Connections: 120, Settings: settings}}
	p.start(filepath.Join(dir, "server"))
	t.Cleanup(func() {
		if err := p.Local.Stop(); err != nil {
			t.Error(err)
		}
	})
	pool, err := db.Open(t.Context(), p.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer pool.Close()
	if err := db.Migrate(t.Context(), pool); err != nil {
		t.Fatal(err)
	}
	return p
}

func (p *Postgres) start(dir string) {
	p.t.Helper()
	local, err := db.StartLocal(context.WithoutCancel(p.t.Context()), dir, p.opts)
	if err != nil {
		p.t.Fatal(err)
	}
	p.Local = local
}

// Again starts the server again after it was stopped or died.
func (p *Postgres) Again() {
	p.t.Helper()
	p.start(p.Dir)
}

// Standby starts a server that follows this one, and waits until each commit waits for it.
func (p *Postgres) Standby(dir string) *Postgres {
	p.t.Helper()
	local, err := db.StartStandby(context.WithoutCancel(p.t.Context()), filepath.Join(dir, "standby"), p.Local, p.opts)
	if err != nil {
		p.t.Fatal(err)
	}
	s := &Postgres{Local: local, t: p.t, opts: p.opts}
	p.t.Cleanup(func() {
		if err := s.Local.Stop(); err != nil {
			p.t.Error(err)
		}
	})
	p.exec("ALTER SYSTEM SET synchronous_standby_names = '*'")
	p.exec("SELECT pg_reload_conf()")
	Until(p.t, "the standby is synchronous", func() bool {
		return p.ask("SELECT count(*) FROM pg_stat_replication WHERE sync_state = 'sync'") == 1
	})
	return s
}

// exec runs a statement over a connection of its own.
func (p *Postgres) exec(sql string) {
	p.t.Helper()
	pool, err := db.Open(p.t.Context(), p.URL)
	if err != nil {
		p.t.Fatal(err)
	}
	defer pool.Close()
	if _, err := pool.Exec(p.t.Context(), sql); err != nil {
		p.t.Fatalf("%s: %v", sql, err)
	}
}

func (p *Postgres) ask(sql string) (n int) {
	p.t.Helper()
	pool, err := db.Open(p.t.Context(), p.URL)
	if err != nil {
		p.t.Fatal(err)
	}
	defer pool.Close()
	if err := pool.QueryRow(p.t.Context(), sql).Scan(&n); err != nil {
		p.t.Fatalf("%s: %v", sql, err)
	}
	return n
}

// Proxy puts a proxy before the server; URL is how to reach servers by their proxies.
func (p *Postgres) Proxy() *Proxy { return NewProxy(p.t, filepath.Join(p.Socket(), ".s.PGSQL.5432")) }

// ProxyURL is the address of a database behind one or more proxies.
func ProxyURL(proxies ...*Proxy) string {
	var hosts []string
	for _, p := range proxies {
		hosts = append(hosts, p.Address)
	}
	return "postgres://app@" + strings.Join(hosts, ",") + "/" + database + "?sslmode=disable"
}

// Promote makes a standby the one that takes writes.
func (p *Postgres) Promote() {
	p.t.Helper()
	p.exec("SELECT pg_promote()")
}
