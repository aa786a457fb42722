package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// succeed lets a new talk begin with what is still true from the one that its address
// had before. Those facts name that talk, since none of the new one's messages said them.
func succeed(ctx context.Context, tx pgx.Tx, oldID, newID int64) error {
	old, err := HoldTalk(ctx, tx, oldID)
	if err != nil {
		return err
	}
	begun, err := HoldTalk(ctx, tx, newID)
	if err != nil {
		return err
	}
	next := old.Talk.Successor(begun.Talk.Ref, begun.Talk.OpenedAt)
	for i := range next.Ledger {
		next.Ledger[i].Message = 0
	}
	b := &pgx.Batch{}
	if err := saveTalk(b, newID, next, 0, time.Time{}); err != nil {
		return err
	}
	if err := addFacts(b, newID, 0, next.Ledger, old.Talk.Ref); err != nil {
		return err
	}
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("begin talk %d after %d: %w", newID, oldID, err)
	}
	return nil
}

// formerTalk is the talk that an address had so far; ErrNotFound where it had none.
func formerTalk(ctx context.Context, tx pgx.Tx, a Address) (int64, error) {
	var id int64
	err := tx.QueryRow(ctx, `SELECT conversation_id FROM addresses WHERE channel = $1 AND address = $2`, a.Channel, a.Address).Scan(&id)
	if errors.Is(err, pgx.ErrNoRows) {
		return 0, ErrNotFound
	}
	return id, err
}
