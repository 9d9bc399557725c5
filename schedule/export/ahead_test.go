package export

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// The headline and the shopping list of a day with a dish of the day before are of both
// days: the raw piece, both fires, and the meal at which it is eaten.
func TestHeadlineIsOfBothDays(t *testing.T) {
	const pork = "  - {name: Pulled pork, cut: pork-butt, weight: 8 lb, ready: day-before}\n"
	const burgers = "  - {name: Burgers, cut: burger, weight: 6 oz, count: 4}\n"
	const oven = "oven: {hold: 170 F}\n"
	for name, c := range map[string]struct {
		request string
		wants   []string
	}{
		"warmed in the oven": {oven + "dishes:\n" + pork + burgers, []string{"What      Pulled pork (8 lb, cooked the day before) and Burgers (4 × 6 oz)",
			"Friday, July 9, and ", "cooked by 8:00 PM Fri: Pulled pork 9", "- Pulled pork: 8 lb", " for both days, ", "and foil", "The day before: low, "}},
		"warmed on the grate": {"dishes:\n" + pork + burgers, []string{"Pulled pork (8 lb, cooked", "- Pulled pork: 8 lb", "and foil"}},
		"nothing else":        {oven + "dishes:\n" + pork, []string{"Eat at    1:00 PM on Saturday, July 10, 2027; chilled by 8:00 PM Fri", "- Pulled pork: 8 lb"}},
	} {
		r, err := schedule.Read([]byte("format: 1\nserve: {date: 2027-07-10, time: \"13:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\n" + c.request))
		if err != nil {
			t.Fatal(err)
		}
		p, err := planner.Make(context.Background(), r)
		if err != nil {
			t.Fatal(err)
		}
		var cal bytes.Buffer
		if err := Calendar(&cal, p); err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{"SUMMARY:Wrap: Pulled pork", "Put on: Pulled pork", "SUMMARY:Take off: Pulled pork", "SUMMARY:Chill"} {
			if !strings.Contains(cal.String(), want) {
				t.Errorf("%s: no %q in the calendar", name, want)
			}
		}
		drawn, warmed := exported(t, p, "html"), name == "warmed in the oven"
		if both := strings.Contains(drawn, ">Friday, July 9<") && strings.Contains(drawn, "Fire 1, the day before"); both != (p.Ahead.Plan != nil) {
			t.Errorf("%s: the pictures have both days: %v", name, both)
		}
		if strings.Contains(drawn, "Pulled pork, warmed in the oven") != warmed {
			t.Errorf("%s: the warming is drawn: %v", name, !warmed)
		}
		got := strings.Join(strings.Fields(textOf(t, p, Options{})), " ")
		for _, want := range c.wants {
			if !strings.Contains(got, strings.Join(strings.Fields(want), " ")) {
				t.Errorf("%s: no %q in\n%s", name, want, got[:min(len(got), 1600)])
			}
		}
	}
}

// Unequal pieces are bought one by one while they can be counted on a hand.
func TestUnequalPiecesAreBoughtOneByOne(t *testing.T) {
	v, err := look(invented(), invented().ServeAt)
	if err != nil {
		t.Fatal(err)
	}
	d := schedule.DishPlan{Count: 2, MassKg: 7.484, Batches: []schedule.Batch{{Pieces: []schedule.Piece{{MassKg: 4.082}, {MassKg: 3.402}}}}}
	if got := v.portion(d); got != "9 lb and 7.5 lb" {
		t.Errorf("%s", got)
	}
}
