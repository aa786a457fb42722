package main

import (
	"errors"
	"fmt"
	"os"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/shop"
)

type shopImportCommand struct {
	Stock  shopImportStockCommand  `cmd:"" help:"Put the sizes of a table in place of those in the shop file. Columns: code, part, size (or width and length, or diameter), profile, layers, material, colors, finish."`
	Prices shopImportPricesCommand `cmd:"" help:"Put the price lines of a table in place of those in the shop file. Columns: part, price, choice, value."`
}

// importFlags are those of both imports.
type importFlags struct {
	File   string `arg:"" help:"The table, a CSV file as spreadsheet programs write it."`
	Shop   string `env:"SHOP_FILE" required:"" placeholder:"FILE" help:"The shop file."`
	DryRun bool   `help:"Say what would change, and change nothing."`
}

type shopImportStockCommand struct{ importFlags }

func (c *shopImportStockCommand) Run(s streams) error { return c.run(s, shop.ImportStock) }

type shopImportPricesCommand struct{ importFlags }

func (c *shopImportPricesCommand) Run(s streams) error { return c.run(s, shop.ImportPrices) }

func (f importFlags) run(s streams, read func(text, csv []byte, checks ...shop.WordingCheck) (shop.Imported, error)) error {
	text, err := os.ReadFile(f.Shop)
	if err != nil {
		return fmt.Errorf("read the shop file: %w", err)
	}
	csv, err := os.ReadFile(f.File)
	if err != nil {
		return fmt.Errorf("read the table: %w", err)
	}
	got, err := read(text, csv, wording.CheckOverride)
	if err != nil {
		return f.refused(s, err)
	}
	done := "Nothing was changed: a dry run."
	if !f.DryRun {
		if err := replaceFile(f.Shop, []byte(got.Text)); err != nil {
			return err
		}
		done = f.Shop + " has it now. A bot that runs takes it over when it is told to: sudo systemctl reload 'intake-bot@*'"
	}
	_, err = fmt.Fprintf(s.out, "%s%s\n", got.Summary(), done)
	return err
}

// refused tells all mistakes; the shop file is as it was.
func (f importFlags) refused(s streams, err error) error {
	var table shop.TableMistakes
	var file *shop.Mistakes
	switch {
	case errors.As(err, &table):
		fmt.Fprintf(s.err, "%v\n%s: nothing was taken over. Mend the lines named above and try again.\n", err, f.File)
	case errors.As(err, &file):
		file.Path = f.Shop
		fmt.Fprintf(s.err, "%v\nThe shop file itself has mistakes: mend them first.\n", file)
	default:
		return err
	}
	return errSilent
}

type shopExportCommand struct {
	Stock  shopExportStockCommand  `cmd:"" help:"Print the sizes of the shop file as a table, to be changed and imported again."`
	Prices shopExportPricesCommand `cmd:"" help:"Print its prices as a table."`
}

type shopExportStockCommand struct{ shopFlag }

func (c *shopExportStockCommand) Run(s streams) error {
	f, err := c.load()
	if err != nil {
		return err
	}
	return f.ExportStock(s.out)
}

type shopExportPricesCommand struct{ shopFlag }

func (c *shopExportPricesCommand) Run(s streams) error {
	f, err := c.load()
	if err != nil {
		return err
	}
	return f.ExportPrices(s.out)
}
