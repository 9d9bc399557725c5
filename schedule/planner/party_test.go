package planner_test

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/planner/internal/ahead"
)

var parties = flag.Int("parties", 200, "how many random parties TestRandomParties plans")

// TestRandomParties plans random days and looks at every plan from outside, with
// the judge. A request that is refused is refused with its faults. A day that cannot be
// done says which dishes clash under which rules: these cannot be had by themselves
// and can without any one of them. A remedy, applied to the request, leads to the
// day that it tells of. Remedies cost many plans each: in the short run one party in
// four gets them, and the first is looked at; in a long one all.
//
// The parties are shared out among tables that are planned at one time. Every table
// draws them all, and at which table a party sits is drawn last: the parties are the
// same however many tables there are, and one that fails is found again, made smaller,
// at its own.
func TestRandomParties(t *testing.T) {
	long := *parties > 200
	setFlag(t, "rapid.checks", fmt.Sprint(*parties))
	if !long { // the short run is the same every time, a long one looks further
		setFlag(t, "rapid.seed", "20270703")
	}
	var all [tables]partyCount
	t.Cleanup(func() { t.Logf("%+v", sumOf(all[:])) }) // the tables are done by then
	for table := range tables {
		t.Run(fmt.Sprint("table ", table), func(t *testing.T) {
			t.Parallel()
			rapid.Check(t, func(t *rapid.T) {
				text := drawParty(t)
				most := 0
				if long {
					most = math.MaxInt
				} else if rapid.IntRange(0, 3).Draw(t, "remedies") == 0 {
					most = 1
				}
				if drawTable(t) != table {
					return
				}
				for _, f := range partyFaults(text, most, &all[table]) {
					t.Errorf("%s\n%s", f, text)
				}
			})
		})
	}
}

// tables is how many parties are planned at one time, given as many processors: a power
// of two.
const tables = 8

// drawTable draws one of the tables, each as likely: drawn numbers are more often small.
func drawTable(t *rapid.T) int {
	table := 0
	for bit := 1; bit < tables; bit *= 2 {
		if rapid.Bool().Draw(t, "table") {
			table += bit
		}
	}
	return table
}

// partyCount says what random parties came to.
type partyCount struct{ refused, feasible, infeasible, asked, remedied, unproven int }

func sumOf(all []partyCount) partyCount {
	var sum partyCount
	for _, c := range all {
		sum.refused += c.refused
		sum.feasible += c.feasible
		sum.infeasible += c.infeasible
		sum.asked += c.asked
		sum.remedied += c.remedied
		sum.unproven += c.unproven
	}
	return sum
}

// setFlag sets a flag of the test binary for one test.
func setFlag(t *testing.T, name, value string) {
	t.Helper()
	before := flag.Lookup(name).Value.String()
	if err := flag.Set(name, value); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = flag.Set(name, before) })
}

// partyFaults plans a request and gives the faults of the plan, and of so many of
// its remedies; an error that is no fault of the request counts as one.
func partyFaults(text string, remedies int, count *partyCount) []string {
	r, err := schedule.Read([]byte(text))
	var p schedule.Plan
	if err == nil {
		p, err = ahead.Plan(context.Background(), r, ahead.Effort{})
	}
	if err == nil && remedies > 0 || err == nil && !p.Feasible {
		p, err = planner.Make(context.Background(), r)
	}
	var refused *schedule.InputError
	switch {
	case errors.As(err, &refused):
		count.refused++
		return nil
	case err != nil:
		return []string{"neither a plan nor the faults of the request: " + err.Error()}
	}
	var faults []string
	for _, f := range check.Plan(p) {
		faults = append(faults, f.String())
	}
	count.take(p, remedies)
	if _, said := plantest.Finding(p, schedule.CodeNoRemedy); !p.Feasible && said == (len(p.Remedies) > 0) {
		faults = append(faults, fmt.Sprintf("%d remedies, and none said: %v", len(p.Remedies), said))
	}
	if !p.Feasible {
		faults = append(faults, clashFaults(documentOf(r), p)...)
	}
	return append(faults, remedyFaults(documentOf(r), p.Remedies[:min(remedies, len(p.Remedies))])...)
}

func (c *partyCount) take(p schedule.Plan, remedies int) {
	if p.Feasible {
		c.feasible++
		return
	}
	c.infeasible++
	if remedies > 0 {
		c.asked++
	}
	if remedies > 0 && len(p.Remedies) > 0 {
		c.remedied++
	}
	if !p.Solution.Proven {
		c.unproven++
	}
}

// drawParty writes a request. Weights, hours and grills are such as cooks have;
// none of them is a check value.
func drawParty(t *rapid.T) string {
	pick := func(label string, of ...string) string { return rapid.SampledFrom(of).Draw(t, label) }
	var s strings.Builder
	date := pick("date", "2027-07-03", "2027-12-24", "2027-03-14", "2027-11-07") // the last two change the clocks in Chicago
	fmt.Fprintf(&s, "format: 1\nserve: {date: %s, time: %q, tz: %s}\n", date,
		pick("time", "12:00", "13:30", "18:00", "20:15"), pick("tz", "America/Chicago", "Europe/Berlin", "Asia/Kolkata"))
	s.WriteString("grill: " + pick("grill",
		"{kind: kettle, diameter: 22 in}", "{kind: kettle, diameter: 22 in, gauge_offset: 40 F}", "{kind: kettle, diameter: 18 in, fuel: lump}",
		"{kind: kettle, diameter: 26 in}", "{kind: box, width: 30 in, depth: 18 in}",
		"{kind: other, zones: [{name: left, width: 12 in, depth: 18 in, min: 225 F, max: 400 F}, {name: right, width: 12 in, depth: 18 in, min: 350 F, max: 550 F, direct: true}]}") + "\n")
	s.WriteString("oven: {hold: 170 F}\n")
	s.WriteString(pick("quiet", "", "quiet: [{from: \"23:00\", to: \"05:30\"}]\n", "quiet: [{from: \"22:00\", to: \"07:00\"}]\n", "quiet: [{from: \"13:00\", to: \"14:00\"}]\n"))
	s.WriteString(pick("weather", "", "weather: {air: 40 F, night: 25 F, wind: 10 mph}\n", "weather: {air: 92 F, altitude: 5280 ft}\n"))
	s.WriteString(pick("earliest", "", "", "", "earliest: \"06:00\"\n"))
	fmt.Fprintf(&s, "confidence: %s\nunits: %s\ndishes:\n", pick("confidence", "0.6", "0.8", "0.9", "0.95"), pick("units", "us", "metric"))
	for range rapid.SampledFrom([]int{1, 1, 2, 2, 3, 4, 5}).Draw(t, "dishes") {
		s.WriteString(drawDish(t, pick))
	}
	return s.String()
}

// drawDish writes a dish with what suits its cut.
func drawDish(t *rapid.T, pick func(string, ...string) string) string {
	all := cut.All()
	c := all[rapid.IntRange(0, len(all)-1).Draw(t, "cut")]
	most := 2
	if c.Quick() {
		most = 8
	}
	kg := c.Typical * rapid.SampledFrom([]float64{0.8, 1, 1.3}).Draw(t, "size")
	kg = min(max(kg, c.MinPieceKg), c.MaxPieceKg)
	d := fmt.Sprintf("  - {cut: %s, weight: %.3f kg, count: %d", c.Name, kg, rapid.IntRange(1, most).Draw(t, "count"))
	d += pick("serve", "", "", "", "", "", "", "", "", ", serve: \"12:00\"", ", travel: 30m")
	switch c.Style {
	case cut.Tough:
		d += pick("hold", "", "", "", ", hold: [insulated-box]", ", hold: [oven, tent]", ", hold: [none]")
		d += pick("wrap", "", "", ", wrap: none", ", wrap: {with: paper, from: 160 F}", ", wrap: {with: foil, after: 4h}")
		d += pick("more", "", "", ", rest: 45m", ", level: 275 F", ", prep: [injected]", ", ready: day-before", ", start: frozen")
	case cut.Roast:
		d += pick("hold", "", "", "", ", hold: [tent]", ", hold: [oven]", ", hold: [none]")
		d += pick("more", "", "", ", rest: 30m", ", finish: sear", ", target: 150 F", ", target: {final: 150 F}", ", level: 325 F", ", ready: day-before", ", start: frozen")
	case cut.Bird:
		d += pick("more", "", "", ", hold: [oven]", ", rest: 20m", ", prep: [brined]", ", start: frozen")
	case cut.Small:
		d += pick("more", "", "", "", ", rest: 8m", ", zone: direct", ", zone: indirect")
	}
	return d + "}\n"
}
