package main

import (
	"io"
	"os"
)

// streams are what a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// terminal says whether somebody is typing.
func (s streams) terminal() bool {
	f, ok := s.in.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
