package intake

import (
	"bytes"
	"context"
	"crypto/hmac"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/db"
)

// Webhook is where the owner's other systems hear of each step of a lead: a POST with
// the lead record of docs/contract.md as it stands, signed.
type Webhook struct {
	URL    string
	Secret []byte
	Client *http.Client // nil: one with a time limit that follows no redirect
}

// The headers of a step. The signature is "v1=" and the hex of HMAC-SHA256 over the
// timestamp, a dot and the body; who receives it should refuse timestamps that are old.
const (
	HeaderEvent     = "Intake-Event"     // ready, needs_person, picked_up, quoted …
	HeaderEventID   = "Intake-Event-Id"  // the same at each try
	HeaderTimestamp = "Intake-Timestamp" // seconds since 1970
	HeaderSignature = "Intake-Signature"
)

// Sign is the signature of a body at a time.
func Sign(secret []byte, timestamp string, body []byte) string {
	mac := hmac.New(sha256.New, secret)
	mac.Write([]byte(timestamp + "."))
	mac.Write(body)
	return "v1=" + hex.EncodeToString(mac.Sum(nil))
}

// stepArgs ask to tell one step of a lead.
type stepArgs struct {
	EventID int64 `json:"event_id"`
}

func (stepArgs) Kind() string { return "lead_step" }
func (stepArgs) InsertOpts() river.InsertOpts {
	return river.InsertOpts{Queue: alertQueue, MaxAttempts: alertTries}
}

// tellSteps asks for a job for each new step.
func (s *Service) tellSteps(ctx context.Context) error {
	err := pgx.BeginFunc(ctx, s.opts.Pool, func(tx pgx.Tx) error {
		ids, err := db.TakeEvents(ctx, tx, alertLimit, s.now())
		if err != nil || len(ids) == 0 || s.opts.Alerts.Webhook == nil {
			return err
		}
		jobs := make([]river.InsertManyParams, len(ids))
		for i, id := range ids {
			jobs[i] = river.InsertManyParams{Args: stepArgs{EventID: id}}
		}
		_, err = s.queue.InsertManyTx(ctx, tx, jobs)
		return err
	})
	if err != nil {
		return fmt.Errorf("steps of leads: %w", err)
	}
	return nil
}

// workStep posts one step. What the other side does not take is tried for about a day,
// then it is among the jobs that gave up.
func (s *Service) workStep(ctx context.Context, job *river.Job[stepArgs]) error {
	hook := s.opts.Alerts.Webhook
	e, err := db.LeadEventOf(ctx, s.opts.Pool, job.Args.EventID)
	if errors.Is(err, db.ErrNotFound) || err == nil && hook == nil {
		return nil
	}
	if err != nil {
		return err
	}
	body, err := db.LeadRecord(ctx, s.opts.Pool, e.Ref)
	if err != nil {
		return err
	}
	return hook.post(ctx, e, body, s.opts.Real())
}

func (h *Webhook) post(ctx context.Context, e db.LeadEvent, body []byte, now time.Time) error {
	ctx, cancel := context.WithTimeout(ctx, 15*time.Second)
	defer cancel()
	req, err := http.NewRequestWithContext(ctx, http.MethodPost, h.URL, bytes.NewReader(body))
	if err != nil {
		return fmt.Errorf("webhook: %w", err)
	}
	timestamp := strconv.FormatInt(now.Unix(), 10)
	req.Header.Set("Content-Type", "application/json")
	req.Header.Set(HeaderEvent, e.Event)
	req.Header.Set(HeaderEventID, strconv.FormatInt(e.ID, 10))
	req.Header.Set(HeaderTimestamp, timestamp)
	req.Header.Set(HeaderSignature, Sign(h.Secret, timestamp, body))
	client := h.Client
	if client == nil {
		client = &http.Client{Timeout: 15 * time.Second, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	}
	resp, err := client.Do(req)
	if err != nil {
		return fmt.Errorf("webhook of step %d: %w", e.ID, err)
	}
	defer resp.Body.Close()
	_, _ = io.Copy(io.Discard, io.LimitReader(resp.Body, 64<<10)) // so that the connection can be used again
	if resp.StatusCode < 200 || resp.StatusCode > 299 {
		return fmt.Errorf("webhook of step %d: answered %d", e.ID, resp.StatusCode)
	}
	return nil
}
