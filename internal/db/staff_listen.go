package db

import (
	"context"
	"fmt"

	"github.com/jackc/pgx/v5/pgxpool"
)

// ListenForLeads calls tell once at the beginning and then whenever a lead has changed
// that people of staff may look at, until ctx ends or the connection breaks. It keeps a
// connection of the pool for itself.
func ListenForLeads(ctx context.Context, pool *pgxpool.Pool, tell func()) error {
	conn, err := pool.Acquire(ctx)
	if err != nil {
		return fmt.Errorf("listen for leads: %w", err)
	}
	// It goes out of the pool for good, for whoever got it next would hear of leads too.
	own := conn.Hijack()
	defer own.Close(context.WithoutCancel(ctx))
	if _, err := own.Exec(ctx, "LISTEN lead_changed"); err != nil {
		return fmt.Errorf("listen for leads: %w", err)
	}
	tell()
	for {
		if _, err := own.WaitForNotification(ctx); err != nil {
			return fmt.Errorf("listen for leads: %w", err)
		}
		tell()
	}
}
