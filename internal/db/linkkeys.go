package db

import (
	"context"
	"crypto/rand"
	"fmt"
)

// LinkKey is the key by which links of one kind are signed, so that nobody can guess
// one. It is made when first asked for, and is the same for all processes.
func LinkKey(ctx context.Context, c Conn, name string) ([]byte, error) {
	key := make([]byte, 32)
	rand.Read(key) // never fails: crypto/rand
	const sql = `INSERT INTO link_keys (name, key) VALUES ($1, $2) ON CONFLICT (name) DO UPDATE SET name = excluded.name RETURNING key`
	if err := c.QueryRow(ctx, sql, name, key).Scan(&key); err != nil {
		return nil, fmt.Errorf("link key %s: %w", name, err)
	}
	return key, nil
}
