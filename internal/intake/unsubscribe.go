package intake

import (
	"errors"
	"html/template"
	"net/http"
	"strconv"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/db"
)

// Unsubscribe is the link by which the receiver of a mail opts out of more, as RFC 8058
// has it: a POST does it, without a further question; a GET, which programs that look
// for harm send to every link, only shows a button.
type Unsubscribe struct {
	service *Service
	key     []byte
	base    string // our public address
}

// NewUnsubscribe makes the link's maker and taker; key is of db.LinkKey.
func NewUnsubscribe(s *Service, key []byte, publicURL string) *Unsubscribe {
	return &Unsubscribe{service: s, key: key, base: publicURL}
}

// unsubscribePath is where Handler takes the links.
const unsubscribePath = "/mail/unsubscribe/"

// Link is the address for a message.
func (u *Unsubscribe) Link(messageID int64) string {
	id := strconv.FormatInt(messageID, 10)
	return u.base + unsubscribePath + id + "/" + seal(u.key, "unsubscribe", id)
}

// Handler takes what follows the links.
func (u *Unsubscribe) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET "+unsubscribePath+"{message}/{seal}", u.show)
	mux.HandleFunc("POST "+unsubscribePath+"{message}/{seal}", u.follow)
	return mux
}

func (u *Unsubscribe) message(w http.ResponseWriter, r *http.Request) (int64, bool) {
	word := r.PathValue("message")
	id, err := strconv.ParseInt(word, 10, 64)
	if err != nil || !sealed(u.key, r.PathValue("seal"), "unsubscribe", word) {
		http.Error(w, "This link is not complete. Copy all of it, or write STOP to us by mail.", http.StatusNotFound)
		return 0, false
	}
	return id, true
}

var unsubscribePage = template.Must(template.New("").Parse(`<!doctype html>
<html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>{{.Shop}}</title>
<body style="font-family: sans-serif; max-width: 30em; margin: 3em auto; padding: 0 1em">
{{if .Done}}<p>Done: you won't get any more mail from {{.Shop}} at that address. / Listo: no recibirá más correos.</p>
{{else}}<p>Stop mail from {{.Shop}} to your address? / ¿Dejar de recibir correos?</p>
<form method="post"><button style="font-size: 1em; padding: .6em 1.2em">Stop / Parar</button></form>{{end}}`))

func (u *Unsubscribe) show(w http.ResponseWriter, r *http.Request) {
	if _, ok := u.message(w, r); ok {
		u.page(w, r, false)
	}
}

func (u *Unsubscribe) follow(w http.ResponseWriter, r *http.Request) {
	id, ok := u.message(w, r)
	if !ok {
		return
	}
	err := pgx.BeginFunc(r.Context(), u.service.opts.Pool, func(tx pgx.Tx) error {
		return db.FollowLink(r.Context(), tx, id, u.service.now())
	})
	if err != nil && !errors.Is(err, db.ErrNotFound) { // erased since: then nothing is sent there any more
		u.service.log.ErrorContext(r.Context(), "an opt-out by link was not kept", "message", id, "error", err.Error())
		http.Error(w, "That did not work just now. Please try again, or write STOP to us by mail.", http.StatusServiceUnavailable)
		return
	}
	u.page(w, r, true)
}

func (u *Unsubscribe) page(w http.ResponseWriter, r *http.Request, done bool) {
	h := w.Header()
	h.Set("Content-Type", "text/html; charset=utf-8")
	h.Set("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'; form-action 'self'; frame-ancestors 'none'")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cache-Control", "no-store")
	data := struct {
		Shop string
		Done bool
	}{u.service.shop.Load().Name, done}
	if err := unsubscribePage.Execute(w, data); err != nil {
		u.service.log.WarnContext(r.Context(), "page not written", "error", err.Error())
	}
}
