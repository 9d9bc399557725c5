#!/usr/bin/env bash
# The advice about a burning fire against the rule of thumb, on 500 simulated cooks (COOKS), what it learns of a grill,
# and whether the windows of one's own grill hold, on 200 grills of five cooks (GRILLS). Minutes on two quiet cores.
set -euo pipefail
cd "$(dirname "$0")/../.."
go test ./schedule/internal/steer -run "ManyCooks|ThirdCook" -cooks "${COOKS:-500}" -timeout 60m -v
go test ./schedule/planner -run OnesOwnGrillHold -pace-grills "${GRILLS:-200}" -timeout 60m -v
