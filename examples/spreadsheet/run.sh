#!/usr/bin/env bash
# Runs the example and compares what it fills in with filled.csv; with "renew" that
# is written anew, with "office" LibreOffice does it, without a screen.
set -euo pipefail
cd "$(dirname "$0")"
mode=${1:-compare}
export PYTHONDONTWRITEBYTECODE=1
python=${PYTHON:-python3}
if ! command -v "$python" >/dev/null; then
	printf 'SKIPPED: there is no %s\n' "$python"
	exit 0
fi
dir=$(mktemp -d)
jobs=()
trap 'kill "${jobs[@]}" 2>/dev/null || true; wait; rm -rf "$dir"' EXIT

go build -o "$dir/" ../../cmd/cookday
"$dir/cookday" listen --store memory --address 127.0.0.1:0 --log none >"$dir/said" &
jobs+=($!)
for _ in $(seq 100); do
	service=$(grep -o -m 1 'http://[0-9.:]*' "$dir/said") && break
	sleep 0.1
done

if [ "$mode" = office ]; then
	soffice --headless --norestore "-env:UserInstallation=file://$dir/profile" "--accept=pipe,name=cookday-$$;urp" >/dev/null 2>&1 &
	jobs+=($!)
	"$python" office.py "cookday-$$" "$service" dishes.csv "$dir/filled.csv"
else
	"$python" table.py "$service" dishes.csv day.json >"$dir/filled.csv"
fi
if [ "$mode" = renew ]; then cp "$dir/filled.csv" filled.csv; fi
diff -u filled.csv "$dir/filled.csv"
