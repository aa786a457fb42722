package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"golang.org/x/term"

	"example.com/intake-bot/internal/preflight"
	"example.com/intake-bot/internal/setup"
)

type initCommand struct {
	Folder      string `arg:"" optional:"" default:"." help:"Where to write shop.yaml and environment; /etc/intake-bot for the service."`
	Yes         bool   `short:"y" help:"Ask nothing: what no flag gives has its default."`
	Environment string `placeholder:"FILE" help:"Where to write the environment; FOLDER/environment if left out."`

	Name           *string `help:"What the shop is called."`
	Email          *string `help:"Where a person answers mail."`
	Phone          *string `help:"Where a person answers the phone."`
	Website        *string `help:"The shop's website; none for none."`
	Street         *string `help:"Number and street from which parcels start."`
	Zip            *string `help:"Its ZIP code; town, state and time zone follow from it."`
	City           *string `help:"Its town."`
	State          *string `help:"Its state."`
	TimeZone       *string `help:"The shop's time zone, like America/Chicago."`
	Hours          *string `help:"When people are there, Monday to Friday, like 8:00-17:00."`
	Saturday       *string `help:"The same for Saturday."`
	ShipsTo        *string `help:"all, contiguous, or a list like [MN, WI]."`
	PublicURL      *string `name:"public-url" help:"The bot's address, like https://bot.example.com."`
	CarrierAccount *string `help:"The account's id at the carrier of texts. Its token is asked for, or taken from CARRIER_AUTH_TOKEN."`
	CarrierNumber  *string `help:"The number that texts."`
	Mail           *string `help:"yes where the bot has a mailbox of its own."`
	MailUser       *string `help:"The mailbox's address. Its password is asked for, or taken from IMAP_PASSWORD."`
	IMAP           *string `name:"imap" help:"Its mail server."`
	SMTP           *string `name:"smtp" help:"The server that takes its mail."`
}

// given are the answers that came as flags, and the secrets that the environment has.
func (c *initCommand) given(env environment) (setup.Answers, error) {
	a := setup.Answers{}
	for key, value := range map[string]*string{"name": c.Name, "email": c.Email, "phone": c.Phone, "website": c.Website, "street": c.Street,
		"zip": c.Zip, "city": c.City, "state": c.State, "time_zone": c.TimeZone, "hours": c.Hours, "saturday": c.Saturday, "ships_to": c.ShipsTo,
		"public_url": c.PublicURL, "carrier_account": c.CarrierAccount, "carrier_number": c.CarrierNumber, "mail": c.Mail,
		"mail_user": c.MailUser, "imap": c.IMAP, "smtp": c.SMTP} {
		if value != nil {
			a[key] = *value
		}
	}
	for key, name := range map[string]string{"database_url": "DATABASE_URL", "carrier_token": "CARRIER_AUTH_TOKEN", "mail_password": "IMAP_PASSWORD"} {
		value, err := env.secret(name)
		if err != nil {
			return nil, err
		}
		if value != "" {
			a[key] = value
		}
	}
	return a, nil
}

func (c *initCommand) Run(ctx context.Context, s streams) error {
	shopFile, err := filepath.Abs(filepath.Join(c.Folder, "shop.yaml"))
	if err != nil {
		return err
	}
	files := []setup.File{{Path: shopFile, Mode: 0o644}, {Path: filepath.Join(filepath.Dir(shopFile), "environment"), Mode: 0o600}}
	if c.Environment != "" {
		files[1].Path = c.Environment
	}
	if err := setup.Missing(files...); err != nil { // before anything is asked
		return err
	}
	answers, err := c.ask(ctx, s)
	if err != nil {
		return err
	}
	if files[0].Text, err = setup.ShopFile(answers); err != nil {
		return err
	}
	files[1].Text = setup.Environment(answers, shopFile)
	if err := setup.Write(files...); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "\nWritten: %s, which anybody may read, and %s, which is its owner's alone: it holds secrets.\n\n%s", files[0].Path, files[1].Path, setup.Advice(answers))
	return c.look(ctx, s, files[1].Path, answers)
}

// ask has the owner answer, and ends at once where the owner breaks off.
func (c *initCommand) ask(ctx context.Context, s streams) (setup.Answers, error) {
	given, err := c.given(osEnvironment())
	if err != nil {
		return nil, err
	}
	terminal := setup.Terminal{In: s.in, Out: s.out}
	restore := func() {}
	if in, ok := s.in.(*os.File); ok && s.terminal() {
		terminal.Secret = func() (string, error) { b, err := term.ReadPassword(int(in.Fd())); return string(b), err }
		if state, err := term.GetState(int(in.Fd())); err == nil {
			restore = func() { _ = term.Restore(int(in.Fd()), state) } // best effort: it ends in any case
		}
	}
	if !c.Yes {
		fmt.Fprintln(s.out, "A few questions. Enter takes what stands in brackets; all of it can be changed later. Nothing is written before the end.")
	}
	type outcome struct {
		answers setup.Answers
		err     error
	}
	done := make(chan outcome, 1)
	go func() {
		a, err := setup.Ask(terminal, given, c.Yes)
		done <- outcome{a, err}
	}()
	select {
	case o := <-done:
		return o.answers, o.err
	case <-ctx.Done():
		restore()
		return nil, errors.New("broken off; nothing was written")
	}
}

// look ends with preflight: what is red says what to do about it.
func (c *initCommand) look(ctx context.Context, s streams, path string, answers setup.Answers) error {
	env, err := environmentFile(path)
	if err != nil {
		return err
	}
	if left := setup.Left(answers); len(left) > 0 {
		fmt.Fprintf(s.out, "Still as in the example, to be changed in the two files: %s.\n\n", strings.Join(left, ", "))
	}
	fmt.Fprintf(s.out, "How things stand:\n\n")
	lines := lookAhead(ctx, env)
	if err := preflight.Write(s.out, lines, isTerminal(s.out)); err != nil {
		return err
	}
	next := "\nAll is well: customers may write."
	if !preflight.Passed(lines) {
		next = "\nThis is as it should be before the bot runs: do what the arrows say, from top to bottom (docs/going-live.md\nhas the steps), and look again with intake-bot preflight --environment " + path + "\nuntil nothing is wrong."
	}
	_, err = fmt.Fprintln(s.out, next)
	return err
}
