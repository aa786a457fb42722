package db

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/pgxpool"
)

// ErrNotFound says that no row has the given key.
var ErrNotFound = errors.New("not found")

// Conn runs statements: a pool, a connection or a transaction.
type Conn interface {
	Exec(ctx context.Context, sql string, args ...any) (pgconn.CommandTag, error)
	Query(ctx context.Context, sql string, args ...any) (pgx.Rows, error)
	QueryRow(ctx context.Context, sql string, args ...any) pgx.Row
	SendBatch(ctx context.Context, b *pgx.Batch) pgx.BatchResults
}

// Open connects to the server that url names (a postgres:// URL or a keyword string)
// and proves that it answers. Several hosts are allowed; where the url does not say
// otherwise, the one that takes writes is used, so that a failover is followed. Changes
// are made to the settings last; nil ones are left out.
func Open(ctx context.Context, url string, changes ...func(*pgxpool.Config)) (*pgxpool.Pool, error) {
	cfg, err := pgxpool.ParseConfig(url)
	if err != nil {
		return nil, fmt.Errorf("database address: %w", err)
	}
	setDefaults(cfg, strings.Contains(url, "pool_max_conns"))
	for _, change := range changes {
		if change != nil {
			change(cfg)
		}
	}
	pool, err := pgxpool.NewWithConfig(ctx, cfg)
	if err != nil {
		return nil, fmt.Errorf("open database: %w", err)
	}
	if err := pool.Ping(ctx); err != nil {
		pool.Close()
		return nil, fmt.Errorf("reach database: %w", err)
	}
	return pool, nil
}

// setDefaults fills in what an address leaves open; sized says that it names the
// pool's size.
func setDefaults(cfg *pgxpool.Config, sized bool) {
	c := cfg.ConnConfig
	c.RuntimeParams["timezone"] = "UTC"
	if c.RuntimeParams["application_name"] == "" {
		c.RuntimeParams["application_name"] = "intake-bot"
	}
	var set strings.Builder
	for _, s := range serverSettings {
		if c.RuntimeParams[s.name] == "" {
			fmt.Fprintf(&set, "SET %s = '%s';", s.name, s.value)
		}
	}
	// Not at log-in: a pooler between may not know them.
	cfg.AfterConnect = func(ctx context.Context, conn *pgx.Conn) error {
		_, err := conn.Exec(ctx, set.String())
		return err
	}
	if len(c.Fallbacks) > 0 && c.ValidateConnect == nil {
		c.ValidateConnect = pgconn.ValidateConnectTargetSessionAttrsReadWrite
	}
	if c.ConnectTimeout == 0 || c.ConnectTimeout > 10*time.Second {
		c.ConnectTimeout = 10 * time.Second
	}
	c.DialFunc = dial
	// A job holds a connection while it works, and the queue needs a few for itself.
	if !sized && cfg.MaxConns < 16 {
		cfg.MaxConns = 16
	}
}

// serverSettings are what each session asks of the server, unless the address says otherwise.
var serverSettings = []struct{ name, value string }{
	// A process that stands still, or that the network has cut off, must not keep the talks
	// that it holds from the others. No turn takes so long.
	{"idle_in_transaction_session_timeout", "60s"},
	// Nor the mailbox: by default a server may take two hours to miss a machine that is gone.
	{"tcp_keepalives_idle", "30"}, {"tcp_keepalives_interval", "10"}, {"tcp_keepalives_count", "3"},
}

// InTx runs fn in one transaction: all of what it did is kept, or nothing.
func InTx(ctx context.Context, pool *pgxpool.Pool, fn func(pgx.Tx) error) error {
	return pgx.BeginFunc(ctx, pool, fn)
}
