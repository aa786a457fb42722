package db

import (
	"context"
	"errors"
	"fmt"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"
)

// lean is a transaction without round trips of its own: it begins with its first batch,
// and ends with its last where that is known to be the last.
type lean struct {
	*connection
	ended bool
}

// connection lets a lean transaction have a method of the name Conn.
type connection = pgx.Conn

// inLean runs fn in a transaction that begins with a batch of statements. It is committed
// once fn returns without an error, unless that was done already.
func inLean(ctx context.Context, pool *pgxpool.Pool, first *pgx.Batch, fn func(tx pgx.Tx) error) error {
	conn, err := pool.Acquire(ctx)
	if err != nil {
		return err
	}
	defer conn.Release() // one that is still in a transaction is closed
	t := &lean{connection: conn.Conn()}
	begin := &pgx.Batch{}
	begin.Queue("begin")
	begin.QueuedQueries = append(begin.QueuedQueries, first.QueuedQueries...)
	if err = t.SendBatch(ctx, begin).Close(); err == nil {
		err = fn(t)
	}
	if err != nil {
		// The error that led here is the one to be told.
		_ = t.Rollback(context.WithoutCancel(ctx))
		return err
	}
	return t.Commit(ctx)
}

func sendBatch(ctx context.Context, tx pgx.Tx, b *pgx.Batch) error {
	return tx.SendBatch(ctx, b).Close()
}

// sendLast sends a batch, which ends the transaction where it can.
func sendLast(ctx context.Context, tx pgx.Tx, b *pgx.Batch) error {
	t, ok := tx.(*lean)
	if ok {
		b.Queue("commit")
	}
	err := tx.SendBatch(ctx, b).Close()
	if ok && err == nil {
		t.ended = true
	}
	return err
}

// Commit ends the transaction, unless it has ended.
func (t *lean) Commit(ctx context.Context) error {
	if t.ended {
		return nil
	}
	t.ended = true
	tag, err := t.Exec(ctx, "commit")
	if err != nil {
		return fmt.Errorf("commit: %w", err)
	}
	if tag.String() == "ROLLBACK" {
		return pgx.ErrTxCommitRollback
	}
	return nil
}

// Rollback undoes the transaction, unless it has ended.
func (t *lean) Rollback(ctx context.Context) error {
	if t.ended || t.IsClosed() {
		return nil
	}
	t.ended = true
	_, err := t.Exec(ctx, "rollback")
	return err
}

// Begin is not needed so far.
func (t *lean) Begin(context.Context) (pgx.Tx, error) {
	return nil, errors.New("no savepoint in a lean transaction")
}

// LargeObjects are not used.
func (t *lean) LargeObjects() pgx.LargeObjects { return pgx.LargeObjects{} }

// Conn is the connection below.
func (t *lean) Conn() *pgx.Conn { return t.connection }
