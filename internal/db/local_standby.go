package db

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// StartStandby makes and starts a second private server in dir that follows the first as
// its standby, by Postgres's own streaming replication: for tests of what becomes of the
// bots when the first is gone.
func StartStandby(ctx context.Context, dir string, primary *Local, opts LocalOptions) (*Local, error) {
	l, err := prepareLocal(dir, &opts)
	if err == nil {
		err = l.copyCluster(ctx, primary)
	}
	if err == nil {
		err = l.run(ctx, opts)
	}
	if err != nil {
		return nil, fmt.Errorf("standby server in %s: %w", dir, err)
	}
	return l, nil
}

// copyCluster takes a base backup of the primary, aside, then renamed, as makeCluster does.
func (l *Local) copyCluster(ctx context.Context, primary *Local) error {
	if _, err := os.Stat(filepath.Join(l.dataDir(), "PG_VERSION")); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	aside, log := l.dataDir()+".new", filepath.Join(l.Dir, "pg_basebackup.log")
	if err := os.RemoveAll(aside); err != nil {
		return err
	}
	cmd, out, err := l.command(ctx, log, "pg_basebackup", "-h", primary.socket, "-U", "app", "-D", aside, "-X", "stream", "-c", "fast", "-R", "--no-sync")
	if err != nil {
		return err
	}
	defer out.Close()
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("pg_basebackup: %w: %s", err, tail(log, 0))
	}
	return os.Rename(aside, l.dataDir())
}

// Socket is the folder of the server's socket.
func (l *Local) Socket() string { return l.socket }
