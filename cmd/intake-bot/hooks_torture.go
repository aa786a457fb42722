//go:build torture

package main

import (
	"context"
	"fmt"
	"net/http"
	"os"
	"strings"
	"sync/atomic"
	"syscall"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/intake"
)

// What a tortured program reads from the environment. internal/torture sets it.
const (
	tortureDie   = "TORTURE_DIE"   // "after_send_call 3": SIGKILL at the third time there
	tortureClock = "TORTURE_CLOCK" // by how much the machine's clock is wrong: "3h", "-20m"
	tortureLease = "TORTURE_LEASE"
	tortureDrain = "TORTURE_DRAIN"
	torturePhoto = "TORTURE_PHOTO_WAIT"
)

// Points beside those of intake: around every commit, also the queue's own and those of
// single statements, and around every call to the carrier.
const (
	beforeCommit intake.Point = "before_any_commit"
	afterCommit  intake.Point = "after_any_commit"
	beforeCall   intake.Point = "before_any_carrier_call"
	afterCall    intake.Point = "after_any_carrier_call"
)

func readHooks() (hooks, error) {
	var h hooks
	var skew time.Duration
	for name, into := range map[string]*time.Duration{tortureClock: &skew, tortureLease: &h.lease, tortureDrain: &h.drain, torturePhoto: &h.photoWait} {
		text := os.Getenv(name)
		if text == "" {
			continue
		}
		d, err := time.ParseDuration(text)
		if err != nil {
			return h, fmt.Errorf("%s: %w", name, err)
		}
		*into = d
	}
	h.clock = func() time.Time { return time.Now().Add(skew) }
	d := &death{}
	if text := os.Getenv(tortureDie); text != "" {
		if _, err := fmt.Sscanf(text, "%s %d", &d.at, &d.nth); err != nil {
			return h, fmt.Errorf("%s: %w", tortureDie, err)
		}
	}
	h.step = d.pass
	h.pool = func(c *pgxpool.Config) { c.ConnConfig.Tracer = d }
	h.transport = func(next http.RoundTripper) http.RoundTripper { return callHook{d, next} }
	return h, nil
}

// death ends the process at the nth time that it passes a point.
type death struct {
	at     intake.Point
	nth    int64
	passed atomic.Int64
}

func (d *death) pass(p intake.Point) {
	if d.at == p && d.passed.Add(1) == d.nth {
		// The last word, so that it is known where it died; it can't return from the rest.
		fmt.Fprintf(os.Stderr, "{\"died_at\":%q}\n", p)
		_ = syscall.Kill(os.Getpid(), syscall.SIGKILL)
		select {}
	}
}

// TraceQueryStart and the others see commits; a death is a tracer of pgx.
func (d *death) TraceQueryStart(ctx context.Context, c *pgx.Conn, q pgx.TraceQueryStartData) context.Context {
	commits := strings.EqualFold(q.SQL, "commit") || c.PgConn().TxStatus() == 'I' && writes(q.SQL)
	if commits {
		d.pass(beforeCommit)
	}
	return context.WithValue(ctx, commitKey{}, commits)
}

func (d *death) TraceQueryEnd(ctx context.Context, _ *pgx.Conn, _ pgx.TraceQueryEndData) {
	if commits, _ := ctx.Value(commitKey{}).(bool); commits {
		d.pass(afterCommit)
	}
}

// TraceBatchStart sees batches, which commit by themselves outside a transaction.
func (d *death) TraceBatchStart(ctx context.Context, c *pgx.Conn, _ pgx.TraceBatchStartData) context.Context {
	commits := c.PgConn().TxStatus() == 'I'
	if commits {
		d.pass(beforeCommit)
	}
	return context.WithValue(ctx, commitKey{}, commits)
}

func (d *death) TraceBatchQuery(context.Context, *pgx.Conn, pgx.TraceBatchQueryData) {}

func (d *death) TraceBatchEnd(ctx context.Context, _ *pgx.Conn, _ pgx.TraceBatchEndData) {
	if commits, _ := ctx.Value(commitKey{}).(bool); commits {
		d.pass(afterCommit)
	}
}

type commitKey struct{}

func writes(sql string) bool {
	upper := strings.ToUpper(sql)
	return strings.Contains(upper, "INSERT ") || strings.Contains(upper, "UPDATE ") || strings.Contains(upper, "DELETE ")
}

type callHook struct {
	d    *death
	next http.RoundTripper
}

func (h callHook) RoundTrip(r *http.Request) (*http.Response, error) {
	h.d.pass(beforeCall)
	res, err := h.next.RoundTrip(r)
	h.d.pass(afterCall)
	return res, err
}
