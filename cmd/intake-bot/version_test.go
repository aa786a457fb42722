package main

import (
	"runtime/debug"
	"testing"
)

func TestVersionNamesTheCommit(t *testing.T) {
	for want, settings := range map[string][]debug.BuildSetting{
		"intake-bot commit 0123456789ab of 2026-11-29, go1.26.0, linux/arm64": {{Key: "vcs.revision", Value: "0123456789abcdef"},
			{Key: "vcs.time", Value: "2026-11-29T10:00:00Z"}, {Key: "vcs.modified", Value: "false"}, {Key: "GOOS", Value: "linux"}, {Key: "GOARCH", Value: "arm64"}},
		"intake-bot commit 0123, with changes, go1.26.0, darwin/arm64": {{Key: "vcs.revision", Value: "0123"},
			{Key: "vcs.modified", Value: "true"}, {Key: "GOOS", Value: "darwin"}, {Key: "GOARCH", Value: "arm64"}},
		"intake-bot commit unknown, go1.26.0, linux/amd64": {{Key: "GOOS", Value: "linux"}, {Key: "GOARCH", Value: "amd64"}},
	} {
		if got := versionOf(&debug.BuildInfo{GoVersion: "go1.26.0", Settings: settings}); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
