#!/usr/bin/env bash
# Runs the example: a service, a receiver, and reminders that are stopped and started
# again twice; then the same by webhook, by polling, and by a broker (MQTT). The day is
# past, so it is planned as a trial.
# What the receiver got is compared with received.txt, or, as "run.sh renew", written
# there.
set -euo pipefail
cd "$(dirname "$0")"
dir=$(mktemp -d)
jobs=()
trap 'kill "${jobs[@]}" 2>/dev/null || true; wait; rm -rf "$dir"' EXIT

go build -o "$dir/" ../../cmd/cookday . ./receiver

# address waits for the first address in a file and prints it.
address() {
	for _ in $(seq 100); do
		if grep -o -m 1 'http://[-/a-z0-9.:]*' "$1" 2>/dev/null; then return 0; fi
		sleep 0.1
	done
	printf 'there is no address in %s\n' "$1" >&2
	return 1
}

# compare holds what the receiver got from a line on against what it should.
compare() {
	tail -n "+$1" "$dir/received" | diff -u received.txt - || {
		printf 'the receiver got something else by %s\n' "$2"
		exit 1
	}
}

"$dir/cookday" listen --store memory --address 127.0.0.1:0 --log none >"$dir/service" &
jobs+=($!)
printf 'a-secret-of-this-run-only\n' >"$dir/secret"
"$dir/receiver" -secret "$dir/secret" >"$dir/received" &
jobs+=($!)
service=$(address "$dir/service")
receiver=$(address "$dir/received")

remind() { "$dir/reminders" -to "$receiver" -state "$dir/state" -all "$@" >>"$dir/printed"; }

remind -plan "$service/v1/plans?trial=true" -request request.yaml -steps 3
plan=$(address "$dir/printed")
remind -plan "$plan" -steps 1
remind -plan "$plan" -idle 2s
if [ "${1:-}" = renew ]; then tail -n +2 "$dir/received" >received.txt; fi
compare 2 stream

# pushed has the day planned by a service that pushes by itself, with the flags given,
# and waits for as many steps as the stream had.
pushed() {
	local got=$1 by=$2
	shift 2
	"$dir/cookday" listen --store memory --address 127.0.0.1:0 --log none --push-trials "$@" >"$dir/pusher" &
	local pusher=$!
	jobs+=("$pusher")
	"$dir/reminders" -plan "$(address "$dir/pusher")/v1/plans?trial=true" -request request.yaml -state "$dir/unused" -idle 100ms >/dev/null
	for _ in $(seq 100); do
		if [ "$(wc -l <"$dir/received")" -ge $((got + $(wc -l <received.txt))) ]; then break; fi
		sleep 0.1
	done
	kill "$pusher"
	compare $((got + 1)) "$by"
}
pushed "$(wc -l <"$dir/received")" webhook --webhook "$receiver" --webhook-secret-file "$dir/secret" --webhook-private

if ! command -v curl >/dev/null || ! command -v jq >/dev/null || ! date -d 2026-07-04T00:00:00Z >/dev/null 2>&1; then
	printf 'SKIPPED: polling needs curl, jq and a date that knows -d\n'
	exit 0
fi
got=$(wc -l <"$dir/received")
echo 2026-07-03T00:00:00Z >"$dir/polled"
for now in 2026-07-04T16:00:00Z 2026-07-04T17:15:00Z 2026-07-04T17:15:00Z 2026-07-06T12:00:00Z; do
	bash poll.sh "$plan" "$receiver" "$dir/polled" "$now"
done
compare $((got + 1)) polling

PATH=$PATH:/usr/sbin
if ! command -v mosquitto >/dev/null || ! command -v mosquitto_sub >/dev/null; then
	printf 'SKIPPED: the broker needs mosquitto and its clients\n'
	exit 0
fi
port=$((20000 + RANDOM % 20000))
mosquitto -p "$port" >"$dir/broker" 2>&1 &
jobs+=($!)
sleep 0.5
bash subscribe.sh 127.0.0.1 "$port" "$receiver" &
jobs+=($!)
sleep 0.5
pushed "$(wc -l <"$dir/received")" mqtt --mqtt "mqtt://127.0.0.1:$port"
