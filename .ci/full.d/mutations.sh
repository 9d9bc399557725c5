#!/usr/bin/env bash
# Whether our tests notice wrong models: each change in mutations/list.txt is made alone,
# and some test of its package, of the judge or of the planner must fail. Takes about
# a quarter of an hour on two cores.
# MUTATIONS=EXPRESSION tries those that it matches only.
set -euo pipefail
cd "$(dirname "$0")/../.."
ulimit -v $((8 << 20)) # KiB; a search gone wrong may eat memory without end, which counts as noticed
go run ./.ci/full.d/mutations -only "${MUTATIONS:-}"
