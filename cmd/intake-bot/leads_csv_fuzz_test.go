package main

import (
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
)

// FuzzHarmlessCells: whatever a customer's name is, the table stays one with as many rows
// and columns, and no cell begins like a formula.
func FuzzHarmlessCells(f *testing.F) {
	for _, name := range []string{"=1+1", " @SUM(A1)", "\t=x", "a\"b,c\r\nd", "-2", "+1", "'", "\u00a0=1", "\ufeff=1", "＝1"} {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, name string) {
		record, err := json.Marshal(map[string]any{"ref": "R7KQ4", "customer": map[string]any{"name": name}, "place": map[string]any{"city": name},
			"units": []any{}, "why_staff": []string{name}})
		if err != nil {
			t.Fatal(err)
		}
		var out strings.Builder
		if err := exportCSV(&out, func(add func(json.RawMessage) error) error { return add(record) }); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(strings.NewReader(out.String())).ReadAll()
		if err != nil || len(rows) != 2 {
			t.Fatalf("%d rows, %v", len(rows), err)
		}
		for _, cell := range rows[1] {
			if seen := strings.TrimLeft(cell, " \t\r\n\u00a0\ufeff"); seen != "" && strings.ContainsAny(seen[:1], "=+-@") {
				t.Errorf("a cell begins like a formula: %q", cell)
			}
		}
	})
}
