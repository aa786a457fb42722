package main

import (
	"context"
	"fmt"

	"example.com/intake-bot/internal/db"
)

type migrateCommand struct{}

func (c *migrateCommand) Run(ctx context.Context, s streams) error {
	pool, err := openDatabase(ctx)
	if err != nil {
		return err
	}
	defer pool.Close()
	pending, err := db.Pending(ctx, pool)
	if err != nil {
		return err
	}
	if err := db.Migrate(ctx, pool); err != nil {
		return err
	}
	said := "The database was current."
	if pending {
		said = "The database is current now."
	}
	_, err = fmt.Fprintln(s.out, said)
	return err
}
