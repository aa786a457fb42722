package sms

import (
	"fmt"
	"net/http"
	"strconv"
	"time"
)

// StatusUpdate is the carrier's word on what became of a message that was sent.
type StatusUpdate struct {
	ID        string
	Status    string // the carrier's word: "queued", "sent", "delivered", "undelivered", "failed"…
	ErrorCode int    // 0 where there is none; see KindOf
	At        time.Time
}

// Status reads a post about a message that was sent. Errors: ErrSignature, ErrTooLarge,
// ErrMalformed.
func (h *Webhook) Status(r *http.Request) (StatusUpdate, error) {
	form, err := h.form(r, r.Body)
	if err != nil {
		return StatusUpdate{}, fmt.Errorf("message status: %w", err)
	}
	id, err := messageID(form)
	if err != nil {
		return StatusUpdate{}, fmt.Errorf("message status: %w", err)
	}
	status := form.Get("MessageStatus")
	if status == "" {
		status = form.Get("SmsStatus")
	}
	if !plainWord(status, 32) {
		return StatusUpdate{}, fmt.Errorf("message status of %s: %w: status", id, ErrMalformed)
	}
	up := StatusUpdate{ID: id, Status: status, At: h.now()}
	if code := form.Get("ErrorCode"); code != "" {
		if up.ErrorCode, err = strconv.Atoi(code); err != nil {
			return StatusUpdate{}, fmt.Errorf("message status of %s: %w: error code", id, ErrMalformed)
		}
	}
	return up, nil
}

// rank orders the carrier's words by how far along they are. Source: from memory of the
// carrier's page on message states.
func rank(status string) int {
	switch status {
	case "accepted", "scheduled":
		return 1
	case "queued":
		return 2
	case "sending":
		return 3
	case "sent":
		return 4
	case "undelivered", "failed", "canceled":
		return 5
	case "delivered":
		return 6 // it arrived, whatever an earlier part of the way reported
	case "read":
		return 7
	default:
		return 0
	}
}

// Supersedes reports whether a message known to be at status old is, after a post that
// says new, to be shown as new. Posts overtake one another, so the later is not always
// the truer.
func Supersedes(new, old string) bool { return rank(new) > rank(old) }

// Final reports whether nothing more is expected to happen to a message.
func Final(status string) bool { return rank(status) >= rank("failed") }
