package torture_test

import (
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/torture"
)

// An upgrade while customers write: the program from before the newest migration works on,
// the new one migrates and starts beside it, and the older one is then told to stop. Each
// message is answered once; by which of the two, and so in which words, is nobody's
// promise. It takes the history of the repository and a build, so make torture alone runs
// it; that migrations only add is checked in internal/db always.
func TestUpgradeBesideAnOlderProcess(t *testing.T) {
	atLength(t)
	old := olderProgram(t)
	r, _ := theCrowd(t)
	url := dbtest.EmptyURL(t)
	if out, err := migrate(old, url); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	h := torture.NewHouse(t, url, url)
	first := h.OpenProgram(old)
	r.disturbed(t, h, nil,
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

// mostBack bounds how many commits are tried: not each of a project's builds.
const mostBack = 8

// olderProgram is the program as it was before the newest migrations came: of the newest
// commit that builds and has some of today's, from the first on without a gap.
func olderProgram(t *testing.T) string {
	t.Helper()
	git := func(args ...string) []string {
		cmd := exec.Command("git", append([]string{"-C", "../.."}, args...)...)
		out, err := cmd.Output()
		if err != nil {
			t.Logf("git %s: %v", strings.Join(args, " "), err)
		}
		return strings.Fields(string(out))
	}
	const folder = "internal/db/migrations"
	today := git("ls-tree", "--name-only", "HEAD", folder+"/")
	var failed error
	for _, change := range git("log", "--format=%H", "--", folder) {
		have := git("ls-tree", "--name-only", change+"^", folder+"/")
		if len(have) == 0 || len(have) >= len(today) || !slices.Equal(have, today[:len(have)]) {
			continue
		}
		for n := 1; n <= mostBack; n++ {
			older := fmt.Sprintf("%s~%d", change, n)
			var program string
			if program, failed = torture.Build(checkout(t, older)); failed == nil {
				t.Logf("the older program is that of %s, with %d of %d migrations", older, len(have), len(today))
				return program
			}
		}
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
