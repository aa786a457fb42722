package internal_test

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write docs/licences.md anew")

// licences are known by words that each has and no other.
var licences = []struct {
	name  string
	words *regexp.Regexp
}{
	{"Apache-2.0", regexp.MustCompile(`(?i)apache license version 2\.0`)},
	{"MPL-2.0", regexp.MustCompile(`(?i)mozilla public license,? version 2\.0`)},
	{"LGPL", regexp.MustCompile(`(?i)gnu lesser general public license`)},
	{"FreeType or GPL-2.0", regexp.MustCompile(`(?i)freetype license.{0,200}gnu general public license`)},
	{"MIT", regexp.MustCompile(`(?i)permission is hereby granted, free of charge, to any person`)},
	{"ISC", regexp.MustCompile(`(?i)permission to use, copy, modify, and(/or)? distribute this software for any purpose with or without fee`)},
	{"BSD-3-Clause", regexp.MustCompile(`(?i)redistribution and use in source and binary forms.*neither the name`)},
	{"BSD-3-Clause", regexp.MustCompile(`(?i)redistribution and use in source and binary forms.*names of .{0,40}contributors`)},
	{"BSD-2-Clause", regexp.MustCompile(`(?i)redistribution and use in source and binary forms`)},
	{"WTFPL", regexp.MustCompile(`(?i)do what the fuck you want to public license`)},
	{"Unlicense", regexp.MustCompile(`(?i)released into the public domain`)},
	{"GUST font", regexp.MustCompile(`(?i)gust font license`)},
}

// permissive are those that ask for a notice at most.
var permissive = []string{"Apache-2.0", "MIT", "ISC", "BSD-3-Clause", "BSD-2-Clause", "WTFPL", "Unlicense", "FreeType or GPL-2.0", "GUST font"}

// asksMore are the modules whose licence asks for more than a notice, or is not there, each
// with what that means here.
var asksMore = map[string]string{
	"github.com/riverqueue/river":                        "used as it is: its own source stays under the MPL and can be had from its address",
	"github.com/riverqueue/river/riverdriver":            "as river",
	"github.com/riverqueue/river/riverdriver/riverpgxv5": "as river",
	"github.com/riverqueue/river/rivershared":            "as river",
	"github.com/riverqueue/river/rivertype":              "as river",
	"pgregory.net/rapid":                                 "only in tests: no part of the program",
	"github.com/benoitkugler/textprocessing": "its package `fribidi` is linked through the drawing library: who hands out the program also hands out " +
		"what it takes to link it anew with a changed one (this source is enough), with the licence's text",
	"github.com/srwiley/scanx": "no licence file; its source says that it is FreeType's rasterizer, under the FreeType licence or the GPL",
	"github.com/gen2brain/heic": "MIT; it holds libheif and libde265 as WebAssembly, which are under the LGPL: who hands out the program also hands out " +
		"their licences and where their source is, and they can be replaced by building with another file",
}

// TestLicences lists the licence of every module that the program or its tests are made
// of, from the files that come with it. A module whose licence asks for more than a notice
// must be one that was decided on.
func TestLicences(t *testing.T) {
	inProgram := modulesOf(t, module+"cmd/intake-bot")
	all := modulesOf(t, "-test", module+"...")
	if len(inProgram) < 40 || len(all) < len(inProgram) {
		t.Fatalf("%d modules in the program, %d in all", len(inProgram), len(all))
	}
	var b strings.Builder
	b.WriteString(licencesHead)
	paths := make([]string, 0, len(all))
	for path := range all {
		paths = append(paths, path)
	}
	slices.Sort(paths)
	for _, path := range paths {
		found := licencesIn(t, all[path].dir)
		remark, decided := asksMore[path]
		if !decided && (len(found) == 0 || slices.ContainsFunc(found, func(l string) bool { return !slices.Contains(permissive, l) })) {
			t.Errorf("%s is under %v: look whether it may be used, and say in asksMore what that means", path, found)
		}
		where := "program"
		if _, linked := inProgram[path]; !linked {
			where = "tests"
		}
		fmt.Fprintf(&b, "| %s | %s | %s | %s | %s |\n", path, all[path].version, strings.Join(found, ", "), where, remark)
	}
	for path := range asksMore {
		if _, used := all[path]; !used {
			t.Errorf("%s is no longer used: take it out of asksMore", path)
		}
	}
	const page = "../docs/licences.md"
	if *update {
		if err := os.WriteFile(page, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if kept, err := os.ReadFile(page); err != nil || string(kept) != b.String() {
		t.Errorf("docs/licences.md is not current (%v): go test ./internal -run Licences -update", err)
	}
}

const licencesHead = `# Licences of what the program is made of

Made by ` + "`go test ./internal -run Licences -update`" + ` from the licence files in the module cache; a
test keeps it current, and fails where a module comes in whose licence asks for more than a notice.
Versions are pinned by go.mod, their contents by go.sum; ` + "`make check`" + ` runs ` + "`go mod verify`" + `. Data that
is no module is named in [internal/place/ATTRIBUTION.md](../internal/place/ATTRIBUTION.md).

| module | version | licence | in | what more it asks |
| --- | --- | --- | --- | --- |
`

type moduleAt struct{ version, dir string }

// modulesOf are the modules of all that packages are made of.
func modulesOf(t *testing.T, args ...string) map[string]moduleAt {
	t.Helper()
	list := append([]string{"list", "-deps", "-tags", "nodynamic", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}} {{.Dir}}{{end}}{{end}}"}, args...)
	out, err := exec.CommandContext(t.Context(), "go", list...).Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	all := map[string]moduleAt{}
	for line := range strings.Lines(string(out)) {
		if f := strings.Fields(line); len(f) == 3 {
			all[f[0]] = moduleAt{f[1], f[2]}
		}
	}
	return all
}

var licenceFile = regexp.MustCompile(`(?i)^(licen[cs]e|copying|unlicense)`)

// licencesIn are those that a module's own files name.
func licencesIn(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, e := range entries {
		if e.IsDir() || !licenceFile.MatchString(e.Name()) {
			continue
		}
		b, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(string(b)), " ")
		for _, l := range licences {
			if l.words.MatchString(text) {
				found = append(found, l.name)
				break
			}
		}
	}
	slices.Sort(found)
	return slices.Compact(found)
}
