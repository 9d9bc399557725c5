#!/usr/bin/env bash
# The service under mixed load for SOAK (20 minutes): memory, goroutines, descriptors
# and the file of plans must not grow. On loopback only; ends by itself.
set -euo pipefail
cd "$(dirname "$0")/../.."
soak=${SOAK:-20m}
uptime
go test ./api -run '^TestSoak$' -count 1 -soak "$soak" -timeout 0 -v
uptime
