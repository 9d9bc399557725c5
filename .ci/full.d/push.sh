#!/usr/bin/env bash
# What is due goes out: against a real broker with TLS (Debian: mosquitto) and a receiver
# that fails, sleeps, loses its answers and goes away. The service is killed 50 times while
# plans are made and revised, the broker 20 times; clocks jump. Nothing acknowledged may be
# forgotten, nothing out of order, and what comes twice is the same.
set -euo pipefail
cd "$(dirname "$0")/../.."
PATH=$PATH:/usr/sbin
if ! command -v mosquitto >/dev/null && [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
	apt-get update -qq && apt-get install -y -qq --no-install-recommends mosquitto mosquitto-clients >/dev/null
fi
broker=$(command -v mosquitto) || {
	printf 'the broker is missing: install mosquitto\n' >&2
	exit 1
}
go test ./api/push -count 1 -v -run 'Clocks|Silent|Fails|Restart'
go test ./api/push -count 1 -v -mosquitto "$broker" -run TestBrokerTells
go test ./api/push -count 1 -v -mosquitto "$broker" -run TestNothingIsForgotten -kill "${KILLS:-50}" -broker-kill "${BROKER_KILLS:-20}" -timeout 30m
