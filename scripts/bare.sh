#!/bin/sh
# Runs the README's two commands on a bare Debian: one that debootstrap has just made, with
# nothing but git and make added. First as somebody who may install nothing, who must be
# told what to install; then as root; then as an ordinary user. A short log is kept in
# docs/bare-debian.log. It is run by hand, as root, before a release: it downloads some
# hundred megabytes, builds everything anew and takes an hour.
#
#   SUITE=trixie            which Debian
#   MIRROR=http://...       where from
#   BARE=/var/tmp/...       in which folder; removed at the end, unless KEEP=1
#   STEPS="demo test"       what is run
set -eu
cd "$(dirname "$0")/.."

suite=${SUITE:-trixie}
mirror=${MIRROR:-http://deb.debian.org/debian}
bare=${BARE:-/var/tmp/intake-bot-bare}
steps=${STEPS:-demo test}
log=docs/bare-debian.log

if [ "$(id -u)" != 0 ]; then
	echo 'bare: run this as root: it makes a system in a folder' >&2
	exit 1
fi
command -v debootstrap >/dev/null 2>&1 || apt-get -q install -y --no-install-recommends debootstrap

# inside runs a command in the new system, with processes and mounts of its own that are
# gone when it ends. The system is the root of its mounts, as it would be of a machine's: a
# mere chroot may not give its users namespaces of their own.
inside() {
	# shellcheck disable=SC2016 # the inner shell is to expand it
	unshare --mount --pid --fork --kill-child sh -ec '
		root=$1; shift
		mount --make-rprivate /
		mount --bind "$root" "$root"
		mount -t proc proc "$root/proc"
		mount -t sysfs -o ro sysfs "$root/sys"
		mount --rbind /dev "$root/dev"
		mount -t tmpfs -o mode=1777 tmpfs "$root/dev/shm"
		mkdir -p "$root/.old"
		cd "$root"
		pivot_root . .old
		exec chroot . sh -ec "umount -l /.old; exec \"\$@\"" sh "$@"' sh "$bare" "$@"
}

# as runs a line of shell as a user of the new system.
as() {
	inside su -l "$1" -c "${GOPROXY:+GOPROXY=$GOPROXY }$2"
}

# tell writes a line to the log and to whoever looks on.
tell() { printf '%s\n' "$*" | tee -a "$log"; }

# step runs a README command as a user, and tells how it ended and how long it took.
step() {
	begun=$(date +%s)
	if as "$1" "cd intake-bot && $2" >"$bare.out" 2>&1; then
		tell "as $1: $2: well, after $((($(date +%s) - begun) / 60)) minutes"
		tail -n 2 "$bare.out" | sed 's/^/    /' | tee -a "$log"
	else
		tell "as $1: $2: FAILED, after $((($(date +%s) - begun) / 60)) minutes"
		tail -n 40 "$bare.out" | sed 's/^/    /' | tee -a "$log"
		failed=1
	fi
}

rm -rf --one-file-system "$bare"
debootstrap --variant=minbase "$suite" "$bare" "$mirror" >"$bare.out" 2>&1 || { tail "$bare.out"; exit 1; }
cp /etc/resolv.conf "$bare/etc/resolv.conf"
# The certificates that this machine trusts: it may stand behind a proxy of its own.
mkdir -p "$bare/usr/local/share/ca-certificates"
cp -r /usr/local/share/ca-certificates/. "$bare/usr/local/share/ca-certificates/"
inside sh -ec 'export DEBIAN_FRONTEND=noninteractive
	apt-get -q update; apt-get -q install -y --no-install-recommends git make ca-certificates; update-ca-certificates
	useradd -m -s /bin/sh anna' >"$bare.out" 2>&1 || { tail "$bare.out"; exit 1; }

# Both have a clone of what is committed here.
git clone -q --bare . "$bare/srv/intake-bot.git"
for user in root anna; do
	# The repository is root's, which git lets nobody else read before they say that they may.
	as "$user" 'git config --global --add safe.directory "*"; git clone -q /srv/intake-bot.git intake-bot'
done

: >"$log"
failed=0
tell "The README's commands on a bare Debian ($(sed -n 's/^PRETTY_NAME="\(.*\)"/\1/p' "$bare/etc/os-release")), $(date -u +%F),"
tell "at $(git log -1 --format='%h of %cs'), on $(nproc) cores."
tell ''
if as anna 'cd intake-bot && make demo ONCE=1' >"$bare.out" 2>&1; then
	tell 'as anna, with nothing installed: make demo did not say what is missing'
	failed=1
else
	tell 'as anna, with nothing installed, make demo says:'
	grep '^need:' "$bare.out" | sed 's/^/    /' | tee -a "$log"
fi
for user in root anna; do
	for what in $steps; do
		case $what in
		demo) step "$user" 'make demo ONCE=1' ;;
		test) step "$user" 'CI=true make test' ;;
		esac
	done
done
tell ''
tell "$([ $failed = 0 ] && echo 'All went well.' || echo 'Not all went well.')"
[ "${KEEP:-}" = 1 ] || rm -rf --one-file-system "$bare" "$bare.out"
exit $failed
