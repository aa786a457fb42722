package intake

import (
	"context"
	"log/slog"
	"testing"
	"time"
)

// The lock is one holder's at a time, and dies with its connection.
func TestMailboxLock(t *testing.T) {
	s := newShop(t, nil)
	take := MailboxLock(s.pool, "box", slog.New(slog.DiscardHandler))
	lost, release, err := take(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	defer release()
	short, cancel := context.WithTimeout(t.Context(), 1500*time.Millisecond)
	defer cancel()
	if _, _, err := take(short); err == nil {
		t.Fatal("a second holder")
	}
	_, releaseOther, err := MailboxLock(s.pool, "another box", slog.New(slog.DiscardHandler))(t.Context())
	if err != nil {
		t.Fatalf("another mailbox: %v", err)
	}
	releaseOther()
	if _, err := s.pool.Exec(t.Context(), `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'intake-bot mailbox'`); err != nil {
		t.Fatal(err)
	}
	began := time.Now()
	_, releaseNext, err := take(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	defer releaseNext()
	select {
	case <-lost:
	case <-time.After(2 * time.Minute):
		t.Error("the first holder does not know that its lock is gone")
	}
	t.Logf("another took over after %s", time.Since(began).Round(time.Millisecond))
}
