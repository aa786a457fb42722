#!/bin/sh
# Every test: vet first, then the packages with goroutines of their own under the race
# detector, and all the others without it, since building everything twice is what takes
# the time. Two packages at a time: each may have a Postgres of its own.
set -eu
cd "$(dirname "$0")/.."

# The properties are tried with the same cases each time, so that a red test is the change's;
# go test by itself draws new ones.
RAPID_SEED=${RAPID_SEED:-1}
export RAPID_SEED

tags=nodynamic
concurrent='/internal/(intake|db|channels|staff)(/|$)'
start=$(date +%s)
step() { printf '\n== %s (after %s s)\n' "$1" "$(($(date +%s) - start))"; }

step 'go vet'
go vet -tags "$tags" ./...

raced='' plain=''
for package in $(go list -tags "$tags" ./...); do
	if printf '%s\n' "$package" | grep -Eq "$concurrent"; then
		raced="$raced $package"
	else
		plain="$plain $package"
	fi
done
race=-race
if ! command -v gcc >/dev/null 2>&1; then
	echo 'no gcc here: the race detector is left out'
	race=
fi

failed=0
step 'go test'
# shellcheck disable=SC2086 # lists of words
go test -p 2 -tags "$tags" -timeout 15m "$@" $plain || failed=1
if [ -n "$raced" ]; then
	step "go test $race, the concurrent packages"
	# shellcheck disable=SC2086
	go test $race -p 2 -tags "$tags" -timeout 15m "$@" $raced || failed=1
fi
step "$([ $failed = 0 ] && echo 'all passed' || echo 'FAILED')"
exit $failed
