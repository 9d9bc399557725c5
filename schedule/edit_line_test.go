package schedule_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// An edit as a cook writes it, and what it does to the request is what the line does.
func TestEditLine(t *testing.T) {
	const head = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\n"
	r, err := schedule.Read([]byte(head + "dishes: [{name: Ribs, cut: baby-backs, count: 4}, {name: Brisket, cut: brisket, weight: 10 lb}]\n"))
	if err != nil {
		t.Fatal(err)
	}
	level := unit.FromFahrenheit(275)
	for _, c := range []struct {
		e          schedule.Edit
		dish, line string
	}{
		{schedule.NewEdit("oven", schedule.Oven{Hold: unit.FromFahrenheit(170)}), "", "oven: {}"},
		{schedule.NewEdit("oven", schedule.Oven{Hold: unit.FromFahrenheit(200)}), "", "oven: {hold: 200 F}"},
		{schedule.NewEdit("confidence", 0.8), "", "confidence: 0.8"},
		{schedule.NewEdit("overnight", true), "", "overnight: true"},
		{schedule.NewEdit("dishes[0].lies", schedule.LiesStanding), "Ribs", "lies: standing"},
		{schedule.NewEdit("dishes[1].level", &level), "Brisket", "level: 275 F"},
		{schedule.NewEdit("dishes[1].weight", unit.FromPounds(8)), "Brisket", "weight: 8 lb"},
		{schedule.NewEdit("dishes[1]", nil), "Brisket", "without the dish"},
		{schedule.NewEdit("quiet", []schedule.Quiet{}), "", "quiet: []"},
	} {
		dish, line := c.e.Line(r)
		if dish != c.dish || line != c.line {
			t.Errorf("%+v is %q, %q; want %q, %q", c.e, dish, line, c.dish, c.line)
		}
		if c.dish == "" {
			if _, err := schedule.Read([]byte(head + line + "\ndishes: [{cut: brisket, weight: 10 lb}]\n")); err != nil {
				t.Errorf("%s is not read: %v", line, err)
			}
		}
		if strings.Contains(line, "°") {
			t.Errorf("%s has a sign that few keyboards have", line)
		}
	}
}
