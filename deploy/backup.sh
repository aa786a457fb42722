#!/bin/sh
# Dumps the database into FOLDER/intake-DATE.dump, in Postgres's custom format, and takes
# away dumps older than KEEP_DAYS (30):
#
#   DATABASE_URL=postgres:///intake backup.sh /var/backups/intake-bot
#
# The bots go on meanwhile: a dump is the database at one instant. A dump gets its name
# only when it is whole, and old ones go only when a new one is there. The shop file and
# the environment are not in it: keep a copy of both.
set -eu
umask 077
# shellcheck source=database.sh
. "$(dirname "$0")/database.sh"

fail() {
	echo "backup: $*" >&2
	exit 1
}

[ $# = 1 ] || fail "usage: backup.sh FOLDER"
folder=$1
keep=${KEEP_DAYS:-30}
case $keep in
'' | *[!0-9]*) fail "KEEP_DAYS is not a number of days: $keep" ;;
esac
[ -d "$folder" ] || fail "there is no folder $folder"
find_database || fail "set DATABASE_URL, DATABASE_URL_FILE or PGDATABASE"

name=$folder/intake-$(date -u +%Y-%m-%dT%H%M%SZ).dump
trap 'rm -f "$name.part"' EXIT
pg_dump --format=custom --no-owner --no-privileges --file="$name.part" --dbname="$database" || fail "pg_dump failed; nothing was changed"
pg_restore --list "$name.part" >/dev/null || fail "the dump can't be read again"
mv "$name.part" "$name"
trap - EXIT

find "$folder" -maxdepth 1 -type f -name 'intake-*.dump' -mtime "+$keep" -exec rm -f {} +
echo "backup: $name, $(wc -c <"$name") bytes"
