package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/shop"
)

type serveCommand struct{}

func (c *serveCommand) Run(ctx context.Context, s streams) error {
	again := make(chan os.Signal, 1)
	signal.Notify(again, syscall.SIGHUP) // from the first moment: by default it would end the program
	defer signal.Stop(again)
	h, err := readHooks()
	if err != nil {
		return err
	}
	set, err := readSettings(osEnvironment())
	if err != nil {
		return err
	}
	file, err := shop.Load(set.shopFile, wording.CheckOverride)
	if err != nil {
		return err
	}
	text, err := os.ReadFile(set.shopFile)
	if err != nil {
		return fmt.Errorf("SHOP_FILE: %w", err)
	}
	log := slog.New(slog.NewJSONHandler(s.err, &slog.HandlerOptions{Level: set.logLevel}))
	pool, err := openCurrent(ctx, set.databaseURL, h.pool)
	if err != nil {
		return err
	}
	defer pool.Close()
	listener, err := net.Listen("tcp", set.listen)
	if err != nil {
		return fmt.Errorf("LISTEN: %w", err)
	}
	b, err := startBot(context.WithoutCancel(ctx), botOptions{pool: pool, file: file, carrier: set.carrier, mail: set.mail, metrics: set.metrics,
		listener: listener, publicURL: set.publicURL, log: log, goodbye: set.goodbye, hooks: h, shopText: string(text), alerts: set.alerts})
	if err != nil {
		return errors.Join(err, listener.Close())
	}
	log.Info("started", "version", version(), "listen", b.address)
	err = b.run(ctx, again, set.shopFile)
	log.Info("stopping")
	return errors.Join(err, b.stop())
}

// openCurrent opens a database whose schema this program can work with.
func openCurrent(ctx context.Context, address string, change func(*pgxpool.Config)) (*pgxpool.Pool, error) {
	pool, err := db.Open(ctx, address, change)
	if err != nil {
		return nil, err
	}
	pending, err := db.Pending(ctx, pool)
	if err == nil && pending {
		err = errors.New("the database is not current: run intake-bot migrate first")
	}
	if err != nil {
		pool.Close()
		return nil, err
	}
	return pool, nil
}

// run waits until the program is to stop; a SIGHUP, through again, has the shop file read
// again.
func (b *bot) run(ctx context.Context, again <-chan os.Signal, shopFile string) error {
	for {
		select {
		case <-ctx.Done():
			return nil
		case err := <-b.failed:
			if errors.Is(err, http.ErrServerClosed) {
				return nil
			}
			return fmt.Errorf("web server: %w", err)
		case <-again:
			b.reload(shopFile)
		}
	}
}

// reload puts a changed shop file in force; one with a mistake leaves the old one there.
func (b *bot) reload(path string) {
	file, err := shop.Load(path, wording.CheckOverride)
	if err != nil {
		b.log.Error("the shop file has mistakes; the old one stays in force", "error", err.Error())
		return
	}
	s, err := talking(file)
	if err != nil {
		b.log.Error("the shop file can't be used; the old one stays in force", "error", err.Error())
		return
	}
	ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
	defer cancel()
	if err := putAnswers(ctx, b.pool, file); err != nil {
		b.log.Error("the owner's answers were not stored; the old ones stay in force", "error", err.Error())
	}
	b.service.SetShop(s)
	b.service.SetLimits(limitsOf(file))
	b.service.SetKeeping(keepingOf(file))
	if text, err := os.ReadFile(path); err == nil {
		shown := string(text)
		b.shopText.Store(&shown)
	}
	b.log.Info("the shop file was read again")
}
