package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"
)

// Server is what a Postgres server says of itself.
type Server struct {
	Version  int       // 150004 is 15.4
	Name     string    // "15.4 (Debian 15.4-1)"
	Encoding string    // of the database
	ReadOnly bool      // it takes no writes: a standby, or set so
	Now      time.Time // by its clock
}

// Look asks the server.
func Look(ctx context.Context, pool *pgxpool.Pool) (Server, error) {
	var s Server
	err := pool.QueryRow(ctx, `SELECT current_setting('server_version_num')::int, current_setting('server_version'),
		pg_encoding_to_char(encoding), pg_is_in_recovery() OR current_setting('transaction_read_only')::bool, clock_timestamp()
		FROM pg_database WHERE datname = current_database()`).Scan(&s.Version, &s.Name, &s.Encoding, &s.ReadOnly, &s.Now)
	if err != nil {
		return Server{}, fmt.Errorf("look at the database server: %w", err)
	}
	return s, nil
}
