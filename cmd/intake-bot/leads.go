package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"text/tabwriter"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/shop"
)

type leadsCommand struct {
	List   leadsListCommand   `cmd:"" help:"List leads, those that wait for a person first."`
	Show   leadsShowCommand   `cmd:"" help:"Show one lead."`
	Export leadsExportCommand `cmd:"" help:"Write all leads, as JSON or CSV."`
}

type leadsListCommand struct {
	Status []string  `enum:"open,ready,needs_person,picked_up,quoted,ordered,declined,closed" help:"Only these, with commas between: open, ready, needs_person, picked_up, quoted, ordered, declined, closed."`
	Since  shop.Span `placeholder:"TIME" help:"Only those opened so long ago at most, like 24h or 7 days."`
	Limit  uint      `default:"100" help:"At most so many; 0 is all."`
}

func (c *leadsListCommand) Run(ctx context.Context, s streams) error {
	pool, err := openDatabase(ctx)
	if err != nil {
		return err
	}
	defer pool.Close()
	filter := db.LeadFilter{Limit: int(min(c.Limit, math.MaxInt32))}
	for _, status := range c.Status {
		filter.Status = append(filter.Status, conversation.Status(status))
	}
	if c.Since > 0 {
		filter.Since = time.Now().Add(-c.Since.Duration())
	}
	lines, err := db.ListLeads(ctx, pool, filter)
	if err != nil {
		return err
	}
	out := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(out, "REF\tSTATUS\tOPENED (UTC)\tCUSTOMER\tPLACE\tUNITS\tNOTES")
	for _, l := range lines {
		fmt.Fprintf(out, "%s\t%s\t%s\t%s\t%s\t%d\t%s\n", l.Ref, l.Status, l.OpenedAt.UTC().Format("2006-01-02 15:04"),
			orDash(l.Name), orDash(strings.TrimSpace(l.City+" "+l.Region+" "+l.ZIP)), l.Units, notes(l))
	}
	return out.Flush()
}

func orDash(text string) string {
	if text == "" {
		return "-"
	}
	return text
}

func notes(l db.LeadLine) string {
	var out []string
	if l.Urgent {
		out = append(out, "urgent")
	}
	if l.AfterHours {
		out = append(out, "after hours")
	}
	return orDash(strings.Join(append(out, l.WhyStaff...), ", "))
}

type leadsShowCommand struct {
	Ref  string `arg:"" help:"The lead's ref, in capitals or not."`
	JSON bool   `name:"json" help:"The lead record as JSON."`
}

func (c *leadsShowCommand) Run(ctx context.Context, s streams) error {
	pool, err := openDatabase(ctx)
	if err != nil {
		return err
	}
	defer pool.Close()
	record, err := db.LeadRecord(ctx, pool, c.Ref)
	if errors.Is(err, db.ErrNotFound) {
		return fmt.Errorf("there is no lead %q", c.Ref)
	}
	if err != nil {
		return err
	}
	if !c.JSON {
		return writeSheet(s.out, record)
	}
	_, err = fmt.Fprintf(s.out, "%s\n", record)
	return err
}

type leadsExportCommand struct {
	JSON bool `name:"json" xor:"form" help:"As JSON, a record a line; so it is too where nothing is said."`
	CSV  bool `name:"csv" xor:"form" help:"As a table, a row for each kind of unit."`
}

func (c *leadsExportCommand) Run(ctx context.Context, s streams) error {
	pool, err := openDatabase(ctx)
	if err != nil {
		return err
	}
	defer pool.Close()
	each := func(fn func(json.RawMessage) error) error { return db.EachRecord(ctx, pool, fn) }
	if c.CSV {
		return exportCSV(s.out, each)
	}
	return each(func(record json.RawMessage) error {
		_, err := fmt.Fprintf(s.out, "%s\n", record)
		return err
	})
}
