package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/rehearsal"
)

type rehearseCommand struct {
	shopFlag
	Customers int    `default:"1000" help:"How many customers talk to the bot."`
	Seed      uint64 `default:"1" help:"The same seed and shop file give the same report."`
	Customer  int    `placeholder:"N" help:"Let only this customer of the run talk, and print the talk."`
	Talks     int    `placeholder:"N" help:"Print the first N talks, to read."`
	Database  string `placeholder:"URL" help:"Talk over this database, as real messages go; it must have no talks in it yet."`
	JSON      bool   `name:"json" help:"Print the report as JSON."`
}

// Run lets made-up customers talk to the bot with this shop's file, in memory or over
// a database, and reports
// how it went. The exit status is 1 where something was noted that nobody said.
func (c *rehearseCommand) Run(ctx context.Context, s streams) (err error) {
	f, err := c.load()
	if err != nil {
		return err
	}
	talkShop, err := talking(f)
	if err != nil {
		return err
	}
	if c.Customers < 1 || c.Customer < 0 || c.Customer > c.Customers {
		return fmt.Errorf("there are %d customers to choose from", max(c.Customers, 0))
	}
	options := rehearsal.Options{Seed: c.Seed, Customers: c.Customers, Only: c.Customer, Shop: talkShop, Progress: progress(s),
		Assistant: rehearsal.Assistant{Respond: conversation.Respond, Nudge: conversation.Nudge, Answer: f.Questions().Find}}
	if c.Database != "" {
		r, err := newDatabaseRehearsal(ctx, c.Database, f, talkShop)
		if err != nil {
			return err
		}
		defer func() { err = errors.Join(err, r.close()) }()
		options.Assistant, options.AtOnce = r.assistant(ctx), 32
	}
	report, err := rehearsal.Run(ctx, options)
	if err != nil {
		return err
	}
	if err := c.print(s, report); err != nil {
		return fmt.Errorf("print the report: %w", err)
	}
	return verdict(report)
}

// verdict ends the command with status 1 where something was noted that nobody said.
func verdict(report *rehearsal.Report) error {
	if report.Failed() {
		return errSilent
	}
	return nil
}

func (c *rehearseCommand) print(s streams, report *rehearsal.Report) error {
	if c.JSON {
		out := json.NewEncoder(s.out)
		out.SetEscapeHTML(false)
		return out.Encode(report)
	}
	shown := c.Talks
	if c.Customer > 0 {
		shown = 1
	}
	for _, t := range report.Talks(shown) {
		if _, err := fmt.Fprintln(s.out, t.String()); err != nil {
			return err
		}
	}
	if c.Customer > 0 {
		return nil
	}
	_, err := report.WriteTo(s.out)
	return err
}

// progress shows on standard error how far a rehearsal is, a hundred customers at a time.
func progress(s streams) func(done, of int) {
	return func(done, of int) {
		if of > 1 && (done%100 == 0 || done == of) {
			fmt.Fprintf(s.err, "\r%d of %d customers have talked", done, of)
			if done == of {
				fmt.Fprintln(s.err)
			}
		}
	}
}
