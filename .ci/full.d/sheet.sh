#!/usr/bin/env bash
# The live sheet in a browser: whole days followed by form at 360 and 1280 px, light and
# dark, without script and with, on this machine's own name and by its address in the
# network, where browsers tell less of where a form comes from. Needs node, npm and a
# Chromium (as .ci/browser/run.sh finds it). Screenshots go to .ci/out/live.
set -euo pipefail
cd "$(dirname "$0")/../.."
root=$PWD
tools=$(mktemp -d)
jobs=()
trap 'kill "${jobs[@]}" 2>/dev/null || true; wait; rm -rf "$tools"' EXIT
go build -o "$tools/" ./cmd/cookday

# serve starts a service of its own and prints its address.
serve() {
	"$tools/cookday" listen --store memory --log none "${@:2}" >"$tools/said$1" &
	jobs+=($!)
	for _ in $(seq 100); do
		if grep -o -m 1 'http://[0-9.:]*' "$tools/said$1" 2>/dev/null; then return 0; fi
		sleep 0.1
	done
	printf 'the service did not start\n' >&2
	return 1
}
serve 1 --address 127.0.0.1:0 >"$tools/at"
network=$(hostname -I 2>/dev/null | cut -d' ' -f1)
if [ -n "$network" ]; then
	serve 2 --address "$network:0" --allow-remote --no-auth >>"$tools/at"
else
	printf 'SKIPPED: this machine has no address in a network\n'
fi

cd .ci/browser
npm ci --no-audit --no-fund --loglevel=error
for name in "${CHROMIUM:-}" chromium chromium-browser google-chrome; do
	if [ -n "$name" ] && command -v "$name" >/dev/null; then CHROMIUM=$(command -v "$name") && break; fi
done
export CHROMIUM=${CHROMIUM:?no Chromium: install one, or name it in CHROMIUM}
mapfile -t services <"$tools/at"
node live.mjs "$root/.ci/out/live" "${services[@]}"
