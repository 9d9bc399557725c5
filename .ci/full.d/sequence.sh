#!/usr/bin/env bash
# The optimiser against an independent statement in MiniZinc, and against
# exhaustive search on many more small problems than go test takes.
set -euo pipefail
cd "$(dirname "$0")/../.."
if ! command -v minizinc >/dev/null; then
	apt-get update -q && apt-get install -qy --no-install-recommends minizinc
fi
go test ./schedule/planner/internal/sequence -run Twin -twin=12000 -timeout 30m
go test ./schedule/planner/internal/sequence -run MiniZinc -minizinc=200 -minizincdays=100 -minizinctime=10s -timeout 60m -v
go test ./schedule/planner/internal/sequence -run XXX -bench Days -benchtime 1x
