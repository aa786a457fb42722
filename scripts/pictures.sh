#!/bin/sh
# Takes the pictures of the staff's page that are kept in docs/pictures, in a real browser.
set -eu
cd "$(dirname "$0")/.."

taken=$(mktemp -d)
trap 'rm -rf "$taken"' EXIT
INTAKE_PICTURES=$taken go test -tags nodynamic -count 1 -timeout 30m ./internal/staff -run '^TestPagesForEverybody$'

rm -f docs/pictures/staff-*.jpg
for name in list lead-doubt lead-photos check figures shop; do
	for look in 1440-light 360-dark; do
		cp "$taken/$name-$look.jpg" "docs/pictures/staff-$name-$look.jpg"
	done
done
cp "$taken/lead-doubt-1440-dark.jpg" "docs/pictures/staff-lead-doubt-1440-dark.jpg"
cp "$taken/list-360-light.jpg" "docs/pictures/staff-list-360-light.jpg"
ls -l docs/pictures/staff-*.jpg
