package staff

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"

	"github.com/alexedwards/argon2id"

	"example.com/intake-bot/internal/db"
)

type loginPage struct {
	frame
	Next  string
	Login string
	Wrong string
	// Provider is what the owner's own log-in is called; empty where there is none.
	Provider string
}

func (v *visit) loginPage(p loginPage) loginPage {
	p.frame = v.frame("Log in")
	if v.s.provider != nil {
		p.Provider = v.s.provider.Name
	}
	return p
}

func (s *Server) loginForm(v *visit) error {
	if v.who != nil {
		http.Redirect(v.w, v.r, local(v.r.URL.Query().Get("next")), http.StatusSeeOther)
		return nil
	}
	return v.show(http.StatusOK, "login.html", v.loginPage(loginPage{Next: local(v.r.URL.Query().Get("next"))}))
}

// login takes a name and a password. Whether the name or the password was wrong is not
// told, and both take as long.
func (s *Server) login(v *visit) error {
	login := strings.ToLower(strings.TrimSpace(v.r.PostFormValue("login")))
	next := local(v.r.PostFormValue("next"))
	again := func(status int, wrong string) error {
		return v.show(status, "login.html", v.loginPage(loginPage{Next: next, Login: login, Wrong: wrong}))
	}
	if login == "" || len(login) > 64 || len(v.r.PostFormValue("password")) > 4*mostPassword {
		return again(http.StatusUnprocessableEntity, "Give your name and your password.")
	}
	who, err := db.StaffByLogin(v.ctx, s.opts.Pool, login)
	if err != nil && !errors.Is(err, db.ErrNotFound) {
		return err
	}
	if err != nil || who.LeftAt != nil {
		who = db.Staff{Login: login, PasswordHash: nobodysHash}
	}
	var no *refusal
	switch err := v.tryPassword(v.r.PostFormValue("password"), &who); {
	case errors.As(err, &no):
		return again(no.status, no.text)
	case err != nil:
		return err
	}
	if err := v.begin(who.ID, who.SessionsFrom); err != nil {
		return err
	}
	if _, err := db.Note(v.ctx, s.opts.Pool, who.ID, 0, db.DeedLoggedIn, db.HistoryDetail{}, v.now); err != nil {
		return err
	}
	http.Redirect(v.w, v.r, next, http.StatusSeeOther)
	return nil
}

// nobodysHash is tried where there is no such account, so that it takes as long.
const nobodysHash = "$argon2id$v=19$m=19456,t=2,p=1$AAAAAAAAAAAAAAAAAAAAAA$AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"

// tryPassword proves a password, unless too many tries failed of late.
func (v *visit) tryPassword(password string, who *db.Staff) error {
	now := time.Now()
	address := clientAddress(v.r)
	failures, err := db.FailuresOf(v.ctx, v.s.opts.Pool, who.Login, address, now.Add(-span), now)
	if err != nil {
		return err
	}
	if wait := pause(failures, now); wait > 0 {
		v.w.Header().Set("Retry-After", strconv.Itoa(int(wait.Seconds())+1))
		return &refusal{http.StatusTooManyRequests, fmt.Sprintf("Too many tries. The next one may come in %s.", minutes(wait))}
	}
	ok, err := v.matches(password, who.PasswordHash)
	if err != nil {
		return err
	}
	ok = ok && who.ID != 0
	if err := db.NoteLogin(v.ctx, v.s.opts.Pool, who.Login, address, ok, now); err != nil {
		return err
	}
	if !ok {
		return refuse("That name and that password don't go together.")
	}
	return nil
}

// matches bounds how many hashes are made at once: each takes 19 MB and a tenth of a
// second of a core.
func (v *visit) matches(password, hash string) (bool, error) {
	select {
	case v.s.hashing <- struct{}{}:
		defer func() { <-v.s.hashing }()
	case <-v.ctx.Done():
		return false, v.ctx.Err()
	}
	ok, err := argon2id.ComparePasswordAndHash(password, hash)
	if err != nil {
		return false, fmt.Errorf("try a password: %w", err)
	}
	return ok, nil
}

// minutes says a span for people.
func minutes(d time.Duration) string {
	if d <= time.Minute {
		return "a minute"
	}
	return fmt.Sprintf("%d minutes", int(d.Minutes()+0.999))
}

// begin gives the session to an account; its token is drawn anew, so that nobody who
// knew the old one is let in.
func (v *visit) begin(id int64, from time.Time) error {
	if err := v.s.sessions.RenewToken(v.ctx); err != nil {
		return fmt.Errorf("session: %w", err)
	}
	v.s.sessions.Remove(v.ctx, keyProvider)
	v.s.sessions.Put(v.ctx, keyStaff, id)
	v.s.sessions.Put(v.ctx, keyFrom, from.UnixMicro())
	return nil
}

// logoutEverywhere ends all sessions of a person, this one too: for who left a machine
// behind.
func (s *Server) logoutEverywhere(v *visit) error {
	if err := db.EndSessions(v.ctx, s.opts.Pool, v.who.ID, time.Now().UTC().Truncate(time.Microsecond)); err != nil {
		return err
	}
	return s.logout(v)
}

func (s *Server) logout(v *visit) error {
	if err := s.sessions.Destroy(v.ctx); err != nil {
		return fmt.Errorf("session: %w", err)
	}
	http.Redirect(v.w, v.r, Base+"/login", http.StatusSeeOther)
	return nil
}
