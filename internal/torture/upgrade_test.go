package torture_test

import (
	"os"
	"os/exec"
	"strings"
	"testing"

	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/torture"
)

// An upgrade while customers write: the program from before the newest migration works on,
// the new one migrates and starts beside it, and the older one is then told to stop. It
// takes the history of the repository and a build, so make torture alone runs it; that
// migrations only add is checked in internal/db always.
func TestUpgradeBesideAnOlderProcess(t *testing.T) {
	atLength(t)
	older := olderCheckout(t)
	old, err := torture.Build(older)
	if err != nil {
		t.Fatal(err)
	}
	r, want := theCrowd(t)
	url := dbtest.EmptyURL(t)
	if out, err := migrate(old, url); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	h := torture.NewHouse(t, url, url)
	first := h.OpenProgram(old)
	r.disturbed(t, h, want,
		func() {
			now, err := torture.Program()
			if err != nil {
				t.Error(err)
				return
			}
			if out, err := migrate(now, url); err != nil {
				t.Errorf("%v\n%s", err, out)
			}
		},
		func() { h.Open() },
		func() { stop(t, first) })
}

func migrate(program, url string) (string, error) {
	cmd := exec.Command(program, "migrate")
	cmd.Env = []string{"PATH=" + os.Getenv("PATH"), "DATABASE_URL=" + url}
	out, err := cmd.CombinedOutput()
	return string(out), err
}

// olderCheckout is the project as it was before its newest migration came.
func olderCheckout(t *testing.T) string {
	t.Helper()
	git := func(args ...string) (string, error) {
		cmd := exec.Command("git", args...)
		cmd.Dir = "../.."
		out, err := cmd.Output()
		return strings.TrimSpace(string(out)), err
	}
	newest, err := git("log", "-1", "--diff-filter=A", "--format=%H", "--", "internal/db/migrations")
	if err != nil || newest == "" {
		t.Skipf("no history here to build an older program from: %v", err)
	}
	if _, err := git("rev-parse", "--verify", "--quiet", newest+"^"); err != nil {
		t.Skip("the history does not go back far enough to build an older program")
	}
	dir := t.TempDir()
	archive := exec.Command("sh", "-c", `git -C ../.. archive "$1^" | tar -x -C "$2"`, "sh", newest, dir)
	if out, err := archive.CombinedOutput(); err != nil {
		t.Fatalf("older checkout: %v\n%s", err, out)
	}
	t.Logf("the older program is that from before %s", newest[:12])
	return dir
}
