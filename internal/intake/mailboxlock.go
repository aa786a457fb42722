package intake

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"
)

// MailboxLock lets one process of all watch a mailbox. The lock is the database's and
// dies with the connection that took it, so that another takes over when this process
// does. It is a Watcher's Lock.
func MailboxLock(pool *pgxpool.Pool, mailbox string, log *slog.Logger) func(context.Context) (<-chan struct{}, func(), error) {
	l := mailboxLock{pool: pool, mailbox: mailbox, log: log}
	return l.take
}

type mailboxLock struct {
	pool    *pgxpool.Pool
	mailbox string
	log     *slog.Logger
}

const (
	// lockTry is how often one who waits looks whether the lock is free.
	lockTry = time.Second
	// lockBeat is how often the holder shows that it is there, lockLapse how long the
	// database waits for that before it takes the lock away: of a host that went silent too.
	lockBeat  = 3 * time.Second
	lockLapse = 12 * time.Second
)

// take waits until the lock is ours, or ctx ends.
func (l mailboxLock) take(ctx context.Context) (lost <-chan struct{}, release func(), err error) {
	// A connection of its own, made for this: none of the pool's is held for so long.
	config := l.pool.Config().ConnConfig.Copy()
	config.RuntimeParams["idle_session_timeout"] = fmt.Sprint(lockLapse.Milliseconds())
	config.RuntimeParams["application_name"] = "intake-bot mailbox"
	conn, err := pgx.ConnectConfig(ctx, config)
	if err != nil {
		return nil, nil, fmt.Errorf("connect: %w", err)
	}
	for {
		var ours bool
		err := conn.QueryRow(ctx, `SELECT pg_try_advisory_lock(hashtextextended('mailbox:' || $1, 2))`, l.mailbox).Scan(&ours)
		if err != nil {
			return nil, nil, errors.Join(err, closeConn(conn))
		}
		if ours {
			break
		}
		select {
		case <-time.After(lockTry):
		case <-ctx.Done():
			return nil, nil, errors.Join(ctx.Err(), closeConn(conn))
		}
	}
	return l.hold(conn)
}

// hold keeps the lock until it is released or the connection breaks.
func (l mailboxLock) hold(conn *pgx.Conn) (<-chan struct{}, func(), error) {
	lost, done, ended := make(chan struct{}), make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		for {
			select {
			case <-done:
				return
			case <-time.After(lockBeat):
			}
			ctx, cancel := context.WithTimeout(context.Background(), lockLapse/2)
			err := conn.Ping(ctx)
			cancel()
			if err != nil {
				l.log.Warn("mailbox lock lost", "error", err.Error())
				close(lost)
				return
			}
		}
	}()
	return lost, func() {
		close(done)
		<-ended
		_ = closeConn(conn) // the lock goes with it, however that ends
	}, nil
}

func closeConn(conn *pgx.Conn) error {
	ctx, cancel := context.WithTimeout(context.Background(), 3*time.Second)
	defer cancel()
	return conn.Close(ctx)
}
