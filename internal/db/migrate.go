package db

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"

	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/jackc/pgx/v5/stdlib"
	"github.com/pressly/goose/v3"
	"github.com/pressly/goose/v3/lock"
	"github.com/riverqueue/river/riverdriver/riverpgxv5"
	"github.com/riverqueue/river/rivermigrate"
)

//go:embed migrations/*.sql
var migrations embed.FS

// migrateLock keeps two processes that start at once from migrating together; the
// number is arbitrary, but the same in every version.
const migrateLock = 0x646f6d65 // "dome"

// Migrate brings the schema up to what this program needs, the job queue's own
// tables too. It is forward only, harmless where nothing is to be done, and waits for
// another process that is at it.
func Migrate(ctx context.Context, pool *pgxpool.Pool) (err error) {
	std := stdlib.OpenDBFromPool(pool)
	defer func() { err = errors.Join(err, std.Close()) }()
	unlock, err := lockMigrations(ctx, std)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, unlock()) }()
	if err := migrateQueue(ctx, pool); err != nil {
		return err
	}
	p, err := provider(std)
	if err != nil {
		return err
	}
	if _, err := p.Up(ctx); err != nil {
		return fmt.Errorf("migrate schema: %w", err)
	}
	return nil
}

// Pending says whether Migrate would change anything in the schema.
func Pending(ctx context.Context, pool *pgxpool.Pool) (pending bool, err error) {
	std := stdlib.OpenDBFromPool(pool)
	defer func() { err = errors.Join(err, std.Close()) }()
	p, err := provider(std)
	if err != nil {
		return false, err
	}
	return p.HasPending(ctx)
}

func provider(std *sql.DB) (*goose.Provider, error) {
	dir, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return nil, fmt.Errorf("embedded migrations: %w", err)
	}
	p, err := goose.NewProvider(goose.DialectPostgres, std, dir, goose.WithDisableGlobalRegistry(true))
	if err != nil {
		return nil, fmt.Errorf("embedded migrations: %w", err)
	}
	return p, nil
}

// lockMigrations takes the session lock that guards both migrators.
func lockMigrations(ctx context.Context, std *sql.DB) (unlock func() error, err error) {
	// Every second for ten minutes: another process may be at a long one.
	locker, err := lock.NewPostgresSessionLocker(lock.WithLockID(migrateLock), lock.WithLockTimeout(1, 600))
	if err != nil {
		return nil, fmt.Errorf("migration lock: %w", err)
	}
	conn, err := std.Conn(ctx)
	if err != nil {
		return nil, fmt.Errorf("migration lock: %w", err)
	}
	if err := locker.SessionLock(ctx, conn); err != nil {
		return nil, errors.Join(fmt.Errorf("migration lock: %w", err), conn.Close())
	}
	return func() error {
		// The lock must go even where the caller has given up.
		return errors.Join(locker.SessionUnlock(context.WithoutCancel(ctx), conn), conn.Close())
	}, nil
}

func migrateQueue(ctx context.Context, pool *pgxpool.Pool) error {
	m, err := rivermigrate.New(riverpgxv5.New(pool), nil)
	if err != nil {
		return fmt.Errorf("migrate job queue: %w", err)
	}
	if _, err := m.Migrate(ctx, rivermigrate.DirectionUp, nil); err != nil {
		return fmt.Errorf("migrate job queue: %w", err)
	}
	return nil
}
