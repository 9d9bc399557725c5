#!/usr/bin/env python3
"""Fills a table of dishes with times from the planner; needs nothing but Python.

    table.py http://127.0.0.1:8018 dishes.csv day.json > filled.csv

The table has a dish a line: its name, cut, weight of a piece, pieces, wrap. What is
added: how long one piece takes by itself (early and late, minutes), when it goes on,
when it comes off (early, expected, late), the chance that it is ready, and below the
dishes the fire, the charcoal and what to mind. The times are predictions; the
thermometer decides.
"""
import csv
import io
import json
import sys
import urllib.error
import urllib.parse
import urllib.request

ADDED = ["alone early min", "alone late min", "put on", "take off early", "take off", "take off late", "chance"]


def ask(address, body=None, accept="application/json"):
    """The text that the service answers; its faults end the program, one a line."""
    request = urllib.request.Request(address, data=body, headers={"Accept": accept, "Content-Type": "application/json"})
    try:
        with urllib.request.urlopen(request) as answer:
            return answer.read().decode("utf-8")
    except urllib.error.HTTPError as error:
        problem = json.load(error)
        faults = problem.get("errors") or [{"detail": problem.get("detail", error.reason)}]
        lines = [(f.get("pointer") or f.get("parameter") or "") + ": " + f["detail"] for f in faults]
        raise SystemExit("\n".join(lines))


def table(text):
    return list(csv.DictReader(io.StringIO(text, newline="")))


def forecast(service, row):
    """The minutes one piece takes by itself: a header and one line of CSV."""
    query = {"cut": row["cut"], "weight": row["weight"], "format": "csv"}
    if row["wrap"]:
        query["wrap"] = row["wrap"]
    return table(ask(service + "/v1/forecasts?" + urllib.parse.urlencode(query), accept="text/csv"))[0]


def dish(row):
    """A line of the table as a dish of a request."""
    asked = {"name": row["dish"], "cut": row["cut"], "weight": row["weight"], "count": int(row["pieces"] or 1)}
    if row["wrap"]:
        asked["wrap"] = row["wrap"]
    return asked


def clock(instant):
    """An instant of the plan as a sheet shows it: 2027-07-03 04:15."""
    return instant[:16].replace("T", " ")


def cell(text):
    """Keeps a spreadsheet from taking a text for a formula."""
    return "'" + text if text[:1] in ("=", "+", "-", "@") else text


def fill(rows, day, service):
    """The lines of the filled table, its header first."""
    request = dict(day, dishes=[dish(row) for row in rows])
    # A trial: a table is tried out, and a day that is past is planned too.
    plan = json.loads(ask(service + "/v1/plans?trial=true", json.dumps(request).encode()))
    if not plan["feasible"]:
        raise SystemExit("\n".join(f["text"] for f in plan["findings"]))
    planned = [line for line in table(ask(f"{service}/v1/plans/{plan['id']}.csv?table=dishes")) if line["row"] == "dish"]
    names = [d["id"] for d in plan["dishes"]]  # in the order of the request
    lines = [["dish", "cut", "weight", "pieces", "wrap"] + ADDED]
    for row, name in zip(rows, names):
        alone = forecast(service, row)
        batches = [line for line in planned if line["id"] == name]
        first, last = batches[0], batches[-1]
        lines.append([cell(row[key]) for key in lines[0][:5]] + [
            alone["take_off_early_minutes"], alone["take_off_late_minutes"], clock(first["on_expected"]),
            clock(first["take_off_early"]), clock(last["take_off_expected"]), clock(last["take_off_late"]), first["chance"]])
    notes = [("Light at", clock(plan["light_at"])), ("Charcoal", plan["fuel"]["text"])]
    notes += [("Mind", c["text"]) for c in plan["cautions"]]
    return lines + [[what, cell(text)] + [""] * (len(lines[0]) - 2) for what, text in notes]


def main(service, dishes, day):
    with open(dishes, newline="", encoding="utf-8") as f:
        rows = list(csv.DictReader(f))
    with open(day, encoding="utf-8") as f:
        csv.writer(sys.stdout, lineterminator="\n").writerows(fill(rows, json.load(f), service))


if __name__ == "__main__":
    if len(sys.argv) != 4:
        raise SystemExit(__doc__)
    main(*sys.argv[1:])
