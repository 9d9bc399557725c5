#!/usr/bin/env bash
# The race detector over everything, the rooms of schedule too, which start nothing of
# their own. Needs a C compiler.
set -euo pipefail
cd "$(dirname "$0")/../.."
CGO_ENABLED=1 go test -race -short ./...
