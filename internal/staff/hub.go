package staff

import (
	"context"
	"fmt"
	"log/slog"
	"net/http"
	"sync"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/db"
)

// hub brings word of changed leads from the database to all pages that are open here.
// One connection listens for all of them, and only while there are any.
type hub struct {
	pool   *pgxpool.Pool
	log    *slog.Logger
	ctx    context.Context
	cancel context.CancelFunc
	done   sync.WaitGroup

	mu    sync.Mutex
	ears  map[chan struct{}]bool
	stop  context.CancelFunc // of the one that listens; nil: nobody does
	ended bool
}

func newHub(pool *pgxpool.Pool, log *slog.Logger) *hub {
	h := &hub{pool: pool, log: log, ears: map[chan struct{}]bool{}}
	h.ctx, h.cancel = context.WithCancel(context.Background())
	return h
}

// join gives a channel that gets word of changes; word that is not taken yet is not
// repeated.
func (h *hub) join() (ear chan struct{}, leave func()) {
	ear = make(chan struct{}, 1)
	h.mu.Lock()
	defer h.mu.Unlock()
	h.ears[ear] = true
	if h.stop == nil && !h.ended {
		var ctx context.Context
		ctx, h.stop = context.WithCancel(h.ctx)
		h.done.Go(func() { h.listen(ctx) })
	}
	return ear, func() {
		h.mu.Lock()
		defer h.mu.Unlock()
		delete(h.ears, ear)
		if len(h.ears) == 0 && h.stop != nil {
			h.stop()
			h.stop = nil
		}
	}
}

func (h *hub) tell() {
	h.mu.Lock()
	defer h.mu.Unlock()
	for ear := range h.ears {
		select {
		case ear <- struct{}{}:
		default:
		}
	}
}

// listen goes on until nobody is there to be told. Where the connection breaks, the
// pages are told to look again once there is a new one: something may have been missed.
func (h *hub) listen(ctx context.Context) {
	for ctx.Err() == nil {
		err := db.ListenForLeads(ctx, h.pool, h.tell)
		if ctx.Err() != nil {
			return
		}
		h.log.WarnContext(ctx, "news of leads broke off", "error", err.Error())
		select {
		case <-ctx.Done():
		case <-time.After(2 * time.Second):
		}
	}
}

func (h *hub) close() {
	h.mu.Lock()
	h.ended = true
	h.mu.Unlock()
	h.cancel()
	h.done.Wait()
}

const (
	newsPace = 400 * time.Millisecond // word comes no more often
	newsBeat = 25 * time.Second       // a sign of life, for proxies that end silent streams
)

// news is a stream of server-sent events: the word "changed" whenever some lead did.
func (s *Server) news(v *visit) error {
	out := http.NewResponseController(v.w)
	// The stream outlives what any other answer may take.
	if err := out.SetWriteDeadline(time.Time{}); err != nil {
		return fmt.Errorf("news: %w", err)
	}
	v.w.Header().Set("Content-Type", "text/event-stream")
	v.w.Header().Set("X-Accel-Buffering", "no")
	ear, leave := s.hub.join()
	defer leave()
	beat := time.NewTicker(newsBeat)
	defer beat.Stop()
	word := "retry: 3000\n: hello\n\n"
	for {
		if _, err := fmt.Fprint(v.w, word); err != nil {
			return errAnswered
		}
		if err := out.Flush(); err != nil {
			return errAnswered
		}
		select {
		case <-v.ctx.Done():
			return errAnswered
		case <-s.hub.ctx.Done():
			return errAnswered
		case <-beat.C:
			word = ": here\n\n"
		case <-ear:
			word = "event: changed\ndata: 1\n\n"
			time.Sleep(newsPace)
		}
	}
}
