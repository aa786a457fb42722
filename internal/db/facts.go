package db

import (
	"fmt"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// saveLedger writes what a turn changed of the ledger: entries at its end, and those
// that were taken back. Nothing else of it may change.
func saveLedger(b *pgx.Batch, conversationID int64, before, after []conversation.Entry) error {
	if len(after) < len(before) {
		return fmt.Errorf("a turn took %d facts out of the ledger", len(before)-len(after))
	}
	var undone, redone []int
	for i, e := range before {
		switch {
		case after[i].Undone && !e.Undone:
			undone = append(undone, i+1)
		case !after[i].Undone && e.Undone:
			redone = append(redone, i+1)
		}
	}
	for _, change := range []struct {
		seqs   []int
		undone bool
	}{{undone, true}, {redone, false}} {
		if len(change.seqs) > 0 {
			b.Queue(`UPDATE facts SET undone = $3 WHERE conversation_id = $1 AND seq = ANY ($2)`,
				conversationID, change.seqs, change.undone)
		}
	}
	return addFacts(b, conversationID, len(before), after[len(before):], "")
}

// addFacts adds to a ledger that has so many entries already; from is the ref of the talk
// that they are carried over from, empty where they were said in this one.
func addFacts(b *pgx.Batch, conversationID int64, have int, entries []conversation.Entry, from string) error {
	if len(entries) == 0 {
		return nil
	}
	n := len(entries)
	seqs, units, messages := make([]int, n), make([]int, n), make([]int, n)
	topics, values, saids, bys := make([]string, n), make([]string, n), make([]string, n), make([]string, n)
	resolutions, undone := make([]int64, n), make([]bool, n)
	for i, e := range entries {
		value, resolution, err := encodeValue(e.Value)
		if err != nil {
			return fmt.Errorf("fact %d, %s: %w", have+i+1, e.Topic, err)
		}
		seqs[i], units[i], messages[i] = have+i+1, e.Unit, e.Message
		topics[i], values[i], saids[i], bys[i] = string(e.Topic), storable(string(value)), storable(e.Said), e.By
		resolutions[i], undone[i] = int64(resolution), e.Undone
	}
	b.Queue(`
		INSERT INTO facts (conversation_id, seq, topic, unit, value, resolution_nm, said, message, by, undone,
			carried, carried_from)
		SELECT $1, seq, topic, unit, value::jsonb, resolution, said, nullif(message, 0), by, undone, $11 <> '', nullif($11, '')
		FROM unnest($2::int[], $3::text[], $4::int[], $5::text[], $6::bigint[], $7::text[], $8::int[], $9::text[], $10::bool[])
			AS u (seq, topic, unit, value, resolution, said, message, by, undone)`,
		conversationID, seqs, topics, units, values, resolutions, saids, messages, bys, undone, from)
	return nil
}
