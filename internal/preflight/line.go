package preflight

import (
	"fmt"
	"io"
	"strings"
)

// Result is how one check came out.
type Result string

const (
	OK      Result = "ok"
	Wrong   Result = "wrong"   // it can't work so
	Unknown Result = "unknown" // it can't be known from here, or is worth a look
	Off     Result = "off"     // the shop does not use it
)

// Line is one check, for people and, as JSON, for programs.
type Line struct {
	Check  string `json:"check"`  // what was looked at: "database", "carrier number"
	Result Result `json:"result"` // ok, wrong, unknown, off
	Found  string `json:"found"`  // what was found, without secrets
	Do     string `json:"do"`     // what to do about it; empty where all is well
}

func ok(check, found string, args ...any) Line {
	return Line{Check: check, Result: OK, Found: fmt.Sprintf(found, args...)}
}

func wrong(check, found, do string) Line { return Line{check, Wrong, found, do} }

func unknown(check, found, do string) Line { return Line{check, Unknown, found, do} }

func off(check, found string) Line { return Line{Check: check, Result: Off, Found: found} }

// Passed says that nothing is wrong.
func Passed(lines []Line) bool {
	for _, l := range lines {
		if l.Result == Wrong {
			return false
		}
	}
	return true
}

// Color is how a terminal is told to color a result; empty where it need not be.
func (r Result) Color() string {
	return map[Result]string{OK: "\x1b[32m", Wrong: "\x1b[31m", Unknown: "\x1b[33m"}[r]
}

// Write prints the lines for people.
func Write(w io.Writer, lines []Line, colored bool) error {
	var b strings.Builder
	for _, l := range lines {
		mark := fmt.Sprintf("%-7s", l.Result)
		if colored && l.Result.Color() != "" {
			mark = l.Result.Color() + mark + "\x1b[0m"
		}
		fmt.Fprintf(&b, "%s  %-20s %s\n", mark, l.Check, indented(l.Found, 30))
		if l.Do != "" {
			fmt.Fprintf(&b, "%29s -> %s\n", "", indented(l.Do, 33))
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// indented puts the further lines of a text below its first.
func indented(text string, by int) string {
	return strings.ReplaceAll(strings.TrimSpace(text), "\n", "\n"+strings.Repeat(" ", by))
}
