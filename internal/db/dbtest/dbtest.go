// Package dbtest gives each test a database of its own on a real Postgres: one private
// server for a test process, made when first asked for, and one migrated database for
// each test. Where no Postgres is to be had the test fails; nothing is ever skipped.
//
// INTAKE_TEST_DATABASE_URL names a running server to use instead; its user must be
// allowed to make databases.
package dbtest

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/db"
)

// New is a pool on a new, migrated, empty database, gone when the test ends.
func New(t testing.TB) *pgxpool.Pool {
	t.Helper()
	pool, err := db.Open(t.Context(), URL(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(pool.Close)
	return pool
}

// URL is the address of a new, migrated, empty database, gone when the test ends.
func URL(t testing.TB) string {
	t.Helper()
	return fresh(t, true)
}

// EmptyURL is the address of a new database without any tables.
func EmptyURL(t testing.TB) string {
	t.Helper()
	return fresh(t, false)
}

// server is the one of this test process.
var server = sync.OnceValues(startServer)

type running struct {
	admin    string   // address of the database from which others are made
	template string   // name of the migrated one
	leash    *os.File // open as long as the server is to run; nil where it is not ours
	count    atomic.Int64
}

func fresh(t testing.TB, migrated bool) string {
	t.Helper()
	s, err := server()
	if err != nil {
		t.Fatalf("no Postgres for the test: %v", err)
	}
	name := fmt.Sprintf("%s_%d", s.template, s.count.Add(1))
	sql := "CREATE DATABASE " + pgx.Identifier{name}.Sanitize()
	if migrated {
		sql += " TEMPLATE " + pgx.Identifier{s.template}.Sanitize()
	}
	if err := s.exec(t.Context(), sql); err != nil {
		t.Fatalf("database for the test: %v", err)
	}
	t.Cleanup(func() {
		sql := "DROP DATABASE IF EXISTS " + pgx.Identifier{name}.Sanitize() + " WITH (FORCE)"
		if err := s.exec(context.WithoutCancel(t.Context()), sql); err != nil {
			t.Errorf("drop the test's database: %v", err)
		}
	})
	return withDatabase(s.admin, name)
}

func startServer() (*running, error) {
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
	defer cancel()
	s := &running{
		admin:    os.Getenv("INTAKE_TEST_DATABASE_URL"),
		template: fmt.Sprintf("intake_test_%d", os.Getpid()),
	}
	if s.admin == "" {
		var err error
		if s.admin, s.leash, err = startPrivate(ctx); err != nil {
			return nil, err
		}
	}
	return s, s.makeTemplate(ctx)
}

// makeTemplate makes the migrated database that those of the tests are copies of.
func (s *running) makeTemplate(ctx context.Context) error {
	if err := s.exec(ctx, "CREATE DATABASE "+pgx.Identifier{s.template}.Sanitize()); err != nil {
		return err
	}
	pool, err := db.Open(ctx, withDatabase(s.admin, s.template))
	if err != nil {
		return err
	}
	defer pool.Close() // a template in use can't be copied
	return db.Migrate(ctx, pool)
}

func (s *running) exec(ctx context.Context, sql string) error {
	conn, err := pgx.Connect(ctx, s.admin)
	if err != nil {
		return err
	}
	defer conn.Close(ctx)
	_, err = conn.Exec(ctx, sql)
	return err
}

// withDatabase is an address with another database in it.
func withDatabase(address, name string) string {
	u, err := url.Parse(address)
	if err != nil || !strings.HasPrefix(u.Scheme, "postgres") {
		return address + " dbname=" + name // keyword form: the last one counts
	}
	u.Path = "/" + name
	return u.String()
}
