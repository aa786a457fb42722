package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/preflight"
)

// preflightOf runs the program's preflight and gives its lines by their names.
func preflightOf(t *testing.T, env []string, args ...string) (passed bool, lines map[string]preflight.Line, status int) {
	t.Helper()
	out, errs, status := runProgram(t, env, "", append([]string{"preflight", "--json"}, args...)...)
	var got struct {
		OK     bool             `json:"ok"`
		Checks []preflight.Line `json:"checks"`
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatalf("%v: %s%s", err, out, errs)
	}
	lines = map[string]preflight.Line{}
	for _, l := range got.Checks {
		lines[l.Check] = l
	}
	return got.OK, lines, status
}

// A bot that runs, looked at with the settings that it was started with.
func TestPreflightOfABotThatRuns(t *testing.T) {
	s := serveIn(t)
	passed, lines, status := preflightOf(t, s.env)
	if !passed || status != 0 {
		t.Errorf("status %d: %+v", status, lines)
	}
	for _, check := range []string{"settings", "database", "migrations", "carrier account", "carrier number", "carrier webhook", "bot behind it", "unsigned posts", "metrics inside"} {
		if lines[check].Result != preflight.OK {
			t.Errorf("%s: %+v", check, lines[check])
		}
	}
	// The same from a file of settings, as systemd and containers have them.
	path := filepath.Join(t.TempDir(), "environment")
	text := "# a comment\n\n" + strings.Join(s.env, "\n") + "\nLOG_LEVEL='info'\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if passed, lines, status := preflightOf(t, nil, "--environment", path); !passed || status != 0 {
		t.Errorf("from a file: status %d: %+v", status, lines)
	}
	s.carrier.SetOnFile(standin.OnFile{InboundURL: "https://elsewhere.example/sms"})
	s.kill()
	passed, lines, status = preflightOf(t, s.env)
	if passed || status != 1 || lines["bot behind it"].Result != preflight.Wrong || lines["carrier webhook"].Result != preflight.Wrong {
		t.Errorf("status %d: %+v", status, lines)
	}
	if out, _, status := runProgram(t, s.env, "", "preflight"); status != 1 || !strings.Contains(out, "-> at the carrier, enter "+s.url+"/sms/inbound") {
		t.Errorf("status %d: %s", status, out)
	}
}

func TestPreflightWithoutSettings(t *testing.T) {
	out, errs, status := runProgram(t, []string{"CARRIER_AUTH_TOKEN=change-me"}, "", "preflight")
	if status != 1 || errs != "" {
		t.Errorf("status %d: %s", status, errs)
	}
	for _, said := range []string{"DATABASE_URL is not set", "SHOP_FILE is not set", "PUBLIC_URL is not set", "CARRIER_AUTH_TOKEN is still the example's"} {
		if !strings.Contains(out, said) {
			t.Errorf("%q is not said in:\n%s", said, out)
		}
	}
	path := filepath.Join(t.TempDir(), "environment")
	if err := os.WriteFile(path, []byte("A=1\nsecret words\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, errs, status := runProgram(t, nil, "", "preflight", "--environment", path); status != 1 || !strings.Contains(errs, "line 2 is not NAME=value") || strings.Contains(errs, "secret") {
		t.Errorf("status %d: %s", status, errs)
	}
}
