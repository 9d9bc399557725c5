#!/usr/bin/env bash
# Runs the example and compares what it prints with what is kept beside it; with
# "renew" the kept texts are written anew.
set -euo pipefail
cd "$(dirname "$0")"

# keep KEPT COMMAND...: compare the output of a command with a kept file, or write it.
keep() {
	local kept=$1 printed
	shift
	printed=$("$@" && printf .) # the dot keeps the last end of line
	if [ "$mode" = renew ]; then
		printf %s "${printed%.}" >"$kept"
	elif ! diff -u "$kept" <(printf %s "${printed%.}"); then
		printf 'examples/backyard-party/%s is no longer what is printed; if that is meant, .ci/renew writes it anew\n' "$kept"
		exit 1
	fi
}

mode=${1:-compare}
keep output.txt go run .
keep sheet.txt go run ../../cmd/cookday plan request.yaml
