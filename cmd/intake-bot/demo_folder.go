package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/db"
)

const demoDatabase = "demo"

// demoFolder is where the demo keeps its things: .demo here, unless its database's user
// could not reach that. Postgres does not run as root, and root's own folders are often
// closed to others.
func demoFolder(chosen string) (string, error) {
	dir, err := filepath.Abs(orElse(chosen, ".demo"))
	if err != nil {
		return "", fmt.Errorf("the demo's folder: %w", err)
	}
	if chosen == "" && os.Getuid() == 0 && !reachable(filepath.Dir(dir)) {
		dir = "/var/tmp/intake-bot-demo"
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return "", fmt.Errorf("the demo's folder: %w", err)
	}
	return dir, nil
}

// reachable says whether any user may go into a folder.
func reachable(dir string) bool {
	for ; ; dir = filepath.Dir(dir) {
		info, err := os.Stat(dir)
		if err != nil || info.Mode().Perm()&0o001 == 0 {
			return false
		}
		if dir == filepath.Dir(dir) {
			return true
		}
	}
}

// lockDemo keeps a second demo out of the folder.
func lockDemo(dir string) (unlock func() error, err error) {
	f, err := os.OpenFile(filepath.Join(dir, "running"), os.O_CREATE|os.O_RDWR, 0o644)
	if err != nil {
		return nil, fmt.Errorf("the demo's folder: %w", err)
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		err = errors.New("a demo runs in " + dir + " already: end it first, or set DEMO_DIR to another folder")
		return nil, errors.Join(err, f.Close())
	}
	return f.Close, nil
}

// emptyDatabase makes the demo's database anew.
func emptyDatabase(ctx context.Context, address string) (err error) {
	cfg, err := pgx.ParseConfig(address)
	if err != nil {
		return fmt.Errorf("the demo's database: %w", err)
	}
	cfg.Database = "postgres"
	conn, err := pgx.ConnectConfig(ctx, cfg)
	if err != nil {
		return fmt.Errorf("the demo's database: %w", err)
	}
	defer func() { err = errors.Join(err, conn.Close(ctx)) }()
	for _, sql := range []string{"DROP DATABASE IF EXISTS " + demoDatabase + " WITH (FORCE)", "CREATE DATABASE " + demoDatabase} {
		if _, err := conn.Exec(ctx, sql); err != nil {
			return fmt.Errorf("the demo's database: %w", err)
		}
	}
	return nil
}

// stopDatabase stops the demo's server, also one that an earlier demo left when it was
// killed: the folder's lock says that no other demo uses it.
func stopDatabase(l *db.Local) error {
	if l.Started {
		return l.Stop()
	}
	b, err := os.ReadFile(filepath.Join(l.Dir, "data", "postmaster.pid"))
	if err != nil {
		return fmt.Errorf("stop the demo's database: %w", err)
	}
	first, _, _ := strings.Cut(string(b), "\n")
	pid, err := strconv.Atoi(first)
	if err != nil || pid <= 1 {
		return fmt.Errorf("stop the demo's database: no process id in postmaster.pid")
	}
	// SIGINT ends it at once and in good order ("fast shutdown" of the manual).
	if err := syscall.Kill(pid, syscall.SIGINT); err != nil {
		return fmt.Errorf("stop the demo's database: %w", err)
	}
	return nil
}

const carrierFile = "carrier"

// rememberCarrier lets the text command find the demo.
func rememberCarrier(dir, address string) error {
	if err := os.WriteFile(filepath.Join(dir, carrierFile), []byte(address+"\n"), 0o644); err != nil {
		return fmt.Errorf("the demo's folder: %w", err)
	}
	return nil
}

func findCarrier(chosen string) (string, error) {
	dir, err := demoFolder(chosen)
	if err != nil {
		return "", err
	}
	b, err := os.ReadFile(filepath.Join(dir, carrierFile))
	if err != nil {
		return "", errors.New("no demo was found: start it with make demo, in another terminal")
	}
	return strings.TrimSpace(string(b)), nil
}
