package main

import (
	"context"
	"fmt"
	"net/http"
	"strings"
	"sync/atomic"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/db"
)

// readiness says whether messages should be sent here, and if not, why. /readyz is about
// what a proxy has to know: whether this process can keep a message. /readyz/all also is
// red where the mailbox can't be watched: a person should look then, but a proxy that took
// the texts away because of it would only make it worse.
type readiness struct {
	pool     *pgxpool.Pool
	trouble  func() string       // why nothing can be kept, empty where it can
	mailbox  func() email.Health // nil: there is none
	stopping atomic.Bool
}

// readyTime is how long the database may take to answer.
const readyTime = 3 * time.Second

// mailboxGrace is how long a mailbox may be out of reach before it is worth a word: mail
// servers are restarted, and connections are cut.
const mailboxGrace = time.Minute

func (r *readiness) routes(mux *http.ServeMux) {
	mux.HandleFunc("GET /readyz", func(w http.ResponseWriter, q *http.Request) {
		answerReady(w, r.wrong(q.Context()), r.mailboxWrong())
	})
	mux.HandleFunc("GET /readyz/all", func(w http.ResponseWriter, q *http.Request) {
		wrong := r.wrong(q.Context())
		if wrong == "" {
			wrong = r.mailboxWrong()
		}
		answerReady(w, wrong, "")
	})
}

// answerReady answers 503 with what is wrong, else 200 with what is worth a note.
func answerReady(w http.ResponseWriter, wrong, note string) {
	w.Header().Set("Cache-Control", "no-store")
	if wrong != "" {
		http.Error(w, wrong, http.StatusServiceUnavailable)
		return
	}
	fmt.Fprintln(w, strings.TrimSuffix("ok\n"+note, "\n"))
}

// wrong is why no message can be kept here; empty where it can.
func (r *readiness) wrong(ctx context.Context) string {
	if r.stopping.Load() {
		return "stopping"
	}
	ctx, cancel := context.WithTimeout(ctx, readyTime)
	defer cancel()
	var standby bool
	err := r.pool.QueryRow(ctx, `SELECT pg_is_in_recovery()`).Scan(&standby)
	switch {
	case err != nil:
		why := db.Unwell(err)
		if why == "" {
			why = "it can't be reached"
		}
		return "the database: " + why
	case standby:
		return "the database: it takes no writes"
	}
	if why := r.trouble(); why != "" {
		return "the database: " + why
	}
	return ""
}

// mailboxWrong is why mail is not taken in; empty where it is, here or by another process.
func (r *readiness) mailboxWrong() string {
	if r.mailbox == nil {
		return ""
	}
	h := r.mailbox()
	if h.Err == nil || h.Connected || time.Since(h.Broke) < mailboxGrace {
		return ""
	}
	return "the mailbox: out of reach for " + time.Since(h.Broke).Round(time.Second).String()
}
