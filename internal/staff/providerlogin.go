package staff

import (
	"crypto/subtle"
	"encoding/base64"
	"encoding/json"
	"errors"
	"net/http"
	"time"

	"example.com/intake-bot/internal/db"
)

// attemptTime is how long somebody may take at the provider.
const attemptTime = 10 * time.Minute

// toProvider sends a browser to the owner's log-in. What must come back is kept in a
// cookie that lives for minutes: nothing is stored here for whoever only knocks.
func (s *Server) toProvider(v *visit) error {
	if s.provider == nil {
		return db.ErrNotFound
	}
	a := newAttempt(local(v.r.URL.Query().Get("next")))
	to, err := s.provider.start(v.ctx, a)
	if err != nil {
		s.log.ErrorContext(v.ctx, "staff's page", "error", err.Error())
		return v.loginAgain(http.StatusBadGateway, "The log-in provider can't be reached. Try again in a moment, or use your password.")
	}
	js, err := json.Marshal(a)
	if err != nil {
		return err
	}
	http.SetCookie(v.w, s.attemptCookie(base64.RawURLEncoding.EncodeToString(js), int(attemptTime.Seconds())))
	http.Redirect(v.w, v.r, to, http.StatusSeeOther)
	return nil
}

func (s *Server) attemptCookie(value string, age int) *http.Cookie {
	name := "shop_log_in"
	if s.opts.Secure {
		name = "__Host-" + name
	}
	// Lax: the provider's page sends people here by a link, and only then is it needed.
	return &http.Cookie{Name: name, Value: value, Path: "/", MaxAge: age, HttpOnly: true, Secure: s.opts.Secure, SameSite: http.SameSiteLaxMode}
}

// fromProvider lets those in of whom the provider says that they have the mail address of
// an account.
func (s *Server) fromProvider(v *visit) error {
	if s.provider == nil {
		return db.ErrNotFound
	}
	a, ok := v.takeAttempt()
	if !ok || !same(v.r.URL.Query().Get("state"), a.State) {
		return v.loginAgain(http.StatusUnprocessableEntity, "That log-in was not begun in this browser, or took too long. Please begin again.")
	}
	code := v.r.URL.Query().Get("code")
	if code == "" {
		return v.loginAgain(http.StatusUnprocessableEntity, "The log-in provider did not let you in.")
	}
	email, err := s.provider.who(v.ctx, code, a)
	if errors.Is(err, errNotProven) {
		return v.loginAgain(http.StatusForbidden, "The log-in provider does not vouch for your mail address, so it can't be used here.")
	}
	if err != nil {
		s.log.WarnContext(v.ctx, "staff's page", "error", err.Error())
		return v.loginAgain(http.StatusBadGateway, "The log-in could not be checked. Please begin again.")
	}
	who, err := db.StaffByMail(v.ctx, s.opts.Pool, email)
	if errors.Is(err, db.ErrNotFound) {
		return v.loginAgain(http.StatusForbidden, "No account here has the mail address that you logged in with. The owner can add one.")
	}
	if err != nil {
		return err
	}
	if err := v.begin(who.ID, who.SessionsFrom); err != nil {
		return err
	}
	s.sessions.Put(v.ctx, keyProvider, true)
	if err := db.NoteLogin(v.ctx, s.opts.Pool, who.Login, clientAddress(v.r), true, time.Now()); err != nil {
		return err
	}
	if _, err := db.Note(v.ctx, s.opts.Pool, who.ID, 0, db.DeedLoggedIn, db.HistoryDetail{Text: "through " + s.provider.Name}, v.now); err != nil {
		return err
	}
	http.Redirect(v.w, v.r, local(a.Next), http.StatusSeeOther)
	return nil
}

// takeAttempt is the log-in that this browser began, which is over with this.
func (v *visit) takeAttempt() (a attempt, ok bool) {
	gone := v.s.attemptCookie("", -1)
	kept, err := v.r.Cookie(gone.Name)
	if err != nil {
		return a, false
	}
	http.SetCookie(v.w, gone)
	js, err := base64.RawURLEncoding.DecodeString(kept.Value)
	return a, err == nil && json.Unmarshal(js, &a) == nil && a.State != "" && a.Nonce != "" && a.Verifier != ""
}

func (v *visit) loginAgain(status int, wrong string) error {
	return v.show(status, "login.html", v.loginPage(loginPage{Next: Base + "/", Wrong: wrong}))
}

// same compares secrets, in the time that any two take.
func same(a, b string) bool { return subtle.ConstantTimeCompare([]byte(a), []byte(b)) == 1 }
