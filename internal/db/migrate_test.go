package db_test

import (
	"sync"
	"testing"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

func open(t *testing.T, url string) *pgxpool.Pool {
	t.Helper()
	pool, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(pool.Close)
	return pool
}

func TestMigrateSeveralAtOnce(t *testing.T) {
	url := dbtest.EmptyURL(t)
	pending, err := db.Pending(t.Context(), open(t, url))
	if err != nil || !pending {
		t.Fatalf("pending %v, %v on an empty database, want true", pending, err)
	}
	var wg sync.WaitGroup
	for range 3 {
		pool := open(t, url)
		wg.Go(func() {
			if err := db.Migrate(t.Context(), pool); err != nil {
				t.Error(err)
			}
		})
	}
	wg.Wait()
	pool := open(t, url)
	if pending, err = db.Pending(t.Context(), pool); err != nil || pending {
		t.Errorf("pending %v, %v after migrating, want false", pending, err)
	}
	for _, table := range []string{"conversations", "messages", "facts", "leads", "sends", "river_job", "lead_record"} {
		var n int
		if err := pool.QueryRow(t.Context(), "SELECT count(*) FROM "+table).Scan(&n); err != nil || n != 0 {
			t.Errorf("%s: %d rows, %v", table, n, err)
		}
	}
}

func TestEachTestHasItsOwnDatabase(t *testing.T) {
	a, b := dbtest.New(t), dbtest.New(t)
	const insert = `INSERT INTO optouts (channel, address, source, since) VALUES ('sms', '+12185550123', 'keyword', now())`
	if _, err := a.Exec(t.Context(), insert); err != nil {
		t.Fatal(err)
	}
	var n int
	if err := b.QueryRow(t.Context(), "SELECT count(*) FROM optouts").Scan(&n); err != nil || n != 0 {
		t.Errorf("another test's row is here: %d, %v", n, err)
	}
}
