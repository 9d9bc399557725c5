#!/usr/bin/env bash
# A household's day in the time that it takes (MINUTES, 60): a flow engine of the npm
# registry, told by a real broker and by a webhook, killed and started again; a cook who
# does what the live sheet says, on a phone. Needs node, npm, mosquitto and a Chromium.
# What the phone showed goes to .ci/out/house.
set -euo pipefail
cd "$(dirname "$0")/../.."
root=$PWD
export DIR=$root/.ci/out/house
rm -rf "$DIR" && mkdir -p "$DIR"
PATH=$PATH:/usr/sbin
jobs=()
trap 'kill "${jobs[@]}" 2>/dev/null || true; wait' EXIT
for name in "${CHROMIUM:-}" chromium chromium-browser google-chrome; do
	if [ -n "$name" ] && command -v "$name" >/dev/null; then CHROMIUM=$(command -v "$name") && break; fi
done
export CHROMIUM=${CHROMIUM:?no Chromium: install one, or name it in CHROMIUM}
broker=$(command -v mosquitto) || {
	printf 'the broker is missing: install mosquitto\n' >&2
	exit 1
}

free() { node -e 'const s=require("net").createServer().listen(0,"127.0.0.1",()=>{console.log(s.address().port);s.close()})'; }
BROKER_PORT=$(free) FLOW_PORT=$(free) HOOK_SECRET=a-secret-of-this-day-only
export BROKER_PORT FLOW_PORT HOOK_SECRET
printf 'listener %s 127.0.0.1\nallow_anonymous true\n' "$BROKER_PORT" >"$DIR/broker.conf"
"$broker" -c "$DIR/broker.conf" 2>"$DIR/broker.log" &
jobs+=($!)
printf '%s\n' "$HOOK_SECRET" >"$DIR/secret"
go build -o "$DIR/" ./cmd/cookday
"$DIR/cookday" listen --store "$DIR/plans.db" --address 127.0.0.1:0 --mqtt "mqtt://127.0.0.1:$BROKER_PORT" \
	--webhook "http://127.0.0.1:$FLOW_PORT/bell" --webhook-secret-file "$DIR/secret" --webhook-private >"$DIR/service" 2>"$DIR/service.log" &
jobs+=($!)
for _ in $(seq 100); do
	SERVICE=$(grep -o -m 1 'http://[0-9.:]*' "$DIR/service") && break
	sleep 0.1
done
export SERVICE
cd .ci/house
npm ci --no-audit --no-fund --loglevel=error
node day.mjs
