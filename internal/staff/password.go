package staff

import (
	"crypto/rand"
	"fmt"
	"net/http"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/alexedwards/argon2id"

	"example.com/intake-bot/internal/db"
)

// hashing is argon2id with 19 MiB, two passes and one lane: the first choice of the
// OWASP password storage cheat sheet; from memory.
var hashing = argon2id.Params{Memory: 19 * 1024, Iterations: 2, Parallelism: 1, SaltLength: 16, KeyLength: 32}

// Passwords are at least so long, as NIST SP 800-63B has it for ones that people choose
// (from memory), and no longer than any hash needs.
const (
	leastPassword = 10
	mostPassword  = 200
)

// HashPassword makes what is kept of a password.
func HashPassword(password string) (string, error) {
	params := hashing
	hash, err := argon2id.CreateHash(password, &params)
	if err != nil {
		return "", fmt.Errorf("hash a password: %w", err)
	}
	return hash, nil
}

// CheckPassword says in plain words what is wrong with a new password; nil for nothing.
func CheckPassword(password, login, name string) error {
	n := utf8.RuneCountInString(password)
	low := strings.ToLower(password)
	switch {
	case n < leastPassword:
		return refuse("A password has at least %d characters; three or four words make a good one.", leastPassword)
	case n > mostPassword:
		return refuse("A password has at most %d characters.", mostPassword)
	case strings.Contains(low, strings.ToLower(login)) || len(name) > 2 && strings.Contains(low, strings.ToLower(name)):
		return refuse("A password must not hold the name that goes with it.")
	case strings.Count(low, low[:1]) == n || low == "1234567890" || strings.HasPrefix(low, "password"):
		return refuse("That password is one of the first that anybody tries.")
	}
	return nil
}

// wordless letters are not taken for one another when read aloud or by hand.
const oneTimeLetters = "abcdefghjkmnpqrstuvwxyz23456789"

// OneTimePassword draws a password to be changed at the first log-in: 16 letters, about
// 79 bits, in groups that are easy to read out.
func OneTimePassword() (string, error) {
	var b strings.Builder
	for i := 0; i < 16; {
		var one [1]byte
		if _, err := rand.Read(one[:]); err != nil {
			return "", fmt.Errorf("draw a password: %w", err)
		}
		if int(one[0]) >= 256-256%len(oneTimeLetters) {
			continue
		}
		if i > 0 && i%4 == 0 {
			b.WriteByte('-')
		}
		b.WriteByte(oneTimeLetters[int(one[0])%len(oneTimeLetters)])
		i++
	}
	return b.String(), nil
}

type passwordPage struct {
	frame
	Least  int
	MustDo bool
}

func (s *Server) passwordForm(v *visit) error {
	return v.show(http.StatusOK, "password.html", passwordPage{v.frame("Your password"), leastPassword, v.who.OneTime})
}

func (s *Server) changePassword(v *visit) error {
	if err := v.tryPassword(v.r.PostFormValue("old"), v.who); err != nil {
		return err
	}
	chosen := v.r.PostFormValue("new")
	if chosen != v.r.PostFormValue("again") {
		return refuse("The two new passwords are not the same.")
	}
	if chosen == v.r.PostFormValue("old") {
		return refuse("That is the old password.")
	}
	if err := CheckPassword(chosen, v.who.Login, v.who.Name); err != nil {
		return err
	}
	hash, err := HashPassword(chosen)
	if err != nil {
		return err
	}
	now := time.Now().UTC().Truncate(time.Microsecond)
	if err := db.SetPassword(v.ctx, s.opts.Pool, v.who.ID, hash, false, now); err != nil {
		return err
	}
	if err := v.begin(v.who.ID, now); err != nil {
		return err
	}
	return v.done(Base+"/", "The new password holds. Other sessions of yours have ended.")
}
