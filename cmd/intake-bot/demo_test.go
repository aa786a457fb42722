package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/intake-bot/internal/demo"
)

func TestDemoOnceChecksItsLeads(t *testing.T) {
	dir, err := os.MkdirTemp("", "demo") // short: a socket's path has a limit
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := os.RemoveAll(dir); err != nil {
			t.Error(err)
		}
	})
	if err := os.Chmod(dir, 0o755); err != nil { // the database's user must get in
		t.Fatal(err)
	}
	env := []string{"ONCE=1", "DEMO_DIR=" + dir, "PGBIN=" + os.Getenv("PGBIN")}
	for i := range 2 {
		out, errs, status := runProgram(t, env, "", "demo")
		if status != 0 || !strings.HasSuffix(out, "\n5 of 5 customers came out as they must.\n") {
			t.Fatalf("run %d: status %d\n%s%s", i+1, status, out, errs)
		}
	}
	checkLog(t, filepath.Join(dir, "bot.log"))
}

// checkLog looks for what must not be in a log: words, names and numbers of customers.
func checkLog(t *testing.T, path string) {
	t.Helper()
	log, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(log), `"msg"`) {
		t.Fatalf("nothing was logged:\n%s", log)
	}
	customers, err := demo.Customers()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range customers {
		private := append([]string{strings.TrimPrefix(c.Address(), "+1")}, c.Opens...)
		for _, answers := range c.Answers {
			for _, a := range answers {
				if len(a) > 6 { // shorter ones are words of ours as well
					private = append(private, a)
				}
			}
		}
		for _, p := range private {
			if strings.Contains(string(log), p) {
				t.Errorf("the log tells %q", p)
			}
		}
	}
}

func TestDemoFolderIsWhereTheDatabasesUserGetsIn(t *testing.T) {
	dir := t.TempDir()
	closed := filepath.Join(dir, "closed")
	if err := os.MkdirAll(filepath.Join(closed, "in"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(closed, 0o700); err != nil {
		t.Fatal(err)
	}
	if reachable(filepath.Join(closed, "in")) {
		t.Error("a folder below a closed one counts as reachable")
	}
	if !reachable("/usr/bin") {
		t.Error("/usr/bin counts as closed")
	}
}
