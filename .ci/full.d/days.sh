#!/usr/bin/env bash
# Three hundred drawn days beside what the first edition said of them.
set -euo pipefail
cd "$(dirname "$0")/../.."
go test -timeout 60m ./schedule/planner -run 'TestDrawnDaysBesideTheFirstEdition$' -drawn-days 300 -v
