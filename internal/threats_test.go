package internal_test

import (
	"io/fs"
	"os"
	"regexp"
	"strings"
	"testing"
)

// TestThreatsNameTheirTests: what docs/threats.md says that a test shows, a test of that
// name is there for; and every row of its tables names one.
func TestThreatsNameTheirTests(t *testing.T) {
	page, err := os.ReadFile("../docs/threats.md")
	if err != nil {
		t.Fatal(err)
	}
	there := testNames(t)
	named := regexp.MustCompile("`((?:Test|Fuzz)[A-Za-z0-9]+)`")
	rows, names := 0, map[string]bool{}
	for line := range strings.Lines(string(page)) {
		if !strings.HasPrefix(line, "| ") || strings.HasPrefix(line, "| ---") || strings.HasPrefix(line, "| wants |") {
			continue
		}
		rows++
		found := named.FindAllStringSubmatch(line, -1)
		if len(found) == 0 {
			t.Errorf("nothing shows that it is stopped: %s", line)
		}
		for _, f := range found {
			names[f[1]] = true
		}
	}
	for _, m := range named.FindAllStringSubmatch(string(page), -1) {
		names[m[1]] = true
	}
	if rows < 30 || len(names) < 60 {
		t.Errorf("only %d rows and %d tests", rows, len(names))
	}
	for name := range names {
		if !there[name] {
			t.Errorf("docs/threats.md names %s, which is nowhere", name)
		}
	}
}

// testNames are the tests and fuzz targets of the whole project.
func testNames(t *testing.T) map[string]bool {
	t.Helper()
	names := map[string]bool{}
	declared := regexp.MustCompile(`(?m)^func ((?:Test|Fuzz)[A-Za-z0-9]+)\(`)
	root := os.DirFS("..")
	err := fs.WalkDir(root, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		b, err := fs.ReadFile(root, path)
		for _, m := range declared.FindAllSubmatch(b, -1) {
			names[string(m[1])] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return names
}
