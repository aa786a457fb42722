package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// LockTalks holds several talks until the transaction ends, always in the same order, so
// that two who do so at once wait for each other and no longer.
func LockTalks(ctx context.Context, tx pgx.Tx, ids ...int64) error {
	const sql = `SELECT count(*) FROM (SELECT FROM conversations WHERE id = ANY ($1) ORDER BY id FOR NO KEY UPDATE) c`
	var n int
	if err := tx.QueryRow(ctx, sql, ids).Scan(&n); err != nil {
		return fmt.Errorf("lock talks %v: %w", ids, err)
	}
	return nil
}

// MergeTalk moves all messages of one talk, with what hangs on them, behind those of
// another. Both are held. The ledger is the caller's to join: the facts of the talk that
// is joined are taken out here, and its messages get the numbers that they had plus the
// other's last one, which is moved on.
func MergeTalk(ctx context.Context, tx pgx.Tx, from, into *Held, now time.Time) error {
	if err := MoveTalk(ctx, tx, from.ID, into.ID, into.LastN, now); err != nil {
		return err
	}
	b := &pgx.Batch{}
	b.Queue(`UPDATE staff_history SET conversation_id = $2 WHERE conversation_id = $1`, from.ID, into.ID)
	b.Queue(`DELETE FROM lead_hands WHERE conversation_id = $1`, from.ID)
	b.Queue(`UPDATE lead_merges SET into_id = $2 WHERE into_id = $1`, from.ID, into.ID)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("join talk %d into %d: %w", from.ID, into.ID, err)
	}
	if into.Talk.Phone == "" {
		into.Talk.Phone = from.Talk.Phone
	}
	if into.Talk.Email == "" {
		into.Talk.Email = from.Talk.Email
	}
	into.LastN += from.LastN
	return nil
}
