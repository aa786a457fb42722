package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// Failures count the tries to log in that failed within a span.
type Failures struct {
	Pair    int // with this login from this address
	Login   int // with this login from any address that never got in with it
	Address int // from this address with any login
	Known   bool
	// Oldest of each that count, to say when the next try may come; zero for none.
	PairSince, LoginSince, AddressSince time.Time
}

// keepLogins is how long a try to log in is remembered: an address that got in within
// that time is known.
const keepLogins = 30 * 24 * time.Hour

// FailuresOf counts what failed since a time. A success from the address with the login
// clears what both failed before.
func FailuresOf(ctx context.Context, c Conn, login, address string, since, now time.Time) (Failures, error) {
	const sql = `
		WITH good AS (SELECT max(at) AS at FROM staff_logins WHERE login = $1 AND address = $2 AND ok AND at > $4),
		pair AS (SELECT count(*) AS n, min(l.at) AS since FROM staff_logins l, good
			WHERE login = $1 AND address = $2 AND NOT ok AND l.at > greatest($3, coalesce(good.at, $3))),
		account AS (SELECT count(*) AS n, min(at) AS since FROM staff_logins l WHERE login = $1 AND NOT ok AND at > $3
			AND NOT EXISTS (SELECT FROM staff_logins g WHERE g.login = $1 AND g.address = l.address AND g.ok AND g.at > $4)),
		place AS (SELECT count(*) AS n, min(l.at) AS since FROM staff_logins l WHERE address = $2 AND NOT ok AND l.at > $3)
		SELECT pair.n, account.n, place.n, good.at IS NOT NULL, coalesce(pair.since, '0001-01-01'),
			coalesce(account.since, '0001-01-01'), coalesce(place.since, '0001-01-01')
		FROM good, pair, account, place`
	var f Failures
	err := c.QueryRow(ctx, sql, login, address, since, now.Add(-keepLogins)).
		Scan(&f.Pair, &f.Login, &f.Address, &f.Known, &f.PairSince, &f.LoginSince, &f.AddressSince)
	if err != nil {
		return f, fmt.Errorf("look up tries to log in: %w", err)
	}
	return f, nil
}

// NoteLogin remembers a try to log in, and forgets old ones.
func NoteLogin(ctx context.Context, c Conn, login, address string, ok bool, now time.Time) error {
	b := &pgx.Batch{}
	b.Queue(`INSERT INTO staff_logins (login, address, ok, at) VALUES ($1, $2, $3, $4)`, login, address, ok, now)
	b.Queue(`DELETE FROM staff_logins WHERE at < $1`, now.Add(-keepLogins))
	if err := c.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("note a try to log in: %w", err)
	}
	return nil
}

// SweepSessions removes log-ins that have run out.
func SweepSessions(ctx context.Context, c Conn) error {
	if _, err := c.Exec(ctx, `DELETE FROM sessions WHERE expiry < current_timestamp`); err != nil {
		return fmt.Errorf("end log-ins: %w", err)
	}
	return nil
}
