package main

import (
	"fmt"
	"runtime/debug"
)

type versionCommand struct{}

func (c *versionCommand) Run(s streams) error {
	_, err := fmt.Fprintln(s.out, version())
	return err
}

// version names the commit that the program was built from, where the build knows it.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "intake-bot (unknown build)"
	}
	commit, changed := "unknown commit", ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision":
			commit = s.Value[:min(len(s.Value), 12)]
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = ", with changes"
		}
	}
	return fmt.Sprintf("intake-bot %s%s, %s", commit, changed, info.GoVersion)
}
