#!/bin/sh
# Builds bin/intake-bot: one static file. The tag keeps the HEIC decoder from looking for
# a system library.
set -eu
cd "$(dirname "$0")/.."
if [ ! -e bin/intake-bot ]; then echo 'building bin/intake-bot (the first time takes a few minutes)' >&2; fi
CGO_ENABLED=0 exec go build -trimpath -tags nodynamic -o bin/intake-bot ./cmd/intake-bot
