package db

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/fitcheck"
)

// LeadRecord is the lead record of docs/contract.md for a ref, in capitals or not, as
// the view lead_record gives it. ErrNotFound where there is no such lead.
func LeadRecord(ctx context.Context, c Conn, ref string) (json.RawMessage, error) {
	var raw []byte
	err := c.QueryRow(ctx, `SELECT record FROM lead_record WHERE ref = $1`, strings.ToUpper(strings.TrimSpace(ref))).Scan(&raw)
	if errors.Is(err, pgx.ErrNoRows) {
		return nil, fmt.Errorf("lead %q: %w", ref, ErrNotFound)
	}
	if err != nil {
		return nil, fmt.Errorf("lead %s: %w", ref, err)
	}
	return inOrder(raw)
}

// EachRecord calls fn with every lead record, the oldest talk first, holding one at a
// time. It ends with fn's first error.
func EachRecord(ctx context.Context, c Conn, fn func(record json.RawMessage) error) error {
	rows, err := c.Query(ctx, `SELECT r.record FROM conversations c JOIN lead_record r ON r.ref = c.ref ORDER BY c.opened_at, c.id`)
	if err != nil {
		return fmt.Errorf("lead records: %w", err)
	}
	defer rows.Close()
	for rows.Next() {
		var raw []byte
		if err := rows.Scan(&raw); err != nil {
			return fmt.Errorf("lead records: %w", err)
		}
		record, err := inOrder(raw)
		if err != nil {
			return err
		}
		if err := fn(record); err != nil {
			return err
		}
	}
	if err := rows.Err(); err != nil {
		return fmt.Errorf("lead records: %w", err)
	}
	return nil
}

// recordKeys are the record's names in the order in which the contract shows them;
// jsonb keeps no order, and people read these.
var recordKeys = func() map[string]int {
	names := []string{"version", "ref", "n", "at", "from", "status", "qualified", "why_staff", "urgent",
		"after_hours", "channel", "language", "opened_at", "ready_at", "customer", "place", "name", "phone",
		"email", "city", "state", "zip", "time_zone", "use", "problem", "units"}
	for _, t := range fitcheck.UnitTopics {
		names = append(names, string(t))
	}
	names = append(names, "check", "replace", "reasons", "verdict", "findings", "missing", "photos_wanted",
		"order", "ship", "estimate", "code", "severity", "stock", "estimated", "by", "pieces", "weight_lb",
		"billed_lb", "carton_in", "freight_class", "notes", "what", "low", "high", "currency", "lines", "reason",
		"photos", "id", "of", "from_message", "width", "height", "facts", "topic", "unit", "value", "said",
		"message", "text", "source", "numbers", "messages", "width_in", "length_in", "first_in", "second_in",
		"rise_in", "run_in", "outer", "middle", "inner")
	rank := make(map[string]int, len(names))
	for i, name := range names {
		rank[name] = i
	}
	return rank
}()

// inOrder writes a record again with its names in the contract's order; values stay
// as they are written.
func inOrder(raw []byte) (json.RawMessage, error) {
	var out bytes.Buffer
	if err := writeOrdered(&out, raw); err != nil {
		return nil, fmt.Errorf("lead record: %w", err)
	}
	return out.Bytes(), nil
}

func writeOrdered(out *bytes.Buffer, raw json.RawMessage) error {
	switch trimmed := bytes.TrimSpace(raw); {
	case bytes.HasPrefix(trimmed, []byte("{")):
		return writeObject(out, trimmed)
	case bytes.HasPrefix(trimmed, []byte("[")):
		return writeArray(out, trimmed)
	default:
		return json.Compact(out, trimmed)
	}
}

func writeObject(out *bytes.Buffer, raw json.RawMessage) error {
	var members map[string]json.RawMessage
	if err := json.Unmarshal(raw, &members); err != nil {
		return err
	}
	names := make([]string, 0, len(members))
	for name := range members {
		names = append(names, name)
	}
	slices.SortFunc(names, compareKeys)
	out.WriteByte('{')
	for i, name := range names {
		if i > 0 {
			out.WriteByte(',')
		}
		key, err := json.Marshal(name)
		if err != nil {
			return err
		}
		out.Write(key)
		out.WriteByte(':')
		if err := writeOrdered(out, members[name]); err != nil {
			return err
		}
	}
	out.WriteByte('}')
	return nil
}

func writeArray(out *bytes.Buffer, raw json.RawMessage) error {
	var items []json.RawMessage
	if err := json.Unmarshal(raw, &items); err != nil {
		return err
	}
	out.WriteByte('[')
	for i, item := range items {
		if i > 0 {
			out.WriteByte(',')
		}
		if err := writeOrdered(out, item); err != nil {
			return err
		}
	}
	out.WriteByte(']')
	return nil
}

// compareKeys puts known names in the contract's order before unknown ones by letter.
func compareKeys(a, b string) int {
	ra, knownA := recordKeys[a]
	rb, knownB := recordKeys[b]
	switch {
	case knownA && knownB:
		return ra - rb
	case knownA:
		return -1
	case knownB:
		return 1
	}
	return strings.Compare(a, b)
}
