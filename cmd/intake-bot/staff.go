package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"text/tabwriter"
	"time"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/staff"
)

type staffCommand struct {
	Add      staffAddCommand      `cmd:"" help:"Make an account; prints a password for the first log-in."`
	List     staffListCommand     `cmd:"" help:"List the accounts."`
	Password staffPasswordCommand `cmd:"" help:"Give an account a new password for the next log-in."`
	Leave    staffLeaveCommand    `cmd:"" help:"End an account: the person has left. Its history stays."`
}

type staffAddCommand struct {
	Login string `arg:"" help:"What the person logs in with: small letters, digits, dots."`
	Name  string `help:"The name that the others see; the login if left out."`
	Role  string `enum:"staff,owner" default:"staff" help:"staff sees to leads, owner also to accounts, failures and erasing."`
	Email string `help:"Where alerts are mailed to, and by which the owner's own log-in (OIDC_ISSUER) knows the person."`
	Phone string `help:"Where alerts are texted to, and from where \"take REF\" is answered: +12185550190."`
}

func (c *staffAddCommand) Run(ctx context.Context, s streams) error {
	pool, err := openDatabase(ctx)
	if err != nil {
		return err
	}
	defer pool.Close()
	account := db.Staff{Login: strings.ToLower(strings.TrimSpace(c.Login)), Name: orElse(c.Name, c.Login), Role: db.Role(c.Role),
		Email: c.Email, Phone: c.Phone, MailAlerts: c.Email != "", TextAlerts: c.Phone != ""}
	once, err := staff.AddAccount(ctx, pool, account)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "%s can log in at %s with the password\n  %s\nIt serves only to choose one's own.\n", account.Login, staff.Base, once)
	return err
}

type staffListCommand struct{}

func (c *staffListCommand) Run(ctx context.Context, s streams) error {
	pool, err := openDatabase(ctx)
	if err != nil {
		return err
	}
	defer pool.Close()
	all, err := db.ListStaff(ctx, pool)
	if err != nil {
		return err
	}
	out := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(out, "LOGIN\tNAME\tROLE\tALERTS\tNOTES")
	for _, a := range all {
		var alerts, notes []string
		if a.MailAlerts {
			alerts = append(alerts, a.Email)
		}
		if a.TextAlerts {
			alerts = append(alerts, a.Phone)
		}
		if a.OneTime {
			notes = append(notes, "has not chosen a password yet")
		}
		if a.LeftAt != nil {
			notes = append(notes, "left "+a.LeftAt.Format("2006-01-02"))
		}
		fmt.Fprintf(out, "%s\t%s\t%s\t%s\t%s\n", a.Login, a.Name, a.Role, orDash(strings.Join(alerts, ", ")), orDash(strings.Join(notes, ", ")))
	}
	return out.Flush()
}

// accountOf finds a person's account by their log-in, whatever its case.
func accountOf(ctx context.Context, c db.Conn, login string) (db.Staff, error) {
	account, err := db.StaffByLogin(ctx, c, strings.ToLower(login))
	if errors.Is(err, db.ErrNotFound) {
		return account, fmt.Errorf("there is no account %q", login)
	}
	return account, err
}

type staffPasswordCommand struct {
	Login string `arg:"" help:"Whose."`
}

func (c *staffPasswordCommand) Run(ctx context.Context, s streams) error {
	pool, err := openDatabase(ctx)
	if err != nil {
		return err
	}
	defer pool.Close()
	account, err := accountOf(ctx, pool, c.Login)
	if err != nil {
		return err
	}
	if account.LeftAt != nil {
		return fmt.Errorf("%s left on %s: staff leave %s --back lets them in again", account.Login, account.LeftAt.Format("2006-01-02"), account.Login)
	}
	once, err := staff.NewPassword(ctx, pool, account.ID)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "%s can log in with the password\n  %s\nIt serves only to choose one's own. Sessions so far have ended.\n", account.Login, once)
	return err
}

type staffLeaveCommand struct {
	Login string `arg:"" help:"Whose."`
	Back  bool   `help:"Let them in again."`
}

func (c *staffLeaveCommand) Run(ctx context.Context, s streams) error {
	pool, err := openDatabase(ctx)
	if err != nil {
		return err
	}
	defer pool.Close()
	account, err := accountOf(ctx, pool, c.Login)
	if err != nil {
		return err
	}
	now := time.Now().UTC()
	at, told := &now, "%s can't log in any more.\n"
	if c.Back {
		at, told = nil, "%s can log in again.\n"
	}
	if err := db.SetLeft(ctx, pool, account.ID, at, now); err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, told, account.Login)
	return err
}
