# shellcheck shell=sh
# For backup.sh and restore.sh: which database, so that Postgres's own programs
# understand it and no password shows in a list of processes. DATABASE_URL or
# DATABASE_URL_FILE as the bot has them; without either, Postgres's PG... variables hold.

# plain turns %XX on standard input into the characters that they stand for.
plain() {
	awk '{
		while ((i = index($0, "%")) > 0) {
			hex = toupper(substr($0, i + 1, 2))
			code = (index("0123456789ABCDEF", substr(hex, 1, 1)) - 1) * 16 + index("0123456789ABCDEF", substr(hex, 2, 1)) - 1
			out = out substr($0, 1, i - 1) sprintf("%c", code)
			$0 = substr($0, i + 3)
		}
		print out $0
	}'
}

# find_database sets database, for --dbname, and PGPASSWORD where the address has one.
find_database() {
	database=${DATABASE_URL:-}
	if [ -z "$database" ] && [ -n "${DATABASE_URL_FILE:-}" ]; then
		database=$(cat "$DATABASE_URL_FILE")
	fi
	if [ -z "$database" ]; then
		database=${PGDATABASE:-}
		[ -n "$database" ] || return 1
		return 0
	fi
	# What only the bot knows of is taken away.
	database=$(printf '%s' "$database" | sed -E 's/([?&])pool_[a-z_]+=[^&]*/\1/g; s/\?&+/?/; s/&&+/\&/g; s/[?&]+$//')
	password=$(printf '%s' "$database" | sed -n -E 's#^postgres(ql)?://[^:/@?]*:([^@/?]*)@.*#\2#p')
	if [ -n "$password" ]; then
		PGPASSWORD=$(printf '%s\n' "$password" | LC_ALL=C plain)
		export PGPASSWORD
		database=$(printf '%s' "$database" | sed -E 's#^(postgres(ql)?://[^:/@?]*):[^@/?]*@#\1@#')
	fi
}
