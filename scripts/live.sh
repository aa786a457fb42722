#!/bin/sh
# Walks docs/going-live.md, way A, on a Debian of its own in which systemd runs: the lines are
# taken from the page as they stand. Then a signed text comes in, the shop file is read again,
# a bot is killed, a dump is made and restored, and the machine is started anew. A short log
# is kept in docs/live-debian.log. What the internet must give, a name and a carrier, is not
# there: the bots keep their texts, and preflight says what is missing. It is run by hand, as
# root, before a release; ports 80, 443, 5432, 8081 and 8082 must be free.
#
#   SUITE=trixie            which Debian
#   MIRROR=http://...       where from
#   LIVE=/var/tmp/...       in which folder; removed at the end, unless KEEP=1
set -eu
cd "$(dirname "$0")/.."

suite=${SUITE:-trixie}
mirror=${MIRROR:-http://deb.debian.org/debian}
live=${LIVE:-/var/tmp/intake-bot-live}
log=docs/live-debian.log
token=0123456789abcdef0123456789abcdef

if [ "$(id -u)" != 0 ]; then
	echo 'live: run this as root: it makes a system in a folder' >&2
	exit 1
fi
for program in debootstrap unshare nsenter openssl curl; do
	command -v $program >/dev/null 2>&1 || { echo "live: $program is missing" >&2; exit 1; }
done

# boot starts the system: systemd as the first process of namespaces of its own.
boot() {
	group=$(sed -n 's/^[^ ]* \([^ ]*\) cgroup2 .*/\1/p' /proc/mounts | head -n 1)/intake-bot-live
	mkdir -p "$group"
	# shellcheck disable=SC2016 # the inner shell is to expand it
	sh -ec 'echo $$ >"$1/cgroup.procs"; exec unshare --mount --pid --uts --ipc --cgroup --fork --kill-child sh -ec '\''
		root=$1
		mount --make-rprivate /
		mount --bind "$root" "$root"
		mount -t proc proc "$root/proc"
		mount -t sysfs -o ro sysfs "$root/sys"
		mount -t cgroup2 cgroup2 "$root/sys/fs/cgroup"
		mount -t tmpfs -o mode=755 tmpfs "$root/run"
		mount -t tmpfs -o mode=1777 tmpfs "$root/tmp"
		mount -t tmpfs -o mode=755 tmpfs "$root/dev"
		for d in null zero full random urandom tty; do
			: >"$root/dev/$d"
			mount --bind "/dev/$d" "$root/dev/$d"
		done
		mkdir -p "$root/dev/pts" "$root/dev/shm" "$root/.old"
		mount -t devpts -o newinstance,ptmxmode=0666,mode=620 devpts "$root/dev/pts"
		mount -t tmpfs -o mode=1777 tmpfs "$root/dev/shm"
		ln -s pts/ptmx "$root/dev/ptmx"
		ln -s /proc/self/fd "$root/dev/fd"
		cd "$root"
		pivot_root . .old
		exec chroot . sh -c "umount -l /.old; exec env -i container=other /lib/systemd/systemd --show-status=false"
	'\'' sh "$2"' sh "$group" "$live" >"$live.boot" 2>&1 &
	outer=$!
	for _ in $(seq 60); do
		sleep 1
		first=$(pgrep -f '^/lib/systemd/systemd --show-status=false$' | head -n 1)
		if [ -n "$first" ] && inside systemctl is-system-running 2>/dev/null | grep -q 'running\|degraded'; then
			return
		fi
	done
	echo 'live: systemd did not start' >&2
	cat "$live.boot" >&2
	exit 1
}

halt() { [ -z "${outer:-}" ] || { kill -9 "$outer" "$(pgrep -P "$outer")" 2>/dev/null || :; wait "$outer" 2>/dev/null || :; }; }

# inside runs a command in the system.
inside() {
	nsenter -t "$first" -m -u -i -p -C -r -w env -i PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin HOME=/root "$@"
}

# tell writes a line to the log and to whoever looks on.
tell() { printf '%s\n' "$*" | tee -a "$log"; }

# step runs a shell script, from standard input, in the clone, and tells how it went.
step() {
	if (echo 'cd /root/intake-bot'; cat) | inside sh -ex >"$live.out" 2>&1; then
		tell "$1: well"
	else
		tell "$1: FAILED"
		tail -n 20 "$live.out" | sed 's/^/    /' | tee -a "$log"
		failed=1
	fi
}

# page prints the first lines of code that follow a line of the page.
page() {
	awk -v after="$1" '$0 == after { on = 1 } on && /^```/ { if (n++) exit; next } on && n' docs/going-live.md
}

# text posts a text as the carrier does, signed.
text() {
	all="AccountSid=AC00000000000000000000000000000000 Body=$2 From=+12185550177 MessageSid=$1 NumMedia=0 To=+12185550100"
	signed=https://bot.example.com/sms/inbound$(echo "$all" | sed 's/=//g; s/ //g')
	signature=$(printf %s "$signed" | openssl dgst -sha1 -hmac $token -binary | openssl base64)
	# shellcheck disable=SC2046,SC2086 # one word a field
	curl -sS -o /dev/null -w '%{http_code}' -H "X-Twilio-Signature: $signature" $(printf -- '--data-urlencode %s ' $all) "http://127.0.0.1:$3/sms/inbound"
}

trap 'halt; [ "${KEEP:-}" = 1 ] || rm -rf --one-file-system "$live" "$live.out" "$live.boot"' EXIT
if [ ! -d "$live/root/intake-bot" ]; then
	debootstrap --variant=minbase --include=systemd,systemd-sysv,dbus,sudo,curl,ca-certificates "$suite" "$live" "$mirror" >"$live.out" 2>&1 || { tail "$live.out"; exit 1; }
	cp /etc/resolv.conf "$live/etc/resolv.conf"
	echo "127.0.0.1 localhost $(hostname)" >"$live/etc/hosts"
	echo 'APT::Get::Assume-Yes "true"; APT::Install-Recommends "false";' >"$live/etc/apt/apt.conf.d/90live"
	git clone -q . "$live/root/intake-bot"
fi
make build
install -D -m 755 -t "$live/root/intake-bot/bin" bin/intake-bot

: >"$log"
failed=0
tell "docs/going-live.md, way A, on a Debian with systemd running ($(sed -n 's/^PRETTY_NAME="\(.*\)"/\1/p' "$live/etc/os-release")),"
tell "$(date -u +%F), at $(git log -1 --format='%h of %cs'):"
tell ''
boot
{ echo 'export DEBIAN_FRONTEND=noninteractive'; page '### A. Debian' | grep -v '^make build'; } | step 'program and database'
step 'init' <<-END
	CARRIER_AUTH_TOKEN=$token intake-bot init /etc/intake-bot --yes --name 'Harbor Dome Parts' --email help@harbor.example \
		--phone 218-555-0142 --street '12 Dock St' --zip 55802 --public-url https://bot.example.com \
		--carrier-account AC00000000000000000000000000000000 --carrier-number 218-555-0100
END
{ echo 'export DEBIAN_FRONTEND=noninteractive'; page 'certificates are got and renewed by the proxy itself. B has it built in. A:' | sed 's/bot.example.com/localhost/'; } | step 'name and certificates'
page '## 6. Start' | step 'start'
step 'both bots are ready' <<-'END'
	for n in $(seq 30); do curl -sf http://127.0.0.1:8081/readyz && curl -sf http://127.0.0.1:8082/readyz && exit; sleep 1; done; exit 1
END
step 'through the proxies: health, no metrics, nothing unsigned' <<-'END'
	status() { curl -sk -o /dev/null -w '%{http_code}' "$@"; }
	for n in $(seq 30); do [ "$(status https://localhost/healthz)" = 200 ] && break; sleep 1; done
	[ "$(status https://localhost/healthz)" = 200 ]
	[ "$(status https://localhost/metrics)" = 404 ]
	[ "$(status -X POST https://localhost/sms/inbound)" = 403 ]
END
tell "a signed text to each bot: $(text SM11111111111111111111111111111111 dome 8081) $(text SM22222222222222222222222222222222 55802 8082)"
as='systemd-run --pipe --wait -q --uid=intake-bot -p EnvironmentFile=/etc/intake-bot/environment /usr/local/bin/intake-bot'
step 'its lead is there' <<-END
	for n in \$(seq 60); do $as leads list | grep 55802 && exit; sleep 1; done; exit 1
END
step 'staff add, and preflight as the bot' <<-END
	$as staff add robin --name Robin --role owner
	$as preflight | grep 'ok *database'
END
step 'reload, with a mistake in the shop file and without' <<-'END'
	echo 'nonsense: [' >>/etc/intake-bot/shop.yaml
	systemctl reload 'intake-bot@*'
	sleep 2
	journalctl -u intake-bot@8081 | grep 'the old one stays in force'
	sed -i '$d' /etc/intake-bot/shop.yaml
	systemctl reload 'intake-bot@*'
	sleep 2
	journalctl -u intake-bot@8081 | grep 'the shop file was read again'
END
step 'killed, it starts again' <<-'END'
	systemctl kill -s KILL intake-bot@8081
	for n in $(seq 30); do sleep 1; curl -sf http://127.0.0.1:8081/readyz && exit; done; exit 1
END
step 'backup and restore' <<-'END'
	systemctl start intake-bot-backup
	systemctl stop 'intake-bot@*'
	cd /tmp
	sudo -u postgres createdb --owner=intake-bot intake_restored
	sudo -u intake-bot env DATABASE_URL='postgres://intake-bot@/intake_restored?host=/run/postgresql' \
		/usr/local/lib/intake-bot/restore.sh /var/backups/intake-bot/*.dump | grep '1 leads'
END
halt
boot
step 'started anew, the machine brings all of it up by itself' <<-'END'
	for n in $(seq 60); do curl -skf https://localhost/healthz && curl -sf http://127.0.0.1:8082/readyz && exit; sleep 1; done; exit 1
END
tell ''
tell "$([ $failed = 0 ] && echo 'All went well.' || echo 'Not all went well.')"
exit $failed
