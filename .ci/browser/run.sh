#!/bin/sh
# Browser checks of the golden sheets and pictures. Needs node and npm; installs the
# checkers here and, where it may, a Chromium. Screenshots go to .ci/out/browser.
set -eu
cd "$(dirname "$0")"
root=$(cd ../.. && pwd)

npm ci --no-audit --no-fund --loglevel=error

find_chromium() {
	for name in "${CHROMIUM:-}" chromium chromium-browser google-chrome; do
		if [ -n "$name" ] && command -v "$name"; then return; fi
	done
}
CHROMIUM=$(find_chromium)
if [ -z "$CHROMIUM" ] && [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
	apt-get update -qq && apt-get install -y -qq chromium >/dev/null
	CHROMIUM=$(find_chromium)
fi
if [ -z "$CHROMIUM" ]; then
	echo "no Chromium: install one, or name it in CHROMIUM" >&2
	exit 1
fi
export CHROMIUM
node check.mjs "$root/schedule/export/testdata" "$root/.ci/out/browser"
