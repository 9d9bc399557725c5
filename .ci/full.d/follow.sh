#!/usr/bin/env bash
# What must hold of the estimator on every way of the catalogue, which takes a quarter of an hour,
# and logs as nobody should keep them, two thousand at five seeds.
set -euo pipefail
cd "$(dirname "$0")/../.."
COOKDAY_FULL=1 go test -timeout 240m ./schedule/planner/internal/belief
for seed in 11 22 33 44 55; do
	go test -timeout 60m ./schedule/planner -run 'TestRoughLogs$' -rapid.seed="$seed" -rapid.nofailfile -parties 20000
done
