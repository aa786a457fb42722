#!/bin/sh
# Finds what the project's commands stand on, installs what is missing where that is
# allowed, and then runs a command with it in PATH:
#
#   scripts/need.sh go postgres -- go build ./...
#
# WHAT is any of: go, postgres, and the peers that only tests talk to: gcc (for the race
# detector), chromium, axe (looks for barriers on the staff's page), dovecot, opensmtpd,
# what checks the files of deploy/ (caddy, nginx, systemd, prometheus, shellcheck), and
# strace, which sees whom a program calls. Where apt-get may not be used, it says exactly
# what to install. A missing peer is fatal only under CI=true; elsewhere the tests that
# need it say that they were left out.
set -eu

root=$(cd "$(dirname "$0")/.." && pwd)

say() { printf '%s\n' "need: $*" >&2; }

fail() {
	say "$*"
	exit 1
}

# as_root runs a command as root where that works without a question.
as_root() {
	if [ "$(id -u)" = 0 ]; then
		"$@"
	elif command -v sudo >/dev/null 2>&1 && sudo -n true 2>/dev/null; then
		sudo -n "$@"
	else
		return 1
	fi
}

# lack notes packages that nothing goes without; lack_else what else to do, or instead.
lacking='' instead=''
lack() { lacking="$lacking $*"; }
lack_else() {
	instead="$instead
need: $1"
}

apt_ready=
# apt_update refreshes the package lists, once.
apt_update() {
	[ -z "$apt_ready" ] || return 0
	command -v apt-get >/dev/null 2>&1 || return 1
	as_root true || return 1
	say "reading the lists of packages (apt-get update)"
	as_root apt-get -q update >&2 || say "apt-get update failed; going on with the old lists"
	apt_ready=yes
}

# apt_install installs packages: never removing another one, and without starting their
# services (RUNLEVEL=1 is what invoke-rc.d looks at). A database cluster of the system's
# own is not wanted either, so its making is turned off while the packages go in.
apt_install() {
	apt_update || return 1
	say "installing $* (apt-get)"
	conf=/etc/postgresql-common/createcluster.conf
	ours=
	if [ ! -e "$conf" ]; then
		as_root mkdir -p /etc/postgresql-common
		echo 'create_main_cluster = false' | as_root tee "$conf" >/dev/null
		ours=yes
	fi
	done=0
	as_root env DEBIAN_FRONTEND=noninteractive RUNLEVEL=1 apt-get -q install -y \
		--no-install-recommends --no-remove "$@" >&2 || done=1
	if [ -n "$ours" ]; then
		as_root rm -f "$conf"
		as_root rmdir /etc/postgresql-common 2>/dev/null || true
	fi
	return $done
}

# at_least says whether version $1 is $2 or later ("1.26.8" "1.26.0").
at_least() {
	[ "$(printf '%s\n%s\n' "$2" "$1" | sort -V | head -n 1)" = "$2" ]
}

go_version() {
	GOTOOLCHAIN=local "$1" version 2>/dev/null | sed -n 's/^go version go\([0-9][0-9.]*\).*/\1/p'
}

# find_go prints the newest Go on the machine.
find_go() {
	best='' best_version=0
	for dir in "$(dirname "$(command -v go 2>/dev/null || echo /nowhere/go)")" \
		/usr/local/go/bin /usr/lib/go-*/bin "$HOME"/go/bin /snap/bin; do
		[ -x "$dir/go" ] || continue
		found=$(go_version "$dir/go")
		if [ -n "$found" ] && ! at_least "$best_version" "$found"; then
			best=$dir best_version=$found
		fi
	done
	[ -n "$best" ] && printf '%s %s\n' "$best" "$best_version"
}

# use_go puts the Go at $1, of version $2, first in PATH, where it is new enough itself or
# can fetch one that is (Go 1.21 and later can).
use_go() {
	if ! at_least "$2" "$want_go"; then
		at_least "$2" 1.21 || return 1
		GOTOOLCHAIN=auto
		export GOTOOLCHAIN
		say "Go $2 will fetch Go $want_go"
		PATH=$1:$PATH GOTOOLCHAIN=auto "$1/go" -C "$root" version >&2 || return 1
	fi
	case ":$PATH:" in
	"$1:"*) ;;
	*) PATH=$1:$PATH ;;
	esac
	export PATH
}

# apt_go names the newest Go that apt-get could install and that is of use.
apt_go() {
	apt-cache search --names-only '^golang-1\.[0-9]+-go$' 2>/dev/null | awk '{print $1}' |
		sort -V | tail -n 1 | while read -r package; do
		found=${package#golang-}
		if at_least "${found%-go}" 1.21; then echo "$package"; fi
	done
}

need_go() {
	want_go=$(sed -n 's/^go \([0-9.]*\).*/\1/p' "$root/go.mod")
	# shellcheck disable=SC2046 # two words: folder and version
	set -- $(find_go)
	if [ $# = 2 ] && use_go "$@"; then return 0; fi
	say "no Go $want_go or later here${2:+ (found $2)}"
	if apt_update; then
		package=$(apt_go)
		if [ -n "$package" ] && apt_install "$package" ca-certificates; then
			# shellcheck disable=SC2046
			set -- $(find_go)
			if [ $# = 2 ] && use_go "$@"; then return 0; fi
		fi
	fi
	package=$(apt_go)
	how=and
	if [ -n "$package" ]; then
		lack "$package" ca-certificates # it fetches the Go that is wanted
		how=or
	fi
	lack_else "$how install Go $want_go or later from https://go.dev/doc/install into /usr/local/go"
}

# find_postgres prints the folder with the server programs.
find_postgres() {
	linked=$(command -v initdb 2>/dev/null || true)
	[ -z "$linked" ] || linked=$(dirname "$(readlink -f "$linked")")
	for dir in "${PGBIN:-}" "$linked" \
		$(printf '%s\n' /usr/lib/postgresql/*/bin | sort -rV) \
		/opt/homebrew/opt/postgresql*/bin /usr/local/opt/postgresql*/bin; do
		[ -n "$dir" ] || continue
		if [ -x "$dir/postgres" ] && [ -x "$dir/initdb" ] && [ -x "$dir/pg_ctl" ]; then
			printf '%s\n' "$dir"
			return 0
		fi
	done
	return 1
}

need_postgres() {
	if ! find_postgres >/dev/null; then
		say "no Postgres server programs here"
		apt_install postgresql || true
		if ! find_postgres >/dev/null; then
			lack postgresql
			lack_else "or install Postgres in another way, and set PGBIN to the folder that holds postgres, initdb and pg_ctl"
			return 0
		fi
	fi
	PGBIN=$(find_postgres)
	export PGBIN
}

# peer_there says whether a peer that tests talk to is installed.
peer_there() {
	case $1 in
	gcc) command -v gcc >/dev/null 2>&1 && [ -e /usr/include/stdlib.h ] ;;
	chromium) command -v chromium >/dev/null 2>&1 || command -v google-chrome >/dev/null 2>&1 ;;
	dovecot) [ -x /usr/sbin/dovecot ] && [ -x /usr/lib/dovecot/imap ] && [ -x /usr/lib/dovecot/lmtp ] ;;
	opensmtpd) [ -x /usr/sbin/smtpd ] ;;
	caddy | shellcheck | strace) command -v "$1" >/dev/null 2>&1 ;;
	nginx) [ -x /usr/sbin/nginx ] ;;
	systemd) command -v systemd-analyze >/dev/null 2>&1 ;;
	prometheus) command -v promtool >/dev/null 2>&1 ;;
	esac
}

peer_packages() {
	case $1 in
	gcc) echo gcc libc6-dev ;;
	dovecot) echo dovecot-imapd dovecot-lmtpd ;;
	nginx) echo nginx-light ;;
	*) echo "$1" ;;
	esac
}

# need_peers installs those of the named peers that are missing, in one list and, where
# that fails as a whole, one by one.
need_peers() {
	missing=
	for peer; do
		peer_there "$peer" || missing="$missing $peer"
	done
	[ -n "$missing" ] || return 0
	packages=
	for peer in $missing; do packages="$packages $(peer_packages "$peer")"; done
	# shellcheck disable=SC2086 # lists of words
	if ! apt_install $packages; then
		for peer in $missing; do
			# shellcheck disable=SC2046
			peer_there "$peer" || apt_install $(peer_packages "$peer") || true
		done
	fi
	for peer in $missing; do
		peer_there "$peer" && continue
		say "missing: $peer. To have its tests, run: sudo apt-get install --no-install-recommends $(peer_packages "$peer")"
		[ "${CI:-}" != true ] || fail "under CI every test must run"
	done
}

# axe-core comes from npm: one script out of a package, whose sum is pinned here, kept in a
# cache outside the tree. Nothing of the package is run but that script, in a test's browser.
axe_version=4.14.1
axe_sum=29348999450cdf2849a8e70b7912fc2da85a849da39c0d0d5394f51d4a9ed95c

axe_there() { [ -s "$1" ] && [ "$(sha256sum "$1" | cut -d' ' -f1)" = "$axe_sum" ]; }

# fetch_axe puts the script at $1.
fetch_axe() {
	command -v npm >/dev/null 2>&1 || apt_install npm || return 1
	say "fetching axe-core $axe_version (npm)"
	mkdir -p "$(dirname "$1")"
	work=$(mktemp -d "$1.XXXXXX")
	if (cd "$work" && npm pack --silent "axe-core@$axe_version" >/dev/null && tar -xzf ./*.tgz package/axe.min.js) >&2 &&
		axe_there "$work/package/axe.min.js"; then
		mv "$work/package/axe.min.js" "$1"
	fi
	rm -rf "$work"
	axe_there "$1"
}

need_axe() {
	INTAKE_AXE=${XDG_CACHE_HOME:-${HOME:-/tmp}/.cache}/intake-bot/axe-$axe_version.min.js
	if axe_there "$INTAKE_AXE" || fetch_axe "$INTAKE_AXE"; then
		export INTAKE_AXE
		return 0
	fi
	say "missing: axe-core $axe_version. To have its tests, run: sudo apt-get install --no-install-recommends npm"
	[ "${CI:-}" != true ] || fail "under CI every test must run"
}

peers=
while [ $# -gt 0 ]; do
	what=$1
	shift
	case $what in
	--) break ;;
	go) need_go ;;
	postgres) need_postgres ;;
	axe) need_axe ;;
	gcc | chromium | dovecot | opensmtpd | caddy | nginx | shellcheck | systemd | prometheus | strace) peers="$peers $what" ;;
	*) fail "unknown: $what (of: go postgres axe gcc chromium dovecot opensmtpd caddy nginx shellcheck systemd prometheus strace)" ;;
	esac
done
if [ -n "$lacking$instead" ]; then
	[ -z "$lacking" ] || fail "please run: sudo apt-get install --no-install-recommends$lacking$instead
need: then run the same command again"
	fail "please ${instead#*and }
need: then run the same command again"
fi
# shellcheck disable=SC2086 # a list of words
need_peers $peers
[ $# = 0 ] || exec "$@"
