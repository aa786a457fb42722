package main

import (
	"io"
	"os"

	"golang.org/x/term"
)

// streams are what a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// terminal says whether somebody is typing.
func (s streams) terminal() bool { return isTerminal(s.in) }

// isTerminal says whether one end of the program is a person's terminal.
func isTerminal(end any) bool {
	f, ok := end.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}
