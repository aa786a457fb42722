package main

import (
	"fmt"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/shop"
)

type shopCommand struct {
	Check  shopCheckCommand  `cmd:"" help:"Say whether a shop file is sound; every mistake with its line and what would be right."`
	Show   shopShowCommand   `cmd:"" help:"Print the demo shop's file, which shows every setting."`
	Schema shopSchemaCommand `cmd:"" help:"Print the JSON Schema of shop files, for editors that complete and check them."`
	Import shopImportCommand `cmd:"" help:"Take stock or prices over from a table (CSV)."`
	Export shopExportCommand `cmd:"" help:"Print stock or prices as a table (CSV)."`
}

type shopCheckCommand struct {
	File string `arg:"" env:"SHOP_FILE" help:"The shop file."`
}

func (c *shopCheckCommand) Run(s streams) error {
	f, err := shop.Load(c.File, wording.CheckOverride)
	if err != nil {
		fmt.Fprintln(s.err, err)
		return errSilent
	}
	_, err = fmt.Fprintf(s.out, "%s: sound. %s, %s.\n", c.File, f.Name, f.Address)
	return err
}

type shopShowCommand struct{}

func (c *shopShowCommand) Run(s streams) error {
	_, err := fmt.Fprint(s.out, deploy.ExampleShop)
	return err
}

type shopSchemaCommand struct{}

func (c *shopSchemaCommand) Run(s streams) error {
	_, err := fmt.Fprint(s.out, deploy.ShopSchema)
	return err
}

// shopFlag chooses the shop whose rules hold.
type shopFlag struct {
	Shop string `env:"SHOP_FILE" placeholder:"FILE" help:"The shop file; the demo shop's if left out."`
}

func (f shopFlag) load() (*shop.File, error) {
	if f.Shop == "" {
		return shop.Parse([]byte(deploy.ExampleShop), wording.CheckOverride)
	}
	return shop.Load(f.Shop, wording.CheckOverride)
}

// talking is what the talk needs of a shop file, with the place that its ZIP code stands
// for.
func talking(f *shop.File) (*conversation.Shop, error) {
	s, err := f.Conversation()
	if err != nil {
		return nil, fmt.Errorf("shop file: %w", err)
	}
	s.Rules.ShipFrom = conversation.SiteOf(fitcheck.Place{City: f.Address.City, State: string(f.Address.State), ZIP: string(f.Address.ZIP)})
	return s, nil
}
