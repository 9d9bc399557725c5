#!/usr/bin/env bash
# Slow checks of the HTTP door: 200 kills under load, 10,000 hostile requests, 500 days
# followed through every address, the heaviest callers, the description under a public linter, the calendar under a second parser, and the table
# of dishes filled in by an office suite. Needs node and npm, and LibreOffice with its
# Python bridge (Debian: libreoffice-calc-nogui, python3-uno).
set -euo pipefail
cd "$(dirname "$0")/../.."
root=$PWD
tools=$(mktemp -d)
jobs=()
trap 'kill "${jobs[@]}" 2>/dev/null || true; wait; rm -rf "$tools"' EXIT

go test ./api -run TestHostileRequests -hostile 10000 -timeout 60m -v
go test ./api -run TestKilledServiceLosesNothing -kill 200 -timeout 60m -v
go test ./api -run TestEveryAddressOfEveryAnswer -drawn 500 -timeout 60m -v
go test ./api -run 'TestWorstMegabyte|TestJunkDelaysNobody|TestADayOfReadings|TestManyStreams|TestHeavyCallersLeaveRoom|TestAThousandListen|TestTenThousandPlans|TestFiguresBesideBareEcho' -load -timeout 60m -v
go test ./api -run '^$' -bench . -benchtime 2s

# The linter takes one rule less: a suffix is part of the address on purpose
# (/plans/{id} and /plans/{id}.ics), which it calls ambiguous.
cd "$tools"
npm install --no-audit --no-fund --loglevel=error @redocly/cli@2.77.0 ical.js@2.1.0
REDOCLY_TELEMETRY=off npx redocly lint --skip-rule no-ambiguous-paths --max-problems 50 --format stylish "$root/openapi.yaml" | tee lint.txt
if grep -qi 'you have .* warning' lint.txt; then exit 1; fi

# A cook through the night in which the clocks go forward, read by another parser.
cd "$root"
go build -o "$tools/" ./cmd/cookday
"$tools/cookday" listen --store memory --address 127.0.0.1:0 --log none >"$tools/said" &
jobs+=($!)
for _ in $(seq 100); do
	service=$(grep -o -m 1 'http://[0-9.:]*' "$tools/said") && break
	sleep 0.1
done
cat >"$tools/calendar.mjs" <<'SCRIPT'
import ICAL from "ical.js";
const service = process.argv[2];
const request = {format: 1, serve: {date: "2027-03-14", time: "11:00", tz: "America/Chicago"}, grill: {kind: "kettle", diameter: "22 in"},
	dishes: [{cut: "brisket", weight: "12 lb"}]};
const answer = await fetch(service + "/v1/plans", {method: "POST", headers: {"Content-Type": "application/json"}, body: JSON.stringify(request)});
const plan = await answer.json();
const text = await (await fetch(`${service}/v1/plans/${plan.id}.ics`)).text();
const calendar = new ICAL.Component(ICAL.parse(text));
for (const zone of calendar.getAllSubcomponents("vtimezone")) ICAL.TimezoneService.register(zone);
const events = calendar.getAllSubcomponents("vevent").map(e => new ICAL.Event(e));
let wrong = 0;
for (const step of plan.steps) {
	const event = events.find(e => e.uid.includes(step.id));
	const apart = event ? Math.abs(event.startDate.toJSDate() - new Date(step.at)) : Infinity;
	if (apart > 60_000) { // the calendar rounds to minutes
		wrong++;
		console.log(`${step.kind} at ${step.at}: ${event ? event.startDate.toJSDate().toISOString() : "not in the calendar"}`);
	}
}
console.log(`${plan.steps.length} steps, ${wrong} of them at another instant in the calendar`);
process.exit(wrong > 0 || plan.steps.length === 0 ? 1 : 0);
SCRIPT
node "$tools/calendar.mjs" "$service"

if command -v soffice >/dev/null && /usr/bin/python3 -c 'import uno' 2>/dev/null; then
	PYTHON=/usr/bin/python3 bash examples/spreadsheet/run.sh office
else
	printf 'the office suite is missing: install libreoffice-calc-nogui and python3-uno\n'
	exit 1
fi
