package main

import (
	"encoding/csv"
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

func TestCSVOfLeads(t *testing.T) {
	records := []string{
		`{"version":1,"ref":"R7KQ4","status":"ready","qualified":true,"why_staff":[],"urgent":false,"after_hours":true,"channel":"sms","language":"en",
		"opened_at":"2026-03-02T18:00:00Z","ready_at":null,"customer":{"name":"=HYPERLINK(\"http://evil.example\")","phone":"+12185550123","email":null},
		"place":{"city":" @SUM(1)","state":"MN","zip":"55802"},"use":null,"problem":["cracked","leaking"],
		"units":[{"count":2,"style":"curb_mount","check":{"replace":"unit","verdict":"fits","missing":[],"order":{"frame_inside":{"width_in":25.875,"length_in":49.875},"stock":"U2650"},"estimate":{"low":600,"high":800,"currency":"USD"}}},
		{"check":{"replace":"dome","verdict":"incomplete","missing":["plastic_size"],"order":{"plastic_size":null,"stock":null},"estimate":{"low":0,"high":0,"currency":"USD","reason":"no size"}}}]}`,
		`{"ref":"CDFGH","customer":{},"place":{},"units":[]}`,
	}
	var out strings.Builder
	err := exportCSV(&out, func(add func(json.RawMessage) error) error {
		for _, r := range records {
			if err := add(json.RawMessage(r)); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(out.String())).ReadAll()
	if err != nil || len(rows) != 4 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	cell := func(row int, column string) string { return rows[row][slices.Index(rows[0], column)] }
	for _, c := range []struct {
		row          int
		column, want string
	}{
		{1, "name", `'=HYPERLINK("http://evil.example")`}, {1, "city", "' @SUM(1)"}, {1, "phone", "(218) 555-0123"}, {1, "order", "25 7/8 x 49 7/8 in"},
		{1, "stock", "U2650"}, {1, "count", "2"}, {1, "estimate_high", "800"}, {1, "problem", "cracked; leaking"}, {2, "unit", "2"}, {2, "missing", "plastic_size"},
		{2, "estimate_low", ""}, {2, "order", ""}, {3, "ref", "CDFGH"}, {3, "unit", ""},
	} {
		if got := cell(c.row, c.column); got != c.want {
			t.Errorf("row %d, %s: %q, want %q", c.row, c.column, got, c.want)
		}
	}
}

func TestHarmlessCells(t *testing.T) {
	for in, want := range map[string]string{
		"=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@x": "'@x", "\t=1": "'\t=1", "\r=1": "'\r=1", " =1": "' =1", "＝1": "'＝1", "|cmd": "'|cmd",
		"": "", "Ana": "Ana", "a=b": "a=b", "25 1/2": "25 1/2", "(218) 555-0123": "(218) 555-0123",
	} {
		if got := harmless(in); got != want {
			t.Errorf("%q became %q, want %q", in, got, want)
		}
	}
}
