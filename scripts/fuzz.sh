#!/bin/sh
# Runs every fuzz target for a while each: FUZZTIME=1m make fuzz.
set -eu
cd "$(dirname "$0")/.."

failed=0
for dir in $(git ls-files -co --exclude-standard '*_test.go' | xargs grep -l '^func Fuzz' | xargs -r -n 1 dirname | sort -u); do
	# shellcheck disable=SC2013 # names of functions have no spaces
	for target in $(sed -n 's/^func \(Fuzz[A-Za-z0-9_]*\)(.*/\1/p' "$dir"/*_test.go); do
		echo "== $dir $target"
		go test -tags nodynamic -run '^$' -fuzz "^$target\$" -fuzztime "${FUZZTIME:-20s}" "./$dir" || failed=1
	done
done
exit $failed
