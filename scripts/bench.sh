#!/bin/sh
# Runs the benchmarks and ends with one line a figure:
#
#   ratio NAME VALUE goal >= VALUE
#
# A benchmark that measures a ratio to a floor reports it by b.ReportMetric(v, "ratio");
# scripts/bench-goals.txt gives each figure its name and goal. A figure whose benchmark
# did not run is an error, a missed goal is not: figures are for people to judge.
set -eu
cd "$(dirname "$0")/.."

out=$(mktemp)
trap 'rm -f "$out" "$out.code"' EXIT
echo 0 >"$out.code"
{ go test -tags nodynamic -p 1 -run '^$' -bench "${BENCH:-.}" -timeout 30m "$@" ./... || echo 1 >"$out.code"; } | tee "$out"

echo
awk -v only="${BENCH:-.}" '
	FNR == NR && /^Benchmark/ {
		name = $1
		sub(/-[0-9]+$/, "", name)
		for (i = 2; i < NF; i++) value[name, $(i + 1)] = $i
		if ((name, "ratio") in value) ratios[name] = 1
	}
	FNR != NR && NF && !/^#/ {
		unit = NF > 4 ? $5 : "ratio"
		known[$2] = 1
		if (($2, unit) in value) printf "ratio %s %s goal %s %s\n", $1, value[$2, unit], $3, $4
		else if (only == ".") { printf "no figure for %s: %s did not report a %s\n", $1, $2, unit; missing = 1 }
	}
	END {
		for (name in ratios) if (!(name in known)) printf "no goal for %s: give it one in scripts/bench-goals.txt\n", name > "/dev/stderr"
		exit missing
	}
' "$out" scripts/bench-goals.txt
exit "$(cat "$out.code")"
