package main

import (
	"errors"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

func TestReadiness(t *testing.T) {
	pool := dbtest.New(t)
	gone, err := db.Open(t.Context(), dbtest.URL(t))
	if err != nil {
		t.Fatal(err)
	}
	gone.Close()
	away := email.Health{Err: errors.New("no route"), Broke: time.Now().Add(-time.Hour)}
	for _, c := range []struct {
		what      string
		r         *readiness
		stopping  bool
		one, all  int
		said, not string
	}{
		{"all well", &readiness{pool: pool}, false, 200, 200, "ok", "mailbox"},
		{"stopping", &readiness{pool: pool}, true, 503, 503, "stopping", "ok"},
		{"no database", &readiness{pool: gone}, false, 503, 503, "the database: it can't be reached", "ok"},
		{"its disk is full", &readiness{pool: pool, trouble: func() string { return "its disk is full" }}, false, 503, 503, "the database: its disk is full", "ok"},
		{"no mailbox for an hour", &readiness{pool: pool, mailbox: func() email.Health { return away }}, false, 200, 503, "the mailbox: out of reach for 1h0m", "no route"},
		{"no mailbox for a moment", &readiness{pool: pool, mailbox: func() email.Health { return email.Health{Err: away.Err, Broke: time.Now()} }}, false, 200, 200, "ok", "mailbox"},
		{"the mailbox is watched", &readiness{pool: pool, mailbox: func() email.Health { return email.Health{Connected: true} }}, false, 200, 200, "ok", "mailbox"},
	} {
		t.Run(c.what, func(t *testing.T) {
			if c.r.trouble == nil {
				c.r.trouble = func() string { return "" }
			}
			c.r.stopping.Store(c.stopping)
			mux := http.NewServeMux()
			c.r.routes(mux)
			for path, want := range map[string]int{"/readyz": c.one, "/readyz/all": c.all} {
				w := httptest.NewRecorder()
				mux.ServeHTTP(w, httptest.NewRequest("GET", path, nil))
				if body := w.Body.String(); w.Code != want || !strings.Contains(body, c.said) || strings.Contains(body, c.not) {
					t.Errorf("%s: %d %q, want %d with %q and without %q", path, w.Code, body, want, c.said, c.not)
				}
			}
		})
	}
}
