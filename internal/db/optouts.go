package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// OptOutSource says how somebody opted out.
type OptOutSource string

const (
	OptOutKeyword OptOutSource = "keyword" // a word that carriers define
	OptOutTalk    OptOutSource = "talk"    // said in other words
	OptOutCarrier OptOutSource = "carrier" // the carrier told us
	OptOutStaff   OptOutSource = "staff"
	OptOutLink    OptOutSource = "link" // followed from a mail
)

// OptOut records that nothing may be sent to an address; harmless where it stands.
func OptOut(ctx context.Context, c Conn, a Address, source OptOutSource, at time.Time) error {
	b := &pgx.Batch{}
	queueOptOut(b, a, source, at)
	if err := c.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("record an opt-out: %w", err)
	}
	return nil
}

// OptIn lifts what OptOut recorded; harmless where nothing stands.
func OptIn(ctx context.Context, c Conn, a Address, at time.Time) error {
	b := &pgx.Batch{}
	queueOptIn(b, a, at)
	if err := c.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("lift an opt-out: %w", err)
	}
	return nil
}

// OptedOut says whether nothing may be sent to an address.
func OptedOut(ctx context.Context, c Conn, a Address) (bool, error) {
	var out bool
	const sql = `SELECT EXISTS (SELECT FROM optouts WHERE channel = $1 AND address = $2 AND lifted_at IS NULL)`
	if err := c.QueryRow(ctx, sql, a.Channel, a.Address).Scan(&out); err != nil {
		return false, fmt.Errorf("look up an opt-out: %w", err)
	}
	return out, nil
}

func queueOptOut(b *pgx.Batch, a Address, source OptOutSource, at time.Time) {
	b.Queue(`INSERT INTO optouts (channel, address, source, since) VALUES ($1, $2, $3, $4)
		ON CONFLICT (channel, address) WHERE lifted_at IS NULL DO NOTHING`, a.Channel, a.Address, source, at)
}

func queueOptIn(b *pgx.Batch, a Address, at time.Time) {
	b.Queue(`UPDATE optouts SET lifted_at = greatest($3, since) WHERE channel = $1 AND address = $2 AND lifted_at IS NULL`,
		a.Channel, a.Address, at)
}
