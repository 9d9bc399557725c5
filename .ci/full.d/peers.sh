#!/usr/bin/env bash
# Speed beside what one would take instead, in one table, and how cost grows, drawn in
# schedule/internal/peers/growth.svg. Needs SciPy and MiniZinc; installs them where it
# may. PROBLEMS and DAYS say how many problems the optimisers get. About ten minutes.
set -euo pipefail
cd "$(dirname "$0")/../.."
if ! command -v minizinc >/dev/null || ! /usr/bin/python3 -c 'import scipy' 2>/dev/null; then
	apt-get update -q >&2 && apt-get install -qy --no-install-recommends minizinc python3-scipy >&2
fi
said=$(mktemp)
trap 'rm -f "$said"' EXIT
go test ./schedule/internal/peers -count 1 -peers -timeout 60m -v | tee "$said" >&2
go test ./schedule/planner/internal/sequence -count 1 -run MiniZinc -minizinc "${PROBLEMS:-40}" -minizincdays "${DAYS:-20}" -timeout 60m -v | tee -a "$said" >&2

printf '\n%s, %s, %s; load %s\n' "$(nproc) cores" "$(go version | cut -d' ' -f3-4)" "$(/usr/bin/python3 -c 'import scipy; print("SciPy", scipy.__version__)'), $(minizinc --version | grep -o 'version [0-9.]*' | head -1 | sed 's/version/MiniZinc/')" "$(cut -d' ' -f1-3 /proc/loadavg)"
printf '\n| task | ours | peer | ours takes | peer takes | ratio |\n| --- | --- | --- | --- | --- | --- |\n'
grep -E '^\|' "$said" | grep -v 'with the power'
printf '\n| cost | by | median figures | growth |\n| --- | --- | --- | --- |\n'
grep -E '^\|.*with the power' "$said"
