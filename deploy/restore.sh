#!/bin/sh
# Puts a dump of backup.sh into an empty database: all of it or nothing.
#
#   createdb intake_restored
#   DATABASE_URL=postgres:///intake_restored restore.sh intake-2026-01-31T032000Z.dump
#
# A database that holds anything is left alone. Stop the bots first, then start them with
# the address of the restored database: what came in since the dump is not in it, and
# texts that waited to be sent when it was made go out once they start.
set -eu
# shellcheck source=database.sh
. "$(dirname "$0")/database.sh"

fail() {
	echo "restore: $*" >&2
	exit 1
}

[ $# = 1 ] || fail "usage: restore.sh DUMP"
dump=$1
[ -r "$dump" ] || fail "can't read $dump"
find_database || fail "set DATABASE_URL, DATABASE_URL_FILE or PGDATABASE"

ask() { psql --no-psqlrc --quiet --tuples-only --no-align --set=ON_ERROR_STOP=1 --dbname="$database" --command="$1"; }

there=$(ask "SELECT count(*) FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
	WHERE n.nspname NOT LIKE 'pg\\_%' AND n.nspname <> 'information_schema'") || fail "the database does not answer"
[ "$there" = 0 ] || fail "the database is not empty; nothing was changed"
pg_restore --list "$dump" >/dev/null || fail "$dump is no dump, or not a whole one; nothing was changed"
pg_restore --exit-on-error --single-transaction --no-owner --no-privileges --dbname="$database" "$dump" ||
	fail "not restored; nothing was changed"
echo "restore: $(ask 'SELECT count(*) FROM leads') leads, $(ask 'SELECT count(*) FROM messages') messages"
