package intake

import (
	"context"
	"errors"
	"net/http"
	"strconv"
	"time"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// keepTime is how long keeping a carrier's post may take. The carrier waits 15 s (from
// memory of its manual) and posts again; an answer after that is to nobody.
const keepTime = 12 * time.Second

// SMSHandler takes the carrier's posts: POST /sms/inbound and POST /sms/status. Nothing
// of a post is believed before its signature is, and a message is acknowledged only
// when it is kept.
func (s *Service) SMSHandler(webhook *sms.Webhook) http.Handler {
	h := smsHandler{service: s, webhook: webhook}
	mux := http.NewServeMux()
	mux.HandleFunc("POST /sms/inbound", h.inbound)
	mux.HandleFunc("POST /sms/status", h.status)
	return mux
}

type smsHandler struct {
	service *Service
	webhook *sms.Webhook
}

func (h smsHandler) inbound(w http.ResponseWriter, r *http.Request) {
	in, err := h.webhook.Inbound(w, r)
	if err != nil {
		h.refuse(w, r, err)
		return
	}
	message := Inbound{Channel: conversation.SMS, ID: in.ID, From: in.From, Text: in.Text}
	for _, m := range in.Media {
		message.Photos = append(message.Photos, db.PhotoSource{Source: m.URL, ContentType: m.Type})
	}
	ctx, cancel := context.WithTimeout(r.Context(), keepTime)
	defer cancel()
	if _, err := h.service.Receive(ctx, message); err != nil {
		h.broken(w, r, err)
		return
	}
	acknowledge(w)
}

func (h smsHandler) status(w http.ResponseWriter, r *http.Request) {
	up, err := h.webhook.Status(r)
	if err != nil {
		h.refuse(w, r, err)
		return
	}
	st := Status{Channel: conversation.SMS, ID: up.ID, Word: up.Status, At: up.At}
	if up.ErrorCode != 0 {
		st.Code = strconv.Itoa(up.ErrorCode)
		st.Kind = smsKind(sms.KindOf(up.ErrorCode))
	}
	ctx, cancel := context.WithTimeout(r.Context(), keepTime)
	defer cancel()
	if err := h.service.ReceiveStatus(ctx, st); err != nil {
		h.broken(w, r, err)
		return
	}
	acknowledge(w)
}

// refuse answers a post that was not kept.
func (h smsHandler) refuse(w http.ResponseWriter, r *http.Request, err error) {
	status := sms.StatusFor(err)
	h.service.log.WarnContext(r.Context(), "carrier's post not taken", "path", r.URL.Path, "status", status, "error", err.Error())
	if status == http.StatusOK {
		acknowledge(w)
		return
	}
	http.Error(w, http.StatusText(status), status)
}

// broken asks the carrier to try again: we could not keep the post.
func (h smsHandler) broken(w http.ResponseWriter, r *http.Request, err error) {
	status := http.StatusServiceUnavailable
	if errors.Is(err, ErrBadInbound) {
		status = http.StatusBadRequest
	}
	h.service.log.ErrorContext(r.Context(), "carrier's post not kept", "path", r.URL.Path, "error", err.Error())
	http.Error(w, http.StatusText(status), status)
}

// acknowledge says that we have it, and that nothing is to be sent with this answer.
func acknowledge(w http.ResponseWriter) {
	w.Header().Set("Content-Type", "text/xml; charset=utf-8")
	// The carrier hangs up where this fails; it then posts again.
	_, _ = w.Write([]byte(`<?xml version="1.0" encoding="UTF-8"?><Response></Response>`))
}
