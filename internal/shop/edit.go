package shop

import (
	"errors"
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"
)

// A shop file belongs to a person: a program that changes one setting leaves all else as
// it is written, comments too. So the lines of one setting are exchanged, and what came of
// it is read again and compared with what was meant.

// ErrNotChanged says that a setting could not be exchanged without touching others, as
// where the file writes its parent within braces.
var ErrNotChanged = errors.New("the setting can't be changed by a program in this file: write it by hand")

// Replace exchanges one setting of a shop file, named by its path ("stock",
// "prices.dome"), or adds it. The new lines are those of the setting without its parents,
// each nested one by two spaces more: "dome:\n  base: $46\n". Empty takes it out.
func Replace(text, path, setting string) (string, error) {
	f := &fileLines{lines: strings.SplitAfter(text, "\n")}
	if n := len(f.lines); f.lines[n-1] == "" {
		f.lines = f.lines[:n-1]
	} else {
		f.lines[n-1] += "\n"
	}
	names := strings.Split(path, ".")
	in := span{0, len(f.lines), 0}
	for i, name := range names {
		inner, found := f.find(in, name)
		switch {
		case found && i == len(names)-1:
			f.put(inner.from, inner.to, setting, inner.indent)
		case found:
			in = span{inner.from + 1, inner.to, inner.indent + 2}
			in.indent = f.indentIn(in)
		case setting == "":
			return text, nil // it is not there
		default:
			f.put(in.to, in.to, nested(names[i:], setting), in.indent)
			return strings.Join(f.lines, ""), nil
		}
	}
	return strings.Join(f.lines, ""), nil
}

// nested puts a setting below parents that are not there yet.
func nested(names []string, setting string) string {
	for i := len(names) - 2; i >= 0; i-- {
		setting = names[i] + ":\n" + indent(setting, 2)
	}
	return setting
}

func indent(text string, by int) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		if strings.TrimSpace(line) != "" {
			b.WriteString(strings.Repeat(" ", by))
		}
		b.WriteString(line)
	}
	return b.String()
}

// fileLines are the lines of a file, each with its end.
type fileLines struct{ lines []string }

// span is from one line to before another, with the indent of the settings in it.
type span struct{ from, to, indent int }

var settingLine = regexp.MustCompile(`^( *)([A-Za-z_]+):(?:\s|$)`)

// find looks for a setting among those of a span, and gives its lines: from its name to
// its last line, without comments and blank lines that follow.
func (f *fileLines) find(in span, name string) (span, bool) {
	for i := in.from; i < in.to; i++ {
		m := settingLine.FindStringSubmatch(f.lines[i])
		if m == nil || len(m[1]) != in.indent || m[2] != name {
			continue
		}
		end := i + 1
		for j := i + 1; j < in.to; j++ {
			line := strings.TrimRight(f.lines[j], "\r\n")
			if blank(line) {
				continue
			}
			deep := len(line) - len(strings.TrimLeft(line, " "))
			if deep < in.indent || deep == in.indent && !strings.HasPrefix(line[deep:], "- ") {
				break
			}
			end = j + 1
		}
		return span{i, end, in.indent}, true
	}
	return span{}, false
}

func blank(line string) bool {
	line = strings.TrimSpace(line)
	return line == "" || strings.HasPrefix(line, "#")
}

// indentIn is how far the settings of a span are indented.
func (f *fileLines) indentIn(in span) int {
	for _, line := range f.lines[in.from:in.to] {
		if !blank(line) {
			return len(line) - len(strings.TrimLeft(line, " "))
		}
	}
	return in.indent
}

func (f *fileLines) put(from, to int, setting string, by int) {
	var lines []string
	if setting != "" {
		lines = strings.SplitAfter(indent(strings.TrimRight(setting, "\n")+"\n", by), "\n")
		lines = lines[:len(lines)-1]
	}
	f.lines = slices.Replace(f.lines, from, to, lines...)
}

// changed reads a file before and after a change and makes sure that the change did what
// it was to do, and nothing else: want is the file that was meant.
func changed(after string, want *File, checks []WordingCheck) error {
	got, err := Parse([]byte(after), checks...)
	if err != nil {
		return fmt.Errorf("%w (%w)", ErrNotChanged, err)
	}
	a, b := *got, *want
	a.at, b.at = nil, nil
	if !reflect.DeepEqual(a, b) {
		return ErrNotChanged
	}
	return nil
}
