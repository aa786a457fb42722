package staff

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"time"
	"unicode/utf8"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// visit is one request to the page.
type visit struct {
	w   http.ResponseWriter
	r   *http.Request
	ctx context.Context
	s   *Server
	who *db.Staff // nil: nobody is logged in
	now time.Time // the shop's time
}

// refusal is an error that the person at the page can do something about; its text is
// shown to them.
type refusal struct {
	status int
	text   string
}

func (r *refusal) Error() string { return r.text }

func refuse(format string, args ...any) error {
	return &refusal{http.StatusUnprocessableEntity, fmt.Sprintf(format, args...)}
}

// Keys of what a session holds.
const (
	keyStaff = "staff" // id of the account
	keyFrom  = "from"  // the account's sessions_from at the log-in, in microseconds
	keySaid  = "said"  // to be told on the next page
	keyBad   = "bad"   // the same, of something that went wrong
	// keyProvider is set where the log-in was not by password.
	keyProvider = "provider"
)

// guard lets only those in who may use a route, and answers for what goes wrong.
func (s *Server) guard(rt route) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		v := &visit{w: w, r: r, ctx: r.Context(), s: s, now: s.now()}
		err := v.enter(rt)
		if err == nil {
			err = rt.serve(v)
		}
		if err != nil {
			v.fail(err)
		}
	})
}

var errLogIn = errors.New("nobody is logged in")

// enter finds out who it is and whether they may.
func (v *visit) enter(rt route) error {
	if err := v.readable(); err != nil {
		return err
	}
	if err := v.recognize(); err != nil {
		return err
	}
	switch {
	case rt.role == anybody:
		return nil
	case v.who == nil:
		return errLogIn
	case rt.role == db.RoleOwner && v.who.Role != db.RoleOwner:
		return &refusal{http.StatusForbidden, "This page is the owner's."}
	case v.who.OneTime && !v.s.sessions.GetBool(v.ctx, keyProvider) && v.r.URL.Path != Base+"/password" && v.r.URL.Path != Base+"/logout":
		http.Redirect(v.w, v.r, Base+"/password", http.StatusSeeOther)
		return errAnswered
	}
	return nil
}

// readable turns away what no form of ours sends: more than is read, and bytes that are no
// text, which the database would not take.
func (v *visit) readable() error {
	if err := v.r.ParseForm(); err != nil {
		var tooLarge *http.MaxBytesError
		if errors.As(err, &tooLarge) {
			return err
		}
		return &refusal{http.StatusBadRequest, "That can't be read."}
	}
	words := []string{v.r.URL.Path}
	for _, values := range v.r.Form {
		words = append(words, values...)
	}
	for _, w := range words {
		if strings.ContainsRune(w, 0) || !utf8.ValidString(w) {
			return &refusal{http.StatusBadRequest, "That can't be read."}
		}
	}
	return nil
}

// errAnswered says that the visit has been answered.
var errAnswered = errors.New("answered")

func (v *visit) recognize() error {
	id := v.s.sessions.GetInt64(v.ctx, keyStaff)
	if id == 0 {
		return nil
	}
	who, err := db.StaffByID(v.ctx, v.s.opts.Pool, id)
	if errors.Is(err, db.ErrNotFound) {
		return nil
	}
	if err != nil {
		return err
	}
	// A new password, or having left, ends the sessions that there are.
	if who.LeftAt == nil && who.SessionsFrom.UnixMicro() == v.s.sessions.GetInt64(v.ctx, keyFrom) {
		v.who = &who
	}
	return nil
}

// fail answers for an error. What it says in full goes to the log only.
func (v *visit) fail(err error) {
	var no *refusal
	var tooLarge *http.MaxBytesError
	switch {
	case errors.Is(err, errAnswered):
	case errors.Is(err, errLogIn):
		v.toLogin()
	case errors.As(err, &no) && v.r.Method == http.MethodPost && no.status == http.StatusUnprocessableEntity && v.who != nil:
		v.s.sessions.Put(v.ctx, keyBad, no.text)
		http.Redirect(v.w, v.r, v.back(), http.StatusSeeOther)
	case errors.As(err, &no):
		v.sorry(no.status, no.text)
	case errors.Is(err, conversation.ErrNotNow):
		v.sorry(http.StatusConflict, "That can't be done as the talk stands now.")
	case errors.As(err, &tooLarge):
		v.sorry(http.StatusRequestEntityTooLarge, "That is too long to be sent.")
	case errors.Is(err, db.ErrNotFound):
		v.sorry(http.StatusNotFound, "There is nothing here by that name.")
	case errors.Is(err, context.Canceled):
	default:
		v.s.log.ErrorContext(v.ctx, "staff's page", "route", v.r.Pattern, "error", err.Error())
		v.sorry(http.StatusInternalServerError, "Something went wrong here. Nothing was changed; please try again.")
	}
}

// toLogin sends a person to the log-in and remembers where they wanted to go.
func (v *visit) toLogin() {
	if v.r.Method != http.MethodGet || v.r.Header.Get("Accept") == "text/event-stream" {
		v.sorry(http.StatusUnauthorized, "Please log in again; the last session has ended.")
		return
	}
	next := url.QueryEscape(v.r.URL.RequestURI())
	http.Redirect(v.w, v.r, Base+"/login?next="+next, http.StatusSeeOther)
}

// back is where a form was sent from: the lead it is about, or the page it names.
func (v *visit) back() string {
	if ref := v.r.PathValue("ref"); ref != "" {
		return Base + "/lead/" + url.PathEscape(ref)
	}
	return local(v.r.PostFormValue("back"))
}

// local is a path of the page itself, its beginning for anything else: nobody is sent to
// another server.
func local(path string) string {
	u, err := url.Parse(path)
	if err != nil || u.Scheme != "" || u.Host != "" || !strings.HasPrefix(path, Base+"/") || strings.ContainsAny(path, "\\\r\n") {
		return Base + "/"
	}
	return path
}

// done tells on the next page what was done.
func (v *visit) done(to, format string, args ...any) error {
	v.s.sessions.Put(v.ctx, keySaid, fmt.Sprintf(format, args...))
	http.Redirect(v.w, v.r, to, http.StatusSeeOther)
	return nil
}

// field is a form's field as one may keep it: valid, without control characters, trimmed.
func (v *visit) field(name string, most int) (string, error) {
	text := clean(v.r.PostFormValue(name))
	if n := len([]rune(text)); n > most {
		return "", refuse("That is %d characters; at most %d are kept.", n, most)
	}
	return text, nil
}

// clean drops what no text needs: control characters but the line's end, and the marks
// that turn the direction of writing, which could make one thing look like another.
func clean(text string) string {
	text = strings.ReplaceAll(strings.ToValidUTF8(text, "\uFFFD"), "\r\n", "\n")
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		switch {
		case r == '\n', r == '\t':
			return r
		case r < ' ', r >= 0x7f && r < 0xa0, r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069:
			return -1
		}
		return r
	}, text))
}

func (v *visit) shop() *conversation.Shop { return v.s.opts.Shop() }
