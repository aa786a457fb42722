package torture_test

import (
	"fmt"
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
	old := olderProgram(t)
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

// mostBack bounds how many commits before the newest migration are tried: not each of a
// project's builds.
const mostBack = 8

// olderProgram is the program as it was before its newest migration came.
func olderProgram(t *testing.T) string {
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
	var failed error
	for n := 1; n <= mostBack; n++ {
		older, err := git("rev-parse", "--verify", "--quiet", fmt.Sprintf("%s~%d", newest, n))
		if err != nil {
			break
		}
		var program string
		if program, failed = torture.Build(checkout(t, older)); failed == nil {
			t.Logf("the older program is that of %s, before %s", older[:12], newest[:12])
			return program
		}
	}
	if failed != nil {
		t.Fatal(failed)
	}
	t.Skip("the history does not go back far enough to build an older program")
	return ""
}

// checkout is the project as it was at a commit.
func checkout(t *testing.T, commit string) string {
	t.Helper()
	dir := t.TempDir()
	archive := exec.Command("sh", "-c", `git -C ../.. archive "$1" | tar -x -C "$2"`, "sh", commit, dir)
	if out, err := archive.CombinedOutput(); err != nil {
		t.Fatalf("checkout of %s: %v\n%s", commit, err, out)
	}
	return dir
}
