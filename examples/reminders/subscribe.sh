#!/usr/bin/env bash
# subscribe.sh BROKER PORT RECEIVER: posts each step that the service publishes. A session
# that is kept (-c, with an id) gets what came while nobody listened.
set -euo pipefail
mosquitto_sub -V 5 -h "$1" -p "$2" -i reminders -c -x 86400 -q 1 -t 'cookday/+/due' > >(
	while read -r step; do
		curl -fsS -H 'Content-Type: application/json' --data-binary "$step" "$3"
	done
) &
trap 'kill $!' EXIT
trap 'exit 0' TERM
wait
