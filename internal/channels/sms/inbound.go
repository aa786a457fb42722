package sms

import (
	"fmt"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"time"
)

// Inbound is one message from a person.
type Inbound struct {
	ID    string // the carrier's, the same when the post is repeated
	From  string // E.164; the raw sender where the error is ErrSender
	To    string // E.164 where it is a number
	Text  string // valid UTF-8 without NUL; empty for a picture alone
	Media []Media
	At    time.Time // when the post came; the carrier gives no time of its own
	// OptOut is "STOP", "START" or "HELP" where the carrier knew the word and has answered
	// it by itself, as an account can be set. Source: from memory of the carrier's page on
	// its opt-out handling.
	OptOut string
}

// Media is a picture, or another file, that waits at the carrier. The address is the
// carrier's word: whoever fetches it must still check its host.
type Media struct {
	URL  string
	Type string // as the sender's phone gave it; not to be trusted
}

// maxMedia is the most that one message carries. Source: from memory of the carrier's
// MMS limits.
const maxMedia = 10

// Inbound reads a post about an incoming message. Errors: ErrSignature, ErrTooLarge,
// ErrMalformed, and ErrSender with everything else filled in.
func (h *Webhook) Inbound(w http.ResponseWriter, r *http.Request) (Inbound, error) {
	form, err := h.form(r, http.MaxBytesReader(w, r.Body, maxBody))
	if err != nil {
		return Inbound{}, fmt.Errorf("inbound message: %w", err)
	}
	id, err := messageID(form)
	if err != nil {
		return Inbound{}, fmt.Errorf("inbound message: %w", err)
	}
	in := Inbound{
		ID:    id,
		From:  cleanText(form.Get("From")),
		To:    cleanText(form.Get("To")),
		Text:  cleanText(form.Get("Body")),
		Media: media(form),
		At:    h.now(),
	}
	if word := form.Get("OptOutType"); plainWord(word, 16) {
		in.OptOut = strings.ToUpper(word)
	}
	if to, err := Normalize(in.To); err == nil {
		in.To = to
	}
	from, err := Normalize(in.From)
	if err != nil {
		return in, fmt.Errorf("inbound message %s: %w", id, err)
	}
	in.From = from
	return in, nil
}

// messageID takes the id that the carrier gave; SmsSid is its older name.
func messageID(form url.Values) (string, error) {
	for _, key := range []string{"MessageSid", "SmsMessageSid", "SmsSid"} {
		id := form.Get(key)
		if id == "" {
			continue
		}
		if !plainWord(id, 64) {
			return "", fmt.Errorf("%w: message id", ErrMalformed)
		}
		return id, nil
	}
	return "", fmt.Errorf("%w: no message id", ErrMalformed)
}

func media(form url.Values) []Media {
	n, err := strconv.Atoi(form.Get("NumMedia"))
	if err != nil || n <= 0 {
		return nil
	}
	var all []Media
	for i := range min(n, maxMedia) {
		key := strconv.Itoa(i)
		address := form.Get("MediaUrl" + key)
		if !webAddress(address) {
			continue
		}
		all = append(all, Media{URL: address, Type: cleanText(form.Get("MediaContentType" + key))})
	}
	return all
}

func webAddress(s string) bool {
	u, err := url.Parse(s)
	return err == nil && len(s) <= 2048 && u.Host != "" && (u.Scheme == "https" || u.Scheme == "http")
}

// cleanText drops what neither Postgres nor a page takes: NUL and broken UTF-8.
func cleanText(s string) string {
	return strings.ReplaceAll(strings.ToValidUTF8(s, "\uFFFD"), "\x00", "")
}

// plainWord reports whether s is 1 to limit ASCII letters, digits, '_' or '-'.
func plainWord(s string, limit int) bool {
	if s == "" || len(s) > limit {
		return false
	}
	return strings.IndexFunc(s, func(r rune) bool {
		letter := (r >= 'a' && r <= 'z') || (r >= 'A' && r <= 'Z')
		return !letter && (r < '0' || r > '9') && r != '_' && r != '-'
	}) < 0
}
