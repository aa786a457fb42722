// Package internal_test keeps the house in order: which room may use which.
package internal_test

import (
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const module = "example.com/intake-bot/"

// mayUse is the import rule: each room and the rooms of ours that it may use. A room
// that ends in /* stands for all below it.
var mayUse = map[string][]string{
	"deploy":                              {},
	"internal/fitcheck":                   {},
	"internal/fitcheck/simulate":          {"internal/fitcheck"},
	"internal/place":                      {},
	"internal/contracttest":               {},
	"internal/conversation/reading":       {"internal/fitcheck", "internal/place"},
	"internal/conversation/wording":       {},
	"internal/conversation":               {"internal/fitcheck", "internal/place", "internal/conversation/*"},
	"internal/drawing":                    {"internal/fitcheck"},
	"internal/drawing/drawingtest":        {},
	"internal/rehearsal":                  {"internal/conversation", "internal/conversation/*", "internal/fitcheck", "internal/place"},
	"internal/photo":                      {},
	"internal/channels/sms":               {},
	"internal/channels/sms/standin":       {"internal/channels/sms"},
	"internal/channels/email":             {},
	"internal/channels/email/standin":     {"internal/channels/email"},
	"internal/channels/email/dovecottest": {},
	"internal/channels/terminal":          {"internal/conversation", "internal/fitcheck"},
	"internal/db":                         {"internal/conversation", "internal/fitcheck", "internal/channels/*"},
	"internal/db/dbtest":                  {"internal/db"},
	"internal/shop":                       {"internal/conversation", "internal/conversation/*", "internal/fitcheck", "internal/place"},
	"internal/intake": {"internal/conversation", "internal/conversation/*", "internal/fitcheck", "internal/channels/*",
		"internal/photo", "internal/drawing", "internal/db", "internal/place"},
	"internal/setup":     {"deploy", "internal/shop", "internal/place", "internal/channels/sms"},
	"internal/preflight": {"internal/channels/*", "internal/db"},
	"internal/torture":   {"deploy", "internal/channels/*", "internal/conversation", "internal/conversation/*", "internal/db", "internal/rehearsal", "internal/shop"},
	"internal/demo":      {"internal/channels/*", "internal/conversation", "internal/db"},
	"internal/staff": {"internal/db", "internal/conversation", "internal/conversation/*", "internal/fitcheck",
		"internal/drawing", "internal/place", "internal/shop", "internal/channels/sms"},
}

// standardOnly are the rooms that use nothing but the standard library beside ours.
var standardOnly = []string{"internal/fitcheck", "internal/place", "internal/conversation/reading"}

type pkg struct {
	ImportPath string
	Name       string
	Imports    []string
	Standard   bool
}

func TestImportRule(t *testing.T) {
	for _, p := range packages(t) {
		room := strings.TrimPrefix(p.ImportPath, module)
		if p.Name == "main" || room == "internal" {
			continue
		}
		allowed, known := mayUse[room]
		if !known {
			t.Errorf("%s is a new room: say in the import rule what it may use", room)
			continue
		}
		for _, imported := range p.Imports {
			checkImport(t, room, allowed, imported)
		}
	}
}

func checkImport(t *testing.T, room string, allowed []string, imported string) {
	t.Helper()
	other, ours := strings.CutPrefix(imported, module)
	switch {
	case ours && !allows(allowed, other):
		t.Errorf("%s must not use %s", room, other)
	case !ours && strings.Contains(strings.Split(imported, "/")[0], ".") && slices.Contains(standardOnly, room):
		t.Errorf("%s must use the standard library only, not %s", room, imported)
	}
}

func allows(allowed []string, room string) bool {
	return slices.ContainsFunc(allowed, func(a string) bool {
		below, all := strings.CutSuffix(a, "/*")
		return a == room || all && strings.HasPrefix(room, below+"/")
	})
}

func packages(t *testing.T) []pkg {
	t.Helper()
	out, err := exec.Command("go", "list", "-json=ImportPath,Name,Imports,Standard", module+"...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var list []pkg
	for dec := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p pkg
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		list = append(list, p)
	}
	if len(list) < 5 {
		t.Fatalf("go list found %d packages only", len(list))
	}
	return list
}
