#!/usr/bin/env bash
# The advice about a burning fire against the rule of thumb, on 500 simulated cooks (COOKS), and what it learns of a
# grill. Minutes on two quiet cores.
set -euo pipefail
cd "$(dirname "$0")/../.."
go test ./schedule/internal/steer -run "ManyCooks|ThirdCook" -cooks "${COOKS:-500}" -timeout 60m -v
