#!/bin/sh
# Makes a release in dist/: static programs for Linux (amd64, arm64) and macOS (arm64),
# their bills of materials (CycloneDX), and checksums of all.
#
# It can be made again by anybody: everything is built twice, from two clones of the
# commit at two paths, the second time with an empty build cache, and must be the same byte
# for byte. QUICK=1 lets the second build use the cache of the first.
set -eu
cd "$(dirname "$0")/.."

targets='linux/amd64 linux/arm64 darwin/arm64'
dist=${DIST:-dist}

if [ -n "$(git status --porcelain)" ]; then
	echo 'release: commit first: a release is of a commit, and here are changes' >&2
	exit 1
fi
work=$(mktemp -d)
trap 'chmod -R u+w "$work"; rm -rf "$work"' EXIT

# build makes all targets from a clone of this commit into a folder.
build() {
	git clone -q --no-hardlinks . "$work/$1/source"
	git -C "$work/$1/source" checkout -q "$(git rev-parse HEAD)"
	mkdir -p "$work/$1/out"
	for target in $targets; do
		os=${target%/*} arch=${target#*/}
		printf 'building %s (%s)\n' "$target" "$1" >&2
		(cd "$work/$1/source" && env CGO_ENABLED=0 GOOS="$os" GOARCH="$arch" GOAMD64=v1 GOARM64=v8.0 GOFLAGS= \
			go build -trimpath -buildvcs=true -tags nodynamic -ldflags '-s -w -buildid=' \
			-o "../out/intake-bot-$os-$arch" ./cmd/intake-bot)
	done
}

build first
if [ "${QUICK:-}" = 1 ]; then
	build second
else
	(GOCACHE=$work/cache && export GOCACHE && build second)
fi
for target in $targets; do
	name=intake-bot-${target%/*}-${target#*/}
	cmp "$work/first/out/$name" "$work/second/out/$name" || {
		echo "release: $name is another program each time" >&2
		exit 1
	}
done

rm -rf "$dist"
mkdir -p "$dist"
go build -o "$work/bom" ./scripts/bom
for target in $targets; do
	name=intake-bot-${target%/*}-${target#*/}
	cp "$work/first/out/$name" "$dist/"
	"$work/bom" "$dist/$name" >"$dist/$name.cdx.json"
done
(cd "$dist" && sha256sum intake-bot-* >SHA256SUMS && sha256sum -c --quiet SHA256SUMS)
echo "the same twice; in $dist:"
ls -l "$dist"
