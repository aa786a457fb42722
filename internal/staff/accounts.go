package staff

import (
	"context"
	"errors"
	"regexp"
	"time"

	"example.com/intake-bot/internal/db"
)

var (
	loginForm  = regexp.MustCompile(`^[a-z0-9][a-z0-9._@+-]{1,63}$`)
	mailForm   = regexp.MustCompile(`^[^@\s,<>]+@[^@\s,<>]+$`)
	numberForm = regexp.MustCompile(`^\+[1-9][0-9]{6,14}$`)
)

// AddAccount makes an account with a password for the first log-in, and gives that password.
func AddAccount(ctx context.Context, c db.Conn, a db.Staff) (once string, err error) {
	if err := checkAccount(a); err != nil {
		return "", err
	}
	if once, err = OneTimePassword(); err != nil {
		return "", err
	}
	if a.PasswordHash, err = HashPassword(once); err != nil {
		return "", err
	}
	a.OneTime = true
	_, err = db.AddStaff(ctx, c, a)
	if errors.Is(err, db.ErrTaken) {
		return "", refuse("Somebody else has the name %q or that number.", a.Login)
	}
	return once, err
}

func checkAccount(a db.Staff) error {
	switch {
	case !loginForm.MatchString(a.Login):
		return refuse("%q can't be logged in with: use small letters, digits, dots and dashes, two at least.", a.Login)
	case clean(a.Name) == "" || len(a.Name) > 100:
		return refuse("Give the name that the others see.")
	case a.Role != db.RoleStaff && a.Role != db.RoleOwner:
		return refuse("A role is staff or owner.")
	case a.Email != "" && !mailForm.MatchString(a.Email):
		return refuse("%q is no mail address.", a.Email)
	case a.Phone != "" && !numberForm.MatchString(a.Phone):
		return refuse("%q is no phone number: write it like +12185550190.", a.Phone)
	case a.MailAlerts && a.Email == "" || a.TextAlerts && a.Phone == "":
		return refuse("An alert needs an address or a number to go to.")
	}
	return nil
}

// NewPassword gives an account a new password for the next log-in; its sessions are over.
func NewPassword(ctx context.Context, c db.Conn, id int64) (once string, err error) {
	if once, err = OneTimePassword(); err != nil {
		return "", err
	}
	hash, err := HashPassword(once)
	if err != nil {
		return "", err
	}
	return once, db.SetPassword(ctx, c, id, hash, true, time.Now().UTC().Truncate(time.Microsecond))
}
