package intake

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

// The crash tests run the service in a process of its own, which ends itself with
// SIGKILL at a named point, and see what a second process makes of what it left. The
// carrier is a table beside the bot's own, so that it outlives both.

const (
	childDatabase = "INTAKE_CRASH_DATABASE"
	childPoint    = "INTAKE_CRASH_POINT" // "after_send_call 2": the second time there; empty: nowhere
)

func TestMain(m *testing.M) {
	if url := os.Getenv(childDatabase); url != "" {
		child := child
		switch {
		case os.Getenv(childMail) != "":
			child = mailChild
		case os.Getenv(childBox) != "":
			child = boxChild
		case os.Getenv(childCluster) != "":
			child = func(url, _ string) error { return clusterChild(url) }
		case os.Getenv(childBench) != "":
			child = func(url, _ string) error { return benchChild(url) }
		}
		if err := child(url, os.Getenv(childPoint)); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// child posts the customer's texts as the carrier would, again where it does not know
// that they were taken, and works until nothing is left to be done.
func child(url, point string) error {
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Minute)
	defer cancel()
	pool, err := db.Open(ctx, url)
	if err != nil {
		return err
	}
	defer pool.Close()
	s, err := New(Options{Pool: pool, Shop: &conversation.Shop{}, Brain: (&parrot{}).brain(),
		Senders: map[conversation.Channel]Sender{conversation.SMS: tableCarrier{pool}},
		Clock:   func() time.Time { return noon }, Lease: time.Second, Step: dieAt(point)})
	if err != nil {
		return err
	}
	if err := s.Start(ctx); err != nil {
		return err
	}
	for i, words := range script {
		in := Inbound{Channel: conversation.SMS, ID: fmt.Sprintf("SM%d", i), From: phone, Text: words}
		if _, err := s.Receive(ctx, in); err != nil {
			return err
		}
		if err := settle(ctx, pool); err != nil { // the customer reads before he writes again
			return err
		}
	}
	return s.Stop(ctx)
}

var script = []string{"hello", "twice", "ready"}

// dieAt ends the process the nth time that it passes a point.
func dieAt(point string) func(Point) {
	var name string
	var nth int64
	if _, err := fmt.Sscanf(point, "%s %d", &name, &nth); err != nil {
		return nil
	}
	var passed atomic.Int64
	return func(p Point) {
		if string(p) == name && passed.Add(1) == nth {
			// It can't return from this: nothing is caught, flushed or rolled back.
			_ = syscall.Kill(os.Getpid(), syscall.SIGKILL)
			select {}
		}
	}
}

func settle(ctx context.Context, pool *pgxpool.Pool) error {
	for {
		o, err := db.FindOverdue(ctx, pool, 0, -time.Hour, time.Time{}, 10)
		if err != nil || len(o.Unheard)+len(o.Unsent) == 0 {
			return err
		}
		time.Sleep(2 * time.Millisecond)
	}
}

// tableCarrier is a carrier that keeps what it took in a table.
type tableCarrier struct{ pool *pgxpool.Pool }

const carrierTable = `CREATE TABLE carrier (id int GENERATED ALWAYS AS IDENTITY, address text, text text)`

func (c tableCarrier) Send(ctx context.Context, m Outgoing) (string, error) {
	var id int
	err := c.pool.QueryRow(ctx, `INSERT INTO carrier (address, text) VALUES ($1, $2) RETURNING id`, m.To.Address, m.Text).Scan(&id)
	return fmt.Sprintf("OUT%d", id), err
}

func (c tableCarrier) Find(ctx context.Context, m Outgoing) (string, bool, error) {
	var id int
	err := c.pool.QueryRow(ctx, `SELECT id FROM carrier WHERE address = $1 AND text = $2 ORDER BY id DESC LIMIT 1`,
		m.To.Address, m.Text).Scan(&id)
	if errors.Is(err, pgx.ErrNoRows) {
		return "", false, nil
	}
	return fmt.Sprintf("OUT%d", id), err == nil, err
}

// run runs a child; died says that it was ended by SIGKILL.
func run(t *testing.T, url, point string, more ...string) (died bool) {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), os.Args[0])
	cmd.Env = append(os.Environ(), childDatabase+"="+url, childPoint+"="+point)
	cmd.Env = append(cmd.Env, more...)
	out, err := cmd.CombinedOutput()
	var exit *exec.ExitError
	if errors.As(err, &exit) && exit.Sys().(syscall.WaitStatus).Signal() == syscall.SIGKILL {
		return true
	}
	if err != nil {
		t.Fatalf("the process failed: %v\n%s", err, out)
	}
	return false
}

// left is what a run left behind: the lead record but for its ref and times, the states
// of the sends, and what the carrier took.
func left(t *testing.T, pool *pgxpool.Pool) string {
	t.Helper()
	var raw []byte
	var states, carrier string
	err := pool.QueryRow(t.Context(), `SELECT (SELECT record FROM lead_record),
		(SELECT string_agg(state, ' ' ORDER BY message_id) FROM sends),
		(SELECT string_agg(text, ' | ' ORDER BY id) FROM carrier)`).Scan(&raw, &states, &carrier)
	if err != nil {
		t.Fatal(err)
	}
	var record map[string]any
	if err := json.Unmarshal(raw, &record); err != nil {
		t.Fatal(err)
	}
	ref := fmt.Sprint(record["ref"])
	again, err := json.MarshalIndent(record, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return strings.ReplaceAll(string(again), ref, "REF") + "\n" + states + "\n" + carrier
}

func crashDatabase(t *testing.T) (string, *pgxpool.Pool) {
	t.Helper()
	url := dbtest.URL(t)
	pool, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(pool.Close)
	if _, err := pool.Exec(t.Context(), carrierTable); err != nil {
		t.Fatal(err)
	}
	return url, pool
}

func TestKilledAtEachPoint(t *testing.T) {
	url, pool := crashDatabase(t)
	if run(t, url, "") {
		t.Fatal("the undisturbed run died")
	}
	want := left(t, pool)
	if !strings.Contains(want, "sent sent sent sent") || !strings.Contains(want, "one | two") {
		t.Fatalf("the undisturbed run left\n%s", want)
	}
	for _, point := range Points {
		for _, nth := range []int{1, 2} {
			t.Run(fmt.Sprintf("%s %d", point, nth), func(t *testing.T) {
				t.Parallel()
				url, pool := crashDatabase(t)
				if !run(t, url, fmt.Sprintf("%s %d", point, nth)) {
					t.Fatal("the process did not come to that point")
				}
				if run(t, url, "") {
					t.Fatal("the second process died")
				}
				if got := left(t, pool); got != want {
					t.Errorf("it left\n%s\nwant\n%s", got, want)
				}
			})
		}
	}
}
