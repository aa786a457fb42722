package db

import (
	"context"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"github.com/jackc/pgx/v5"
)

// LocalOptions say how a private server is run. The zero value will do.
type LocalOptions struct {
	// Programs is the folder with initdb and postgres; empty: looked for.
	Programs string
	// Database is made where it is missing; empty: "intake".
	Database string
	// Fast gives up safety from a crash of the machine (not of the server) for speed:
	// for tests only.
	Fast bool
	// Connections bounds how many the server takes; 0: 200.
	Connections int
	// Settings are more of the server's own, such as max_wal_size.
	Settings map[string]string
}

// Local is a private Postgres server: its data, socket and log are in one folder, it
// listens on no network, and only its user can reach it.
type Local struct {
	URL     string // of the database in it
	Dir     string
	Started bool // false where a server that already ran was taken over

	programs string
	socket   string
	user     *serverUser
	process  *process // nil unless Started
}

// StartLocal makes a private server in dir where there is none, starts it where it
// does not run, and makes its database. Data is never removed. Several programs may
// call it for the same folder at once: one starts the server, all use it. It works as
// root too, which Postgres itself refuses: the server then runs as user postgres or
// nobody, so dir must be where that user may go (under /var/lib or /var/tmp, say).
func StartLocal(ctx context.Context, dir string, opts LocalOptions) (*Local, error) {
	l, err := prepareLocal(dir, &opts)
	if err != nil {
		return nil, fmt.Errorf("private database server: %w", err)
	}
	unlock, err := lockFolder(ctx, l.Dir)
	if err != nil {
		return nil, fmt.Errorf("private database server: %w", err)
	}
	defer unlock()
	if err := l.run(ctx, opts); err != nil {
		return nil, fmt.Errorf("private database server in %s: %w", l.Dir, err)
	}
	return l, nil
}

// prepareLocal finds the programs and makes the folders.
func prepareLocal(dir string, opts *LocalOptions) (*Local, error) {
	if opts.Database == "" {
		opts.Database = "intake"
	}
	if opts.Connections == 0 {
		opts.Connections = 200
	}
	dir, err := filepath.Abs(dir)
	if err != nil {
		return nil, err
	}
	l := &Local{Dir: dir}
	if l.user, err = findServerUser(); err != nil {
		return nil, err
	}
	if l.programs, err = findPrograms(opts.Programs, wantedMajor(l.dataDir())); err != nil {
		return nil, err
	}
	if err := l.user.makeFolder(dir); err != nil {
		return nil, err
	}
	if l.socket, err = socketFolder(dir, l.user); err != nil {
		return nil, err
	}
	q := url.Values{"host": {l.socket}, "user": {"app"}}
	l.URL = "postgres:///" + url.PathEscape(opts.Database) + "?" + q.Encode()
	return l, nil
}

// run makes, starts and fills the server; the caller holds the folder's lock.
func (l *Local) run(ctx context.Context, opts LocalOptions) error {
	if err := l.makeCluster(ctx, opts.Fast); err != nil {
		return err
	}
	// Only an answered connection proves that a server runs: its process id file and
	// pg_ctl's word may speak of one that was killed.
	if err := l.makeDatabase(ctx, opts.Database); err == nil {
		return nil
	}
	p, err := l.start(opts)
	if err != nil {
		return err
	}
	if err := l.awaitDatabase(ctx, p, opts.Database); err != nil {
		p.stop(syscall.SIGINT)
		return err
	}
	l.Started, l.process = true, p
	return nil
}

func (l *Local) dataDir() string { return filepath.Join(l.Dir, "data") }

// Stop ends a server that this StartLocal started, in good order, and leaves alone
// one that was already running.
func (l *Local) Stop() error {
	if l.process == nil {
		return nil
	}
	if err := l.process.stop(syscall.SIGINT); err != nil {
		return fmt.Errorf("stop private database server: %w", err)
	}
	return nil
}

// Kill ends the server at once, as a power cut would: for tests of what survives that.
func (l *Local) Kill() error {
	if l.process == nil {
		return errors.New("kill private database server: it was started by another program")
	}
	return l.process.stop(syscall.SIGQUIT)
}

// awaitDatabase waits until the server answers and has the database, or is dead.
func (l *Local) awaitDatabase(ctx context.Context, p *process, name string) error {
	deadline := time.After(time.Minute)
	for {
		err := l.makeDatabase(ctx, name)
		if err == nil {
			return nil
		}
		select {
		case <-p.done:
			return fmt.Errorf("postgres ended at once: %s", p.lastWords())
		case <-ctx.Done():
			return ctx.Err()
		case <-deadline:
			return fmt.Errorf("postgres does not answer: %w", err)
		case <-time.After(20 * time.Millisecond):
		}
	}
}

// makeDatabase makes the database where it is missing; an error may just mean that no
// server answers.
func (l *Local) makeDatabase(ctx context.Context, name string) (err error) {
	cfg, err := pgx.ParseConfig(l.URL)
	if err != nil {
		return err
	}
	cfg.Database = "postgres"
	cfg.ConnectTimeout = 5 * time.Second
	conn, err := pgx.ConnectConfig(ctx, cfg)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, conn.Close(ctx)) }()
	var has bool
	const ask = `SELECT EXISTS (SELECT FROM pg_database WHERE datname = $1)`
	if err := conn.QueryRow(ctx, ask, name).Scan(&has); err != nil || has {
		return err
	}
	_, err = conn.Exec(ctx, "CREATE DATABASE "+pgx.Identifier{name}.Sanitize())
	return err
}

// wantedMajor is the major version that the data in a folder was made by, "" for none.
func wantedMajor(data string) string {
	b, err := os.ReadFile(filepath.Join(data, "PG_VERSION"))
	if err != nil {
		return ""
	}
	return strings.TrimSpace(string(b))
}
