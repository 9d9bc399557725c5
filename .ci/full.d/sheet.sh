#!/usr/bin/env bash
# The sheets in a browser, at 360 and 1280 px, light and dark, and printed: those of the
# examples, of a first day of each kind, of a day that cannot be done, of days under way,
# and of 60 days drawn by lot. Then the live sheet: whole days followed by form, without
# script and with, on this machine's own name and by its address in the network, where
# browsers tell less of where a form comes from. Needs node, npm and a Chromium (as
# .ci/browser/run.sh finds it). Screenshots go to .ci/out/sheets and .ci/out/live.
set -euo pipefail
cd "$(dirname "$0")/../.."
root=$PWD
tools=$(mktemp -d)
jobs=()
trap 'kill "${jobs[@]}" 2>/dev/null || true; wait; rm -rf "$tools"' EXIT
go build -o "$tools/" ./cmd/cookday

# sheets plans the days whose pages are looked at.
sheets() {
	local kind
	mkdir "$tools/sheets"
	for kind in party overnight ribs steaks bird; do
		"$tools/cookday" new --like "$kind" --yes --when '2027-07-03 18:00' --zone America/Chicago --guests 8 - >"$tools/$kind.yaml"
		"$tools/cookday" plan "$tools/$kind.yaml" --out "$tools/sheets/$kind.html" || test $? = 1
	done
	for kind in backyard-party reminders; do
		"$tools/cookday" plan "examples/$kind/request.yaml" --out "$tools/sheets/$kind.html"
	done
	for kind in .ci/browser/days/*.yaml; do
		"$tools/cookday" plan "$kind" --out "$tools/sheets/$(basename "$kind" .yaml).html" || test $? = 1
	done
	"$tools/cookday" plan examples/backyard-party/request.yaml --out "$tools/party.json"
	"$tools/cookday" revise "$tools/party.json" examples/backyard-party/afternoon.csv --now 2027-07-03T12:16 --out "$tools/sheets/backyard-party-later.html"
	"$tools/cookday" revise "$tools/party.json" .ci/browser/days/late.csv --now 2027-07-03T15:10 --out "$tools/sheets/late-party-later.html"
	go test ./schedule/export -run '^TestDrawnDays$' -count=1 -drawn 60 -into "$tools/sheets"
}

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

for name in "${CHROMIUM:-}" chromium chromium-browser google-chrome; do
	if [ -n "$name" ] && command -v "$name" >/dev/null; then CHROMIUM=$(command -v "$name") && break; fi
done
export CHROMIUM=${CHROMIUM:?no Chromium: install one, or name it in CHROMIUM}
(cd .ci/browser && npm ci --no-audit --no-fund --loglevel=error)

sheets
rm -rf .ci/out/sheets
failed=0
(cd .ci/browser && node pages.mjs "$tools/sheets" "$root/.ci/out/sheets") || failed=1

serve 1 --address 127.0.0.1:0 >"$tools/at"
network=$(hostname -I 2>/dev/null | cut -d' ' -f1)
if [ -n "$network" ]; then
	serve 2 --address "$network:0" --allow-remote --no-auth >>"$tools/at"
else
	printf 'SKIPPED: this machine has no address in a network\n'
fi
mapfile -t services <"$tools/at"
(cd .ci/browser && node live.mjs "$root/.ci/out/live" "${services[@]}") || failed=1
exit $failed
