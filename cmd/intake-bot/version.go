package main

import (
	"fmt"
	"runtime/debug"
	"strings"
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
	return versionOf(info)
}

func versionOf(info *debug.BuildInfo) string {
	set := map[string]string{"vcs.revision": "unknown"}
	for _, s := range info.Settings {
		set[s.Key] = s.Value
	}
	parts := []string{"commit " + set["vcs.revision"][:min(len(set["vcs.revision"]), 12)]}
	if day, _, ok := strings.Cut(set["vcs.time"], "T"); ok {
		parts[0] += " of " + day
	}
	if set["vcs.modified"] == "true" {
		parts = append(parts, "with changes")
	}
	return "intake-bot " + strings.Join(append(parts, info.GoVersion, set["GOOS"]+"/"+set["GOARCH"]), ", ")
}
