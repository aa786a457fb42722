#!/bin/sh
# What a reviewer should not have to look for: format, vet, staticcheck, shell scripts, and
# that generated files are what their generators make.
set -eu
cd "$(dirname "$0")/.."

tags=nodynamic
failed=0
step() { printf '== %s\n' "$1"; }

step gofmt
unformatted=$(git ls-files -co --exclude-standard '*.go' | xargs -r gofmt -l)
if [ -n "$unformatted" ]; then
	printf 'not formatted (gofmt -w mends it):\n%s\n' "$unformatted"
	failed=1
fi

step 'go vet'
go vet -tags "$tags" ./... || failed=1

step staticcheck
go run honnef.co/go/tools/cmd/staticcheck@v0.8.2 -tags "$tags" ./... || failed=1

step 'go mod verify'
go mod verify || failed=1

step 'shell scripts'
if command -v shellcheck >/dev/null 2>&1; then
	git ls-files -co --exclude-standard '*.sh' .ci/run | xargs -r shellcheck || failed=1
else
	echo 'shellcheck is not installed: left out'
fi

# Generators that fetch their sources from npm are run by hand when the sources change.
step 'generated files'
now() { git ls-files -co --exclude-standard -z | xargs -0 -r sha256sum 2>/dev/null; }
before=$(now)
go generate -skip npm ./... || failed=1
if [ "$before" != "$(now)" ]; then
	echo 'generated files were not current; they are now:'
	git status --short
	failed=1
fi

[ $failed = 0 ] && echo 'all in order'
exit $failed
